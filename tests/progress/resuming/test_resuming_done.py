"""What a quilt that is done came to."""

from __future__ import annotations

from datetime import timedelta

from sewalong.progress.plan.plan import plan
from sewalong.progress.record.state import State
from sewalong.progress.resuming.done_facts import done_facts, is_done
from tests.progress import every_act as c
from tests.progress.building import EVENING, Record, a_quilt, all_units, go_on, opening, play

QUILT = a_quilt("plain-squares", 14, 3, 4, borders=1)
ALL = (
    *all_units(QUILT),
    c.Count("sew-rows", 3),
    c.Count("join-rows", 2),
    c.Count("add-borders", 4),
)


YES = dict.fromkeys(("iron", "blade", "machine", "pins"), "yes")


def told(state: State) -> dict[str, str]:
    return dict(done_facts(state, plan(state), EVENING + timedelta(days=90)))


def sewn_on_two_evenings(*notes: str) -> State:
    """Each from the first count to the last two hours, three weeks apart."""
    state, record = opening(QUILT), Record(QUILT)
    first = [c.OpenSession(), *all_units(QUILT), *(c.WriteNote(note) for note in notes[:1])]
    two_hours = timedelta(hours=2) / len(first)
    state = go_on(state, record, *first, c.CloseSession(YES, ""), at=EVENING, every=two_hours)
    second = [c.OpenSession(), *ALL[len(first) - 1 - len(notes[:1]) :]]
    second += [c.WriteNote(note) for note in notes[1:]]
    two_hours = timedelta(hours=2) / len(second)
    later = EVENING + timedelta(days=21)
    return go_on(state, record, *second, c.CloseSession(YES, ""), at=later, every=two_hours)


def test_units_sessions_hours_dates_and_the_first_and_the_last_note() -> None:
    state = sewn_on_two_evenings("cut at the window", "the grey was short", "given away")
    assert told(state) == {
        "The top": "3 × 4, 12 units.",
        "": "14 units were made.",
        "Sewn": "2 sessions, 4 hours in all.",
        "Dates": "4 Nov 2023 to 25 Nov 2023.",
        "First note": "cut at the window",
        "Last note": "given away",
    }


def test_one_note_is_said_once_and_none_not_at_all() -> None:
    assert told(sewn_on_two_evenings("only this"))["Note"] == "only this"
    assert not {"Note", "First note", "Last note"} & told(sewn_on_two_evenings()).keys()


def test_done_is_what_is_marked_so_or_has_nothing_left_to_do() -> None:
    for acts, done in (
        (ALL, True),
        (ALL[:-1], False),
        ((*ALL, c.MarkDone()), True),
        ((*ALL[:2], c.MarkDone()), True),
        ((*ALL, c.LayAside("")), False),
    ):
        state, _ = play(QUILT, *acts)
        assert is_done(state, plan(state)) is done, acts


def test_a_quilt_in_which_nothing_was_counted_has_no_sessions() -> None:
    assert set(told(opening(QUILT))) == {"The top"}
