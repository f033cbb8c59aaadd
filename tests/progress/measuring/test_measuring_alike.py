"""Which of several readings are taken to be wrong, and how near their mean is believed."""

from __future__ import annotations

from fractions import Fraction as F
from math import sqrt
from statistics import pstdev

import pytest
from msgspec.structs import replace
from scipy import stats  # type: ignore[import-untyped]

from sewalong.progress.measuring.causes.alike import bell, groups
from sewalong.progress.measuring.causes.evidence import Evidence, OtherWay
from sewalong.progress.measuring.causes.weighing import Weighing
from sewalong.progress.measuring.tape import hand_noise

QUARTER = F(1, 4)


def pieces(*readings: str, is_one: bool = False) -> Evidence:
    """Nine-patches that should be 9 1/2 in, with four allowances across."""
    return Evidence(F("9.5"), 4.0, QUARTER, tuple(map(F, readings)), of=3, is_one=is_one)


def ways(*readings: str, is_one: bool = False) -> list[tuple[tuple[int, ...], str]]:
    """The ways to take them, in short."""
    return [
        (group.places, "uneven" if group.uneven else "all" if group.is_all else "some")
        for group in groups(pieces(*readings, is_one=is_one))
    ]


@pytest.mark.parametrize("off", [0.0, 0.01, -0.03])
def test_the_bell_is_that_of_the_normal_distribution(off: float) -> None:
    assert bell(off, 0.02) == pytest.approx(stats.norm.pdf(off, scale=0.02))


def test_those_that_are_all_the_same_are_all_wrong_alike() -> None:
    assert ways("9.25") == [((0,), "all")]
    assert ways("9.25", "9.25", "9.25") == [((0, 1, 2), "all")]
    assert ways("9.25", "9", "9.25", is_one=True) == [((0, 1, 2), "all")]


def test_some_are_wrong_among_right_ones_and_no_right_one_is() -> None:
    assert ways("9.5", "9.53125", "9") == [
        ((0, 1, 2), "all"),
        ((0, 1, 2), "uneven"),
        ((2,), "some"),
    ]
    assert [places for places, way in ways("9", "9.5", "9") if way == "some"] == [(0, 2)]


def test_what_the_many_share_is_taken_without_the_one_that_strays() -> None:
    three = ways("9.25", "9.25", "9", "9.25")
    assert three[:3] == [((0, 1, 2, 3), "all"), ((0, 1, 2, 3), "uneven"), ((0, 1, 3), "all")]
    assert three[3:] == [((2,), "some")]
    # Two of four are many enough, one of three is not; of as many, the right ones are the rule.
    assert ways("9", "9", "9.5", "9.5")[2:] == [((0, 1), "some")]
    assert ((0, 1), "all") in ways("9.25", "9.25", "8.5", "9.875")
    assert not any(len(places) == 1 for places, way in ways("9.25", "8.5", "9.875") if way == "all")


def test_uneven_ones_are_as_uncertain_as_the_standard_error_of_their_mean() -> None:
    readings = ("9.5", "9", "9.375", "9.25", "8.75")
    (uneven,) = (group for group in groups(pieces(*readings)) if group.uneven)
    assert uneven.uneven == pytest.approx(pstdev(map(float, readings)) / sqrt(5))


def test_readings_that_are_all_the_same_are_no_finer_than_one() -> None:
    """They were rounded the same way; of independent errors the mean has a part of root n."""

    def fine(*readings: str) -> float:
        known = pieces(*readings)
        return Weighing(known, next(groups(known))).fine

    tape, hand = 1 / 32 / sqrt(3), 0.01 * 2
    assert fine("9.25") == pytest.approx(sqrt(tape**2 + hand**2))
    assert fine(*["9.25"] * 4) == pytest.approx(sqrt(tape**2 + hand**2 / 4))
    differ = fine("9.25", "9.28125", "9.21875", "9.265625")
    assert differ == pytest.approx(sqrt(tape**2 + hand**2) / 2)


def test_hands_err_on_each_allowance_and_on_a_piece_with_hardly_any_once() -> None:
    assert hand_noise(4.0) == pytest.approx(0.01 * 2)
    assert hand_noise(-1.0) == hand_noise(0.3) == pytest.approx(0.01)
    assert hand_noise(4.0, 9) == pytest.approx(0.01 * 3)


def test_the_other_way_is_as_uncertain_as_tape_hand_and_a_seam_that_proves_right() -> None:
    """Hands err anew on every piece, the tape and the seam on all of them alike."""
    across = pieces("9.25")
    for n in (1, 4):
        both = replace(across, other_way=OtherWay(F("9.5"), 4.0, (F("9.375"),) * n))
        weighing = Weighing(both, next(groups(both)))
        tape, hand, seam = 1 / 32 / sqrt(3), 0.01 * 2, 4 / 128 / sqrt(3)
        assert weighing.y == pytest.approx(-1 / 8)
        assert weighing.y_noise == pytest.approx(sqrt(tape**2 + hand**2 / n + seam**2))
