"""The command by which a quilt is begun without writing a file."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag
from sewalong.cli.registry.command import Command

GROUP = "Begin a quilt"

COMMANDS = (
    Command(
        "new",
        GROUP,
        "begin a quilt by a few questions, each with its usual answer ready",
        "sewalong.cli.quilts.beginning:new",
        "sewalong new",
        (
            flag("--plain", "ask in plain lines, without the app"),
            Argument(
                "--file",
                "ask nothing: write a quilt file to edit, with a remark at each key",
                "FILE",
                "path",
            ),
        ),
        about="Where there is no terminal for the app it asks in plain lines too: an empty line "
        "takes the usual answer, “back” goes back. What is left in the middle is kept as a draft.",
    ),
)
