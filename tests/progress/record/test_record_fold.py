"""The fold: carrying on gives what folding anew gives, whatever was done and undone."""

from __future__ import annotations

from datetime import timedelta

from sewalong.progress.measuring.proof import proof
from sewalong.progress.record.fold import carry, fold
from sewalong.progress.record.history import History
from sewalong.progress.record.tally import opening
from tests.progress import every_act as c
from tests.progress.building import (
    EVENING,
    MINUTE,
    a_quilt,
    do,
    everything,
    go_on,
    play,
)

QUILT = a_quilt(pieces=40, rows=4, columns=5)


def test_a_history_carried_on_is_that_of_the_whole_record() -> None:
    _, record = play(
        QUILT,
        c.Count("pair", 8),
        c.Count("sew", 2),
        c.PutPileAway("pair", "tin", 3),
        c.Undo(),
        c.Undo(),
        c.WriteNote("so far"),
    )
    for cut in range(len(record) + 1):
        carried = History(QUILT, record[:cut])
        carried.add(record[cut:])
        assert carried.state() == fold(QUILT, record)


def test_before_anything_happened_there_is_no_event() -> None:
    state = fold(QUILT, ())
    assert (state.seq, state.last_act, state.went_on) == (0, (), 0)


def test_a_clock_set_back_never_moves_a_session_back() -> None:
    state, record = play(QUILT, c.Count("pair"), c.Count("pair"))
    state = go_on(state, record, c.Count("pair"), at=EVENING - timedelta(minutes=4))
    assert state.session is not None
    assert state.session.last_at == EVENING + MINUTE


def test_a_count_that_went_on_without_a_proof_is_taken_back_in_one() -> None:
    state, record = play(QUILT, *everything(QUILT, "pair"), c.ReadCaution("sew"), c.WriteNote("x"))
    at = record[-1].event.at + MINUTE
    state = do(state, record, c.Mention(proof(state, at).mention), at)
    before = state
    state = do(state, record, c.Count("sew", 3), at)
    assert [r.event.kind for r in record[-2:]] == ["went on", "counted"]
    assert record[-2].event.words(state, record) == (
        "Went on at sew without a fresh check: no piece has been measured yet."
    )
    assert state.last_act == (record[-2].seq, record[-1].seq)
    state = go_on(state, record, c.Count("sew", 2))
    assert state.last_act == (record[-1].seq,)
    state = go_on(state, record, c.Undo(), c.Undo(of=record[-2].seq))
    assert (state.done, state.went_on) == (before.done, before.went_on)
    assert [note.text for note in state.notes] == ["x"]


def test_a_count_made_later_than_the_going_on_is_taken_back_by_itself() -> None:
    state, record = play(QUILT, *everything(QUILT, "pair"), c.ReadCaution("sew"), c.GoOn("sew"))
    state = go_on(state, record, c.Count("sew", 3))
    assert state.last_act == (record[-1].seq,)
    state = go_on(state, record, c.Undo())
    assert state.went_on == record[-3].seq


def test_a_copy_of_a_tally_goes_its_own_way() -> None:
    _, record = play(
        QUILT,
        c.LayAside(),
        c.PickUp(),
        c.Count("pair", 8),
        c.PutPileAway("pair", "tin", 3),
        c.Count("sew", 2),
        c.CloseSession({"machine": "yes"}),
        c.WriteNote("so far"),
    )
    for cut in range(len(record) + 1):
        kept = opening(QUILT)
        carry(kept, record[:cut])
        before = kept.freeze()
        other = kept.copy()
        carry(other, record[cut:])
        assert other.freeze() == fold(QUILT, record)
        assert kept.freeze() == before
