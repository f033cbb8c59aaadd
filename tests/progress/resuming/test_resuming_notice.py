"""At most one thing is said at a time, the most important first."""

from __future__ import annotations

from datetime import datetime, timedelta
from fractions import Fraction

import pytest

from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.pace.supplies.wear_choices import WearChoices
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.state import State
from sewalong.progress.resuming.notice import Notice, notice
from sewalong.progress.resuming.resume_facts import shortfall_in_words
from sewalong.progress.resuming.sampling import most_to_unpick, sampling_line
from tests.progress import every_act as c
from tests.progress.building import MINUTE, Record, a_quilt, all_units, go_on, play

QUILT = a_quilt()
GOOD = c.Measure("unit", (Fraction(51, 8),))
BAD = c.Measure("unit", (Fraction(6),))
ASIDE = "Lay the top pair on the last one sewn."


def said(
    state: State, record: Record, pause: str = "", at: datetime | None = None
) -> Notice | None:
    """What is said a minute after the last event, unless at another time."""
    now_plan = plan(state)
    if at is None:
        at = record[-1].event.at + MINUTE
    return notice(
        state, record, now_plan, in_hand(state, now_plan), at, pause=pause, wear=WearChoices()
    )


def one_after_another(state: State, record: Record) -> list[str]:
    """The kinds of all that is said, each mentioned as it is shown."""
    kinds = []
    while (one := said(state, record)) is not None:
        kinds.append(one.kind)
        if not one.mention:
            break
        state = go_on(state, record, c.Mention(one.mention))
    return kinds


def test_outside_a_session_and_on_a_quilt_put_down_nothing_is_said() -> None:
    short = a_quilt(pieces=8)
    state, record = play(short, c.Count("pair", 2), c.CloseSession())
    assert said(state, record, ASIDE) is None
    state, record = play(short, c.Count("pair", 2), c.LayAside())
    assert said(state, record, ASIDE) is None
    state = go_on(state, record, c.PickUp())
    assert said(state, record) is not None


def test_pieces_at_risk_come_before_all_until_they_were_seen_to() -> None:
    state, record = play(QUILT, c.Count("pair", 84), GOOD, c.Count("sew", 42), BAD)
    first = said(state, record, ASIDE)
    assert first is not None
    assert (first.kind, first.mention) == ("at risk", "")
    assert first.text.startswith(
        "These may be wrong: 42 four-patches from sew, sewn since the check of 4 Nov."
    )
    state = go_on(state, record, c.Mention(f"at-risk-{state.checks[-1].seq}"))
    after = said(state, record, ASIDE)
    assert after is not None
    assert after.kind != "at risk"


def test_a_measure_gone_wrong_before_anything_was_sewn_puts_nothing_at_risk() -> None:
    state, record = play(QUILT, c.Count("pair", 84), BAD)
    one = said(state, record)
    assert one is not None
    assert one.kind != "at risk"


def test_a_shortfall_is_news_once_and_again_when_it_grows() -> None:
    quilt = a_quilt(pieces=160)
    state, record = play(quilt, c.Count("pair", 20))
    first = said(state, record, ASIDE)
    assert first == Notice("short", shortfall_in_words(state, plan(state)), "short-9x9-1")
    state = go_on(state, record, c.Mention("short-9x9-1"))
    assert said(state, record, ASIDE) == Notice("advice", ASIDE)
    assert said(state, record) == Notice("short", shortfall_in_words(state, plan(state)))
    state = go_on(state, record, c.Spoil("pair", 1, "a hole"))
    again = said(state, record, ASIDE)
    assert again is not None
    assert again.mention == "short-9x9-5"


def test_the_seam_is_spoken_of_at_the_machine_only() -> None:
    state, record = play(QUILT, c.Count("pair", 83))
    assert said(state, record) is None
    state = go_on(state, record, c.ChooseStage("sew"))
    seam = said(state, record, ASIDE)
    assert seam is not None
    assert (seam.kind, seam.mention) == ("seam", "proof-never-0")
    assert seam.text.startswith("Test it on one first: take one through to the unit, pressed")
    state = go_on(state, record, c.Mention(seam.mention))
    assert said(state, record, ASIDE) == Notice("advice", ASIDE)


def test_a_long_chain_is_sampled_once_before_its_first_count() -> None:
    state, record = play(QUILT, c.Count("pair", 83), c.GoOn("sew"), c.ChooseStage("sew"))
    first = said(state, record)
    assert first == Notice(
        "advice",
        "Open the first and look, then every tenth: at most 10 to unpick, not 41.",
        "sampling-1-sew",
    )
    assert said(go_on(state, record.copy(), c.Count("sew")), record) is None
    assert said(go_on(state, record.copy(), c.Mention("sampling-1-sew")), record) is None


def test_all_that_is_to_be_said_comes_in_its_order() -> None:
    quilt = a_quilt(pieces=160)
    state, record = play(quilt, c.Count("pair", 79), c.ChooseStage("sew"))
    assert one_after_another(state, record) == ["short", "seam", "advice", "short"]


def test_what_wears_out_is_said_between_the_seam_and_the_advice() -> None:
    state, record = play(QUILT, c.Count("pair", 60), c.GoOn("sew"))
    while record[-1].event.at - record[0].event.at < timedelta(minutes=55):
        state = go_on(state, record, c.Count("pair"), every=5 * MINUTE)
    late = said(state, record, ASIDE)
    assert late is not None
    assert (late.kind, late.mention[:6]) == ("wear", "stop-1")


@pytest.mark.parametrize(("chain", "most"), [(0, 0), (1, 1), (10, 10), (11, 10), (31, 10)])
def test_no_more_than_those_since_the_last_opened_are_wrong(chain: int, most: int) -> None:
    assert most_to_unpick(chain) == most


def test_only_a_chain_of_more_than_ten_at_the_machine_is_sampled() -> None:
    state, _ = play(QUILT)
    pair, sew, join = (state.route.stage(id) for id in ("pair", "sew", "join-rows"))
    assert pair is not None
    assert sew is not None
    assert join is not None
    assert sampling_line(sew, 10) == sampling_line(pair, 40) == sampling_line(join, 40) == ""
    assert sampling_line(sew, 11) == (
        "Open the first and look, then every tenth: at most 10 to unpick, not 11."
    )


def test_before_a_seam_of_the_top_it_is_asked_which_end_is_up_every_time() -> None:
    """Of a row joined by its number or only counted: a piece can be pinned the wrong way round.

    Q116: rows flipped between floor and machine. Q120: neighbours are checked before a long seam.
    """
    quilt = a_quilt("plain-squares", 16, rows=4, columns=4, borders=1)
    made = [*all_units(quilt), c.Count("sew-rows", 4), c.GoOn("sew-rows")]
    joins: tuple[c.Act, ...] = (c.JoinRows(1, 2), c.Count("join-rows"))
    for join in joins:
        state, record = play(quilt, *made, c.ChooseStage("join-rows"), join)
        assert one_after_another(state, record)[-1] == "look"
        look = said(state, record)
        assert look is not None
        assert (look.kind, look.mention) == ("look", "")
        assert "which end is up" in look.text
    state, record = play(quilt, *made, c.Count("join-rows", 3))
    look = said(state, record)
    assert look is not None
    assert "which edge of the border is inner" in look.text
