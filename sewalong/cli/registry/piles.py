"""Commands for what happens to a pile other than by work."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import PILE, WHICH_QUILT

GROUP = "Piles"

COMMANDS = (
    Command(
        "spoil",
        GROUP,
        "pieces are spoiled, and why",
        "sewalong.cli.sewing.piles:spoil",
        "sewalong spoil unit 2 --reason 'cut off square'",
        (
            PILE,
            whole("n", "how many are spoiled"),
            Argument("--reason", "what went wrong", "TEXT", required=True),
            whole("--set", "of the set with this number, where you know it"),
            Argument("--fabric", "of this fabric, by letter or name, where you know it", "FABRIC"),
            *WHICH_QUILT,
        ),
    ),
    Command(
        "find",
        GROUP,
        "pieces were found again, bought or cut new",
        "sewalong.cli.sewing.piles:find",
        "sewalong find square 8 --bought",
        (
            PILE,
            whole("n", "how many came to the pile"),
            flag("--bought", "bought or cut new, not found again"),
            *WHICH_QUILT,
        ),
        about="What was missing and is found again is no longer missing.",
    ),
    Command(
        "recount",
        GROUP,
        "a pile was counted by hand; your count stands",
        "sewalong.cli.sewing.piles:recount",
        "sewalong recount four-patch 31",
        (
            PILE,
            whole("n", "how many lie there now"),
            Argument("--place", "only what lies there was counted", "PLACE"),
            Argument(
                "--as",
                "what the difference is: made (counted wrongly at its stage), found, lost, "
                "spoiled, or missing (made, but not found)",
                choices=("made", "found", "lost", "spoiled", "missing"),
                dest="how",
            ),
            *WHICH_QUILT,
        ),
        about="Whatever the difference is said to be, the count is what lies there from now on.",
    ),
    Command(
        "put-away",
        GROUP,
        "say where a pile lies now",
        "sewalong.cli.sewing.piles:put_away",
        "sewalong put-away stack blue tin, top shelf",
        (
            PILE,
            Argument("text", "where the pile lies now", "PLACE", nargs="+"),
            whole("--part", "only so many of it (default: all)"),
            *WHICH_QUILT,
        ),
    ),
)
