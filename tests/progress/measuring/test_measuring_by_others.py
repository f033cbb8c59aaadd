"""Two people, two machines: each one's seam is told by what she sewed, and by nothing else."""

from __future__ import annotations

from datetime import timedelta
from fractions import Fraction

import msgspec
import pytest

from sewalong.progress.measuring.at_risk import at_risk
from sewalong.progress.measuring.beside import beside
from sewalong.progress.measuring.by_others import (
    by_others,
    others_in_doubt,
    others_in_words,
    seam_to_test,
)
from sewalong.progress.measuring.proof import ProofStanding, proof
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events.every_kind import Checked
from sewalong.progress.record.fold import fold
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import State
from sewalong.progress.resuming.coming_back import coming_back, in_lines
from sewalong.progress.resuming.concerns import concerns
from sewalong.progress.resuming.pause_note import pause_note
from tests.progress import every_act as c
from tests.progress.building import MINUTE, Record, a_quilt, do, go_on, play

QUILT = a_quilt()
RIGHT, WRONG = (Fraction(51, 8),), (Fraction(6),)
DAYS = timedelta(days=3)


def sewn(*measured: c.Act) -> tuple[State, Record]:
    return play(QUILT, c.Count("pair", 84), c.Count("sew", 20), *measured)


def standing(state: State, record: Record) -> ProofStanding:
    return proof(state, record[-1].event.at).standing


def test_what_somebody_else_sewed_proves_no_seam_of_hers() -> None:
    state, record = sewn(c.Measure("unit", RIGHT, "Jo"))
    assert standing(state, record) is ProofStanding.NEVER
    state, record = sewn(c.Measure("unit", RIGHT), c.Measure("unit", WRONG, "Jo"))
    assert standing(state, record) is ProofStanding.FRESH
    assert at_risk(state, record) is None
    state, record = sewn(c.Measure("unit", WRONG), c.Measure("unit", RIGHT, "Jo"))
    assert standing(state, record) is ProofStanding.FAILED
    risk = at_risk(state, record)
    assert risk is not None
    assert not risk.none


def test_each_is_told_by_the_last_of_her_own() -> None:
    state, record = sewn(
        c.Measure("unit", WRONG, "Mona"),
        c.Measure("unit", WRONG, "Jo"),
        c.Measure("unit", RIGHT, "Mona"),
        # A cut square is no seam of anybody.
        c.Measure("square", (Fraction(5),), "Mona"),
    )
    assert [(one.by, one.passed) for one in by_others(state)] == [("Jo", False), ("Mona", True)]
    later = record[-1].event.at + DAYS
    assert list(others_in_words(state, later)) == [
        ("Seam of Mona", "Unit measured 6 3/8 in (3 days ago), right.")
    ]
    ((check, facts),) = others_in_doubt(state, record, later)
    assert (check.by, facts[0]) == ("Jo", "Unit measured 6 in (3 days ago), not right.")
    (worry,) = [one for one in concerns(state, record, later, plan(state)) if "Jo" in one.label]
    assert worry.facts == facts
    lines = in_lines(coming_back(state, record, later))
    assert "Seam of Mona: Unit measured 6 3/8 in (3 days ago), right." in lines
    assert "Seam of Jo: Unit measured 6 in (3 days ago), not right." in lines


def test_how_her_own_machine_is_set_is_not_kept_with_it() -> None:
    settings = c.RecordSettings(Settings(foot="quarter inch"))
    state, _ = sewn(settings, c.Measure("unit", RIGHT, "Jo"), c.Measure("unit", RIGHT))
    assert [check.settings is None for check in state.checks] == [True, False]


def test_only_what_the_same_person_measured_stands_beside() -> None:
    state, record = sewn(c.Measure("allowance", (Fraction(1, 4),), "Jo"))
    now = record[-1].event.at + MINUTE
    assert beside(state, "unit", now).seam_read is None
    assert beside(state, "unit", now, "Jo").seam_read == Fraction(1, 4)


def test_it_is_said_who_sewed_it() -> None:
    state, record = sewn(c.Measure("unit", RIGHT, "Jo"))
    said = record[-1].event.words(state, record)
    assert said == "Measured unit, sewn by Jo: 6 3/8 in, should be 6 3/8 in: right."


@pytest.mark.parametrize("name", [" ", "two\nlines", "x" * 81])
def test_what_is_no_name_is_refused(name: str) -> None:
    state, record = sewn()
    with pytest.raises(Refused, match="That is no name of a person"):
        do(state, record, c.Measure("unit", RIGHT, name), record[-1].event.at + MINUTE)


def test_a_measurement_of_her_own_is_written_as_it_always_was() -> None:
    _, record = sewn(c.Measure("unit", RIGHT), c.Measure("unit", RIGHT, "Jo"))
    own, jos = (msgspec.to_builtins(one.event) for one in record[-2:])
    assert list(own) == ["kind", "at", "session", "piece", "readings", "expected", "passed"]
    assert jos["by"] == "Jo"
    again = msgspec.convert(own, Checked)
    assert again.by == ""
    assert fold(QUILT, record).checks[-1].by == "Jo"


def test_what_is_owed_of_her_seam_when_her_count_comes_in() -> None:
    state, record = sewn()
    untested = "The seam of Jo is not tested yet. Measure one of these, and say who sewed it."
    assert seam_to_test(state, "sew", "Jo") == untested
    assert seam_to_test(state, "sew", "") == ""
    # At the board nothing is sewn.
    assert seam_to_test(state, "press", "Jo") == ""
    assert seam_to_test(state, "no such stage", "Jo") == ""
    state = go_on(state, record, c.Measure("unit", RIGHT, "Mona"), c.Measure("unit", WRONG, "Jo"))
    assert seam_to_test(state, "sew", "Jo").startswith("The seam of Jo measured wrong")
    assert seam_to_test(state, "sew", "Mona") == ""
    state = go_on(state, record, c.Measure("unit", RIGHT, "jo"))
    assert seam_to_test(state, "sew", "Jo") == ""


def test_what_came_in_from_her_since_the_last_right_one_is_named() -> None:
    state, record = sewn(
        c.CountElsewhere("sew", 3, by="Jo"),
        c.Measure("unit", RIGHT, "Jo"),
        c.CountElsewhere("sew", 4, by="Jo"),
        c.CountElsewhere("press", 2, by="Jo"),
        c.CountElsewhere("sew", 6, by="Mona"),
        c.CountElsewhere("sew", 1, by="jo"),
        c.Measure("unit", WRONG, "Jo"),
    )
    ((_, facts),) = others_in_doubt(state, record, record[-1].event.at)
    assert facts[2:] == (
        "Counted from Jo since: 5 four-patches at sew.",
        "Measure some of them.",
    )
    assert at_risk(state, record) is None
    state = go_on(state, record, c.Measure("unit", WRONG, "Mona"))
    (_, (_, mona)) = others_in_doubt(state, record, record[-1].event.at)
    assert mona[2] == "Counted from Mona since: 6 four-patches at sew."


def test_each_is_told_on_leaving_however_it_measured() -> None:
    state, record = sewn(c.Measure("unit", WRONG, "Jo"), c.Measure("unit", RIGHT, "Mona"))
    note = pause_note(state, record[-1].event.at, plan(state))
    assert [text.rsplit(", ", 1)[1] for label, text in note.lines if label[:7] == "Seam of"] == [
        "not right.",
        "right.",
    ]
