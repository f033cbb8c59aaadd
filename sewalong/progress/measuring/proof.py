"""Prove it on one: whether the seam being sewn has been proved by a measurement, and still is.

A passed check holds for the settings it was made with. New settings, another machine,
another foot or needle, and switching the machine off and on make it stale, for each of
them can move the needle. Going on without a fresh proof is the person's to choose; then
nothing more is said until the next change.

What sizes of pieces take to be worked out is loaded only once a piece was measured.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from enum import StrEnum

from msgspec import Struct

from sewalong.piecing.method import Station
from sewalong.progress.record.events.replanning import PLANNED_SEAM
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import Check, SeamChange, State
from sewalong.progress.record.time_words import ago


class ProofStanding(StrEnum):
    """How the seam stands to its last measurement."""

    NEVER = "not proved yet"
    FRESH = "proved"
    STALE = "proved, but changed since"
    FAILED = "measured wrong"

    @property
    def words(self) -> str:
        """How it is said; the value is what scripts read."""
        return _IN_WORDS[self]


_IN_WORDS = {
    ProofStanding.NEVER: "The seam is not tested yet.",
    ProofStanding.FRESH: "The seam is tested.",
    ProofStanding.STALE: "The seam was tested, but something was changed since.",
    ProofStanding.FAILED: "The seam measured wrong.",
}


NOT_STALE = "nothing changed since the last check"

_CHANGED: dict[str, str] = {
    "foot": "another foot went on",
    "needle": "another needle went in",
    "power": "the machine was switched off and on",
    PLANNED_SEAM: "the plan has another seam",
}
"""Tools, and the plan whose change can move the seam. A bobbin or a blade cannot."""


class Proof(Struct, frozen=True):
    """Whether the seam is proved: how `state` stands to it at the time `at`.

    `last` is the last check that passed, `failed` the check that failed since, if one did.
    `why` is why there is no fresh proof ("" when there is). `mention` names what is to be said
    of it, once; `went_on` tells that the person chose to go on.
    """

    state: State
    at: datetime
    standing: ProofStanding
    last: Check | None
    failed: Check | None
    why: str
    mention: str
    went_on: bool

    @property
    def piece(self) -> str:
        """What to take through and measure."""
        from sewalong.progress.record.measurable import proof_piece

        return proof_piece(self.state.quilt)

    @property
    def say(self) -> str:
        """The line for the sewing screen: then record `Mention(mention)`.

        Empty when all is well, when the person chose to go on, or when it was said already.
        """
        fresh = self.standing is ProofStanding.FRESH
        if fresh or self.went_on or self.mention in self.state.mentioned:
            return ""
        return _say(self)


def proof(state: State, now: datetime) -> Proof:
    """Whether the seam as the machine is set now has been proved on one piece. What somebody else
    sewed proves none of hers (see `by_others`)."""
    last = next((c for c in reversed(state.own_checks) if c.passed and tells(state, c)), None)
    since = last.seq if last else 0
    failed = next(
        (
            c
            for c in reversed(state.own_checks)
            if c.seq > since and not c.passed and tells(state, c)
        ),
        None,
    )
    causes = list(_causes(state, last))
    if failed is not None:
        standing = ProofStanding.FAILED
        why = f"{_noun(state, failed.piece)} measured last did not come out right"
        cause = failed.seq
    elif last is None:
        standing, why = ProofStanding.NEVER, "no piece has been measured yet"
        cause = max((seq for seq, _ in causes), default=0)
    elif causes:
        standing, why = ProofStanding.STALE, _listed([word for _, word in causes])
        cause = causes[-1][0]
    else:
        return Proof(state, now, ProofStanding.FRESH, last, None, "", "", False)
    mention = f"proof-{standing.name.lower()}-{cause}"
    return Proof(state, now, standing, last, failed, why, mention, state.went_on > cause)


def goes_on_unproved(state: State, stage: str, now: datetime) -> bool:
    """Whether a count at `stage` means going on with an unproved seam, after it was said."""
    where = state.route.stage(stage)
    if where is None or where.station is not Station.MACHINE:
        return False
    seam = proof(state, now)
    unproved = seam.standing is not ProofStanding.FRESH
    return unproved and not seam.went_on and seam.mention in state.mentioned


def tells(state: State, check: Check) -> bool:
    """Whether a seam decides the size of what was measured; a cut square proves none."""
    from sewalong.progress.record.measurable import Unmeasurable, read_piece

    try:
        return read_piece(state.quilt, state.target, check.piece).allowances > 0
    except Unmeasurable:
        return False


def _causes(state: State, last: Check | None) -> Iterator[tuple[int, str]]:
    """What happened since the last proof that can have moved the seam, in order."""
    settings = last.settings if last else None
    for change in state.seam_changes:
        if last is not None and change.seq <= last.seq:
            continue
        changed = changed_by(change, settings)
        if changed:
            yield change.seq, changed
        settings = change.settings or settings


def changed_by(change: SeamChange, before: Settings | None) -> str:
    """What was changed that can move the seam, in words; empty when nothing.

    `before` is how the machine was set before it.
    """
    if change.settings is not None:
        return changes(before, change.settings)
    return _CHANGED.get(change.tool, "")


def changes(before: Settings | None, after: Settings) -> str:
    """Which settings were changed, in words; empty when they were only written down.

    What stood empty before was not changed by being filled in.
    """
    if before is None:
        return ""
    found = []
    for name in after.__struct_fields__:
        old, new = getattr(before, name), getattr(after, name)
        if name != "proof" and old and new and old != new:
            found.append(f"{name.replace('_', ' ')} {new} instead of {old}")
    return _listed(found)


def _say(found: Proof) -> str:
    state, piece, why = found.state, found.piece, found.why
    noun = _noun(state, piece)
    match found.standing:
        case ProofStanding.NEVER if state.piles.get(piece):
            return f"One {noun} is there: measure it before you sew on."
        case ProofStanding.NEVER if piece not in state.piles:
            return f"Test the seam first: sew {noun}, press, measure."
        case ProofStanding.NEVER:
            lot = sum(start.count for start in state.quilt.starts)
            return (
                f"Test it on one first: take one through to the {noun}, pressed, and measure it. "
                f"A wrong seam then costs one, not all {lot} pieces."
            )
        case ProofStanding.FAILED:
            return "The seam measured wrong. Put it right and measure another before you go on."
        case _:
            when = f" ({ago(found.last.at, found.at)})" if found.last else ""
            return f"Since the last check{when}: {why}. {_again(state, piece, noun)}, or go on."


def _again(state: State, piece: str, noun: str) -> str:
    """A pile's piece is taken through once more; a strip test is sewn once more."""
    return f"Take one {noun} through and measure it" if piece in state.piles else f"Sew {noun}"


def _noun(state: State, piece: str) -> str:
    from sewalong.progress.record.measurable import read_piece

    return read_piece(state.quilt, state.target, piece).words


def _listed(words: list[str]) -> str:
    """The words one after the other, each once."""
    return ", ".join(dict.fromkeys(words))
