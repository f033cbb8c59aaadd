"""How long a ruler must be, against the diagonals worked out on paper."""

from __future__ import annotations

from fractions import Fraction as F
from math import ceil, sqrt

import pytest

from sewalong.lengths import CENTIMETRE, show
from sewalong.progress.joining.cut_span import ruler_words
from tests.progress.building import a_quilt
from tests.progress.measuring.measuring_quilts import in_cm, of_size

ROOT = sqrt(2)
SEAM = 0.25

SPANS = [
    ("half-square-two", "cut-once", lambda a: a * ROOT),
    ("half-square-eight", "cut-eight", lambda a: a * ROOT),
    ("hourglass", "cut-once", lambda a: a * ROOT),
    ("hourglass", "cut-across", lambda a: (a - ROOT * SEAM) * ROOT),
    ("paired-squares", "cut-twice", lambda a: a * ROOT),
    ("stacked-four-patch", "cut-twice", lambda a: (2 * a - 2 * SEAM) * ROOT),
    ("nine-patch-quartered", "quarter", lambda a: 3 * a - 4 * SEAM),
    ("flying-geese-four", "cut-once", lambda a: a * ROOT),
]


@pytest.mark.parametrize("size", ["5", "17/4", "8", "9"])
@pytest.mark.parametrize(("method", "stage", "span"), SPANS)
def test_a_ruler_spans_the_longest_cut(method, stage, span, size) -> None:  # type: ignore[no-untyped-def]
    quilt = of_size(method, size)
    eighths = ceil(span(float(F(size))) * 8 - 1e-9)
    assert ruler_words(quilt, stage) == f"{show(F(eighths, 8))} or longer"


def test_a_stack_of_four_patches_from_charm_squares_takes_thirteen_and_a_half_inches() -> None:
    assert ruler_words(a_quilt(), "cut-twice") == "13 1/2 in or longer"


def test_it_is_told_in_the_owners_unit() -> None:
    metric = in_cm(of_size("half-square-two", str(F("12.5") * CENTIMETRE)))
    assert ruler_words(metric, "cut-once") == "17.7 cm or longer"


@pytest.mark.parametrize(
    ("method", "stage"),
    [
        ("stacked-four-patch", "sew"),
        ("stacked-four-patch", "join-rows"),
        ("four-patch-strips", "cut-segments"),
        ("stacked-four-patch", "no such stage"),
    ],
)
def test_nothing_is_said_where_no_whole_piece_is_cut_through(method: str, stage: str) -> None:
    assert ruler_words(a_quilt(method), stage) == ""
