"""Cautions: which is due at a stage, as a pure function of what was read and when.

General safety information only. Makers' instructions for iron, cutter and machine,
local rules and qualified help come first.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta
from enum import StrEnum

from msgspec import Struct
from msgspec.structs import replace

from sewalong.piecing.method import Hazard
from sewalong.progress.record.events.sessions import is_over
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import RouteStage
from sewalong.progress.record.state import State
from sewalong.progress.record.time_words import in_the_future

LONG_STRETCH = timedelta(minutes=60)
"""A caution is shown again after this long. HSE (L26, display screen work only) finds a
break after 50 to 60 minutes better than a longer one later; for sewing, common practice."""

LATE = timedelta(hours=3)
"""From here on a session is long and cautions speak of tiredness; common practice."""


GENERAL = "General advice. The makers' instructions come first."
"""What stands under every caution."""


class Why(StrEnum):
    """Why a caution is due now."""

    FIRST = "first time in this session"
    AGAIN = "an hour since you last read this"
    NEW_BLADE = "a new blade went in"
    LATE = "late in a long session"


class Words(Struct, frozen=True):
    """What is said of one hazard. `source` is where the facts stand; wording is our own."""

    title: str
    lines: tuple[str, ...]
    source: str


class Caution(Struct, frozen=True):
    """The caution due: for these hazards, for this reason, in these lines."""

    hazards: tuple[Hazard, ...]
    why: Why
    title: str
    lines: tuple[str, ...]


WORDS: Mapping[Hazard, Words] = {
    Hazard.IRON: Words(
        "Hot iron",
        (
            "Hold the iron by its handle only; stand it on its heel between pieces.",
            "Keep the cord out of reach, and set the heat for the cloth by the iron's own book.",
            "Off and unplugged the moment you leave the board.",
        ),
        "4-H 'Duds to Dazzle' safety guide; US Fire Administration (quoted): unplug when not in use",
    ),
    Hazard.CUTTER: Words(
        "Rotary cutter",
        (
            "Close the blade after every cut. Cut away from yourself, standing, shoes on.",
            "Always ruler and mat; fingers well back from the ruler's edge; no pins on the mat.",
            "Eyes on the blade: no talking, no screen, while you cut.",
        ),
        "4-H 'Duds to Dazzle' safety guide; NDSU Extension CB111; closing after each cut: common practice",
    ),
    Hazard.CROSS_CUT: Words(
        "Two cuts across",
        (
            "Turn the mat for the second cut; don't reach across.",
            "Several layers want firm, even pressure: hold the ruler with your hand flat, well back.",
        ),
        "common practice",
    ),
    Hazard.NEEDLE: Words(
        "Needle",
        (
            "Fingers out of the needle's path; eyes on the needle, face back from it.",
            "Foot off the pedal before you thread, change a needle or reach under the foot.",
            "Where the machine's own book says otherwise, follow the book.",
        ),
        "school sewing machine safety rules (J. Black FCS); foot off the pedal: common practice",
    ),
    Hazard.PINS: Words(
        "Pins",
        ("Count pins out and count them in. Take each out before the needle reaches it.",),
        "school sewing machine safety rules: do not sew over pins; counting: common practice",
    ),
}

NEW_BLADE = (
    "New blade, fitted as its maker says: it cuts with less pressure than you are used to. "
    "Try it on a scrap first."
)
TIRED = "You have been at it a good while. If you are tired, leave the cutting for another day."
TIRED_AT_THE_IRON = "You have been at it a good while. A short break first?"
_ABOUT = {
    Hazard.IRON: "iron",
    Hazard.CUTTER: "cutter",
    Hazard.CROSS_CUT: "cutter",
    Hazard.NEEDLE: "needle",
    Hazard.PINS: "pins",
}
"""What the owner's own words of caution are kept under."""

MOST_LINES = 6
"""What can be read whole on a screen of 24 lines; with many hazards each says its first lines."""


class CautionFirst(Refused):
    """A caution has to be read before this stage is counted."""

    def __init__(self, caution: Caution, stage: str) -> None:
        super().__init__(f"Read the caution first ({caution.title}): {' '.join(caution.lines)}")
        self.caution = caution
        self.stage = stage

    def with_words(self, own: Mapping[str, tuple[str, ...]]) -> CautionFirst:
        """The same with the owner's words, by what they are about (`owner.preferences`), first:
        she wrote them down because they are what she forgets."""
        about = dict.fromkeys(_ABOUT[hazard] for hazard in self.caution.hazards)
        words = tuple(word for name in about for word in own.get(name, ()))
        if not words:
            return self
        lines = (*words, *self.caution.lines)
        return CautionFirst(replace(self.caution, lines=lines), self.stage)


def hazards_in_words(stage: RouteStage) -> str:
    """ "Hot iron, pins": what can hurt at a stage, by the titles of their cautions."""
    titles = [WORDS[hazard].title for hazard in stage.hazards]
    return ", ".join([*titles[:1], *(title.lower() for title in titles[1:])])


def caution_of(stage: RouteStage, own: Mapping[str, tuple[str, ...]]) -> Caution | None:
    """What is said at a stage to somebody who has read nothing yet, the owner's own words first;
    None where nothing can hurt."""
    if not stage.hazards:
        return None
    caution = Caution(
        stage.hazards, Why.FIRST, _title(stage.hazards), _lines(stage.hazards, Why.FIRST)
    )
    return CautionFirst(caution, stage.id).with_words(own).caution


def caution_at(state: State, stage: RouteStage, at: datetime) -> Caution | None:
    """The caution due before a count at `stage`; in a session not yet open, all are due."""
    session = state.session
    if session is None or is_over(session, at):
        return caution_due(stage.hazards, read={}, opened=at, blade_changed=None, now=at)
    return caution_due(
        stage.hazards,
        read=state.cautions_read,
        opened=session.opened,
        blade_changed=state.blade_changed,
        now=at,
    )


def caution_due(
    hazards: tuple[Hazard, ...],
    *,
    read: Mapping[str, datetime],
    opened: datetime,
    blade_changed: datetime | None,
    now: datetime,
) -> Caution | None:
    """The caution to read before the next count at a stage with `hazards`, or None.

    `read` says when each hazard's caution was last read in this session, `opened` when
    the session began, `blade_changed` when a blade last went in. All hazards due are put
    in one caution, with the most urgent reason. What was read in the future, by a clock that
    was wrong, is due again; a blade that went in then is no longer new.
    """
    reasons = {
        hazard: why
        for hazard in hazards
        if (why := _why(hazard, read.get(hazard), opened, blade_changed, now))
    }
    if not reasons:
        return None
    due = tuple(reasons)
    why = next(w for w in (Why.NEW_BLADE, Why.LATE, Why.AGAIN, Why.FIRST) if w in reasons.values())
    return Caution(due, why, _title(due), _lines(due, why))


def _why(
    hazard: Hazard,
    read: datetime | None,
    opened: datetime,
    blade_changed: datetime | None,
    now: datetime,
) -> Why | None:
    if read is not None and in_the_future(read, now):
        read = None
    if _cuts(hazard) and blade_changed and not in_the_future(blade_changed, now):
        unread = blade_changed > read if read else blade_changed >= opened
        if unread:
            return Why.NEW_BLADE
    late = now - opened >= LATE
    if read is None:
        return Why.LATE if late else Why.FIRST
    if late and read < opened + LATE:
        return Why.LATE
    return Why.AGAIN if now - read >= LONG_STRETCH else None


def _cuts(hazard: Hazard) -> bool:
    return hazard in (Hazard.CUTTER, Hazard.CROSS_CUT)


def _title(due: tuple[Hazard, ...]) -> str:
    return " · ".join(WORDS[hazard].title for hazard in due)


def _lines(due: tuple[Hazard, ...], why: Why) -> tuple[str, ...]:
    """The lines to show: the reason's own first, and the essentials when hazards are many."""
    lines = []
    if why is Why.NEW_BLADE:
        lines.append(NEW_BLADE)
    if why is Why.LATE:
        lines.append(TIRED if any(_cuts(h) for h in due) else TIRED_AT_THE_IRON)
    each = next(
        most
        for most in (MOST_LINES, 2, 1)
        if most == 1 or sum(min(most, len(WORDS[h].lines)) for h in due) <= MOST_LINES
    )
    for hazard in due:
        lines += WORDS[hazard].lines[:each]
    return tuple(lines)
