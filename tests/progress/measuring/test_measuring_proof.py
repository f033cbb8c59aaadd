"""Prove it on one: a check holds for the machine as it was, and says once when it no longer does."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sewalong.progress.measuring.proof import (
    Proof,
    ProofStanding,
    changes,
    goes_on_unproved,
    proof,
)
from sewalong.progress.record.events.seam import Tool
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import State
from sewalong.progress.resuming.sampling import most_to_unpick, sampling_line
from sewalong.quilt.quilt import StartPile
from tests.progress import every_act as c
from tests.progress.building import EVENING, a_quilt, everything, go_on, play, refusal

F = Fraction
QUILT = a_quilt()
GOOD, BAD = c.Measure("unit", (F(51, 8),)), c.Measure("unit", (F(99, 16),))
ONE_STACK = (*everything(QUILT, "press-open", make=4),)


def now(state: State) -> Proof:
    return proof(state, EVENING)


def test_before_the_batch_it_is_proposed_to_prove_it_on_one() -> None:
    state, _ = play(QUILT)
    told = now(state)
    assert (told.standing, told.piece, told.last) == (ProofStanding.NEVER, "unit", None)
    assert told.say == (
        "Test it on one first: take one through to the unit, pressed, and measure it. "
        "A wrong seam then costs one, not all 168 pieces."
    )


def test_counting_on_at_the_machine_once_it_was_said_is_going_on_unproved() -> None:
    state, record = play(QUILT, *everything(QUILT, "sew", make=2))
    assert goes_on_unproved(state, "sew", EVENING) is False
    state = go_on(state, record, c.Mention(now(state).mention))
    assert goes_on_unproved(state, "sew", EVENING) is True
    for elsewhere in ("cut-twice", "press", "no-such-stage"):
        assert goes_on_unproved(state, elsewhere, EVENING) is False
    gone_on = go_on(state, record.copy(), c.GoOn("sew"))
    assert goes_on_unproved(gone_on, "sew", EVENING) is False


def test_a_proved_seam_is_no_going_on_unproved() -> None:
    state, record = play(QUILT, *ONE_STACK)
    state = go_on(state, record, c.Mention(now(state).mention), GOOD)
    assert goes_on_unproved(state, "sew", EVENING) is False


def test_q010_one_of_thirty_six_squares_is_at_risk_and_not_all() -> None:
    """mysewingroomsara.blogspot.com/2020/05/test-block.html: 36 cut before one was sewn."""
    state, _ = play(a_quilt(pieces=36, rows=3, columns=3))
    assert "costs one, not all 36 pieces" in now(state).say


def test_once_one_unit_is_there_it_is_to_be_measured() -> None:
    state, _ = play(QUILT, *ONE_STACK)
    assert now(state).say == "One unit is there: measure it before you sew on."


def test_a_method_without_seams_is_proved_by_three_strips() -> None:
    state, _ = play(a_quilt("plain-squares"))
    assert now(state).say == (
        "Test the seam first: sew 3 strips of 1 1/2 in side by side, press, measure."
    )


def test_a_check_that_passed_is_a_proof_and_nothing_is_said() -> None:
    state, _ = play(QUILT, *ONE_STACK, GOOD)
    told = now(state)
    assert (told.standing, told.why, told.say) == (ProofStanding.FRESH, "", "")
    assert told.last is not None
    assert told.last.readings == (F(51, 8),)


@pytest.mark.parametrize(
    ("tool", "why"),
    [
        ("foot", "another foot went on"),
        ("needle", "another needle went in"),
        ("power", "the machine was switched off and on"),
    ],
)
def test_a_changed_foot_or_needle_or_power_makes_it_stale(tool: Tool, why: str) -> None:
    state, _ = play(QUILT, *ONE_STACK, GOOD, c.ChangeTool(tool))
    told = now(state)
    assert (told.standing, told.why) == (ProofStanding.STALE, why)
    assert told.say == (
        f"Since the last check (today): {why}. Take one unit through and measure it, or go on."
    )


@pytest.mark.parametrize("tool", ["bobbin", "blade"])
def test_a_bobbin_or_a_blade_moves_no_seam(tool: Tool) -> None:
    state, _ = play(QUILT, GOOD, c.ChangeTool(tool))
    assert now(state).standing is ProofStanding.FRESH


def test_settings_written_down_after_the_check_are_no_change() -> None:
    state, _ = play(QUILT, GOOD, c.RecordSettings(Settings(foot="quarter inch", needle="80")))
    assert now(state).standing is ProofStanding.FRESH


def test_another_machine_in_a_new_session_makes_it_stale() -> None:
    one, other = Settings(machine="the old one"), Settings(machine="the class's")
    state, record = play(QUILT, c.RecordSettings(one), GOOD, c.CloseSession())
    state = go_on(state, record, c.RecordSettings(other))
    told = now(state)
    assert (told.standing, told.why) == (
        ProofStanding.STALE,
        "machine the class's instead of the old one",
    )


def test_thicker_thread_makes_it_stale_as_in_q005() -> None:
    state, _ = play(
        QUILT,
        c.RecordSettings(Settings(thread="50 wt", needle_position="3.0")),
        GOOD,
        c.RecordSettings(Settings(thread="40 wt", needle_position="3.0")),
    )
    assert now(state).why == "thread 40 wt instead of 50 wt"


def test_settings_put_back_are_not_a_proof_again_but_a_new_check_is() -> None:
    first, other = Settings(needle_position="3.0"), Settings(needle_position="5.5")
    state, record = play(
        QUILT, c.RecordSettings(first), GOOD, c.RecordSettings(other), c.RecordSettings(first)
    )
    assert now(state).standing is ProofStanding.STALE
    assert now(go_on(state, record, GOOD)).standing is ProofStanding.FRESH


def test_going_on_is_recorded_with_its_reason_and_silences_until_the_next_change() -> None:
    state, record = play(QUILT, GOOD, c.ChangeTool("foot"), c.GoOn("pair"))
    assert (now(state).say, now(state).standing, now(state).went_on) == (
        "",
        ProofStanding.STALE,
        True,
    )
    assert getattr(record[-1].event, "why", "") == "another foot went on"
    state = go_on(state, record, c.ChangeTool("needle"))
    assert now(state).say.startswith("Since the last check (today): another foot went on, another")


def test_it_is_said_once() -> None:
    state, record = play(QUILT, GOOD, c.ChangeTool("power"))
    state = go_on(state, record, c.Mention(now(state).mention))
    assert (now(state).say, now(state).standing) == ("", ProofStanding.STALE)
    state = go_on(state, record, c.ChangeTool("power"))
    assert now(state).say


def test_a_check_that_failed_asks_for_another_until_one_passes() -> None:
    state, record = play(QUILT, *ONE_STACK, GOOD, BAD)
    assert (now(state).standing, now(state).failed) == (ProofStanding.FAILED, state.checks[-1])
    assert "Put it right and measure another" in now(state).say
    assert now(go_on(state, record, GOOD)).standing is ProofStanding.FRESH


def test_undoing_the_check_takes_the_proof_back() -> None:
    state, record = play(QUILT, GOOD)
    assert now(go_on(state, record, c.Undo())).standing is ProofStanding.NEVER


def test_a_cut_square_proves_no_seam() -> None:
    state, _ = play(QUILT, c.Measure("square", (F(5),)))
    assert state.checks[-1].passed
    assert now(state).standing is ProofStanding.NEVER


def test_what_cannot_be_measured_is_refused_with_what_can() -> None:
    state, _ = play(QUILT)
    said = refusal(state, c.Measure("sleeve", (F(5),)))
    assert said.startswith("Nothing called “sleeve” can be measured here. There are: square,")
    assert refusal(state, c.Measure("unit", ())) == "Give from 1 to 50 readings of the tape."
    assert refusal(state, c.Measure("unit", (F(0),))).startswith("A reading is a length above")


def test_a_quilt_with_a_very_wide_seam_has_a_test_strip_wide_enough_for_it() -> None:
    start = StartPile(pile="square", size=F(9), count=20, length=None)
    quilt = a_quilt("plain-squares")
    wide = type(quilt)(
        name="wide", method_id="plain-squares", unit=quilt.unit, seam=F(1), starts=(start,),
        target=quilt.target,
    )  # fmt: skip
    state, _ = play(wide)
    assert now(state).piece == "strips:3:3"


def test_q122_every_tenth_is_opened_so_ten_are_unpicked_and_not_sixty() -> None:
    """litandlaundry.blogspot.com/2013/11/the-dark-side-of-chain-piecing.html"""
    assert most_to_unpick(60) == 10
    sew = QUILT.method.stage("sew")
    assert sampling_line(sew, 60) == (
        "Open the first and look, then every tenth: at most 10 to unpick, not 60."
    )
    assert sampling_line(sew, 10) == ""
    assert sampling_line(QUILT.method.stage("press"), 60) == ""


def test_a_bobbin_in_between_does_not_make_the_machine_forget_how_it_was_set() -> None:
    quarter, wide = Settings(foot="1/4 in"), Settings(foot="wide")
    state, _ = play(
        QUILT, c.RecordSettings(quarter), GOOD, c.ChangeTool("bobbin"), c.RecordSettings(wide)
    )
    assert (now(state).standing, now(state).why) == (
        ProofStanding.STALE,
        "foot wide instead of 1/4 in",
    )


def test_settings_first_written_down_changed_nothing() -> None:
    assert changes(None, Settings(foot="wide")) == ""
