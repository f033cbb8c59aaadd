"""Commands that work out the numbers of a quilt or a method; one thing at a time: `reckon`."""

from __future__ import annotations

from sewalong.cli.registry.argument import Argument, flag, length, size, whole
from sewalong.cli.registry.command import Command
from sewalong.cli.registry.shared import (
    JOINS_AND_CORNERS,
    METHOD,
    SEAM,
    STRIP_LENGTH,
    UNIT,
    WHICH_QUILT,
)

GROUP = "Numbers"

_FILE_OR_QUILT = (
    Argument(
        "name",
        "a quilt file, or which quilt, as with --quilt (default: the one last touched)",
        "FILE|QUILT",
        nargs="?",
    ),
    *WHICH_QUILT,
    whole("--rows", "rows down, to see another layout"),
    whole("--columns", "columns across, to see another layout"),
    length("--usable", "usable width of the cloth"),
    length("--margin", "margin of back and batting, each side"),
    length("--seam", "seam allowance to work out the whole quilt for"),
    size("--trim-to", "a size to trim units to, to see what it changes"),
    length("--own-seam", "the allowance your own seams measure, to see what it changes"),
    length("--binding", "width binding strips are cut at"),
    *JOINS_AND_CORNERS,
    Argument("--unit", "the unit to print in", choices=("inch", "cm")),
)
"""The quilt `plan` and `layouts` work on, and what is tried in place of its own settings."""

COMMANDS = (
    Command(
        "plan",
        GROUP,
        "sizes, cloth, cut list, shopping, thread and layouts of a quilt",
        "sewalong.cli.reckoning.plan:plan",
        "sewalong plan my-quilt.toml --usable 42",
        (
            *_FILE_OR_QUILT,
            Argument(
                "--only",
                "one section; rows, the length after each row, is shown only so",
                choices=("sizes", "rows", "cloth", "cut-list", "shopping", "thread", "layouts"),
            ),
            flag("--told", "the top row by row and the unit in words, instead of a picture"),
        ),
        about="A quilt in the record is taken as it stands: its layout now wanted and the units "
        "there will be. What is given here is tried, never kept.",
    ),
    Command(
        "layouts",
        GROUP,
        "rows and columns that the units will fill",
        "sewalong.cli.reckoning.layouts:layouts",
        "sewalong layouts my-quilt.toml --near 60 x 80",
        (
            *_FILE_OR_QUILT,
            whole("--units", "how many units there are, without a quilt"),
            size("--finishes", "the size a unit finishes at, without a quilt"),
            length("--border", "what borders add on each side, finished, without a quilt"),
            size("--near", "a size wanted, across x down"),
            Argument("--bed", "a bed to cover, such as queen", "NAME"),
            length("--drop", "with --bed: how far it hangs down on each side and at the foot"),
            Argument("--pattern", "the layout it is changed from", "ROWSxCOLUMNS"),
            whole("--spare", "at most so many units over (default: a quarter of them)"),
            flag(
                "--alike",
                "only layouts with the same unit in all four corners when two alternate",
            ),
        ),
        about="Without a quilt: --units, --finishes and perhaps --border.",
    ),
    Command(
        "size",
        GROUP,
        "from pieces to the unit, or from the unit wanted to the pieces",
        "sewalong.cli.reckoning.size:size",
        "sewalong size --method stacked-four-patch --finishes 6 in",
        (
            METHOD,
            length("--square", "side of the square, cut first", dest="start"),
            length("--strip", "width of the strip, cut first", dest="start"),
            STRIP_LENGTH,
            length("--finishes", "the unit wanted, without its seams"),
            length("--unfinished", "the unit wanted, with its seams"),
            SEAM,
            length("--own-seam", "the allowance your own seams measure, to see what it changes"),
            size("--trim-to", "a size to trim units to"),
            length("--step", "cutting sizes go up to a whole step (default: 1/8 in, or 1 mm)"),
            UNIT,
        ),
        about="Give one of --square (or --strip), --finishes and --unfinished.",
    ),
    Command(
        "methods",
        GROUP,
        "the methods; show M tells all about one, check FILE reads your own",
        "sewalong.cli.reckoning.methods:methods",
        "sewalong methods show stacked-four-patch",
        (
            Argument(
                "what",
                "show: all that follows from one; check: every fault of a method file",
                nargs="?",
                choices=("show", "check"),
            ),
            Argument("method", "which method, or which file (TOML)", "M|FILE", "path", nargs="?"),
            length("--square", "side of the square, to work it out for", dest="start"),
            length("--strip", "width of the strip, to work it out for", dest="start"),
            STRIP_LENGTH,
            SEAM,
            UNIT,
        ),
        about="How a method file is written stands in sewalong/piecing/methods/README.md. A quilt "
        "file names one by method_file instead of method.",
    ),
    Command(
        "reckon",
        GROUP,
        "backing, binding, batting, borders …: one thing, without a quilt",
        "sewalong.cli.reckoning.reckon:reckon",
        "sewalong reckon",
        about="Alone it lists what it can reckon. Each has its own --help: "
        "sewalong reckon backing --help.",
    ),
)
