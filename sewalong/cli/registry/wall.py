"""The command about the wall: where each unit lies."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import WHICH_QUILT

GROUP = "The wall"

COMMANDS = (
    Command(
        "wall",
        GROUP,
        "where each unit lies: proposed, photographed, moved, laid again",
        "sewalong.cli.wall.wall:wall",
        "sewalong wall --propose",
        (
            Argument(
                "do",
                "what to do: swap 2.3 7.8 (2.3/1: turned a quarter), turn 2.3, spare 2.3 7/2 (unit 2 "
                "of set 7 comes in), out 2.3, lock 2.3 2.4, unlock 2.3, exchange R3 R6, turn-row R4, "
                "clear; mend: the fewest moves that mend all; order: rows whose order was lost",
                "DO",
                nargs="*",
            ),
            whole("--row", "read this row, place by place", metavar="ROW"),
            flag("--rebuild", "read every row, and what belongs to none: after the cat"),
            Argument(
                "--with", "where the units belong that have all of these: A,F", "FABRICS",
                dest="with_fabrics",
            ),
            flag("--propose", "a layout; what is locked or sewn stays"),
            Argument(
                "--typed",
                "a wall typed in a file (-: standard input), a row on each line: 7/2 for unit 2 of set 7, A "
                "for a unit of one letter, - for nothing; with order: rows as they came to hand",
                "FILE",
                "path",
            ),
            Argument("--photo", "the units laid out, photographed from above", "FILE", "path"),
            Argument(
                "--corners",
                "with --photo: four points x,y in pixels, from row 1 place 1 round by the end of "
                "row 1 (default: they are found)",
                "POINT",
                nargs="+",
            ),
            Argument(
                "--said",
                "with --photo: what lies at a place that is not sure: 2.3=7/2, 2.3=nothing; of sets "
                "that are not known, a patch: 2.3/1=A",
                "ANSWER",
                repeated=True,
            ),
            Argument(
                "--touch",
                "where like fabrics may not touch: along seams (as usual), or at points too",
                choices=("seams", "points"),
            ),
            Argument(
                "--stacks",
                "units of one stack are kept apart (as usual), or may lie together",
                choices=("apart", "together"),
            ),
            Argument("--rim", "a fabric that is kept from the rim, or none", "FABRIC"),
            Argument(
                "--plan",
                "with --propose: light to dark, rings, checker, scattered, mirrored",
                "PLAN",
            ),
            flag("--spread", "with --propose: families and values spread evenly"),
            whole("--seconds", "with --propose: how long to look for better ones"),
            whole("--seed", "with --propose, order: another number, another choice (default: 1)"),
            flag("--accept", "what is proposed, typed, photographed, mended or ordered is so now"),
            flag("--look", "only say what a move mends and costs; nothing is recorded"),
            flag("--either-way", "with order: rows may lie turned end for end"),
            flag("--all-the-same", "with turn-row, exchange: do it although more touches"),
            *WHICH_QUILT,
        ),
        about="Alone it tells how it stands: what can be had, what touches, every row, what is spare. "
        "A place is its row and its place in the row. All of this can be left out; nothing else "
        "needs it.",
    ),
)  # fmt: skip
