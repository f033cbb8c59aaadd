"""Commands that keep what a person writes down: notes, settings, what was changed."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import WHICH_QUILT

GROUP = "Write down"

COMMANDS = (
    Command(
        "note",
        GROUP,
        "write a note for yourself",
        "sewalong.cli.sewing.notes_and_settings:note",
        "sewalong note blue fabric frays, handle by the middle",
        (Argument("text", "what to remember", "TEXT", nargs="+"), *WHICH_QUILT),
    ),
    Command(
        "settings",
        GROUP,
        "the machine's settings and how they were tested",
        "sewalong.cli.sewing.notes_and_settings:settings",
        "sewalong settings --foot 'quarter-inch' --proof '3 strips, 3 1/2 in'",
        (
            Argument("--machine", "which machine", "TEXT"),
            Argument("--foot", "which foot", "TEXT"),
            Argument("--needle", "which needle", "TEXT"),
            Argument("--needle-position", "where the needle stands", "TEXT"),
            Argument("--stitch-length", "how long the stitch is", "TEXT"),
            Argument("--thread", "which thread", "TEXT"),
            Argument("--proof", "the test sewn with these settings, and what it measured", "TEXT"),
            *WHICH_QUILT,
        ),
        about="What is not named stays as it was, but a test sewn with other settings is "
        "not carried over. Without any option the settings are printed.",
    ),
    Command(
        "changed",
        GROUP,
        "a new blade, needle, foot or bobbin; or switched off and on",
        "sewalong.cli.sewing.notes_and_settings:changed",
        "sewalong changed blade",
        (
            Argument(
                "tool",
                "what was changed; power: the machine was switched off and on",
                choices=("blade", "needle", "foot", "bobbin", "power"),
            ),
            *WHICH_QUILT,
        ),
    ),
    Command(
        "preferences",
        GROUP,
        "what you prefer for all quilts: keys, unit, wear, cautions",
        "sewalong.cli.quilts.preferences:preferences",
        "sewalong preferences",
        (flag("--write", "write a file with every preference in it, to edit"),),
        about="Tells where the file lies, what is in it, every fault with its line, and which key "
        "does what. Nothing needs the file.",
    ),
)
