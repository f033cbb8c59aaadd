"""Coming back: one sentence to begin with, the worst concerns, her own words, places as written."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

import pytest
from msgspec.structs import replace

from sewalong.progress.plan.plan import plan
from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.fold import fold
from sewalong.progress.record.route import ROW
from sewalong.progress.record.settings import Settings
from sewalong.progress.resuming.coming_back import ComingBack, coming_back, facts, in_lines
from sewalong.progress.resuming.concerns import Kind
from sewalong.progress.resuming.own_words import own_words
from sewalong.progress.resuming.pause_note import pause_note
from tests.progress import every_act as c
from tests.progress.building import (
    EVENING,
    MINUTE,
    Record,
    a_quilt,
    all_units,
    everything,
    go_on,
    play,
    whole_top,
)

QUILT = a_quilt(pieces=40, rows=4, columns=5, borders=1)
DAY = timedelta(days=1)
LATER = EVENING + 24 * DAY
ALL_YES = dict.fromkeys(("iron", "blade", "machine", "pins"), "yes")


def back(*acts: c.Act) -> ComingBack:
    state, record = play(QUILT, *acts)
    return coming_back(state, record, LATER)


# -- what to pick up, from where, and do what ------------------------------------------------------

PLACES = (
    "shoe box, shelf",
    "clipped in tens, on the hook",
    "in the lid, lines up",
    "[red] tin – lid off",
    "box.",
)


@pytest.mark.parametrize("place", PLACES)
def test_one_sentence_says_what_from_where_and_do_what(place: str) -> None:
    found = back(
        *everything(QUILT, "press", make=3),
        c.PutPileAway("four-patch", place),
        c.CloseSession(ALL_YES),
    )
    assert found.pick_up.sentence == f"Pick up the 7 four-patches – {place} – and press."
    assert found.pick_up.to_go == "7 pressed four-patches to go."
    assert (found.pick_up.stage, found.pick_up.station) == ("press", "iron")


@pytest.mark.parametrize("place", PLACES)
def test_a_place_reads_as_she_wrote_it(place: str) -> None:
    found = back(c.Count("pair", 20), c.Count("sew", 9), c.PutPileAway("pair", place))
    (row,) = [row for row in found.piles if row.pile == "pair"]
    assert (row.n, row.noun, row.place) == (2, "pairs", place)
    assert f"Put away: 2 pairs: {place}" in in_lines(found)
    assert f"in {place}" not in "\n".join(in_lines(found))
    assert f"in: {place}" not in "\n".join(in_lines(found))


def test_where_nobody_wrote_a_place_down_none_is_said() -> None:
    found = back(*everything(QUILT, "press", make=9), c.CloseSession(ALL_YES))
    assert found.pick_up.sentence == "Pick up the four-patch and press."
    assert found.pick_up.piles == ()
    assert {"four-patch", "pressed-four-patch"} <= {row.pile for row in found.other_piles}


def test_the_pile_that_is_picked_up_is_not_told_again_among_the_others() -> None:
    found = back(c.Count("pair", 4), c.PutPileAway("pair", "tin"), c.ChooseStage("sew"))
    assert "pair" not in {row.pile for row in found.other_piles}
    assert {row.pile for row in found.other_piles} == {"square"}


def test_rows_and_the_top_lie_where_the_rows_were_put() -> None:
    quilt = a_quilt(pieces=40, rows=4, columns=5, borders=1)
    state, record = play(quilt, *all_units(quilt), c.Count("sew-rows", 4))
    state = go_on(state, record, c.PutPileAway(ROW.id, "over the chair, tags on"))
    said = coming_back(state, record, LATER).pick_up.sentence
    assert said == "Pick up the 4 rows – over the chair, tags on – and join R1 to R2."
    state = go_on(state, record, c.Count("join-rows", 3))
    said = coming_back(state, record, LATER).pick_up.sentence
    assert said == "Pick up the top – over the chair, tags on – and add borders."


def test_a_stage_of_two_piles_tells_both() -> None:
    quilt = a_quilt("flying-geese-four", 40, 2, 2)
    state, record = play(quilt, c.PutPileAway("small-square", "tin"))
    said = coming_back(state, record, LATER).pick_up.sentence
    assert said == (
        "Pick up the 40 large squares and the 40 small squares – tin – and lay two corners."
    )


def test_with_nothing_to_pick_up_it_says_why() -> None:
    assert back(c.LayAside("no border cloth")).pick_up.sentence == (
        "This quilt is laid aside: no border cloth"
    )
    assert back(c.MarkDone()).pick_up.sentence == "This quilt is marked done."
    done = back(*whole_top(QUILT)).pick_up
    assert done.sentence == "Every stage is done. Mark the quilt done, or change the target."
    assert (done.stage, done.to_go) == ("", "")


@pytest.mark.parametrize(
    ("days", "away"), [(0, ""), (1, "1 day away"), (24, "24 days away"), (90, "3 months away")]
)
def test_how_long_she_was_away(days: int, away: str) -> None:
    state, record = play(QUILT, c.Count("pair"), c.CloseSession(ALL_YES))
    assert coming_back(state, record, EVENING + days * DAY + MINUTE).away == away


# -- what was left unsafe --------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("answers", "said"),
    [
        ({"pins": "did not look"}, ["Count the pins: nobody looked last time."]),
        ({"pins": "no"}, ["Count the pins: you said no last time."]),
        ({"iron": "did not look"}, ["See that the iron is off: nobody looked last time."]),
        ({"blade": "no"}, ["See that the blade is closed: you said no last time."]),
        (
            {"pins": "no", "machine": "no", "iron": "no"},
            [
                "See that the iron is off, the machine is off and the pins are counted: "
                "you said no last time."
            ],
        ),
        (
            {"machine": "did not look", "blade": "no"},
            [
                "See that the blade is closed: you said no last time.",
                "See that the machine is off: nobody looked last time.",
            ],
        ),
        ({}, []),
    ],
)
def test_what_was_not_answered_with_yes_is_to_be_seen_to(
    answers: dict[str, str], said: list[str]
) -> None:
    # What is asked about goes by the hazards of the stages; here the whole top was sewn.
    found = back(*whole_top(QUILT), c.CloseSession({**ALL_YES, **answers}))
    assert [one.text for one in found.concerns if one.kind is Kind.LEFT_UNSAFE] == said


def test_an_answer_to_what_nobody_asks_says_nothing() -> None:
    """An archive may hold one; a later sewalong may ask about more."""
    _, record = play(QUILT, *whole_top(QUILT), c.CloseSession(ALL_YES))
    closed = replace(record[-1].event, answers={"kettle": "no", "pins": "perhaps"})
    record[-1] = replace(record[-1], event=closed)
    assert audit(QUILT, record) is None
    found = coming_back(fold(QUILT, record), record, LATER)
    assert [one.text for one in found.concerns if one.kind is Kind.LEFT_UNSAFE] == []


def test_a_session_never_closed_says_what_nobody_asked_about() -> None:
    state, record = play(QUILT, *everything(QUILT, "press"))
    assert coming_back(state, record, record[-1].event.at + MINUTE).concerns == ()
    (concern,) = [
        one for one in coming_back(state, record, LATER).concerns if one.kind is Kind.LEFT_UNSAFE
    ]
    assert concern.text == (
        "See that the iron is off and the machine is off: "
        "that session was never closed, so nobody asked."
    )


# -- the worst first -------------------------------------------------------------------------------


def test_everything_that_is_wrong_is_said_the_worst_first() -> None:
    quilt = a_quilt("stacked-four-patch", 40, 4, 5)
    good, bad = (c.Measure("unit", (Fraction(n, 8),)) for n in (51, 46))
    state, record = play(
        quilt,
        *everything(quilt, "sew-around", make=3),
        good,
        c.Count("sew-around", 2),
        c.Count("cut-twice", 2),
        bad,
        c.Recount("sewn-stack", 1, "missing"),
        c.CloseSession({**ALL_YES, "pins": "no"}),
    )
    kinds = [one.kind for one in coming_back(state, record, LATER).concerns]
    assert kinds == sorted(kinds)
    assert kinds[0] is Kind.LEFT_UNSAFE
    assert {Kind.AT_RISK, Kind.SEAM, Kind.MISSING, Kind.ON_THE_BIAS, Kind.COUNT_FIRST} <= set(kinds)


# -- her own words ---------------------------------------------------------------------------------


def closed_with(words: str) -> ComingBack:
    return back(
        *everything(QUILT, "press", make=3),
        c.PutPileAway("four-patch", "shoe box"),
        c.CloseSession(ALL_YES, words),
    )


@pytest.mark.parametrize(
    "hers",
    [
        "press the other seven",
        "press, but not the blue ones",
        "ask Ida about the border",
        "press the 7 in the bag",
        "don't press",
    ],
)
def test_what_she_wrote_is_hers(hers: str) -> None:
    found = closed_with(hers)
    assert found.own_words == hers
    assert ("You wrote", hers) in tuple(facts(found))


@pytest.mark.parametrize(
    "hers",
    [
        "Press (at the iron): 7 four-patches wait; 8 pressed four-patches to go.",
        "press (at the iron): 3 four-patches wait; 4 pressed four-patches to go",
        "Sew (at the machine): 12 pairs wait; 10 four-patches to go.",
        "Press, at the iron: 7 four-patches wait; 8 pressed four-patches to go.",
        "Press.",
        "press the four-patches",
        "pick up the four-patches, shoe box, and press",
        "  ",
        "",
    ],
)
def test_what_repeats_the_program_is_not_shown_as_hers(hers: str) -> None:
    found = closed_with(hers)
    assert found.own_words == ""
    assert "You wrote" not in dict(facts(found))


@pytest.mark.parametrize("stage", ["sew", "press", "sew-around", "cut-twice"])
def test_what_is_offered_on_closing_is_known_again_whatever_was_done_since(stage: str) -> None:
    state, record = play(QUILT, *everything(QUILT, stage, make=2))
    offered = pause_note(state, record[-1].event.at, plan(state)).next_step
    assert offered
    state = go_on(state, record, c.CloseSession(ALL_YES, offered))
    assert own_words(state, "something else is to be done by now") == ""
    hers = replace(state, sessions=(replace(state.sessions[-1], next_step="mind the cat"),))
    assert own_words(hers, offered) == "mind the cat"


# -- the machine, and what is left -----------------------------------------------------------------


@pytest.mark.parametrize(("stage", "wanted"), [("sew", True), ("press", False)])
def test_the_machine_stands_there_where_it_is_wanted_next(stage: str, wanted: bool) -> None:
    found = back(
        c.RecordSettings(Settings(foot="1/4 in", proof="three strips")),
        *everything(QUILT, stage, make=2),
        c.CloseSession(ALL_YES),
    )
    assert found.pick_up.station == ("machine" if wanted else "iron")
    assert found.at_machine is wanted
    assert found.machine == (
        ("Machine", "foot 1/4 in"),
        ("Tested by", "three strips (24 days ago)"),
    )


def test_what_is_left_is_each_stage_with_something_to_do() -> None:
    state, record = play(QUILT, *everything(QUILT, "press", make=3))
    found = coming_back(state, record, LATER)
    lines = plan(state).lines
    assert found.left == tuple((line.stage.label, line.to_do) for line in lines if line.to_do)
    assert found.left[0] == ("press", 7)
    assert found.left[-1] == ("add borders", 4)


def test_every_line_is_one_fact() -> None:
    record: Record
    state, record = play(QUILT, *whole_top(QUILT), c.CloseSession(ALL_YES, "bind it in rust"))
    lines = in_lines(coming_back(state, record, LATER))
    assert all(line and "\n" not in line for line in lines)
    assert lines[0].startswith("Next: Every stage is done.")
