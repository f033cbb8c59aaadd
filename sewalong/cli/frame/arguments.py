"""Arguments that several commands share, and the reading of words and numbers."""

from __future__ import annotations

import argparse
import re

_WHOLE = re.compile(r"[+-]?[0-9]{1,9}")


def whole_number(text: str) -> int:
    """A whole number in plain digits; what is too small or too large is refused later."""
    if not _WHOLE.fullmatch(text):
        raise argparse.ArgumentTypeError(
            f"“{text[:40]}” is not a whole number. Write it in digits, such as 12; "
            "a name of several words goes in quotes."
        )
    return int(text)


def words(text: str) -> str:
    """Text that can be kept; bytes that are no text are refused."""
    try:
        text.encode()
    except UnicodeEncodeError:
        raise argparse.ArgumentTypeError(
            "there are bytes in it that are no readable text. Type it in UTF-8."
        ) from None
    return text


def which_quilt(parser: argparse.ArgumentParser) -> None:
    """`--quilt NAME` and `--demo`."""
    parser.add_argument(
        "--quilt",
        metavar="NAME",
        type=words,
        help="the quilt's name, its beginning, or its number in the list "
        "(default: the one last touched)",
    )
    among_demos(parser)


def among_demos(parser: argparse.ArgumentParser) -> None:
    """`--demo` alone."""
    parser.add_argument(
        "--demo", action="store_true", help="among the demo quilts, not among your own"
    )


def quilt_by_place_or_option(parser: argparse.ArgumentParser) -> None:
    """`[QUILT]`, and the same options as every command about a quilt."""
    parser.add_argument(
        "name", metavar="QUILT", nargs="?", type=words, help="which quilt, as with --quilt"
    )
    which_quilt(parser)


def stage(parser: argparse.ArgumentParser) -> None:
    """`STAGE`"""
    parser.add_argument(
        "stage",
        metavar="STAGE",
        type=words,
        help="a stage of the quilt, such as sew-around; sewalong status names them",
    )


def pile(parser: argparse.ArgumentParser) -> None:
    """`PILE`"""
    parser.add_argument(
        "pile",
        metavar="PILE",
        type=words,
        help="a pile of the quilt, such as square or “pressed four-patches”",
    )


def number(parser: argparse.ArgumentParser, what: str, *, default: int | None = None) -> None:
    """`N`, or `[N]` with a default."""
    parser.add_argument(
        "n",
        metavar="N",
        type=whole_number,
        nargs="?" if default is not None else None,
        default=default,
        help=what if default is None else f"{what} (default: {default})",
    )


def text(parser: argparse.ArgumentParser, metavar: str, what: str) -> None:
    """The rest of the line as one text."""
    parser.add_argument("text", metavar=metavar, nargs="+", type=words, help=what)


def caution_read(parser: argparse.ArgumentParser) -> None:
    """`--caution-read`"""
    parser.add_argument(
        "--caution-read", action="store_true", help="say that you have read the caution now due"
    )
