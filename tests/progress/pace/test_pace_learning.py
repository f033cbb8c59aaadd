"""The two learning models against published examples, each by the model its source means.

Wright's own words (T. P. Wright, "Factors Affecting the Cost of Airplanes", J. Aeronautical
Sciences 3, Feb 1936, quoted in http://digitallibrary.usc.edu/cdm/ref/collection/
p15799coll20/id/143467/): 80 % "represents the factor by which the average labor cost in any
quantity shall be multiplied in order to determine the average labor cost for a quantity of
twice that number".
"""

from __future__ import annotations

import pytest

from sewalong.progress.pace.learning import (
    average_of,
    curve_sum,
    exponent,
    increment,
    rate_from_two,
    total_of,
    unit_time,
    unit_total,
)


@pytest.mark.parametrize(
    ("n", "average", "total", "more", "average_of_more"),
    [
        (1, 100, 100, 100, 100),
        (2, 80, 160, 60, 60),
        (4, 64, 256, 96, 48),
        (8, 51.2, 409.6, 153.6, 38.4),
        (16, 40.96, 655.36, 245.76, 30.72),
    ],
)
def test_a_table_of_cumulative_averages_at_80_percent(
    n: int, average: float, total: float, more: float, average_of_more: float
) -> None:
    """Source: Performance management study text, ch. 15,
    https://online.flipbuilder.com/bmcx/vksq/files/basic-html/page330.html
    """
    before = n // 2
    assert average_of(100, 0.8, n) == pytest.approx(average)
    assert total_of(100, 0.8, n) == pytest.approx(total)
    assert increment(100, 0.8, before, n) == pytest.approx(more)
    assert increment(100, 0.8, before, n) / (n - before) == pytest.approx(average_of_more)


def test_the_last_increment_of_that_table_is_misprinted() -> None:
    """Printed 254.76; its own total 655.36 less 409.6, and its own 8 x 30.72, say 245.76.
    Source: as above.
    """
    assert increment(100, 0.8, 8, 16) != pytest.approx(254.76, abs=1)
    assert increment(100, 0.8, 8, 16) == pytest.approx(655.36 - 409.6)
    assert increment(100, 0.8, 8, 16) == pytest.approx(8 * 30.72)


def test_two_units_at_80_percent_take_16_hours_the_second_6() -> None:
    """By cumulative average. Source: https://solutioninn.com/study-help/questions/
    act-53001-fall-2020-learning-curve-analysis-how-it-works-5756611
    """
    assert total_of(10, 0.8, 2) == pytest.approx(16)
    assert increment(10, 0.8, 1, 2) == pytest.approx(6)
    assert unit_time(10, 0.8, 2) == pytest.approx(8), "the other model says 8"


def test_8_hours_then_6_is_a_rate_of_87_and_a_half_percent() -> None:
    """By cumulative average. Source: https://opentuition.com/topic/learning-rate-5"""
    assert rate_from_two(8, 6) == pytest.approx(0.875)


def test_four_units_from_1000_hours_at_81_percent_average_656() -> None:
    """By cumulative average. Source: https://expertminds.ai/practice/acca/
    acca-pm-performance-management-practice-exam-5/q/10
    """
    assert round(average_of(1000, 0.81, 4)) == 656


def test_the_unit_model_50_40_32() -> None:
    """By unit. Source: http://www.business-analysis-made-easy.com/learning-curve.html"""
    assert [unit_time(50, 0.8, n) for n in (1, 2, 4)] == pytest.approx([50, 40, 32])
    assert exponent(0.8) == pytest.approx(0.322, abs=0.0005)


def test_the_eighth_of_30_minutes_takes_15_36() -> None:
    """By unit. Source: https://www.validtests.com/discussions/ism/view/
    exam-core-topic-6-question-51-discussion (citing Chase, Jacobs & Aquilano 2006)
    """
    assert unit_time(30, 0.8, 8) == pytest.approx(15.36)


def test_two_factors_of_a_unit_table_and_the_one_in_the_wrong_column() -> None:
    """90 %, the 20th: .634; .583 for the 10th is printed against .80 but is the 85 % column.
    Source: Stevenson IM ch 7S, https://www.coursepaper.com/solution-manual/
    978-0078024108-imchap07s-part-2/
    """
    assert unit_time(1, 0.9, 20) == pytest.approx(0.634, abs=0.0005)
    assert unit_time(1, 0.85, 10) == pytest.approx(0.583, abs=0.0005)
    assert unit_time(1, 0.80, 10) == pytest.approx(0.477, abs=0.0005)


def test_250_from_812_hours_at_75_percent_by_unit() -> None:
    """ "total 34,170 h; cum avg 137 h": by unit, to the book's four figures. Source: Kerzner,
    Project Management ch. 18, https://www.gristprojectmanagement.us/planning-scheduling/k-dse.html
    """
    assert unit_total(812, 0.75, 250) == pytest.approx(34_170, rel=1e-3)
    assert round(unit_total(812, 0.75, 250) / 250) == 137
    assert total_of(812, 0.75, 250) < 25_000, "by cumulative average it would be far less"


def test_no_learning_is_a_rate_of_one_and_nothing_takes_no_time() -> None:
    assert exponent(1) == 0
    assert curve_sum(0.3, 5, 0) == 0
    assert total_of(10, 0.8, 0) == 0
    assert curve_sum(0.0, 3, 7) == 7
    for rate in (0.0, -0.5, 1.01):
        with pytest.raises(ValueError, match="learning rate"):
            exponent(rate)
