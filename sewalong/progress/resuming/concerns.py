"""What is wrong or may be, and since when: what a person coming back should hear first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime
from enum import IntEnum

from msgspec import Struct

from sewalong.piecing.method import Station
from sewalong.progress.joining.bias_edges import bias, may_be_cut, pieces_wanted
from sewalong.progress.measuring.proof import proof
from sewalong.progress.plan.plan import Plan
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.event import noun_of
from sewalong.progress.record.state import State
from sewalong.progress.record.time_words import ago


class Kind(IntEnum):
    """What is wrong, the worst first: what may hurt, then in the order in which it is spoken of
    while sewing (see `notice`), last what is only worth a look."""

    LEFT_UNSAFE = 1
    AT_RISK = 2
    SHORT = 3
    SEAM = 4
    MISSING = 5
    ON_THE_BIAS = 6
    COUNT_FIRST = 7


class Concern(Struct, frozen=True):
    """A label of a word or two, since when it is so (None: not known), and what is to be said of it,
    one fact a sentence: what she wrote stands whole in one of them."""

    kind: Kind
    label: str
    since: datetime | None
    facts: tuple[str, ...]

    @property
    def text(self) -> str:
        """All of it, one sentence after the other."""
        return " ".join(self.facts)


def worst_first(found: Iterable[Concern]) -> tuple[Concern, ...]:
    """In order of their kinds; those of one kind as they came."""
    return tuple(sorted(found, key=lambda one: one.kind))


def concerns(
    state: State, record: Sequence[e.Recorded], now: datetime, now_plan: Plan
) -> tuple[Concern, ...]:
    """The concerns that still matter, the worst first.

    Pieces at risk until they were seen to, a seam changed since it was proved while there is
    still something to sew; and while pieces are still wanted, those that are missing and
    those that wait with edges on the bias.
    """
    found = [
        *_at_risk(state, record),
        *_seam(state, now, now_plan),
        *_others(state, record, now),
    ]
    if pieces_wanted(now_plan):
        found += [*_missing(state, record, now), *_on_the_bias(state, now)]
    return worst_first(found)


def missing_facts(state: State) -> tuple[str, ...]:
    """ "4 units made, but not found", pile by pile; none when nothing is missing."""
    return tuple(
        f"{noun_of(state, pile).count(n)} {_made(state, pile)}, but not found"
        for pile, n in state.missing.items()
    )


def _made(state: State, pile: str) -> str:
    return "there once" if pile in state.route.starts else "made"


def _at_risk(state: State, record: Sequence[e.Recorded]) -> Iterator[Concern]:
    if all(check.passed for check in state.checks):
        return
    from sewalong.progress.measuring.at_risk import still_at_risk  # loaded after a bad measure

    risk = still_at_risk(state, record)
    if risk is not None:
        first, *others = risk.lines
        said = (first.removeprefix("These may be wrong: "), *others)
        yield Concern(Kind.AT_RISK, "May be wrong", risk.failed.at, said)


def _others(state: State, record: Sequence[e.Recorded], now: datetime) -> Iterator[Concern]:
    if all(check.passed for check in state.checks):
        return
    from sewalong.progress.measuring.by_others import others_in_doubt  # after a bad measure

    for check, facts in others_in_doubt(state, record, now):
        yield Concern(Kind.SEAM, f"Seam of {check.by}", check.at, facts)


def _missing(state: State, record: Sequence[e.Recorded], now: datetime) -> Iterator[Concern]:
    for pile, n in state.missing.items():
        since = next(
            (
                r.event.at
                for r in reversed(record)
                if isinstance(r.event, e.Recounted)
                and r.event.how == "missing"
                and r.event.pile == pile
            ),
            now,
        )
        what = f"{noun_of(state, pile).count(n)} {_made(state, pile)}, but not found"
        yield Concern(Kind.MISSING, "Missing", since, (f"{what} ({ago(since, now)}).",))


def _seam(state: State, now: datetime, now_plan: Plan) -> Iterator[Concern]:
    """A seam that nobody has to sew any more is no worry, nor one the person went on with."""
    to_sew = any(line.to_do and line.stage.station is Station.MACHINE for line in now_plan.lines)
    told = proof(state, now)
    if not to_sew or told.went_on:
        return
    last = told.last
    if told.failed is not None:
        since = told.failed.at
    elif last is not None and told.why:
        since = next((each.at for each in state.seam_changes if each.seq > last.seq), now)
    else:
        return
    yield Concern(Kind.SEAM, "Seam", since, (f"Not tested as it is now: {told.why}.",))


def _on_the_bias(state: State, now: datetime) -> Iterator[Concern]:
    if not may_be_cut(state):
        return
    soft = bias(state.quilt)
    wait = [noun_of(state, pile).count(n) for pile in soft.piles if (n := state.piles[pile])]
    cut = [session.last_at for session in state.sessions if session.counts.get(soft.cut, 0) > 0]
    if wait and cut:
        yield Concern(
            Kind.ON_THE_BIAS,
            "On the bias",
            cut[-1],
            (
                f"{' and '.join(wait)} with edges on the bias, cut {ago(cut[-1], now)}: don't pull "
                "them, and measure one before joining.",
            ),
        )
