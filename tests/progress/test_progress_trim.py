"""What units are trimmed to is decided anew: all that follows changes, and undo takes it back."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.lengths import CENTIMETRE, Unit
from sewalong.progress.measuring.projected_top import if_like
from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.events.sizing import UnitDecided
from sewalong.progress.record.fold import fold
from sewalong.progress.record.measurable import read_piece
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.basis import basis
from tests.progress import every_act as c
from tests.progress.building import (
    EVENING,
    Record,
    a_quilt,
    everything,
    go_on,
    opening,
    play,
    refusal,
    whole_top,
)
from tests.progress.measuring.measuring_quilts import of_size

STACKED = a_quilt(pieces=80, rows=4, columns=5, borders=1)
"""Units of 6.364 in: four by five of them, and a border cut at 3 in."""

HALVES = of_size("half-square-two", "5", 4, 5)
"""Untrimmed 4.646 in, trimmed to 4 5/8."""

SIX_AND_A_QUARTER = c.DecideUnit(F("6.25"), F("6.25"))


def last_words(state: State, record: Record) -> str:
    return record[-1].event.in_full(state, record)


def centre(state: State) -> tuple[F, F]:
    return tuple(  # type: ignore[return-value]
        read_piece(state.quilt, state.target, f"centre:{way}").expected
        for way in ("across", "down")
    )


def test_all_trimmed_to_6_1_4_is_one_line_in_the_log() -> None:
    state, record = play(STACKED, SIX_AND_A_QUARTER)
    assert last_words(state, record) == (
        "Units are trimmed to 6 1/4 in from now on, instead of 6 3/8 in."
    )


def test_centre_and_top_follow_it() -> None:
    state, _ = play(STACKED, SIX_AND_A_QUARTER)
    # 5 units of 5 3/4 in finished and two allowances; 4 of them down.
    assert centre(state) == (F("29.25"), F("23.5"))
    assert basis(state.quilt, state.target).finishes_at == Size(F("28.75") + 5, F(23) + 5)


def test_it_can_be_decided_again_and_undone_one_by_one() -> None:
    state, record = play(STACKED, SIX_AND_A_QUARTER, c.DecideUnit(F(6), F(6)))
    assert (
        last_words(state, record) == "Units are trimmed to 6 in from now on, instead of 6 1/4 in."
    )
    assert state.quilt.trim == Size.square(F(6))
    for trim in (Size.square(F("6.25")), None):
        state = go_on(state, record, c.Undo())
        assert state.quilt.trim == trim
        assert fold(STACKED, record).quilt.trim == trim
    assert state.quilt == STACKED


def test_what_was_counted_stays() -> None:
    before, record = play(STACKED, *everything(STACKED))
    after = go_on(before, record, SIX_AND_A_QUARTER)
    assert (after.piles, after.done, after.route) == (before.piles, before.done, before.route)
    assert after.chosen == before.chosen


def test_a_record_with_it_is_believed() -> None:
    _, record = play(STACKED, SIX_AND_A_QUARTER, c.Undo(), SIX_AND_A_QUARTER, *whole_top(STACKED))
    assert audit(STACKED, record) is None


@pytest.mark.parametrize("width", ["8", "0", "-1", "x", "", "6.25", "1/0"])
def test_a_record_with_a_size_that_cannot_be_is_not_believed(width: str) -> None:
    _, record = play(STACKED, SIX_AND_A_QUARTER)
    place, decided = record[-1].seq - 1, record[-1].event
    assert isinstance(decided, UnitDecided)
    record[place] = replace(record[-1], event=replace(decided, width=width, height=width))
    assert "(unit decided) cannot have happened" in (audit(STACKED, record) or "")


def test_a_trimming_method_keeps_its_marks_until_another_size_is_decided() -> None:
    assert basis(HALVES).unit == Size.square(F("4.625"))
    state, record = play(HALVES, c.DecideUnit(F("4.5"), F("4.5")))
    assert last_words(state, record) == (
        "Units are trimmed to 4 1/2 in from now on, instead of 4 5/8 in."
    )
    assert basis(state.quilt).unit == Size.square(F("4.5"))


USUAL = c.DecideUnit(None, None)


@pytest.mark.parametrize(("quilt", "usual"), [(STACKED, "6 3/8"), (HALVES, "4 5/8")])
def test_a_size_said_can_be_given_up_for_what_the_method_gives(quilt: Quilt, usual: str) -> None:
    state, record = play(quilt, c.DecideUnit(F(4), F(4)), USUAL)
    assert last_words(state, record) == (
        f"Units are {usual} in, as the method gives them, from now on, instead of 4 in."
    )
    assert state.quilt == quilt
    assert audit(quilt, record) is None
    assert go_on(state, record, c.Undo()).quilt.trim == Size.square(F(4))
    assert refusal(opening(quilt), USUAL) == f"Units are {usual} in already. Nothing was changed."


def test_a_record_that_gives_up_a_size_for_one_the_method_does_not_give() -> None:
    _, record = play(HALVES, c.DecideUnit(F(4), F(4)), USUAL)
    place, decided = record[-1].seq - 1, record[-1].event
    assert isinstance(decided, UnitDecided)
    record[place] = replace(record[-1], event=replace(decided, width="9/2", height="9/2"))
    assert "does not give units of 4 1/2 in" in (audit(HALVES, record) or "")


# -- refusals ------------------------------------------------------------------


def test_the_size_it_has_already() -> None:
    state, record = play(STACKED, SIX_AND_A_QUARTER)
    del record
    assert refusal(state, SIX_AND_A_QUARTER) == "Units are 6 1/4 in already. Nothing was changed."
    same = c.DecideUnit(F("4.625"), F("4.625"))
    assert refusal(opening(HALVES), same) == "Units are 4 5/8 in already. Nothing was changed."


def test_a_size_larger_than_the_pieces_give() -> None:
    assert refusal(opening(STACKED), c.DecideUnit(F("6.5"), F("6.5"))) == (
        "Such units come to 6.364 in × 6.364 in, 0.136 in short of 6 1/2 in. It would take seams "
        "of 0.202 in at most. Cut larger pieces."
    )


def test_a_size_that_leaves_nothing_but_seam() -> None:
    assert refusal(opening(STACKED), c.DecideUnit(F("0.5"), F("0.5"))) == (
        "Trimmed to 1/2 in, nothing but seam would be left of a unit. Trim to more than 1/2 in."
    )
    assert refusal(opening(STACKED), c.DecideUnit(F(0), F(0))) == (
        "Give the size that units are trimmed to, such as 6 1/4."
    )


def test_geese_that_would_lose_their_point() -> None:
    geese = of_size("flying-geese-four", "5.25", 4, 5)
    assert refusal(opening(geese), c.DecideUnit(F("4.5"), F("2.375"))) == (
        "4 1/2 in across × 2 3/8 in down does not finish 2 to 1, and the point would lose its seam "
        "allowance. Give across x down that do, such as 4 1/2 in across × 2 1/2 in down."
    )


def test_what_was_measured_larger_may_be_trimmed_to_a_larger_size() -> None:
    """Seams of 3/16 in: the units come out at 6 1/2 in and not at 6.364."""
    measured = (c.Measure("unit", (F("6.5"), F("6.4375"))),)
    wanted = c.DecideUnit(F("6.375"), F("6.375"))
    assert refusal(opening(STACKED), wanted).startswith("Such units come to 6.364 in")
    state, _ = play(STACKED, *measured, wanted)
    assert basis(state.quilt).unit == Size.square(F("6.375"))
    row = read_piece(state.quilt, state.target, "row")
    assert row.expected == 5 * F("5.875") + F("0.5")
    assert if_like(state.quilt, state.target, row, row.expected).row_loses == 0
    # The smaller of the two does not reach 6 1/2.
    state, _ = play(STACKED, *measured)
    assert "come to 6.438 in" in refusal(state, c.DecideUnit(F("6.5"), F("6.5")))


def test_rows_that_are_sewn_hold_the_size() -> None:
    state, record = play(STACKED, *whole_top(STACKED)[:-2], c.Unpick("sew-rows", 1))
    assert refusal(state, SIX_AND_A_QUARTER) == (
        "3 rows are sewn already with units of 6 3/8 in. Unpick them first, or keep that size."
    )
    state = go_on(state, record, c.Unpick("sew-rows", 2))
    assert refusal(state, SIX_AND_A_QUARTER) == (
        "1 row is sewn already with units of 6 3/8 in. Unpick it first, or keep that size."
    )
    state = go_on(state, record, c.Unpick("sew-rows", 1), SIX_AND_A_QUARTER)
    assert state.quilt.trim == Size.square(F("6.25"))


def test_it_says_all_that_would_have_to_be_unpicked() -> None:
    state, record = play(STACKED, *whole_top(STACKED))
    assert refusal(state, SIX_AND_A_QUARTER) == (
        "4 rows are sewn already with units of 6 3/8 in. That would have to be unpicked first: "
        "4 sides at add borders, then 3 seams at join rows, then 4 rows. Or keep that size."
    )
    unpicked = [c.Unpick(*what) for what in (("add-borders", 4), ("join-rows", 3), ("sew-rows", 4))]
    state = go_on(state, record, *unpicked, SIX_AND_A_QUARTER)
    assert state.quilt.trim == Size.square(F("6.25"))


def test_in_centimetres_it_is_told_in_centimetres() -> None:
    quilt = replace(STACKED, unit=Unit.CM)
    state, record = play(quilt, c.DecideUnit(F("15.5") * CENTIMETRE, F("15.5") * CENTIMETRE))
    assert last_words(state, record) == (
        "Units are trimmed to 15.5 cm from now on, instead of 16.2 cm."
    )
    assert record[-1].event.at >= EVENING
