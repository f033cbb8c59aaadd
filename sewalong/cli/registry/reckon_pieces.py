"""What `reckon` works out of pieces: how many they make, and how true they are."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, length, size, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import METHOD, SEAM, STRIP, STRIP_LENGTH, UNIT

GROUP = "Reckon pieces"

COMMANDS = (
    Command(
        "reckon makes",
        GROUP,
        "what pieces come to, stage by stage, with what is over",
        "sewalong.cli.reckoning.packs:makes",
        "sewalong reckon makes --method stacked-four-patch --have 42",
        (
            METHOD,
            Argument(
                "--have",
                "pieces there are; PILE=N, once for each, where a method begins with several",
                "N",
                repeated=True,
            ),
            whole("--units", "units wanted, to see the pieces they take"),
            STRIP,
            STRIP_LENGTH,
            SEAM,
            UNIT,
        ),
    ),
    Command(
        "reckon enlarge",
        GROUP,
        "what pieces are cut at for a larger or smaller block",
        "sewalong.cli.reckoning.cut_up:enlarge",
        "sewalong reckon enlarge --cut 2 1/2 --cut 2 1/2 x 4 1/2 --times 2",
        (
            size("--cut", "a piece as it is cut now; once for each", required=True, repeated=True),
            Argument("--times", "how many times as large, such as 2, 1.5 or 3/4", "N"),
            length("--from", "the size the block finishes at now"),
            length("--to", "the size it is to finish at"),
            Argument(
                "--piece",
                "straight; half or quarters for a square cut in 2 or 4 triangles",
                choices=("straight", "half", "quarters"),
                default="straight",
            ),
            SEAM,
            UNIT,
        ),
    ),
    Command(
        "reckon cut-up",
        GROUP,
        "a whole piece cut up and sewn together again",
        "sewalong.cli.reckoning.cut_up:cut_up",
        "sewalong reckon cut-up --piece 8 1/2 --upright 2 --lying 2",
        (
            size("--piece", "what is cut up, raw edge to raw edge"),
            size("--wanted", "what it is to measure, to see what to begin with"),
            whole("--upright", "cuts from top to bottom"),
            whole("--lying", "cuts from side to side"),
            SEAM,
            UNIT,
        ),
    ),
    Command(
        "reckon row",
        GROUP,
        "pieces side by side, and what a measured row says of the seam",
        "sewalong.cli.reckoning.row:row",
        "sewalong reckon row --pieces 5 --cut 2 1/2 --measured 10",
        (
            whole("--pieces", "how many pieces lie side by side"),
            length("--cut", "the size of each along the row, as cut"),
            length("--cuts", "pieces of different sizes, with commas between them"),
            SEAM,
            length(
                "--own-seam",
                "the allowance your own seams measure: what it changes, and not to be guessed at",
            ),
            length("--measured", "the row as it came out, to see what it comes of"),
            length("--loss", "what each seam takes too much, both pieces together"),
            whole("--across", "with --loss: so many such rows side by side"),
            UNIT,
        ),
    ),
    Command(
        "reckon ease",
        GROUP,
        "whether one edge can be eased into another",
        "sewalong.cli.reckoning.row:ease",
        "sewalong reckon ease --edge 9 1/2 --to 9 3/8",
        (
            length("--edge", "the edge to be eased in"),
            length("--to", "the length it is joined to"),
            length("--size", "a unit's size, to see when it is better remade"),
            UNIT,
        ),
    ),
    Command(
        "reckon shrunk",
        GROUP,
        "what squares that measure less than their label do",
        "sewalong.cli.reckoning.undersized:shrunk",
        "sewalong reckon shrunk --label 5 --measured 4 7/8 --method four-patch",
        (
            length("--label", "the size they are sold as", required=True),
            length(
                "--measured",
                "what they measure; several with commas, across x down if need be",
                required=True,
            ),
            METHOD,
            Argument("--in-row", "units in a row (default: 8)", "N", "whole", default=8),
            whole("--pieces", "how many would have to be cut down"),
            SEAM,
            UNIT,
        ),
    ),
    Command(
        "reckon scale",
        GROUP,
        "whether a printed sheet has its true size",
        "sewalong.cli.reckoning.undersized:scale",
        "sewalong reckon scale --should-be 1 --measured 0.96 --size 12 1/2",
        (
            length("--should-be", "what the test square should measure", required=True),
            length("--measured", "what it measures", required=True),
            length("--size", "a size on the sheet, to see what it comes out at"),
            UNIT,
        ),
    ),
    Command(
        "reckon together",
        GROUP,
        "what a batch takes one person, and two",
        "sewalong.cli.reckoning.shared_work:together",
        "sewalong reckon together --pieces 60 --machine 90 --iron 45",
        (
            whole("--pieces", "how many"),
            whole("--machine", "seconds each takes at the machine"),
            whole("--iron", "seconds each takes at the iron"),
        ),
    ),
    Command(
        "reckon weeks",
        GROUP,
        "how many weeks a batch takes, by the days of the week",
        "sewalong.cli.reckoning.shared_work:weeks",
        "sewalong reckon weeks --pieces 48 --days 56 --weekend-day 3.5",
        (
            whole("--pieces", "how many"),
            whole("--days", "days until it is wanted"),
            Argument("--weekday", "made on each weekday", "N"),
            Argument("--weekend-day", "made on each day of the weekend", "N"),
            whole("--off", "days that cannot be used"),
        ),
    ),
)
