"""A web left inside a pass and taken up again: where it stands, where to stop, what to look at."""

from __future__ import annotations

import re
from datetime import timedelta

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.joining.web import before_the_seam, rows_hold, web_begun_facts
from sewalong.progress.pace.break_points import at_a_chains_end
from sewalong.progress.pace.supplies.wear_choices import WearChoices
from sewalong.progress.pace.tonight import tonight
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import units_in_web
from sewalong.progress.resuming.about_stage import about_stage
from sewalong.progress.resuming.coming_back import coming_back, in_lines
from sewalong.progress.resuming.interruption import after_interruption
from sewalong.progress.resuming.notice import notice
from sewalong.progress.resuming.pause_note import pause_note
from sewalong.progress.resuming.pick_up import pick_up
from sewalong.progress.resuming.stop_advice import stop_here
from sewalong.quilt.web import WEB
from tests.progress import every_act as c
from tests.progress.building import MINUTE, Record, a_quilt, all_units, go_on, play

QUILT = replace(a_quilt("plain-squares", 81), joined=WEB)
WEEKS = timedelta(days=40)
LEAVE = c.CloseSession(dict.fromkeys(("iron", "blade", "machine", "pins"), "yes"))


def after(short: int, *then: c.Act) -> tuple[State, Record]:
    """Nine rows of nine, with so many of the 72 short seams sewn one by one."""
    counts = [c.Count("start-web" if n < 9 else "sew-web", 1) for n in range(short)]
    return play(QUILT, *all_units(QUILT), *counts, *then)


@pytest.mark.parametrize(
    ("short", "said"),
    [
        (0, ""),
        (
            5,
            "A web, 0 of 8 passes sewn. Pass 1 of 8: next row 6, columns 1 and 2. Rows 1 to 5 hold 2 units, rows 6 to 9 "
            "hold none yet. Leave the threads between the rows uncut.",
        ),
        (
            9,
            "A web, 1 of 8 passes sewn. Pass 2 of 8: next column 3, row 1. Leave the threads between "
            "the rows uncut.",
        ),
        (
            28,
            "A web, 3 of 8 passes sewn. Pass 4 of 8: next column 5, row 2. Row 1 holds 5 units, rows 2 to 9 hold 4. "
            "Leave the threads between the rows uncut.",
        ),
        (
            32,
            "A web, 3 of 8 passes sewn. Pass 4 of 8: next column 5, row 6. Rows 1 to 5 hold 5 units, rows 6 to 9 hold 4. "
            "Leave the threads between the rows uncut.",
        ),
        (
            71,
            "A web, 7 of 8 passes sewn. Pass 8 of 8: next column 9, row 9. Rows 1 to 8 hold 9 units, row 9 holds 8. "
            "Leave the threads between the rows uncut.",
        ),
        (72, ""),
    ],
)
def test_where_a_web_stands_is_said_as_it_lies_on_the_table(short: int, said: str) -> None:
    assert " ".join(web_begun_facts(after(short)[0])) == said


@pytest.mark.parametrize("short", range(1, 72))
def test_what_the_rows_are_said_to_hold_is_what_they_hold(short: int) -> None:
    state, _ = after(short)
    units, held = units_in_web(state), rows_hold(state)
    told: dict[int, str] = {}
    for first, last, n in re.findall(r"ows? (\d)(?: (?:to|and) (\d))? holds? (\d|none yet)", held):
        told |= dict.fromkeys(range(int(first), int(last or first) + 1), n)
    whole_pass = len(set(units)) == 1
    assert told == (
        {} if whole_pass else {row: str(n or "none yet") for row, n in enumerate(units, 1)}
    )


def test_after_weeks_it_goes_on_inside_the_pass() -> None:
    put = (c.PutPileAway("web-row", "blue box"), c.PutPileAway("unit", "tin"))
    state, record = after(32, *put, LEAVE)
    back = coming_back(state, record, record[-1].event.at + WEEKS)
    assert back.pick_up.sentence == (
        "Pick up the web – blue box – and the 40 units – tin – and sew web: pass 4 of 8, next column "
        "5, row 6."
    )
    assert "Pass 4 of 8: next column 5, row 6." in back.begun
    # What hangs on the web lies where the web lies, and is told with it alone.
    assert [row.pile for row in back.piles] == ["unit", "web-row"]
    lines = in_lines(back)
    assert any(line == "Begun: A web, 3 of 8 passes sewn." for line in lines)
    assert not any("units added" in line for line in lines)


def test_what_is_picked_up_is_the_web_until_its_rows_are_joined() -> None:
    quilt = replace(a_quilt("plain-squares", 9, 3, 3, borders=1), joined=WEB)
    before = (*all_units(quilt), c.Count("start-web", 3), c.Count("sew-web", 3))
    said = []
    for joints in range(3):
        state, _ = play(quilt, *before, *(c.JoinRows(n + 1, n + 2) for n in range(joints)))
        said.append(pick_up(state, plan(state)).sentence)
    assert said == [
        "Pick up the web and join R1 to R2.",
        "Pick up the rows and join R2 to R3: rows 1 and 2 to row 3.",
        "Pick up the top and add borders.",
    ]


def test_putting_away_asks_for_the_web_once() -> None:
    state, record = after(32)
    note = pause_note(state, record[-1].event.at + MINUTE, plan(state))
    assert [one.pile for one in note.piles] == ["unit", "web-row"]
    assert ("Begun", " ".join(web_begun_facts(state))) in note.lines


def test_the_end_of_a_pass_is_a_good_place_to_stop_and_the_end_of_this_one_is_offered() -> None:
    state, _ = after(27)
    here = stop_here(state, plan(state))
    assert here.good
    assert here.why == "Good: a pass is sewn. Leave the threads between the rows uncut."
    state, _ = after(32)
    here = stop_here(state, plan(state))
    assert (here.good, here.stage, here.n) == (False, "sew-web", 4)
    assert here.why == "4 seams are still to sew of pass 4."
    assert here.offer == "Go on to the end of the pass: 4 seams, about 6 minutes by a guess?"


def test_where_units_do_not_reach_to_the_end_of_a_pass_that_is_not_offered() -> None:
    """32 seams hold 18 units and 23 more: of 81 there are 40, and with 38 spoiled 2 for 4 seams."""
    state, _ = after(32, c.Spoil(QUILT.method.unit, 38, "faded"))
    here = stop_here(state, plan(state))
    assert (here.good, here.stage, here.n) == (False, "sew-web", 2)
    assert here.why == "4 seams are still to sew of pass 4."
    assert here.offer.startswith("Go on as far as there are units: 2 seams, about 3 minutes")


def test_a_quiet_word_fits_between_passes_and_not_within_one() -> None:
    for short, fits in ((26, False), (27, True), (28, False), (71, False), (72, True)):
        state, _ = after(short)
        assert at_a_chains_end(state, plan(state)) is fits


def test_at_the_first_and_the_last_of_a_pass_it_is_asked_whose_unit_it_is() -> None:
    """A column picked up the wrong way round begins with the last row's unit: common practice is to
    compare both ends."""
    asked = {short: before_the_seam(after(short)[0]) for short in range(73)}
    assert [short for short, said in asked.items() if said] == sorted(
        [*range(0, 72, 9), *range(8, 72, 9)]
    )
    assert "is the first unit of column 5's pile row 1's" in asked[27]
    assert "does row 9 hold as many units as row 1" in asked[35]
    state, record = after(36, LEAVE)
    state = go_on(state, record, c.OpenSession(), c.Count("sew-web", 9))
    now = plan(state)
    at, hand = record[-1].event.at, in_hand(state, now)
    said = notice(state, record, now, hand, at, pause="", wear=WearChoices())
    assert said is not None
    while said.mention:
        state = go_on(state, record, c.Mention(said.mention))
        at = record[-1].event.at
        said = notice(state, record, plan(state), hand, at, pause="", wear=WearChoices())
        assert said is not None
    assert (said.kind, said.text) == ("look", before_the_seam(state))


def test_after_an_interruption_two_rows_are_counted() -> None:
    state, record = after(32)
    said = after_interruption(state, record[-1].event.at + timedelta(minutes=20))
    assert said == (
        "Before you sew on: count two rows. Rows 1 to 5 hold 5 units, rows 6 to 9 hold 4. Pass 4 of "
        "8: next column 5, row 6."
    )
    state, record = after(27)
    said = after_interruption(state, record[-1].event.at + timedelta(minutes=20))
    assert said.startswith("Before you sew on: lay the top unit on the last one sewn.")


def test_an_evening_is_filled_with_seams_of_the_web() -> None:
    state, record = after(9)
    evening = tonight(state, record, record[-1].event.at, 30)
    assert [(step.stage, step.n > 0) for step in evening.steps] == [("sew-web", True)]


def test_all_there_is_to_know_at_the_web_and_its_long_seams() -> None:
    state, record = after(9)
    stage = {one.id: one for one in state.route.stages}
    told = about_stage(state, record, stage["sew-web"])
    assert (
        "Look",
        "Is the first unit of the pile row 1's, and the last one the last row's?",
    ) in told
    assert any(label == "Press" and "Odd rows" in text for label, text in told)
    # It is a web already: no other way is offered.
    assert "Another way" not in dict(told)
    told = about_stage(state, record, stage["join-rows"])
    assert ("Look", "Which end is up: is row 1 the first?") in told
    assert not any("tag" in text for label, text in told if label == "Look")
