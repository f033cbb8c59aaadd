"""Thread for piecing: stitch type 301 by ratio and by formula, waste, spools and bobbins."""

from fractions import Fraction as F
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import METRE, YARD, Unit, from_cm, to_cm
from sewalong.quilt.cloth.borders import BorderPlan, Corners, border
from sewalong.quilt.cloth.thread import (
    LOCKSTITCH_RATIO,
    lockstitch_ratio,
    metres,
    seam_run,
    thread,
    wound,
)
from sewalong.quilt.layouts.joining_seams import binding_seams, border_seams, row_seams, top_seams
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.size import Size


def eighths(least: int, most: int) -> st.SearchStrategy[F]:
    """Lengths in eighths of an inch."""
    return st.integers(8 * least, 8 * most).map(lambda count: F(count, 8))


@pytest.mark.parametrize(
    "source",
    [
        "Coats Standard Stitch Type Classification: 301, 2.5 per unit of seam",
        "Carr & Latham, Technology of Clothing Manufacture, as reproduced: 301, 2.5",
    ],
)
def test_the_ratio(source: str) -> None:
    assert F(5, 2) == LOCKSTITCH_RATIO, source


def test_the_formula() -> None:
    # Union Special, via textilecalculations.com: T = .01 in, S = 10: 2.2 in of thread an inch.
    assert lockstitch_ratio(F("0.01"), F(10)) == F("2.2")
    # Derived: the formula gives the ratio of 2.5 for 0.025 in, two plies of cotton (0.635 mm).
    assert lockstitch_ratio(F("0.025"), F(10)) == LOCKSTITCH_RATIO
    assert to_cm(F("0.025")) * 10 == F("0.635")


def test_finer_stitches_take_more() -> None:
    # AMANN Service & Technik: going from 4 to 6 stitches a centimetre raises the demand (301).
    four, six = F(4) * F("2.54"), F(6) * F("2.54")
    assert lockstitch_ratio(F("0.025"), six) > lockstitch_ratio(F("0.025"), four)


def test_a_worked_seam_of_220_centimetres() -> None:
    # melgeecrafts.com: 301, 220 cm x 2.5 = 550 cm, 275 in each thread.
    found = thread([seam_run("seam", from_cm(F(220)), 1)], waste=F(0))
    assert to_cm(found.total) == 550
    assert to_cm(found.needle) == to_cm(found.bobbin) == 275


@pytest.mark.parametrize(
    ("without", "with_waste", "source"),
    [
        ("6.63", 7.62, "A&E method as reproduced (Apparel Merchandising 2011): x1.15"),
        ("540", 621, "Apparel Science, measuring actual thread consumption: x1.15"),
    ],
)
def test_fifteen_in_a_hundred_of_waste(without: str, with_waste: float, source: str) -> None:
    found = thread([seam_run("seam", F(without) / 2, 1)], ratio=F(2), waste=F("0.15"))
    assert float(found.total) == pytest.approx(with_waste, abs=0.006), source


def test_the_words_name_every_part() -> None:
    found = thread([seam_run("pairs", F(9, 2), 800)])
    assert found.reason == (
        "100 yd of seam, 2.5 times as much thread and 15 % waste: 288 yd, 144 yd in the needle "
        "and 144 yd in the bobbin"
    )
    metric = thread([seam_run("pairs", from_cm(F(10)), 1000)], waste=F(0), unit=Unit.CM)
    assert metric.reason.startswith("100 m of seam, 2.5 times as much thread and 0 % waste: 250 m")
    assert metres(metric.total) == pytest.approx(250)


def test_a_diagonal_seam_may_be_a_float() -> None:
    assert float(seam_run("cut units", 5 * sqrt(2), 4).length) == pytest.approx(20 * sqrt(2))


def test_spools_and_bobbins_for_a_capacity_that_is_given() -> None:
    # No capacity is found in a source that can be cited, so none is assumed.
    found = wound(250 * METRE, 100 * METRE, Unit.CM)
    assert (found.count, found.over) == (3, 50 * METRE)
    assert found.reason == "3: 250 m at 100 m each"
    assert wound(F(100) * YARD, F(50) * YARD).count == 2


@given(
    st.lists(st.tuples(eighths(0, 60), st.integers(0, 200)), min_size=1, max_size=5),
    st.fractions(2, 4, max_denominator=10),
    st.fractions(0, 1, max_denominator=20),
)
def test_thread_is_shared_out_and_adds_up(seams: list[tuple[F, int]], ratio: F, waste: F) -> None:
    runs = [seam_run("stage", each, times) for each, times in seams]
    if sum(run.length for run in runs) == 0:
        with pytest.raises(NumbersFault):
            thread(runs)
        return
    found = thread(runs, ratio=ratio, waste=waste)
    assert found.needle == found.bobbin == found.total / 2
    assert found.total == sum((run.length for run in runs), F(0)) * ratio * (1 + waste)


@given(eighths(1, 5000), eighths(1, 900))
def test_spools_hold_it_and_one_fewer_does_not(length: F, capacity: F) -> None:
    found = wound(length, capacity)
    assert found.count * capacity >= length > (found.count - 1) * capacity


def test_seams_that_join_a_top() -> None:
    unit = Size(F("6.5"), F("6.5"))
    across = row_seams(4, 3, unit)
    assert (across.times, across.length) == (8, F(52))
    down = top_seams(4, 3, unit, F(1, 4))
    assert (down.each, down.times) == (F("18.5"), 3)


def test_seams_of_a_border_and_the_binding() -> None:
    top = Size(F("18.5"), F("24.5"))
    sides = border(top, BorderPlan(F("2.5")))
    assert border_seams(sides).length == 2 * F("24.5") + 2 * F("22.5")
    ends = border(top, BorderPlan(F("2.5"), Corners.ENDS_FIRST))
    assert border_seams(ends).length == 2 * F("18.5") + 2 * F("28.5")
    mitred = border(top, BorderPlan(F("2.5"), Corners.MITRED))
    assert float(border_seams(mitred).length) == pytest.approx(86 + 4 * 2 * sqrt(2))
    assert binding_seams(Size(F(40), F(50))).length == 180


@pytest.mark.parametrize("ratio", ["1.9", "0", "-1"])
def test_less_thread_than_two_seams_is_refused(ratio: str) -> None:
    with pytest.raises(NumbersFault, match="two threads run along it"):
        thread([seam_run("seam", F(10), 1)], ratio=F(ratio))


def test_other_threads_that_cannot_be() -> None:
    with pytest.raises(NumbersFault):
        seam_run("seam", F(-1), 1)
    with pytest.raises(NumbersFault):
        seam_run("seam", float("nan"), 1)
    with pytest.raises(NumbersFault):
        wound(F(100), F(0))
