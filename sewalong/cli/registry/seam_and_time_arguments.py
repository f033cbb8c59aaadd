"""Arguments of the commands about the seam, joining and time."""

from __future__ import annotations

import argparse

from sewalong.cli.frame import arguments as a
from sewalong.cli.frame import length_arguments as typed

Parser = argparse.ArgumentParser


def measure(parser: Parser) -> None:
    """`measure PIECE READING… [--down] [--of N] [--cut LENGTH] [--alike N] [--look]`"""
    parser.add_argument(
        "piece",
        metavar="PIECE",
        type=a.words,
        help="a pile's piece (unit, four-patch …), row, column, centre, top, strip-test, or "
        "middle-strip (the middle one of three, seam to seam)",
    )
    parser.add_argument(
        "readings",
        metavar="READING",
        nargs="+",
        type=a.words,
        help="what the tape reads; commas between several: 6 1/4, 6 3/8",
    )
    parser.add_argument("--down", action="store_true", help="measured from row 1 down, not across")
    typed.whole(parser, "of", "units in the row, rows in the column, strips in the test")
    typed.length(parser, "cut", "how wide the strips of the test were cut")
    typed.whole(parser, "alike", "how many there are like it, for what resewing costs")
    parser.add_argument(
        "--look", action="store_true", help="only say what it means; nothing is recorded"
    )
    a.which_quilt(parser)


def proof(parser: Parser) -> None:
    """`proof [QUILT] [--seen-to]`"""
    parser.add_argument(
        "--seen-to",
        action="store_true",
        help="say that the pieces at risk were measured and seen to",
    )
    a.quilt_by_place_or_option(parser)


def stage(parser: Parser) -> None:
    """`STAGE`"""
    a.stage(parser)
    a.which_quilt(parser)


def press(parser: Parser) -> None:
    """`press STAGE WORDS…`"""
    a.stage(parser)
    a.text(parser, "WORDS", "which way its seams are pressed")
    a.which_quilt(parser)


def bobbin(parser: Parser) -> None:
    """`bobbin STAGE UNSEWN`"""
    a.stage(parser)
    parser.add_argument(
        "unsewn", metavar="UNSEWN", type=a.whole_number, help="how many counted are not sewn"
    )
    a.which_quilt(parser)


def join(parser: Parser) -> None:
    """`join [ROW ROW] [--caution-read]`"""
    parser.add_argument(
        "rows",
        metavar="ROW",
        nargs="*",
        type=a.words,
        help="the tags of the two rows, such as R6 R7; none: which come next",
    )
    parser.add_argument(
        "--unsettled",
        action="store_true",
        help="where units go is not settled yet, so seams are pressed open",
    )
    a.caution_read(parser)
    a.which_quilt(parser)


def forecast(parser: Parser) -> None:
    """`forecast [QUILT] [--by DATE] [--session MINUTES] [--times N]`"""
    parser.add_argument(
        "--by", metavar="DATE", type=a.words, help="the day it is wanted, such as 2026-12-24"
    )
    typed.whole(parser, "session", "minutes of a session (default: like yours so far)")
    typed.whole(parser, "times", "sessions a week, with --session: how many weeks that takes")
    a.quilt_by_place_or_option(parser)


def tonight(parser: Parser) -> None:
    """`tonight MINUTES [--without WORD]…`"""
    parser.add_argument("minutes", metavar="MINUTES", type=a.whole_number, help="how long you have")
    parser.add_argument(
        "--without",
        action="append",
        default=[],
        metavar="WORD",
        type=a.words,
        help="leave out cutting, ironing, machine, hands (cutter and pins), pins, table or wall; "
        "may be given again",
    )
    a.which_quilt(parser)
