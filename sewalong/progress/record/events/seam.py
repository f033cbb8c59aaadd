"""The machine and its seam: settings, tools changed, pieces measured, going on all the same."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Literal

from sewalong.lengths import LONGEST, Unit, show
from sewalong.progress.record.events.event import Event, Recorded, label_of
from sewalong.progress.record.limits import a_stage
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import Check, SeamChange, State
from sewalong.progress.record.tally import Tally
from sewalong.quilt.rules import a_name

MOST_READINGS = 50

Tool = Literal["blade", "needle", "foot", "bobbin", "power"]
"""What was changed; "power" is the machine switched off and on again."""

_TOOLS: dict[Tool, str] = {
    "blade": "A new blade went in.",
    "needle": "A new needle went in.",
    "foot": "Another foot went on.",
    "bobbin": "A full bobbin went in.",
    "power": "The machine was switched off and on.",
}


class SettingsRecorded(Event, frozen=True, kw_only=True, tag="settings recorded"):
    """How the machine is set was written down."""

    settings: Settings

    def check(self, state: State) -> None:
        if self.settings == Settings():
            raise Refused("No setting was given: fill in at least one.")

    def apply(self, tally: Tally, seq: int) -> None:
        tally.settings, tally.settings_at = self.settings, self.at
        tally.seam_changes.append(SeamChange(seq, self.at, settings=self.settings))
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return "Wrote down the machine's settings."

    def in_full(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Settings: {self.settings.in_words()}"


class ToolChanged(Event, frozen=True, kw_only=True, tag="tool changed"):
    """A new blade, needle, foot or bobbin went in, or the machine was switched off and on."""

    tool: Tool

    def apply(self, tally: Tally, seq: int) -> None:
        tally.changed[self.tool] = self.at
        tally.seam_changes.append(SeamChange(seq, self.at, tool=self.tool))
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return _TOOLS[self.tool]


class Checked(Event, frozen=True, kw_only=True, tag="checked", omit_defaults=True):
    """A piece was measured. Lengths are exact inches as text: "7/2".

    `piece` is what was measured, as `measurable.read_piece` reads it. `expected` is
    what it should come to with the owner's seam. `by` is who sewed it, elsewhere or at another
    machine; empty for the owner's own.
    """

    piece: str
    readings: tuple[str, ...]
    expected: str
    passed: bool
    by: str = ""

    def check(self, state: State) -> None:
        from sewalong.progress.record.measurable import Unmeasurable, read_fraction, read_piece

        try:
            read_piece(state.quilt, state.target, self.piece)
        except Unmeasurable as error:
            raise Refused(str(error)) from error
        if self.by:
            try:
                a_name(self.by)
            except ValueError as error:
                raise Refused(f"That is no name of a person. {error}") from None
        if not 1 <= len(self.readings) <= MOST_READINGS:
            raise Refused(f"Give from 1 to {MOST_READINGS} readings of the tape.")
        for text in (*self.readings, self.expected):
            length = read_fraction(text)
            if length is None or not 0 < length <= LONGEST or length.denominator > 10**9:
                raise Refused("A reading is a length above zero. Measure again.")

    def apply(self, tally: Tally, seq: int) -> None:
        check = Check(
            seq=seq,
            at=self.at,
            session=self.session,
            piece=self.piece,
            readings=tuple(Fraction(reading) for reading in self.readings),
            expected=Fraction(self.expected),
            passed=self.passed,
            # How another machine is set nobody wrote down.
            settings=None if self.by else tally.settings,
            by=self.by,
        )
        tally.checks.append(check)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        unit = state.quilt.unit
        fine = Fraction(1, 16) if unit is Unit.INCH else Fraction(1, 10)
        read = ", ".join(show(Fraction(r), unit, fineness=fine) for r in self.readings)
        should = show(Fraction(self.expected), unit, fineness=fine)
        verdict = "right" if self.passed else "not right"
        whose = f", sewn by {self.by}" if self.by else ""
        return f"Measured {self._piece(state)}{whose}: {read}, should be {should}: {verdict}."

    def _piece(self, state: State) -> str:
        from sewalong.progress.record.measurable import Unmeasurable, read_piece

        try:
            return read_piece(state.quilt, state.target, self.piece).words
        except Unmeasurable:
            return self.piece


class WentOn(Event, frozen=True, kw_only=True, tag="went on"):
    """The person goes on at a stage without a fresh proof. `why` is why the old one is stale."""

    stage: str
    why: str

    def check(self, state: State) -> None:
        a_stage(state, self.stage)

    def apply(self, tally: Tally, seq: int) -> None:
        tally.went_on = seq
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return f"Went on at {label_of(state, self.stage)} without a fresh check: {self.why}."


class SeenTo(Event, frozen=True, kw_only=True, tag="seen to"):
    """The pieces that may be wrong because of the measurement numbered `of` were all looked
    through, and are right or were put right."""

    of: int

    def apply(self, tally: Tally, seq: int) -> None:
        tally.seen_to.append(self.of)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        return "The pieces that may have been wrong are seen to."
