"""What each command that works numbers out is asked for on its line."""

from __future__ import annotations

import argparse

from sewalong.cli.frame import arguments as a
from sewalong.cli.frame import length_arguments as n

Parser = argparse.ArgumentParser


def _plan_place(parser: Parser) -> None:
    parser.add_argument(
        "name",
        metavar="FILE|QUILT",
        nargs="?",
        type=a.words,
        help="a quilt file, or which quilt, as with --quilt (default: the one last touched)",
    )
    a.which_quilt(parser)
    n.whole(parser, "rows", "rows down, to see another layout")
    n.whole(parser, "columns", "columns across, to see another layout")


def plan(parser: Parser) -> None:
    _plan_place(parser)
    n.settings(parser)
    parser.add_argument(
        "--only",
        choices=("sizes", "rows", "cloth", "cut-list", "shopping", "thread", "layouts"),
        help="one section; rows, the length after each row, is shown only so",
    )


def layouts(parser: Parser) -> None:
    _plan_place(parser)
    n.settings(parser)
    n.whole(parser, "units", "how many units there are, without a quilt")
    n.size(parser, "finishes", "the size a unit finishes at, without a quilt")
    n.length(parser, "border", "what borders add on each side, finished, without a quilt")
    n.size(parser, "near", "a size wanted, across x down")
    parser.add_argument("--bed", metavar="NAME", type=a.words, help="a bed to cover, such as queen")
    n.length(parser, "drop", "with --bed: how far it hangs down on each side and at the foot")
    parser.add_argument(
        "--pattern", metavar="ROWSxCOLUMNS", type=a.words, help="the layout it is changed from"
    )
    n.whole(parser, "spare", "at most so many units over (default: a quarter of them)")
    parser.add_argument(
        "--alike",
        action="store_true",
        help="only layouts with the same unit in all four corners when two alternate",
    )


def _start_size(parser: Parser, what: str) -> None:
    for name in ("square", "strip"):
        parser.add_argument(
            f"--{name}", dest="start", metavar="LENGTH", nargs="+", type=a.words, help=what
        )
    n.length(parser, "strip-length", "usable length of a strip (default: 40 in)")


def _method(parser: Parser, *, required: bool = True) -> None:
    parser.add_argument(
        "--method", metavar="M", required=required, type=a.words,
        help="which method; sewalong methods lists them",
    )  # fmt: skip


def size(parser: Parser) -> None:
    _method(parser)
    _start_size(parser, "side of the square, or width of the strip, cut first")
    n.length(parser, "finishes", "the unit wanted, without its seams")
    n.length(parser, "unfinished", "the unit wanted, with its seams")
    n.seam(parser)
    n.length(parser, "own-seam", "the allowance your own seams measure, to see what it changes")
    n.size(parser, "trim-to", "a size to trim units to")
    n.length(parser, "step", "cutting sizes go up to a whole step (default: 1/8 in, or 1 mm)")
    n.unit(parser)


def packs(parser: Parser) -> None:
    n.whole(parser, "need", "pieces needed", required=True)
    parser.add_argument(
        "--in-a-pack",
        metavar="N",
        nargs="+",
        required=True,
        type=a.whole_number,
        help="pieces in a pack, counted; several counts to compare",
    )


def makes(parser: Parser) -> None:
    _method(parser)
    parser.add_argument(
        "--have",
        metavar="N",
        action="append",
        default=[],
        type=a.words,
        help="pieces there are; PILE=N, once for each, where a method begins with several",
    )
    n.whole(parser, "units", "units wanted, to see the pieces they take")


def border_length(parser: Parser) -> None:
    parser.add_argument(
        "measured",
        metavar="LENGTHS",
        nargs="+",
        type=a.words,
        help="one edge, the middle, the other edge, with commas between them",
    )
    parser.add_argument(
        "--rule",
        choices=("mean", "middle"),
        default="mean",
        help="follow the mean, or the measure through the middle (default: mean)",
    )
    n.length(parser, "limit", "warn when they differ by more (default: 1/2 in)")
    n.unit(parser)


def pieced_border(parser: Parser) -> None:
    n.length(parser, "edge", "the edge it goes on, finished", required=True)
    n.length(parser, "piece", "the size one piece of the border finishes at", required=True)
    n.seam(parser)
    n.unit(parser)


def row(parser: Parser) -> None:
    n.whole(parser, "pieces", "how many pieces lie side by side")
    n.length(parser, "cut", "the size of each along the row, as cut")
    n.length(parser, "cuts", "pieces of different sizes, with commas between them")
    n.seam(parser)
    n.length(parser, "own-seam", "the allowance your own seams measure, to see what it changes")
    n.length(parser, "measured", "the row as it came out, to see what the seam really is")
    n.length(parser, "loss", "what each seam takes too much, both pieces together")
    n.whole(parser, "across", "with --loss: so many such rows side by side")
    n.unit(parser)


def ease(parser: Parser) -> None:
    n.length(parser, "edge", "the edge to be eased in")
    n.length(parser, "to", "the length it is joined to")
    n.length(parser, "size", "a unit's size, to see when it is better remade")
    n.unit(parser)


def shrunk(parser: Parser) -> None:
    n.length(parser, "label", "the size they are sold as", required=True)
    n.length(parser, "measured", "what they measure; several with commas, across x down if need be",
             required=True)  # fmt: skip
    _method(parser)
    parser.add_argument("--in-row", metavar="N", type=a.whole_number, default=8,
                        help="units in a row (default: 8)")  # fmt: skip
    n.whole(parser, "pieces", "how many would have to be cut down")
    n.seam(parser)
    n.unit(parser)


def scale(parser: Parser) -> None:
    n.length(parser, "should-be", "what the test square should measure", required=True)
    n.length(parser, "measured", "what it measures", required=True)
    n.length(parser, "size", "a size on the sheet, to see what it comes out at")
    n.unit(parser)


def methods(parser: Parser) -> None:
    parser.add_argument("show", nargs="?", choices=("show",), help="all that follows from one")
    parser.add_argument("method", metavar="M", nargs="?", type=a.words, help="which method")
    _start_size(parser, "side of the square, or width of the strip, to work it out for")
    n.seam(parser)
    n.unit(parser)
