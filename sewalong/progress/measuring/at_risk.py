"""A check failed: which pieces were sewn since the last that passed, and no others."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set

from msgspec import Struct
from msgspec.structs import replace

from sewalong.piecing.method import Stage
from sewalong.progress.measuring.proof import tells
from sewalong.progress.measuring.sewn_between_checks import Batch, Doubtful, SewnBetween, feeding
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.undoing import effective
from sewalong.progress.record.recount_rules import maker
from sewalong.progress.record.route import RouteStage
from sewalong.progress.record.state import Check, State
from sewalong.progress.record.time_words import day_said

GET_RID = (
    "Measure some of them.",
    "When all are right, or put right, say so where you measure.",
)
"""How it goes away."""


class AtRisk(Struct, frozen=True):
    """`failed` is the check that failed, `proved` the last that passed before it (None: none).

    `places` says by pile where these pieces were put, in words. `SeeTo(failed.seq)` says that they
    were looked through; `seen_to` is true from then on. `what` names them, `lines` says it all,
    one fact each.
    """

    failed: Check
    proved: Check | None
    stages: tuple[Doubtful, ...]
    batches: tuple[Batch, ...]
    places: Mapping[str, str]
    seen_to: bool
    what: str
    lines: tuple[str, ...]

    @property
    def none(self) -> bool:
        """Whether nothing that was sewn is in doubt."""
        return not self.stages


def at_risk(state: State, record: Sequence[e.Recorded]) -> AtRisk | None:
    """The pieces in doubt after the last check that failed; None when none failed.

    Counted are the machine stages that feed the measured piece, from the last passed check
    (else the beginning) up to the next that passed (else now). What was unpicked is taken to
    be what was sewn last. Where a stage before also counts, some of its pieces may be in
    those of the stage after it: each stage is said by itself.
    """
    failed = _last_failed(state)
    if failed is None:
        return None
    passed = [check for check in state.own_checks if check.passed and tells(state, check)]
    proved = next((check for check in reversed(passed) if check.seq < failed.seq), None)
    mended = next((check for check in passed if check.seq > failed.seq), None)
    first = proved.seq if proved else 0
    last = mended.seq if mended else state.seq + 1
    window = SewnBetween(state, feeding(state, failed.piece), first, last)
    standing = effective(record)
    for recorded in standing:
        window.take(recorded)
    stages = tuple(window.doubtful(stage) for stage in window.feeding if window.total(stage.id))
    turned_at = {
        r.event.stage for r in standing if isinstance(r.event, e.Counted) and first < r.seq < last
    }
    places = _places(state, window, turned_at)
    found = AtRisk(
        failed=failed,
        proved=proved,
        stages=stages,
        batches=tuple(batch.frozen() for batch in window.batches if any(batch.counts.values())),
        places=places,
        seen_to=_seen_to(state, failed),
        what=" and ".join(_in_words(state, stage) for stage in stages),
        lines=(),
    )
    return replace(found, lines=_lines(state, found))


def still_at_risk(state: State, record: Sequence[e.Recorded]) -> AtRisk | None:
    """The same while nobody has seen to them, and only where something is in doubt.

    The record is not gone through where no check failed or the person has seen to it.
    """
    failed = _last_failed(state)
    if failed is None or _seen_to(state, failed):
        return None
    found = at_risk(state, record)
    return None if found is None or found.none else found


def speaks_for_them(state: State, found: AtRisk, piece: str) -> bool:
    """Whether `piece` is one of what is in doubt, so that it measured right is a reason to ask of
    the others: a pile's, a row or the top, and not a test sewn since."""
    head = piece.partition(":")[0]
    of_the_quilt = head in state.route.piles or head in ("row", "column", "centre", "top")
    doubtful = {stage.stage for stage in found.stages}
    return of_the_quilt and any(stage.id in doubtful for stage in feeding(state, piece))


def _last_failed(state: State) -> Check | None:
    told = (
        check for check in reversed(state.own_checks) if not check.passed and tells(state, check)
    )
    return next(told, None)


def _seen_to(state: State, failed: Check) -> bool:
    # What the first versions recorded as said.
    return failed.seq in state.seen_to or f"at-risk-{failed.seq}" in state.mentioned


def _in_words(state: State, stage: Doubtful) -> str:
    label = next(s.label for s in state.route.stages if s.id == stage.stage)
    return f"{stage.noun.count(stage.n)} from {label}"


def _places(state: State, window: SewnBetween, turned_at: Set[str]) -> dict[str, str]:
    """Where the pieces can lie: the piles that were added to since, at the stages `turned_at`,
    from the earliest doubtful one on. Each with the places named since; a pile not put away
    since, with the place it has."""
    doubtful = [s for s in window.feeding if window.total(s.id)]
    piles = [
        pile
        for pile in _downstream(state, doubtful)
        if (stage := maker(state.route, pile)) is not None and stage.id in turned_at
    ]
    places: dict[str, str] = {}
    for pile in piles:
        if not state.piles.get(pile):
            continue
        since = [place for place in window.put.get(pile, []) if place in state.places.get(pile, {})]
        if since:
            places[pile] = " and ".join(dict.fromkeys(since))
        elif state.where.get(pile):
            places[pile] = state.where[pile]
    return places


def _downstream(state: State, stages: Sequence[RouteStage]) -> list[str]:
    piles = [stage.makes.pile for stage in stages if isinstance(stage, Stage)]
    for stage in state.route.of_pieces:
        if any(taken.pile in piles for taken in stage.takes) and stage.makes.pile not in piles:
            piles.append(stage.makes.pile)
    return [pile for pile in state.route.piles if pile in piles]


def _lines(state: State, found: AtRisk) -> tuple[str, ...]:
    since = f"the check of {day_said(found.proved.at.date())}" if found.proved else "the beginning"
    if found.none:
        return (f"Nothing was sewn since {since}, so nothing else can be wrong.",)
    unit = state.route.piles[state.quilt.method.unit].noun
    lines = []
    for stage in found.stages:
        lines.append(f"These may be wrong: {_in_words(state, stage)}, sewn since {since}.")
        if stage.units:
            lines.append(f"They are for {unit.count(stage.units)}.")
        lines += [f"Sewn on {day_said(then.day)}: {then.n}." for then in stage.sewn]
    if len(found.batches) > 1:
        lines.append("The machine was changed in between: measure one of each.")
        lines += [f"One sewn since {batch.since}." for batch in found.batches]
    for pile, place in found.places.items():
        lines.append(f"Where the {state.route.piles[pile].noun.many} among them lie: {place}.")
    if found.proved:
        lines.append("What was sewn before that check is not in doubt.")
    return (*lines, *GET_RID)
