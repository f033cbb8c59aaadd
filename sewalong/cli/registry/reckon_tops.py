"""What `reckon` works out of a top: how units are set, and what goes around them."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag, length, size, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import SEAM, UNIT, USABLE

GROUP = "Reckon a top"

_ROWS_AND_COLUMNS = (
    whole("--rows", "rows down", required=True),
    whole("--columns", "columns across", required=True),
    size("--finishes", "the size a unit finishes at", required=True),
    SEAM,
)

COMMANDS = (
    Command(
        "reckon blocks",
        GROUP,
        "from a size wanted to the blocks, however they are set",
        "sewalong.cli.reckoning.blocks:blocks",
        "sewalong reckon blocks --bed queen --drop 13 --finishes 6 --sash 1",
        (
            size("--near", "the size wanted, across x down"),
            Argument("--bed", "a bed to cover, such as queen", "NAME"),
            length("--drop", "with --bed: how far it hangs down on each side and at the foot"),
            size("--finishes", "the size a block finishes at", required=True),
            length("--sash", "the width a sash finishes at, to see it with sashes"),
            flag("--inner-only", "no sashes around the outside"),
            length("--border", "what borders add on each side, finished"),
            Argument("--method", "how blocks are made, to see the pieces they take", "M"),
            SEAM,
            UNIT,
        ),
    ),
    Command(
        "reckon straight",
        GROUP,
        "units set edge to edge",
        "sewalong.cli.reckoning.setting:straight",
        "sewalong reckon straight --rows 10 --columns 8 --finishes 6",
        (*_ROWS_AND_COLUMNS, UNIT),
    ),
    Command(
        "reckon sashing",
        GROUP,
        "units with sashes between them, and cornerstones",
        "sewalong.cli.reckoning.setting:sashing",
        "sewalong reckon sashing --rows 6 --columns 5 --finishes 12 --sash 3",
        (
            *_ROWS_AND_COLUMNS,
            length("--sash", "the width a sash finishes at", required=True),
            flag("--inner-only", "no sashes around the outside"),
            flag("--long-sashes", "whole sashes between rows, no cornerstones"),
            USABLE,
            UNIT,
        ),
    ),
    Command(
        "reckon on-point",
        GROUP,
        "units set on point, with setting triangles",
        "sewalong.cli.reckoning.setting:on_point",
        "sewalong reckon on-point --rows 4 --columns 4 --finishes 6",
        (
            *_ROWS_AND_COLUMNS,
            length("--larger", "cut setting squares so much larger, to trim later"),
            UNIT,
        ),
    ),
    Command(
        "reckon framed",
        GROUP,
        "one unit framed on point",
        "sewalong.cli.reckoning.setting:framed",
        "sewalong reckon framed --size 12 1/2",
        (length("--size", "the side of the unit", required=True), UNIT),
    ),
    Command(
        "reckon border-length",
        GROUP,
        "the length to cut a border at, from the real top",
        "sewalong.cli.reckoning.border_length:border_length",
        "sewalong reckon border-length 59 1/2, 60, 60 3/4 --rule middle",
        (
            Argument(
                "measured",
                "one edge, the middle, the other edge, with commas between them",
                "LENGTHS",
                nargs="+",
            ),
            Argument(
                "--rule",
                "follow the mean, or the measure through the middle (default: mean)",
                choices=("mean", "middle"),
                default="mean",
            ),
            length("--limit", "warn when they differ by more (default: 1/2 in)"),
            UNIT,
        ),
    ),
    Command(
        "reckon pieced-border",
        GROUP,
        "a border pieced of units, and the spacer to make it fit",
        "sewalong.cli.reckoning.border_length:pieced_border",
        "sewalong reckon pieced-border --edge 46 --piece 5",
        (
            length("--edge", "the edge it goes on, finished", required=True),
            length("--piece", "the size one piece of the border finishes at", required=True),
            SEAM,
            UNIT,
        ),
    ),
)
