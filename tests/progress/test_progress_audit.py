"""A record from outside is believed only if it could have happened."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

import pytest
from msgspec.structs import replace

from sewalong.progress.acts import commands as c
from sewalong.progress.acts.audit import audit
from sewalong.progress.acts.decide import NO_SESSION
from sewalong.progress.record import events as e
from sewalong.progress.record.events import Recorded
from tests.progress.building import EVENING, a_quilt, play, whole_top

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
        c.MarkDone(),
    )
    assert audit(QUILT, record) is None
    assert audit(QUILT, []) is None


def test_a_changed_target_may_bring_the_stage_that_joins_rows() -> None:
    runner = a_quilt(pieces=40, rows=1, columns=5)
    _, record = play(
        runner, c.ChangeTarget(4, 5), *whole_top(a_quilt(pieces=40, rows=4, columns=5))
    )
    assert audit(runner, record) is None


def opened() -> e.Event:
    return e.SessionOpened(at=EVENING, session=1)


TROUBLES: list[tuple[Sequence[e.Event], str]] = [
    ([counted("knit", 1)], "event 1 names a stage “knit” this method has not"),
    ([e.StageChosen(at=EVENING, session=NO_SESSION, stage="knit")], "names a stage “knit”"),
    ([counted("pair", 0)], "event 1 counts 0; it must be from 1 to 9999"),
    ([counted("pair", 21)], "event 1 takes more squares than there were"),
    (
        [e.Unpicked(at=EVENING, session=NO_SESSION, stage="sew", n=-1)],
        "event 1 counts -1; it must be from 1 to 9999",
    ),
    (
        [
            e.Found(at=EVENING, session=NO_SESSION, pile="pair", n=5, how="found"),
            e.Unpicked(at=EVENING, session=NO_SESSION, stage="pair", n=5),
        ],
        "event 2 takes apart more than was done at pair",
    ),
    (
        [e.Found(at=EVENING, session=NO_SESSION, pile="wool", n=1, how="found")],
        "names a pile “wool”",
    ),
    (
        [e.Found(at=EVENING, session=NO_SESSION, pile="square", n=0, how="found")],
        "event 1 counts 0;",
    ),
    (
        [e.Spoiled(at=EVENING, session=NO_SESSION, pile="pair", n=1, reason="x")],
        "takes more pairs than",
    ),
    ([e.PutAway(at=EVENING, session=NO_SESSION, pile="wool", place="tin")], "names a pile “wool”"),
    (
        [e.Recounted(at=EVENING, session=NO_SESSION, pile="square", recorded=39, counted=38)],
        "event 1 recounts a pile of 40 as if it were 39",
    ),
    (
        [e.Recounted(at=EVENING, session=NO_SESSION, pile="square", recorded=40, counted=-1)],
        "event 1 recounts -1; it must be from 0 to 9999",
    ),
    (
        [e.TargetChanged(at=EVENING, session=NO_SESSION, rows=0, columns=3)],
        "sets a target of 0 × 3",
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
    ([counted("join-rows", 4)], "event 1 does more at join rows than there is to do"),
    ([counted("join-rows", 1)], "event 1 leaves more seams between rows than the rows have"),
    (
        [
            e.TargetChanged(at=EVENING, session=NO_SESSION, rows=1, columns=5),
            counted("join-rows", 1),
        ],
        "event 2 counts at join-rows, which there was not at that target",
    ),
    ([counted("pair", 10**40)], "event 1 counts far too many"),
    ([e.Noted(at=EVENING, session=1, text="x")], "belongs to session 1, which was not open"),
    ([opened(), opened()], "event 2 opens session 1 out of turn"),
    ([e.SessionClosed(at=EVENING, session=NO_SESSION, ended=EVENING)], "closes a session"),
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
