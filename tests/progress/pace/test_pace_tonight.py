"""What to do with the minutes there are."""

from __future__ import annotations

from itertools import pairwise

import pytest

from sewalong.piecing.method import Station
from sewalong.progress.joining.bias_cuts import bias_cuts
from sewalong.progress.pace.exclusions import LEAVE_OUT_WORDS, is_left_out, leave_out
from sewalong.progress.pace.paces import paces
from sewalong.progress.pace.tonight import Tonight, tonight
from sewalong.progress.record.refused import Refused
from tests.progress.building import opening
from tests.progress.pace.evenings import MONDAY, Diary, a_quilt


def evening(diary: Diary, minutes: float, *words: str) -> Tonight:
    return tonight(diary.state, diary.record, diary.now, minutes, leave_out(words))


def stages(found: Tonight) -> list[str]:
    return [step.stage for step in found.steps]


def half_sewn() -> Diary:
    """Most pairs laid, some four-patches sewn, and those pressed and stacked."""
    diary = Diary(a_quilt())
    diary.evening(("pair", 60, 20))
    diary.evening(*[("sew", 2, 4.0)] * 6)
    diary.evening(("press", 12, 9), ("stack", 6, 5))
    return diary


def test_half_an_hour_is_spent_at_one_station_when_its_piles_last() -> None:
    found = evening(half_sewn(), 30)
    assert found.changes == 0
    assert {step.station for step in found.steps} == {Station.MACHINE}
    assert 24 <= found.minutes <= 30
    assert "Clip the chain" in found.ending
    assert "at the machine" in found.steps[0].sentence
    without = evening(half_sewn(), 30, "machine")
    assert without.steps[0].why == "Enough waits for it, and it fits the time."


def test_it_never_takes_longer_than_asked_nor_uses_what_is_not_there() -> None:
    diary = half_sewn()
    for minutes in (5, 20, 60, 200):
        found = evening(diary, minutes)
        assert found.minutes <= minutes + 1e-6
        played = Diary(diary.quilt, diary.now, list(diary.record), diary.session)
        played.sit_down()
        for step in found.steps:
            played.count(step.stage, step.n, step.minutes)
        assert min(played.state.piles.values()) >= 0
        stations = [step.station for step in found.steps]
        assert found.changes == sum(a is not b for a, b in pairwise(stations))


def test_no_cutting_leaves_the_mat_out_and_says_what_keeps() -> None:
    diary = Diary(a_quilt())
    diary.evening(("pair", 84, 28), ("sew", 42, 84), ("press", 42, 30), ("stack", 21, 15))
    diary.evening(*[("sew-around", 3, 4.5)] * 7)
    assert stages(evening(diary, 45)) == ["cut-twice", "press-open"]
    without = evening(diary, 45, "cutting")
    assert without.steps == ()
    assert without.left_out == "cut twice"
    assert without.ending == (
        "Everything that waits is left out for tonight. It keeps until another day."
    )


def test_sore_hands_and_no_ironing_leave_other_stages() -> None:
    diary = half_sewn()
    for word in ("hands", "ironing", "machine"):
        found = evening(diary, 60, word)
        assert found.steps
        for step in found.steps:
            stage = diary.state.route.stage(step.stage)
            assert stage is not None
            assert not is_left_out(stage, LEAVE_OUT_WORDS[word])


def test_the_diagonal_cuts_are_left_for_last_and_never_left_lying_unopened() -> None:
    """A good long pause is before the diagonal cuts: bias edges stretch (working practice)."""
    diary = half_sewn()
    diary.evening(*[("sew-around", 3, 4.5)] * 2)
    assert bias_cuts(diary.quilt) == {"cut-twice"}
    found = evening(diary, 60)
    assert "cut-twice" not in stages(found)
    assert "Leave the diagonal cuts for another day" in found.ending
    only_cuts = Diary(a_quilt())
    only_cuts.evening(("pair", 84, 28), ("sew", 42, 84), ("press", 42, 30), ("stack", 21, 15))
    only_cuts.evening(*[("sew-around", 3, 4.5)] * 7)
    for minutes in (12, 25, 60):
        found = evening(only_cuts, minutes)
        cut, opened = found.steps
        assert (cut.stage, opened.stage, opened.n) == ("cut-twice", "press-open", 4 * cut.n)
        assert opened.why.startswith("The same evening")
    assert evening(only_cuts, 60, "ironing").steps == (), "nothing is cut that cannot be opened"


def test_straight_cuts_and_cuts_held_by_their_seams_are_no_bias_cuts() -> None:
    for method in ("plain-squares", "half-square-two", "nine-patch-quartered", "four-patch-strips"):
        assert bias_cuts(a_quilt(method)) == frozenset()
    assert bias_cuts(a_quilt("paired-squares")) == {"cut-twice"}


def test_when_one_pile_is_too_small_the_next_stage_comes_with_the_fewest_changes() -> None:
    diary = Diary(a_quilt())
    diary.evening(("pair", 8, 3))
    diary.evening(("sew", 2, 4))
    found = evening(diary, 60)
    assert found.changes <= len(found.steps) - 1
    assert found.minutes > 20
    one_place = evening(diary, 20)
    assert one_place.changes == 0
    assert stages(one_place) == ["pair"]


def test_too_few_minutes_for_anything_say_so() -> None:
    diary = Diary(a_quilt("plain-squares", 4, 2, 2, finishing=("layer",)))
    diary.evening(("square-up", 4, 2), ("sew-rows", 2, 6), ("join-rows", 1, 3))
    found = evening(diary, 5)
    assert found.steps == ()
    assert found.ending.startswith("No whole count fits in 5 minutes: the shortest, layer, takes")


def test_the_minutes_asked_for_are_said_to_the_nearest() -> None:
    diary = Diary(a_quilt("plain-squares", 4, 2, 2, finishing=("layer",)))
    diary.evening(("square-up", 4, 2), ("sew-rows", 2, 6), ("join-rows", 1, 3))
    assert evening(diary, 5.5).ending.startswith("No whole count fits in 6 minutes: ")
    assert evening(diary, 5.5).ending.endswith(" Begin it and stop at the end of a seam.")
    cuts = Diary(a_quilt())
    cuts.evening(("pair", 84, 28), ("sew", 42, 84), ("press", 42, 30), ("stack", 21, 15))
    cuts.evening(*[("sew-around", 3, 4.5)] * 7)
    said = evening(cuts, 3.5).ending
    assert said.startswith(
        "No whole count fits in 4 minutes: the shortest, cut twice, takes about "
    )
    assert said.endswith(" each, with what must follow it the same day.")


def test_eight_steps_are_planned_at_most_and_what_must_follow_a_cut_is_no_step_of_its_own() -> None:
    quilt = a_quilt(pieces=8, rows=1, columns=4, borders=1, finishing=("layer", "quilt", "bind"))
    found = evening(Diary(quilt), 200)
    assert stages(found) == [
        "pair",
        "sew",
        "press",
        "stack",
        "sew-around",
        "cut-twice",
        "press-open",
        "sew-rows",
        "add-borders",
    ]
    assert [step.n for step in found.steps] == [4, 2, 2, 1, 1, 1, 4, 1, 4]
    # Three minutes for each change of place, and none to begin with.
    known = paces(opening(quilt), (), MONDAY).stages
    work = sum(step.n * known[step.stage].minutes for step in found.steps)
    assert found.minutes == pytest.approx(work + 3 * found.changes)
    assert found.changes == 7
    assert [step.why for step in found.steps] == [
        "It is the stage in hand.",
        "Its pieces wait, and there is time left.",
        "Its pieces wait, and there is time left.",
        "Its pieces wait, and there is time left.",
        "Its pieces wait, and there is time left.",
        "Its pieces wait, and there is time left.",
        "The same evening: cut edges stretch while they wait.",
        "Its pieces wait, and there is time left.",
        "You can stay at the machine.",
    ]
    assert found.ending.startswith("Ends where the pile of “add borders” does.")


def test_an_unknown_word_is_refused_with_those_there_are() -> None:
    with pytest.raises(Refused, match=r"Nothing is called “swimming”\. Leave out one of: cutting"):
        leave_out(["swimming"])
    with pytest.raises(ValueError, match="minutes"):
        evening(half_sewn(), 0)


def test_a_straight_cut_gives_the_next_stage_all_its_pieces() -> None:
    diary = Diary(a_quilt("half-square-two", 4, 2, 4))
    found = evening(diary, 60)
    # Two pairs of squares give four units.
    assert [(step.stage, step.n) for step in found.steps][-3:] == [
        ("cut-once", 2),
        ("press-open", 4),
        ("trim", 4),
    ]


def test_it_can_be_planned_before_the_first_session() -> None:
    found = evening(Diary(a_quilt()), 15)
    assert stages(found) == ["pair"]
    assert found.steps[0].why == "It is the stage in hand."
