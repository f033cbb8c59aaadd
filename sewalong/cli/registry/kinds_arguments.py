"""What `yardage` and `setting` are asked for on their lines: each has several kinds."""

from __future__ import annotations

import argparse

from sewalong.cli.frame import length_arguments as n

Parser = argparse.ArgumentParser


def _kinds(parser: Parser, kinds: dict[str, tuple[str, list[object]]]) -> None:
    below = parser.add_subparsers(dest="kind", metavar="OF", required=True)
    for name, (what, adders) in kinds.items():
        one = below.add_parser(name, help=what, description=f"{what[0].upper()}{what[1:]}.",
                               allow_abbrev=False)  # fmt: skip
        for add in adders:
            add(one)  # type: ignore[operator]
        n.unit(one)
        # Behind the kind as well as before it; suppressed, so that it takes nothing back.
        one.add_argument(
            "--json", action="store_true", default=argparse.SUPPRESS, help="tell it as JSON"
        )


def _squares(parser: Parser) -> None:
    n.size(parser, "size", "size to cut, a square or across x down", required=True)
    n.whole(parser, "count", "how many are needed")
    n.length(parser, "cloth", "a length of cloth, to see how many it gives")
    parser.add_argument("--fat-quarter", action="store_true", help="from a fat quarter, 22 x 18 in")
    n.usable(parser)


def _fit(parser: Parser) -> None:
    n.length(parser, "cut", "such as: 52 of 4; once for each kind", required=True, several=True)
    n.length(parser, "cloth", "length of the cloth", required=True)
    n.usable(parser)
    n.length(parser, "widest", "usable width at the most, when it is not sure")


def _binding(parser: Parser) -> None:
    n.size(parser, "top", "the quilt, trimmed", required=True)
    n.length(parser, "strip", "width to cut strips at (default: 2 1/2 in)")
    n.length(parser, "allowance", "for corners and the last join (default: 12 in)")
    parser.add_argument("--bias", action="store_true", help="cut on the bias")
    n.size(parser, "remnant", "a piece in hand, to see whether it is enough")
    n.usable(parser)
    n.joins(parser)
    n.seam(parser)


def _backing(parser: Parser) -> None:
    n.size(parser, "top", "the top, raw edge to raw edge", required=True)
    n.length(parser, "margin", "more than the top, each side (default: 4 in)")
    n.length(parser, "have", "cloth in hand, to see whether it is enough")
    n.length(parser, "seam", "seam allowance in the back (default: 1/2 in)")
    n.usable(parser)


def _border(parser: Parser) -> None:
    n.size(parser, "top", "the top before its borders, raw edge to raw edge")
    n.size(parser, "centre-finishes", "the same without its seams")
    n.length(parser, "cut", "width its strips are cut at; once for each, inner first", several=True)
    n.length(parser, "finishes", "width it finishes at; once for each, inner first", several=True)
    parser.add_argument(
        "--corners",
        choices=("sides-first", "ends-first", "mitred"),
        default="sides-first",
        help="how it turns the corner (default: sides-first)",
    )
    n.usable(parser)
    n.joins(parser)
    n.seam(parser)


def _batting(parser: Parser) -> None:
    n.size(parser, "top", "the top, raw edge to raw edge")
    n.size(parser, "batting", "a batting in hand, to see the largest top it allows")
    n.length(parser, "margin", "more than the top, each side (default: 4 in)")


def _thread(parser: Parser) -> None:
    n.length(parser, "each", "length of one seam", required=True)
    n.whole(parser, "times", "how many such seams (default: 1)")
    n.length(parser, "thickness", "of all layers sewn through, for the formula")
    n.whole(parser, "stitches", "stitches to an inch, for the formula")
    n.whole(parser, "waste", "in 100 parts (default: 15)")
    n.whole(parser, "spool", "metres on a spool, off the label")
    n.whole(parser, "bobbin", "metres on a bobbin")


def yardage(parser: Parser) -> None:
    _kinds(
        parser,
        {
            "squares": ("cloth for squares or other pieces, or pieces from cloth", [_squares]),
            "fit": ("whether several cuts come out of one cloth", [_fit]),
            "binding": ("binding, straight or bias, or from a piece in hand", [_binding]),
            "backing": ("the back, its seams both ways", [_backing]),
            "border": ("one border or several, and the top they make", [_border]),
            "batting": ("batting for a top, or the top a batting allows", [_batting]),
            "thread": ("thread for seams of one length", [_thread]),
        },
    )


def _rows_columns(parser: Parser) -> None:
    n.whole(parser, "rows", "rows down", required=True)
    n.whole(parser, "columns", "columns across", required=True)
    n.size(parser, "finishes", "the size a unit finishes at", required=True)
    n.seam(parser)


def _sashed(parser: Parser) -> None:
    n.length(parser, "sash", "the width a sash finishes at", required=True)
    parser.add_argument("--inner-only", action="store_true", help="no sashes around the outside")
    parser.add_argument(
        "--long-sashes", action="store_true", help="whole sashes between rows, no cornerstones"
    )
    n.usable(parser)


def _on_point(parser: Parser) -> None:
    n.length(parser, "larger", "cut setting squares so much larger, to trim later")


def _around(parser: Parser) -> None:
    n.length(parser, "size", "the side of the unit", required=True)


def setting(parser: Parser) -> None:
    _kinds(
        parser,
        {
            "straight": ("units edge to edge", [_rows_columns]),
            "sashed": ("units with strips between them", [_rows_columns, _sashed]),
            "on-point": ("units on point, with setting triangles", [_rows_columns, _on_point]),
            "around": ("one unit framed on point", [_around]),
        },
    )
