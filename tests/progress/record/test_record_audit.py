"""A record from outside is believed only if it could have happened."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

import pytest
from msgspec.structs import replace

from sewalong.progress.record.auditing.audit import audit, reckonable
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.events.sessions import NO_SESSION
from sewalong.quilt.json_codec import quilt_to_dict
from tests.progress import every_act as c
from tests.progress.building import EVENING, a_quilt, everything, play, suited, whole_top

QUILT = a_quilt(pieces=40, rows=4, columns=5, borders=1)


def record_of(*events: e.Event) -> list[Recorded]:
    return [Recorded(seq, event) for seq, event in enumerate(events, start=1)]


def counted(stage: str, n: int) -> e.Event:
    return e.Counted(at=EVENING, session=NO_SESSION, stage=stage, n=n)


def test_every_record_made_here_is_believed() -> None:
    _, record = play(
        QUILT,
        *whole_top(QUILT),
        c.Unpick("add-borders", 4),
        c.Unpick("join-rows", 3),
        c.Undo(),
        c.Undo(),
        c.Recount("square", 4),
        c.Undo(),
        c.Mention("short"),
        c.ChooseStage("sew-rows"),
        c.Undo(),
        c.MarkDone(),
    )
    assert audit(QUILT, record) is None
    assert audit(QUILT, []) is None


def test_what_was_answered_for_is_not_undone_with_what_came_before() -> None:
    _, record = play(QUILT, *everything(QUILT, "press"), c.Answer("iron", "yes"), c.Undo())
    assert audit(QUILT, record) is None


def test_an_event_says_two_hundred_things_at_most() -> None:
    def read(things: int) -> str | None:
        # The number of the session is one of them.
        hazards = tuple(str(n) for n in range(things - 1))
        return audit(
            QUILT, record_of(e.CautionRead(at=EVENING, session=NO_SESSION, hazards=hazards))
        )

    assert (read(200), read(201)) == (None, "event 1 says more than 200 things")


@pytest.mark.parametrize(("year", "can_be"), [(1899, 0), (1900, 1), (8999, 1), (9000, 0)])
def test_a_year_from_1900_to_8999_can_be_reckoned_with(year: int, can_be: bool) -> None:
    at = EVENING.replace(year=year)
    assert reckonable(at) is bool(can_be)
    note = e.Noted(at=at, session=NO_SESSION, text="x")
    assert (audit(QUILT, record_of(note)) is None) is bool(can_be)


def test_a_time_without_its_offset_cannot_be_reckoned_with() -> None:
    assert not reckonable(datetime(2023, 11, 4, 19, 0))


def test_a_changed_target_may_bring_the_stage_that_joins_rows() -> None:
    runner = a_quilt(pieces=40, rows=1, columns=5)
    _, record = play(
        runner, c.ChangeTarget(4, 5), *whole_top(a_quilt(pieces=40, rows=4, columns=5))
    )
    assert audit(runner, record) is None


def opened() -> e.Event:
    return e.SessionOpened(at=EVENING, session=1)


TROUBLES: list[tuple[Sequence[e.Event], str]] = [
    (
        [counted("knit", 1)],
        "event 1 (counted) cannot have happened. This quilt has no stage “knit”",
    ),
    ([e.StageChosen(at=EVENING, session=NO_SESSION, stage="knit")], "no stage “knit”"),
    ([counted("pair", 0)], "event 1 (counted) cannot have happened. Give a number from 1 to 9999"),
    ([counted("pair", 21)], "event 1 (counted) cannot have happened. 21 pairs at pair cannot be"),
    (
        [e.Unpicked(at=EVENING, session=NO_SESSION, stage="sew", n=-1)],
        "event 1 (unpicked) cannot have happened. Give a number from 1 to 9999",
    ),
    (
        [
            e.Found(at=EVENING, session=NO_SESSION, pile="pair", n=5, how="found"),
            e.Unpicked(at=EVENING, session=NO_SESSION, stage="pair", n=5),
        ],
        "event 2 (unpicked) cannot have happened. No pair from pair can be taken apart",
    ),
    (
        [e.Found(at=EVENING, session=NO_SESSION, pile="wool", n=1, how="found")],
        "has no pile “wool”",
    ),
    (
        [e.Found(at=EVENING, session=NO_SESSION, pile="square", n=0, how="found")],
        "event 1 (found) cannot have happened. Give a number",
    ),
    (
        [e.Spoiled(at=EVENING, session=NO_SESSION, pile="pair", n=1, reason="x")],
        "Only 0 pairs lie there",
    ),
    ([e.PutAway(at=EVENING, session=NO_SESSION, pile="wool", place="tin")], "has no pile “wool”"),
    (
        [e.Recounted(at=EVENING, session=NO_SESSION, pile="square", recorded=39, counted=38)],
        "The record says 40, not 39",
    ),
    (
        [e.Recounted(at=EVENING, session=NO_SESSION, pile="square", recorded=40, counted=-1)],
        "A recount is a number from 0 to 9999",
    ),
    (
        [e.TargetChanged(at=EVENING, session=NO_SESSION, rows=0, columns=3)],
        "Rows and columns are numbers from 1 to 200",
    ),
    (
        [e.Undone(at=EVENING, session=NO_SESSION, of=1)],
        "event 1 undoes number 1, which was not the last",
    ),
    (
        [counted("pair", 1), counted("pair", 1), e.Undone(at=EVENING, session=NO_SESSION, of=1)],
        "event 3 undoes number 1, which was not the last",
    ),
    ([opened(), e.Undone(at=EVENING, session=1, of=1)], "event 2 undoes number 1"),
    ([opened(), e.Redone(at=EVENING, session=1, of=1)], "event 2 puts back number 1"),
    ([counted("join-rows", 4)], "event 1 (counted) cannot have happened. 4 seams cannot be"),
    ([counted("join-rows", 1)], "event 1 (counted) cannot have happened. 1 seam cannot be"),
    (
        [
            e.TargetChanged(at=EVENING, session=NO_SESSION, rows=1, columns=5),
            counted("join-rows", 1),
        ],
        "This quilt has no stage “join-rows”",
    ),
    ([counted("pair", 10**40)], "event 1 has a number in it that cannot be: far too many"),
    ([e.Noted(at=EVENING, session=1, text="x")], "belongs to session 1, which was not open"),
    ([opened(), opened()], "Session 1 is opened out of turn"),
    ([e.SessionOpened(at=EVENING, session=2)], "Session 2 is opened out of turn"),
    ([e.SessionClosed(at=EVENING, session=NO_SESSION, ended=EVENING)], "No session is open"),
    ([e.Noted(at=EVENING, session=NO_SESSION, text="x" * 2001)], "has a text that cannot be kept"),
    ([e.Noted(at=EVENING.replace(year=1066), session=NO_SESSION, text="x")], "the year 1066"),
]


@pytest.mark.parametrize(("events", "said"), TROUBLES, ids=[said[:40] for _, said in TROUBLES])
def test_what_could_not_have_happened_is_named_by_its_event(
    events: Sequence[e.Event], said: str
) -> None:
    trouble = audit(QUILT, record_of(*events))
    assert trouble is not None
    assert said in trouble


def test_events_are_numbered_without_gaps() -> None:
    _, record = play(QUILT, c.Count("pair", 2), c.Count("pair", 3))
    assert audit(QUILT, [record[0], record[2]]) == "event 2 carries the number 3"


def test_a_time_has_its_offset() -> None:
    naive = datetime(2023, 11, 4, 19, 0)
    event = e.SessionOpened(at=naive, session=1)
    assert audit(QUILT, record_of(event)) == "event 1 has a time without its offset"


def test_more_undone_than_there_is_to_undo() -> None:
    _, record = play(QUILT, c.Count("pair", 2), c.Undo())
    again = [*record, Recorded(len(record) + 1, e.Undone(at=EVENING, session=1, of=2))]
    assert audit(QUILT, again) == "event 4 undoes number 2, which was not the last"


def test_a_plan_this_version_cannot_work_is_said_first() -> None:
    unknown = replace(QUILT, method_id="knitting")
    trouble = audit(unknown, [])
    assert trouble is not None
    assert trouble.startswith("its plan cannot be worked")
    odd = replace(QUILT, starts=(replace(QUILT.starts[0], pile="wool"),))
    assert audit(odd, []) == "it begins with a pile “wool”, and its method does not"


def test_a_changed_plan_begins_with_the_piles_of_its_method_in_their_order() -> None:
    quilt = suited(a_quilt("flying-geese-four"))
    now = quilt_to_dict(quilt)["starts"]
    assert isinstance(now, list)
    large, small = now
    more = {**small, "pile": "third"}
    for other in ([large], [small, large], [large, more], [large, small, more]):
        changed = e.PlanChanged(
            at=EVENING, session=NO_SESSION, was={"starts": now}, now={"starts": other}
        )
        assert "are those of its method" in (audit(quilt, record_of(changed)) or "")
