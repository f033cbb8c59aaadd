"""The unit learning model against published examples of that model."""

from __future__ import annotations

import pytest

from sewalong.progress.pace.learning import curve_sum, exponent, unit_time


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
    total = 812 * curve_sum(exponent(0.75), 0, 250)
    assert total == pytest.approx(34_170, rel=1e-3)
    assert round(total / 250) == 137


def test_no_learning_is_a_rate_of_one_and_nothing_takes_no_time() -> None:
    assert exponent(1) == 0
    assert curve_sum(0.3, 5, 0) == 0
    assert curve_sum(0.0, 3, 7) == 7
    for rate in (0.0, -0.5, 1.01):
        with pytest.raises(ValueError, match="learning rate"):
            exponent(rate)
