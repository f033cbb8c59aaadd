"""Coming back: whether it is time to say where things stood, and the facts then said."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import State
from sewalong.progress.resuming.coming_back import coming_back, facts
from sewalong.progress.resuming.resume_facts import AWAY, was_away
from tests.progress import every_act as c
from tests.progress.building import (
    EVENING,
    HOUR,
    MINUTE,
    a_quilt,
    everything,
    go_on,
    opening,
    play,
    whole_top,
)

QUILT = a_quilt(pieces=40, rows=4, columns=5, borders=2)
WEEKS_LATER = EVENING + timedelta(days=24)


def said(state: State, label: str) -> list[str]:
    """What is said under a label, and what goes on from it."""
    found, under = [], ""
    for one, text in facts(coming_back(state, (), WEEKS_LATER)):
        under = one or under
        if under == label:
            found.append(text)
    return found


def test_after_24_days_the_facts_say_where_things_stood() -> None:
    state, _ = play(
        QUILT,
        *everything(QUILT, "press", make=3),
        c.Spoil("pressed-four-patch", 1, "scorched"),
        c.PutPileAway("four-patch", "shoe box, shelf"),
        c.WriteNote("two blues alike"),
        c.CloseSession({"iron": "no", "machine": "yes"}, next_step="press the other seven"),
    )
    assert said(state, "First") == ["See that the iron is off: you said no last time."]
    assert said(state, "You wrote") == ["press the other seven"]
    assert said(state, "Next") == [
        "Press (at the iron): 7 four-patches wait.",
        "8 pressed four-patches to go.",
    ]
    assert said(state, "Put away") == ["7 four-patches: shoe box, shelf"]
    assert said(state, "Also there") == [
        "2 pressed four-patches.",
        "Nobody wrote down where.",
    ]
    assert said(state, "Note") == ["two blues alike (24 days ago)"]
    assert said(state, "Spoiled") == ["1 pressed four-patch: scorched (24 days ago)"]
    assert said(state, "Short") == [
        "4 × 5 is 4 units short.",
        "Find or buy 4 squares more, or take 4 × 4 or 3 × 5.",
    ]


def test_a_quilt_put_down_says_so_and_why() -> None:
    state, record = play(QUILT, c.LayAside("no border cloth"))
    assert said(state, "Laid aside") == ["This quilt is laid aside: no border cloth"]
    state = go_on(state, record, c.PickUp(), c.LayAside())
    assert said(state, "Laid aside") == ["This quilt is laid aside."]
    state = go_on(state, record, c.PickUp())
    assert said(state, "Laid aside") == said(state, "Done") == []
    state = go_on(state, record, c.MarkDone())
    assert said(state, "Done") == ["This quilt is marked done."]


@pytest.mark.parametrize(
    ("n", "waits"),
    [(1, "1 four-patch waits."), (2, "2 four-patches wait.")],
)
def test_one_waits_and_two_wait(n: int, waits: str) -> None:
    small = a_quilt(pieces=8, rows=1, columns=4)
    state, _ = play(small, c.Count("pair", 4), c.Count("sew", n), c.ChooseStage("press"))
    assert said(state, "Next") == [
        f"Press (at the iron): {waits}",
        "2 pressed four-patches to go.",
    ]


def test_what_proved_the_seam_is_the_later_of_the_tape_and_the_note() -> None:
    written = c.RecordSettings(Settings(foot="1/4 in", proof="three strips"))
    state, record = play(QUILT, written)
    assert said(state, "Tested by") == ["three strips (24 days ago)"]
    state = go_on(state, record, c.Measure("strips:3:3/2", (Fraction(7, 2),)))
    assert said(state, "Tested by") == [
        "3 strips of 1 1/2 in side by side measured 3 1/2 in (24 days ago)"
    ]
    state = go_on(state, record, written)
    assert said(state, "Tested by") == ["three strips (24 days ago)"]
    state, _ = play(QUILT, c.RecordSettings(Settings(machine="old one", foot="1/4 in")))
    assert said(state, "Tested by") == ["Nothing. Sew three strips and measure before you go on."]
    assert said(state, "Machine") == ["old one, foot 1/4 in"]


def test_what_was_spoiled_is_told_of_the_last_evening_or_while_the_quilt_is_short_for_it() -> None:
    spoiled = ["1 square: a hole (24 days ago)"]
    state, record = play(a_quilt(pieces=48, rows=4, columns=5), c.Spoil("square", 1, "a hole"))
    assert said(state, "Spoiled") == spoiled
    state = go_on(state, record, c.CloseSession(), c.Count("pair"))
    assert said(state, "Spoiled") == []
    state = go_on(state, record, c.ChangeTarget(9, 9))
    assert said(state, "Spoiled") == spoiled


def test_what_was_only_unpicked_is_not_said_as_a_count_below_nothing() -> None:
    state, record = play(QUILT, *everything(QUILT, "sew"), c.CloseSession({"machine": "yes"}))
    state = go_on(state, record, c.Unpick("sew", 2), at=EVENING + timedelta(days=3))
    assert "-" not in said(state, "Last time")[0]
    assert "2 unpicked at sew." in said(state, "Last time")


@pytest.mark.parametrize(
    ("since", "away"), [(HOUR, False), (AWAY - HOUR, False), (AWAY, True), (10 * AWAY, True)]
)
def test_a_day_without_a_word_is_away(since: timedelta, away: bool) -> None:
    state, record = play(QUILT, c.Count("pair"), c.CloseSession())
    assert was_away(state, record[-1].event.at + since) is away


def test_who_sat_down_again_is_not_away_before_the_first_count() -> None:
    state, record = play(QUILT, c.Count("pair"), c.CloseSession())
    state = go_on(state, record, c.WriteNote("back again"), at=WEEKS_LATER)
    assert not was_away(state, WEEKS_LATER + MINUTE)


def test_a_quilt_not_begun_says_so() -> None:
    assert was_away(opening(QUILT), EVENING)
    assert said(opening(QUILT), "Last time") == ["Not begun yet."]


def test_in_hand_is_the_stage_chosen_until_it_is_counted_then_the_one_suggested() -> None:
    state, record = play(QUILT, c.Count("pair", 20), c.ChooseStage("press"))
    assert in_hand(state, plan(state)).line.stage.id == "press"
    state = go_on(state, record, c.Count("sew", 10))
    assert in_hand(state, plan(state)).line.stage.id == "press"
    state = go_on(state, record, c.Count("press", 10))
    assert in_hand(state, plan(state)).line.stage.id == "stack"


def test_every_suggestion_can_be_in_hand_to_the_very_end() -> None:
    state, record = play(QUILT)
    which = []
    while (suggestion := plan(state).suggestion) is not None:
        hand = in_hand(state, plan(state))
        assert hand.line.stage.id == suggestion.stage
        assert hand.takes
        # What is done on the top makes nothing new; every other stage says what it makes.
        assert bool(hand.makes) == (hand.line.stage.id != "add-borders")
        which.append(hand.which)
        state = go_on(state, record, c.Count(suggestion.stage))
    assert plan(state).complete
    assert in_hand(state, plan(state)).which == ""
    assert [text.split(",")[0] for text in which[-8:]] == [
        f"Border “plain”: edge {side} of 4" for side in (1, 2, 3, 4, 1, 2, 3, 4)
    ]


@pytest.mark.parametrize(
    ("corners", "edges"),
    [
        ("sides first", ["the two sides first"] * 2 + ["now the top and bottom edges"] * 2),
        ("ends first", ["the top and bottom edges first"] * 2 + ["now the two sides"] * 2),
        ("mitred", ["to one seam allowance from each corner; the corners are sewn last"] * 4),
    ],
)
def test_borders_go_on_in_the_order_their_corners_turn(corners: str, edges: list[str]) -> None:
    quilt = replace(QUILT, choices=replace(QUILT.choices, corners=corners))
    state, record = play(quilt)
    said = []
    while (suggestion := plan(state).suggestion) is not None:
        if suggestion.stage == "add-borders":
            said.append(in_hand(state, plan(state)).which.partition(", ")[2].rstrip("."))
        state = go_on(state, record, c.Count(suggestion.stage))
    assert said == edges * len(quilt.borders)


def test_steps_of_the_top_are_numbered_as_they_are_done() -> None:
    quilt = a_quilt(pieces=16, rows=2, columns=2, finishing=("layer", "quilt", "bind"))
    state, record = play(quilt)
    said = []
    while (suggestion := plan(state).suggestion) is not None:
        hand = in_hand(state, plan(state))
        if hand.line.stage.id not in [stage.id for stage in quilt.method.stages]:
            said.append((hand.takes, hand.makes, hand.which))
        state = go_on(state, record, c.Count(suggestion.stage))
    assert said == [
        ("2 units", "1 row", "Row 1: press its seams towards where the row begins."),
        ("2 units", "1 row", "Row 2: press its seams away from where the row begins."),
        ("two rows, or rows already joined", "one wider piece of the top", "Join R1 to R2."),
        ("the top", "", "Sandwich 1 of 1."),
        ("the top", "", "Row 1 of 2."),
        ("the top", "", "Row 2 of 2."),
        ("the top", "", "Side 1 of 4."),
        ("the top", "", "Side 2 of 4."),
        ("the top", "", "Side 3 of 4."),
        ("the top", "", "Side 4 of 4."),
    ]


def test_with_all_done_the_last_stage_counted_or_else_the_last_of_all_is_in_hand() -> None:
    quilt = a_quilt(pieces=16, rows=2, columns=2, finishing=("bind",))
    state, _ = play(quilt, *whole_top(quilt), c.Count("bind", 4))
    assert plan(state).suggestion is None
    counted_last = replace(state, chosen="sew-rows")
    assert in_hand(counted_last, plan(counted_last)).line.stage.id == "sew-rows"
    nothing_chosen = replace(state, chosen=None)
    assert in_hand(nothing_chosen, plan(nothing_chosen)).line.stage.id == "bind"
