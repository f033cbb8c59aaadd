"""A check failed: exactly the pieces sewn since the last that passed, and no others."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.progress.measuring.at_risk import AtRisk, at_risk, speaks_for_them, still_at_risk
from sewalong.progress.record.state import State
from tests.progress import every_act as c
from tests.progress.building import EVENING, Record, a_quilt, go_on, play

F = Fraction
QUILT = a_quilt()
GOOD, BAD = c.Measure("unit", (F(51, 8),)), c.Measure("unit", (F(99, 16),))
DAY = timedelta(days=1)
CLOSE = c.CloseSession(dict.fromkeys(("iron", "blade", "machine", "pins"), "yes"))


def risk(state: State, record: Record) -> AtRisk:
    found = at_risk(state, record)
    assert found is not None
    return found


def counts(found: AtRisk) -> dict[str, int]:
    return {stage.stage: stage.n for stage in found.stages}


def test_nothing_is_at_risk_while_no_check_failed() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 10), GOOD)
    assert at_risk(state, record) is None


def test_what_was_seen_to_or_leaves_nothing_in_doubt_is_not_still_at_risk() -> None:
    sewn = (c.Count("pair", 84), c.Count("sew", 20))
    state, record = play(QUILT, *sewn, GOOD, BAD)
    assert risk(state, record).none
    assert still_at_risk(state, record) is None
    state, record = play(QUILT, *sewn, BAD)
    assert still_at_risk(state, record) == risk(state, record)
    failed = risk(state, record).failed.seq
    # As the first versions wrote it, and as it is written now.
    for seen_to in (c.Mention(f"at-risk-{failed}"), c.SeeTo(failed)):
        seen, so_far = state, record.copy()
        assert still_at_risk(go_on(seen, so_far, seen_to), so_far) is None
    state = go_on(state, record, c.SeeTo(failed), c.Undo())
    assert still_at_risk(state, record) is not None


def test_only_what_was_sewn_since_the_last_good_check_is_named() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 20), GOOD, c.Count("sew", 7))
    state = go_on(state, record, BAD)
    assert counts(risk(state, record)) == {"sew": 7}
    assert risk(state, record).stages[0].units == 14


def test_what_was_pressed_or_cut_since_is_no_seam() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 20), GOOD, c.Count("press", 20))
    state = go_on(state, record, BAD)
    found = risk(state, record)
    assert found.none
    assert found.lines == (
        "Nothing was sewn since the check of 4 Nov, so nothing else can be wrong.",
    )


def test_stages_that_do_not_feed_the_measured_piece_are_left_out() -> None:
    state, record = play(
        QUILT, c.Count("pair", 84), c.Count("sew", 20), c.Count("press", 20), c.Count("stack", 10)
    )
    state = go_on(state, record, GOOD, c.Count("sew-around", 3), c.Count("sew", 2))
    state = go_on(state, record, c.Measure("four-patch", (F(9),)))
    assert counts(risk(state, record)) == {"sew": 2}
    state = go_on(state, record, BAD)
    assert counts(risk(state, record)) == {"sew": 2, "sew-around": 3}


def test_a_strip_test_speaks_for_every_seam_at_the_machine() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 20))
    state = go_on(state, record, c.Measure("strips:3:3/2", (F(13, 4),)))
    assert counts(risk(state, record)) == {"sew": 20}
    assert risk(state, record).proved is None
    assert risk(state, record).lines[0].startswith("These may be wrong: 20 ")


def test_q008_of_a_hundred_and_sixty_two_only_the_later_fifty_four_are_doubtful() -> None:
    """tenderlystitched.com, The importance of a scant 1/4 seam: 108 good, then 54 doubtful."""
    quilt = a_quilt("half-square-two", 200, 9, 9)
    good, bad = c.Measure("open-unit", (F(37, 8),)), c.Measure("open-unit", (F(9, 2),))
    state, record = play(
        quilt,
        c.Count("pair", 81),
        c.Count("mark", 81),
        c.Count("sew-both-sides", 54),
        c.PutPileAway("sewn-pair", "red tin", 54),
        good,
        CLOSE,
    )
    state = go_on(
        state,
        record,
        c.ChangeTool("foot"),
        c.Count("sew-both-sides", 27),
        c.PutPileAway("sewn-pair", "paper bag", 27),
        bad,
        at=EVENING + 2 * DAY,
    )
    found = risk(state, record)
    (stage,) = found.stages
    assert (stage.n, stage.units) == (27, 54)
    assert F(stage.units or 0, 108 + 54) == F(1, 3)
    assert [(then.session, then.day.isoformat(), then.n) for then in stage.sewn] == [
        (2, "2023-11-06", 27)
    ]
    assert found.places == {"sewn-pair": "paper bag"}
    assert found.lines == (
        "These may be wrong: 27 sewn pairs from sew both sides, sewn since the check of 4 Nov.",
        "They are for 54 units.",
        "Sewn on 6 Nov: 27.",
        "Where the sewn pairs among them lie: paper bag.",
        "What was sewn before that check is not in doubt.",
        "Measure some of them.",
        "When all are right, or put right, say so where you measure.",
    )


def test_q009_the_fault_lies_between_the_buttons_pressed_and_the_next_power_off() -> None:
    """laquilter.blogspot.com/2013/11/what.html: about a third of a stack; off and on hid it."""
    state, record = play(QUILT, c.Count("pair", 84), GOOD, c.Count("sew", 10), CLOSE)
    state = go_on(
        state, record, c.ChangeTool("needle"), c.Count("sew", 10), CLOSE, at=EVENING + DAY
    )
    state = go_on(
        state, record, c.ChangeTool("power"), c.Count("sew", 10), BAD, at=EVENING + 2 * DAY
    )
    batches = risk(state, record).batches
    assert [(batch.since, dict(batch.counts)) for batch in batches] == [
        ("the last check", {"sew": 10}),
        ("another needle went in (5 Nov)", {"sew": 10}),
        ("the machine was switched off and on (6 Nov)", {"sew": 10}),
    ]
    assert any("measure one of each" in line for line in risk(state, record).lines)


def test_what_was_undone_unpicked_or_never_sewn_is_not_at_risk() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 20), GOOD, c.Count("sew", 9))
    state = go_on(state, record, c.Unpick("sew", 2), c.BobbinEmpty("sew", 3), c.Count("sew", 5))
    state = go_on(state, record, c.Undo(), BAD)
    assert counts(risk(state, record)) == {"sew": 4}


def test_the_places_are_those_of_what_came_of_the_seams_in_doubt_since() -> None:
    state, record = play(
        QUILT,
        c.Count("pair", 60),
        c.Count("sew", 20),
        c.Count("press", 20),
        c.PutPileAway("pressed-four-patch", "tin"),
        GOOD,
        c.Count("pair", 24),
        c.PutPileAway("pair", "box"),
        c.Count("sew", 7),
    )
    aside = record.copy()
    sewn = go_on(state, aside, BAD)
    assert risk(sewn, aside).places == {}
    state = go_on(state, record, c.Count("press", 4), c.PutPileAway("four-patch", "lid"), BAD)
    # Those pressed since went to what lies in the tin, or may have.
    assert risk(state, record).places == {"four-patch": "lid", "pressed-four-patch": "tin"}


def test_with_one_change_in_between_one_of_each_is_measured() -> None:
    state, record = play(QUILT, c.Count("pair", 84), GOOD, c.Count("sew", 10))
    state = go_on(state, record, c.ChangeTool("needle"), c.Count("sew", 10), BAD)
    assert risk(state, record).lines[3:6] == (
        "The machine was changed in between: measure one of each.",
        "One sewn since the last check.",
        "One sewn since another needle went in (4 Nov).",
    )


def test_what_a_recount_says_was_sewn_or_never_was_is_reckoned_in() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 20), GOOD, c.Count("sew", 7))
    more = go_on(state, made := record.copy(), c.Recount("four-patch", 29, "made"), BAD)
    assert counts(risk(more, made)) == {"sew": 9}
    one = go_on(state, by_one := record.copy(), c.Recount("four-patch", 28, "made"), BAD)
    assert counts(risk(one, by_one)) == {"sew": 8}
    fewer = go_on(state, unmade := record.copy(), c.Recount("four-patch", 24, "made"), BAD)
    assert counts(risk(fewer, unmade)) == {"sew": 4}
    found = go_on(state, lost := record.copy(), c.Recount("four-patch", 29, "found"), BAD)
    assert counts(risk(found, lost)) == {"sew": 7}


def test_what_was_sewn_after_the_fault_was_mended_is_not_at_risk_but_the_rest_stays_so() -> None:
    state, record = play(QUILT, c.Count("pair", 84), GOOD, c.Count("sew", 6), BAD)
    state = go_on(state, record, c.Count("sew", 2), GOOD, c.Count("sew", 30))
    found = risk(state, record)
    assert counts(found) == {"sew": 8}
    assert not found.seen_to
    assert risk(go_on(state, record, c.SeeTo(found.failed.seq)), record).seen_to


def test_rows_joined_by_number_are_counted_among_the_seams_of_the_centre() -> None:
    quilt = a_quilt("plain-squares", 12, 4, 3)
    state, record = play(quilt, c.Count("square-up", 12), c.Count("sew-rows", 4))
    state = go_on(state, record, c.Measure("row", (F(14),)), c.JoinRows(2, 1), c.JoinRows(3, 4))
    state = go_on(state, record, c.Measure("centre:down", (F(17),)))
    assert counts(risk(state, record)) == {"join-rows": 2}


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(("sew", "good", "bad")), st.integers(1, 3)), max_size=12))
def test_at_risk_are_the_counts_between_the_two_checks_whatever_the_order(
    steps: list[tuple[str, int]],
) -> None:
    """Counted here again from the steps alone."""
    state, record = play(QUILT, c.Count("pair", 84))
    since, failed, doubtful = 0, False, None
    for what, n in steps:
        commands: dict[str, c.Act] = {"sew": c.Count("sew", n), "good": GOOD, "bad": BAD}
        state = go_on(state, record, commands[what])
        if what == "sew":
            since += n
        elif what == "bad":
            failed = True
        else:
            doubtful = since if failed else doubtful
            since, failed = 0, False
    found = at_risk(state, record)
    wanted = since if failed else doubtful
    assert (None if found is None else sum(counts(found).values())) == wanted


def test_one_of_them_that_is_right_speaks_for_them_and_a_test_sewn_since_does_not() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 20), BAD)
    found = risk(state, record)
    assert found.what == "20 four-patches from sew"
    assert speaks_for_them(state, found, "four-patch")
    assert speaks_for_them(state, found, "unit")
    assert not speaks_for_them(state, found, "pair")
    assert not speaks_for_them(state, found, "strips:3:3/2")
    assert not speaks_for_them(state, found, "allowance")
