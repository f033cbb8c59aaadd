"""The machine and its seam: settings, tools, measuring, going on all the same."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import ClassVar

from msgspec.structs import replace

from sewalong.progress.acts.act import Act, Now, text
from sewalong.progress.measuring.proof import NOT_STALE, proof
from sewalong.progress.measuring.verdict import passes
from sewalong.progress.record.events.event import Event
from sewalong.progress.record.events.seam import (
    Checked,
    SeenTo,
    SettingsRecorded,
    Tool,
    ToolChanged,
    WentOn,
)
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.measurable import Unmeasurable, read_piece
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import State


class RecordSettings(Act, frozen=True):
    """Write down how the machine is set."""

    settings: Settings

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        names = self.settings.__struct_fields__
        settings = Settings(**{name: text(getattr(self.settings, name)) for name in names})
        recorded = SettingsRecorded(at=now.at, session=now.session, settings=settings)
        recorded.check(state)
        return (recorded,)


class ChangeTool(Act, frozen=True):
    """A blade, needle, foot or bobbin was changed, or the machine switched off and on."""

    tool: Tool

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        return (ToolChanged(at=now.at, session=now.session, tool=self.tool),)


class Measure(Act, frozen=True):
    """One or several tape readings of a piece, in inches; see `measurable.read_piece`. `by` is who
    sewed it, empty for the owner."""

    piece: str
    readings: tuple[Fraction, ...]
    by: str = ""

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        try:
            piece = read_piece(state.quilt, state.target, self.piece)
        except Unmeasurable as error:
            raise Refused(str(error)) from error
        by = self.by
        if by:
            from sewalong.progress.measuring.by_others import person_meant  # only where others sew

            by = person_meant(state, by)
        checked = Checked(
            at=now.at,
            session=now.session,
            piece=piece.id,
            readings=tuple(str(reading) for reading in self.readings),
            expected=str(piece.expected),
            passed=bool(self.readings) and passes(piece, self.readings),
            by=by,
        )
        checked.check(state)
        return (checked,)


class SeeTo(Act, frozen=True):
    """The pieces in doubt because of the measurement numbered `of` were looked through."""

    of: int

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        return (SeenTo(at=now.at, session=now.session, of=self.of),)


class GoOn(Act, frozen=True):
    """Go on at a stage without a fresh proof; why it is worth a word is kept with it."""

    needs_progress: ClassVar[bool] = True

    stage: str

    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        stage = a_stage(state, self.stage)
        why = proof(state, now.at).why or NOT_STALE
        return (WentOn(at=now.at, session=now.session, stage=stage.id, why=why),)


def settings_after(before: Settings | None, given: Mapping[str, str]) -> tuple[Settings, bool]:
    """The settings with those `given` by name, and whether the test noted before is lost.

    A test that proved other settings is not carried over to new ones.
    """
    known = before or Settings()
    settings = replace(known, **given)
    if "proof" in given or replace(settings, proof="") == replace(known, proof=""):
        return settings, False
    return replace(settings, proof=""), bool(known.proof)
