"""Every refusal: a plain sentence that says why and what to do next, and nothing changes."""

from __future__ import annotations

from datetime import datetime

import pytest

from sewalong.progress.acts.decide import decide
from sewalong.progress.record.limits import LONGEST_TEXT, MOST_AT_ONCE
from sewalong.progress.record.settings import Settings
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.quilt.rules import MOST_ROWS
from tests.progress import every_act as c
from tests.progress.building import (
    EVENING,
    HOUR,
    MINUTE,
    a_quilt,
    all_units,
    everything,
    go_on,
    opening,
    play,
    refusal,
    whole_top,
)

ALL_YES = {"iron": "yes", "blade": "yes", "machine": "yes", "pins": "yes"}
QUILT = a_quilt(pieces=40, rows=4, columns=5, borders=2, finishing=("layer", "quilt", "bind"))


def test_a_stage_cannot_use_what_is_not_there() -> None:
    state, _ = play(QUILT, c.Count("pair", 3))
    assert refusal(state, c.Count("sew", 2)) == (
        "2 four-patches at sew cannot be: each takes 2 pairs, and 3 pairs wait, "
        "enough for 1. If more lie there, recount that pile first."
    )


def test_one_piece_waits_in_the_singular() -> None:
    state, _ = play(QUILT, c.Count("pair", 1))
    assert "each takes 2 pairs, and 1 pair waits, not enough for one" in refusal(
        state, c.Count("sew")
    )


@pytest.mark.parametrize("n", [0, -1, MOST_AT_ONCE + 1])
@pytest.mark.parametrize(
    "ask",
    [
        lambda n: c.Count("pair", n),
        lambda n: c.Unpick("pair", n),
        lambda n: c.Spoil("square", n, "a hole"),
        lambda n: c.Find("square", n),
    ],
    ids=["count", "unpick", "spoil", "find"],
)
def test_amounts_are_numbers_from_1(ask, n: int) -> None:  # type: ignore[no-untyped-def]
    assert refusal(opening(QUILT), ask(n)) == "Give a number from 1 to 9999."


def test_a_stage_the_quilt_does_not_have_is_answered_with_the_nearest() -> None:
    state = opening(QUILT)
    for ask in (c.Count, c.Unpick, c.ChooseStage, c.ReadCaution):
        assert refusal(state, ask("sew-arround")) == (
            "This quilt has no stage “sew-arround”. Did you mean sew-around?"
        )
    assert refusal(state, c.Count("zzz")).startswith(
        "This quilt has no stage “zzz”. There are: pair, sew, press, stack, sew-around,"
    )


def test_a_pile_the_quilt_does_not_have_is_answered_with_the_nearest() -> None:
    state = opening(QUILT)
    asks: list[c.Act] = [
        c.Spoil("squares", 1, "a hole"),
        c.Find("squares", 1),
        c.Recount("squares", 1),
        c.PutPileAway("squares", "the tin"),
    ]
    for ask in asks:
        assert refusal(state, ask) == "This quilt has no pile “squares”. Did you mean square?"


def test_a_name_of_any_length_is_quoted_short() -> None:
    assert len(refusal(opening(QUILT), c.Find("x" * 5000, 1))) < 300


def test_what_was_cut_cannot_be_taken_apart() -> None:
    state, _ = play(QUILT, *everything(QUILT, "cut-twice"))
    assert refusal(state, c.Unpick("cut-twice")) == (
        "What cut twice did is cut and cannot be taken apart again. "
        "If it was counted by mistake, undo it or recount the pile."
    )


def test_a_pressed_seam_goes_back_to_the_iron_and_then_to_the_ripper() -> None:
    state, _ = play(
        QUILT,
        *everything(QUILT, "press", make=4),
        c.Unpick("press", 2),
        c.Unpick("sew", 2),
    )
    assert state.done["press"] == 2
    before, _ = play(QUILT, *everything(QUILT, "press", make=4))
    assert state.done["sew"] == before.done["sew"] - 2
    assert state.piles["pair"] == before.piles["pair"] + 4


def test_only_what_lies_there_can_be_taken_apart() -> None:
    state, record = play(QUILT, *everything(QUILT, "sew"), c.Count("press", 8))
    assert refusal(state, c.Unpick("sew", 3)).startswith(
        "Only 2 four-patches from sew can be taken apart now."
    )
    state = go_on(state, record, c.Count("press", 2))
    assert refusal(state, c.Unpick("sew")) == (
        "No four-patch from sew can be taken apart now. "
        "What went further already has to be unpicked there first."
    )


def test_found_pieces_were_not_sewn_here_so_they_cannot_be_unpicked() -> None:
    state, _ = play(QUILT, c.Find("four-patch", 5))
    assert "No four-patch from sew" in refusal(state, c.Unpick("sew"))


def test_joined_rows_cannot_be_unpicked_before_their_seam() -> None:
    quilt = a_quilt(pieces=160, rows=4, columns=5)
    state, _ = play(quilt, *all_units(quilt), c.Count("sew-rows", 4), c.Count("join-rows", 2))
    assert refusal(state, c.Unpick("sew-rows", 2)).startswith("Only 1 row from sew rows can be")


def test_a_seam_under_the_border_is_not_unpicked_before_the_border() -> None:
    quilt = a_quilt(pieces=40, rows=4, columns=5, borders=1)
    state, record = play(quilt, *whole_top(quilt))
    assert refusal(state, c.Unpick("join-rows")) == (
        "What was done at add borders holds it. Unpick that first."
    )
    state = go_on(state, record, c.Unpick("add-borders", 4), c.Unpick("join-rows", 3))
    assert state.done["join-rows"] == 0
    assert state.done["sew-rows"] == 4


def test_more_cannot_be_spoiled_than_lies_there() -> None:
    state, _ = play(QUILT, c.Count("pair", 20), c.Spoil("pair", 19, "the dog"))
    assert refusal(state, c.Spoil("pair", 2, "the dog")) == (
        "Only 1 pair lies there, so 2 cannot be spoiled. "
        "If more lie there, recount that pile first."
    )
    assert refusal(state, c.Spoil("square", 1, "a hole")).startswith("Only 0 squares lie there")


def test_of_rows_not_joined_all_can_be_spoiled_and_no_more() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 4))
    assert refusal(state, c.Spoil("row", 5, "bleach")).startswith("Only 4 rows lie there")
    assert go_on(state, record, c.Spoil("row", 4, "bleach")).piles["row"] == 0


def test_a_joined_row_cannot_be_spoiled() -> None:
    state, _ = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 4), c.Count("join-rows", 1))
    assert refusal(state, c.Spoil("row", 3, "bleach")).startswith("Only 2 rows lie there")


def test_spoiling_needs_a_reason() -> None:
    assert refusal(opening(QUILT), c.Spoil("square", 1, "  ")) == (
        "Give a reason, so that it can be seen later what went wrong."
    )


@pytest.mark.parametrize("counted", [-1, MOST_AT_ONCE + 1])
def test_a_recount_is_a_number_from_0(counted: int) -> None:
    assert refusal(opening(QUILT), c.Recount("square", counted)) == (
        "A recount is a number from 0 to 9999."
    )


def test_a_recount_of_rows_counts_the_rows_in_the_top_too() -> None:
    state, _ = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 4), c.Count("join-rows", 2))
    assert refusal(state, c.Recount("row", 2)) == (
        "3 rows are in the top already, so there are at least that many. "
        "Count the rows in the top too."
    )


def test_no_more_was_unsewn_than_nothing_was_made_of() -> None:
    state, record = play(QUILT, *everything(QUILT, "sew"), c.Count("press", 7))
    assert refusal(state, c.BobbinEmpty("sew", 4)) == (
        "Only 3 four-patches from sew lie there that nothing was made of yet, so 4 cannot be "
        "unsewn. Count what is really sewn and recount that pile."
    )
    assert refusal(state, c.BobbinEmpty("press", 1)) == (
        "No bobbin runs out at press. Name the stage at the machine that was sewn with the "
        "empty bobbin."
    )
    state = go_on(state, record, c.BobbinEmpty("sew", 3))
    assert (state.done["sew"], state.piles["pair"], state.piles["four-patch"]) == (7, 6, 0)


def test_the_only_row_of_a_bordered_runner_is_in_the_top() -> None:
    runner = a_quilt(pieces=16, rows=1, columns=8, borders=1)
    state, _ = play(runner, *all_units(runner), c.Count("sew-rows"), c.Count("add-borders"))
    assert refusal(state, c.Recount("row", 0)).startswith("1 row is in the top already")
    assert refusal(state, c.Spoil("row", 1, "ink")).startswith("Only 0 rows lie there")
    assert refusal(state, c.Unpick("sew-rows")).startswith("No row from sew rows")


def test_a_place_and_a_note_have_words() -> None:
    state = opening(QUILT)
    assert refusal(state, c.PutPileAway("square", " ")) == "Give a place."
    assert refusal(state, c.WriteNote("\n")) == "Give some words."


def test_words_that_would_be_cut_off_are_refused_instead() -> None:
    long = "a" * (LONGEST_TEXT + 1)
    state, _ = play(QUILT, c.OpenSession())
    asks: list[c.Act] = [
        c.WriteNote(long),
        c.PutPileAway("square", long),
        c.Spoil("square", 1, long),
        c.RecordSettings(Settings(machine=long)),
        c.LayAside(long),
        c.CloseSession(next_step=long),
    ]
    for ask in asks:
        assert refusal(state, ask) == (
            "That is 2001 letters; at most 2000 are kept. Say it shorter."
        )


def test_settings_say_at_least_one_thing() -> None:
    assert refusal(opening(QUILT), c.RecordSettings(Settings(machine="  "))) == (
        "No setting was given: fill in at least one."
    )


@pytest.mark.parametrize(("rows", "columns"), [(0, 5), (5, 0), (MOST_ROWS + 1, 5), (5, -3)])
def test_a_target_has_rows_and_columns(rows: int, columns: int) -> None:
    assert refusal(opening(QUILT), c.ChangeTarget(rows, columns)) == (
        "Rows and columns are numbers from 1 to 200."
    )


def test_the_same_target_again_is_refused() -> None:
    assert refusal(opening(QUILT), c.ChangeTarget(4, 5)) == "The target is 4 × 5 already."


def test_sewn_rows_fix_the_columns() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 1))
    assert refusal(state, c.ChangeTarget(5, 4)) == (
        "1 row of 5 is sewn already. Unpick it first, or keep 5 across."
    )
    state = go_on(state, record, c.Count("sew-rows", 1))
    assert refusal(state, c.ChangeTarget(5, 4)) == (
        "2 rows of 5 are sewn already. Unpick them first, or keep 5 across."
    )
    state = go_on(state, record, c.Unpick("sew-rows", 2), c.ChangeTarget(5, 4))
    assert state.target.columns == 4


def test_joined_rows_fix_the_least_number_of_rows() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 4), c.Count("join-rows", 3))
    assert refusal(state, c.ChangeTarget(3, 5)) == (
        "4 rows are joined already. Unpick 1 first, or keep 4 rows."
    )
    state = go_on(state, record, c.Unpick("join-rows", 1), c.ChangeTarget(3, 5))
    assert state.target.rows == 3


def test_rows_joined_by_their_numbers_fix_the_last_of_them() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 4), c.JoinRows(2, 3))
    assert refusal(state, c.ChangeTarget(2, 5)) == (
        "Rows 2 and 3 are joined already. Unpick that first, or keep 3 rows."
    )
    state = go_on(state, record, c.ChangeTarget(3, 5))
    assert (state.target.rows, state.joints) == (3, ((2, 3),))


def test_a_bordered_top_keeps_its_target() -> None:
    state, record = play(QUILT, *whole_top(QUILT))
    assert refusal(state, c.ChangeTarget(6, 5)) == (
        "The top has been through add borders already. Unpick that first, or keep 4 × 5."
    )
    state = go_on(state, record, c.Unpick("add-borders", 8), c.ChangeTarget(6, 5))
    assert state.target.rows == 6


def test_seams_between_rows_wait_for_rows() -> None:
    state, _ = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 2))
    assert refusal(state, c.Count("join-rows", 2)) == (
        "2 seams cannot be: 2 rows sewn so far and 0 seams joined leave 1 to join now. "
        "Sew more rows first."
    )


def test_borders_wait_for_all_rows_to_be_joined() -> None:
    state, _ = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 4), c.Count("join-rows", 2))
    assert refusal(state, c.Count("add-borders")) == (
        "The top is not ready to add borders: do the stages before it first."
    )


def test_no_more_sides_than_there_are() -> None:
    state, record = play(QUILT, *whole_top(QUILT)[:-1], c.Count("add-borders", 6))
    assert refusal(state, c.Count("add-borders", 3)) == "Only 2 sides left at add borders."
    state = go_on(state, record, c.Count("add-borders", 2))
    assert refusal(state, c.Count("add-borders")).startswith("Add borders is done: 8 sides in all.")


def test_all_seams_joined_is_said_so() -> None:
    state, _ = play(QUILT, *whole_top(QUILT)[:-1])
    assert refusal(state, c.Count("join-rows")) == (
        "Join rows is done: 3 seams in all. To go further, change the target."
    )


def test_a_caution_comes_before_the_count() -> None:
    state, _ = play(QUILT, c.Count("pair", 4))
    with pytest.raises(CautionFirst) as first:
        decide(state, c.Count("sew"), EVENING + 5 * MINUTE)
    assert first.value.caution.title == "Needle"
    sentence = refusal(state, c.Count("sew"))
    assert sentence.startswith("Read the caution first (Needle): Fingers out of the needle's path")


def test_a_caution_comes_before_rows_are_joined_by_their_numbers() -> None:
    state, record = play(QUILT, *all_units(QUILT), c.Count("sew-rows", 4), c.CloseSession(ALL_YES))
    at = record[-1].event.at + HOUR
    assert "Read the caution first (Needle · Pins)" in refusal(state, c.JoinRows(1, 2), at)
    joined = decide(state, c.JoinRows(1, 2, caution_read=True), at)
    assert [event.kind for event in joined] == ["session opened", "caution read", "rows joined"]


def test_closing_needs_an_open_session() -> None:
    state, _record = play(QUILT, c.OpenSession(), c.CloseSession())
    for before in (opening(QUILT), state):
        assert refusal(before, c.CloseSession()) == (
            "No session is open, so there is none to close."
        )


def test_closing_asks_first_and_takes_no_other_answer() -> None:
    state, _ = play(QUILT, *everything(QUILT, "press"))
    assert refusal(state, c.CloseSession()) == (
        "Before you go: Is the iron off and unplugged? Answer yes, no or did not look."
    )
    assert "machine off" in refusal(state, c.CloseSession({"iron": "yes"}))
    assert "iron off" in refusal(state, c.CloseSession({"iron": "surely", "machine": "yes"}))


def test_the_iron_is_answered_for_once_and_only_where_it_was_asked_about() -> None:
    state, record = play(QUILT, c.Count("pair", 20))
    nothing = "Nothing is asked about the iron just now. Nothing was recorded."
    assert refusal(opening(QUILT), c.Answer("iron", "yes")) == nothing
    assert refusal(state, c.Answer("iron", "yes")) == nothing
    state = go_on(state, record, *everything(QUILT, "press", but=1)[1:], c.Answer("iron", "no"))
    assert refusal(state, c.Answer("iron", "yes")) == nothing
    state = go_on(state, record, c.Count("press"), c.CloseSession(ALL_YES))
    assert refusal(state, c.Answer("iron", "yes")) == nothing


def test_the_iron_question_takes_one_of_its_answers() -> None:
    state, _ = play(QUILT, *everything(QUILT, "press"))
    assert refusal(state, c.Answer("iron", "maybe")) == (
        "Leaving the board: is the iron off, or safe on its heel? Answer yes, no or did not look."
    )
    assert "“kettle”" in refusal(state, c.Answer("kettle", "yes"))


@pytest.mark.parametrize(
    ("put_down", "standing"), [(c.LayAside(), "laid aside"), (c.MarkDone(), "done")]
)
@pytest.mark.parametrize(
    "ask",
    [
        c.Count("pair"),
        c.Unpick("pair"),
        c.Spoil("square", 1, "a hole"),
        c.Find("square", 1),
        c.Recount("square", 3),
        c.ChooseStage("pair"),
        c.ChangeTarget(2, 2),
        c.OpenSession(),
        c.LayAside(),
        c.BobbinEmpty("sew", 1),
        c.JoinRows(1, 2),
        c.GoOn("sew"),
    ],
    ids=lambda ask: type(ask).__name__,
)
def test_a_quilt_laid_aside_or_done_is_picked_up_before_it_is_worked_on(
    put_down: c.Act, standing: str, ask: c.Act
) -> None:
    state, _ = play(QUILT, c.Count("pair"), put_down)
    assert refusal(state, ask) == f"This quilt is {standing}. Pick it up again first."


def test_a_quilt_in_progress_needs_no_picking_up() -> None:
    assert refusal(opening(QUILT), c.PickUp()) == (
        "This quilt is in progress already; just count on."
    )


def test_done_is_marked_once() -> None:
    state, _ = play(QUILT, c.MarkDone())
    assert refusal(state, c.MarkDone(), EVENING + HOUR) == "This quilt is marked done already."


def test_there_is_nothing_to_undo_in_a_fresh_quilt() -> None:
    state, _ = play(QUILT, c.OpenSession(), c.ChooseStage("sew"))
    for before in (opening(QUILT), state):
        assert refusal(before, c.Undo()) == "There is nothing to undo."


def test_undo_takes_back_only_what_the_person_saw_as_the_last() -> None:
    state, record = play(QUILT, c.Count("pair", 3), c.Count("pair", 2))
    seen = record[1].seq
    assert refusal(state, c.Undo(of=seen)) == (
        "The record went on in another window. Look again before undoing."
    )
    state = go_on(state, record, c.Undo(of=record[-1].seq))
    assert state.done["pair"] == 3


def test_a_time_without_its_offset_is_a_fault_of_the_program_not_of_the_person() -> None:
    with pytest.raises(ValueError, match="offset") as fault:
        decide(opening(QUILT), c.Count("pair"), datetime(2023, 11, 4, 19, 0))
    assert not isinstance(fault.value, c.Refused)
