"""The commands that work numbers out. Their arguments and their work are elsewhere."""

from __future__ import annotations

from sewalong.cli.frame.command import Command
from sewalong.cli.registry import kinds_arguments as kinds
from sewalong.cli.registry import reckoning_arguments as shape

NUMBERS = "Numbers"

NUMBERS_COMMANDS: tuple[Command, ...] = (
    Command(
        "plan", NUMBERS, "sizes, cloth, cut list, shopping, thread and layouts of a quilt",
        "sewalong.cli.reckoning.plan:plan", shape.plan, "sewalong plan my-quilt.toml --usable 42",
        about="A quilt in the record is taken as it stands: its layout now wanted and the units "
        "there will be. What is given here is tried, never kept.",
    ),
    Command(
        "layouts", NUMBERS, "rows and columns that the units will fill",
        "sewalong.cli.reckoning.layouts:layouts", shape.layouts, "sewalong layouts my-quilt.toml --near 60 x 80",
        about="Without a quilt: --units, --finishes and perhaps --border.",
    ),
    Command(
        "size", NUMBERS, "from pieces to the unit, or from the unit wanted to the pieces",
        "sewalong.cli.reckoning.size:size", shape.size,
        "sewalong size --method stacked-four-patch --finishes 6 in",
        about="Give one of --square (or --strip), --finishes and --unfinished.",
    ),
    Command(
        "yardage", NUMBERS, "cloth, batting or thread for one thing",
        "sewalong.cli.reckoning.yardage:yardage", kinds.yardage,
        "sewalong yardage squares --size 5 --count 168",
        about="Every kind has its own --help.",
    ),
    Command(
        "packs", NUMBERS, "packs for a number of pieces, and the spare",
        "sewalong.cli.reckoning.packs:packs", shape.packs, "sewalong packs --need 140 --in-a-pack 42",
    ),
    Command(
        "makes", NUMBERS, "what pieces come to, stage by stage, with what is over",
        "sewalong.cli.reckoning.packs:makes", shape.makes,
        "sewalong makes --method stacked-four-patch --have 42",
    ),
    Command(
        "border-length", NUMBERS, "the length to cut a border at, from the real top",
        "sewalong.cli.reckoning.border_length:border_length", shape.border_length,
        "sewalong border-length 59 1/2, 60, 60 3/4 --rule middle",
    ),
    Command(
        "pieced-border", NUMBERS, "a border pieced of units, and the spacer that makes it fit",
        "sewalong.cli.reckoning.border_length:pieced_border", shape.pieced_border,
        "sewalong pieced-border --edge 46 --piece 5",
    ),
    Command(
        "setting", NUMBERS, "units set straight, with sashes, or on point",
        "sewalong.cli.reckoning.setting:setting", kinds.setting,
        "sewalong setting on-point --rows 4 --columns 4 --finishes 6",
        about="Every kind has its own --help.",
    ),
    Command(
        "row", NUMBERS, "pieces side by side; what a measured row says of the seam",
        "sewalong.cli.reckoning.row:row", shape.row, "sewalong row --pieces 5 --cut 2 1/2 --measured 10",
    ),
    Command(
        "ease", NUMBERS, "whether one edge can be eased into another",
        "sewalong.cli.reckoning.row:ease", shape.ease, "sewalong ease --edge 9 1/2 --to 9 3/8",
    ),
    Command(
        "shrunk", NUMBERS, "what squares that measure less than their label do",
        "sewalong.cli.reckoning.undersized:shrunk", shape.shrunk,
        "sewalong shrunk --label 5 --measured 4 7/8 --method four-patch",
    ),
    Command(
        "scale", NUMBERS, "whether a printed sheet has its true size",
        "sewalong.cli.reckoning.undersized:scale", shape.scale,
        "sewalong scale --should-be 1 --measured 0.96 --size 12 1/2",
    ),
    Command(
        "methods", NUMBERS, "the methods there are; methods show M tells all about one",
        "sewalong.cli.reckoning.methods:methods", shape.methods,
        "sewalong methods show stacked-four-patch",
    ),
)  # fmt: skip
