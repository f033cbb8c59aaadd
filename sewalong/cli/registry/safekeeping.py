"""Commands that keep the record safe: a backup, a look through all of it, putting one back."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag
from sewalong.cli.registry.command import Command

GROUP = "Keep it safe"

COMMANDS = (
    Command(
        "backup",
        GROUP,
        "make a backup of all quilts now",
        "sewalong.cli.quilts.safekeeping:backup",
        "sewalong backup",
        (Argument("folder", "where to (default: beside the record)", "FOLDER", "path", nargs="?"),),
        about="One is made by itself before the first write of each day; the last fourteen and "
        "the first of each month of a year are kept. Those made by this command all stay.",
    ),
    Command(
        "examine",
        GROUP,
        "is the record sound, and are its backups",
        "sewalong.cli.quilts.safekeeping:examine",
        "sewalong examine",
        about="The exit status is 0 when everything is sound, else 2.",
    ),
    Command(
        "restore",
        GROUP,
        "list what can be put back, or put it back",
        "sewalong.cli.quilts.safekeeping:restore",
        "sewalong restore",
        (
            Argument("which", "a number in that list, or a backup file", "N", "path", nargs="?"),
            flag("--empty", "begin a new, empty record instead"),
        ),
        about="What lies there now is kept, whatever it is: a sound record as a backup, a damaged "
        "one aside. What only the damaged one has is saved in files of its own.",
    ),
)
