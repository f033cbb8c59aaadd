"""The least number of each thing that can be counted: one fewer is refused by its name."""

from collections.abc import Callable
from fractions import Fraction as F

import pytest

from sewalong.quilt.cloth.border_length import border_length
from sewalong.quilt.cloth.precuts import packs_for
from sewalong.quilt.cloth.row import carried_across, row_length, row_of
from sewalong.quilt.cloth.squares import cloth_for, cuts_fit, spares_to_cut
from sewalong.quilt.cloth.thread import seam_run
from sewalong.quilt.cloth.undersized import common_size, recut, shrunk
from sewalong.quilt.layouts.joining_seams import row_seams
from sewalong.quilt.layouts.layout import LayoutChoice, Reach, layouts
from sewalong.quilt.layouts.neighbouring_layouts import factor_layouts, grow
from sewalong.quilt.layouts.setting_on_point import on_point
from sewalong.quilt.layouts.setting_sashed import sashed
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size

SIX = Size.square(F(6))
QUARTER = F(1, 4)
CHOICE = LayoutChoice(1, SIX, wanted=SIX)

COUNTED: list[tuple[str, int, Callable[[int], object]]] = [
    ("rows", 1, lambda n: CHOICE.layout(n, 1)),
    ("columns", 1, lambda n: CHOICE.layout(1, n)),
    ("units", 0, lambda n: LayoutChoice(n, SIX)),
    ("rows and columns", 1, lambda n: layouts(CHOICE, Reach(fewest=n))),
    ("rows", 1, lambda n: grow(CHOICE, (n, 1), (1, 1))),
    ("columns", 1, lambda n: grow(CHOICE, (1, n), (1, 1))),
    ("units", 1, factor_layouts),
    ("rows", 1, lambda n: row_seams(n, 1, SIX)),
    ("columns", 1, lambda n: row_seams(1, n, SIX)),
    ("rows", 1, lambda n: on_point(n, 1, F(6))),
    ("columns", 1, lambda n: on_point(1, n, F(6))),
    ("rows", 1, lambda n: sashed(n, 1, SIX, F(2))),
    ("columns", 1, lambda n: sashed(1, n, SIX, F(2))),
    ("pieces", 1, lambda n: row_length(n, F(6), QUARTER)),
    ("pieces", 1, lambda n: row_of((F(6),) * n, QUARTER)),
    ("units", 1, lambda n: carried_across(QUARTER, n)),
    ("pieces", 1, lambda n: cloth_for(n, SIX)),
    ("kinds of piece", 1, lambda n: cuts_fit([(1, SIX)] * n, F(36))),
    ("pieces", 1, spares_to_cut),
    ("pieces needed", 1, lambda n: packs_for(n, 42)),
    ("pieces in a pack", 1, lambda n: packs_for(42, n)),
    ("seams of 'rows'", 0, lambda n: seam_run("rows", F(6), n)),
    ("measured squares", 1, lambda n: common_size([SIX] * n)),
    ("units in a row", 1, lambda n: shrunk(F(5), F(5), lambda side: side, n)),
    ("pieces", 1, recut),
    ("measurements", 2, lambda n: border_length([F(6)] * n)),
]


@pytest.mark.parametrize(("what", "least", "count"), COUNTED)
def test_the_least_is_taken_and_one_fewer_refused(
    what: str, least: int, count: Callable[[int], object]
) -> None:
    count(least)
    with pytest.raises(NumbersFault, match=f"number of {what} must be at least {least}, not"):
        count(least - 1)
