"""Commands that open a quilt in the app."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import QUILT_NAMED

GROUP = "Open a quilt"

COMMANDS = (
    Command(
        "open",
        GROUP,
        "open a quilt in the app",
        "sewalong.cli.quilts.opening:open_quilt",
        "sewalong open",
        QUILT_NAMED,
        about="Without a name the quilt last touched is opened. Where there is no terminal, "
        "its plain status is printed instead.",
        json=False,
    ),
    Command(
        "demo",
        GROUP,
        "open a demo quilt (invented; kept apart from yours)",
        "sewalong.cli.quilts.opening:demo",
        "sewalong demo",
        (
            Argument("name", "which demo quilt", "NAME", nargs="?"),
            flag("--list", "only list the demo quilts"),
            flag("--afresh", "begin all demo quilts again as they were"),
        ),
        about="The demo quilts have a record of their own; yours are never touched. Every "
        "other command works on them too, with --demo.",
    ),
    Command(
        "completion",
        GROUP,
        "print what lets a shell complete commands and options",
        "sewalong.cli.quilts.completion:completion",
        "sewalong completion bash",
        (Argument("shell", "which shell", choices=("bash", "zsh", "fish")),),
        about="It needs the extra library: pip install 'sewalong[completion]'. Put what is printed "
        "where your shell looks for completions, or load it in its start file.",
    ),
)
