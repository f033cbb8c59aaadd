"""How much of everything the record takes, and which names it knows."""

from __future__ import annotations

from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import RouteStage
from sewalong.progress.record.state import State

MOST_AT_ONCE = 9999
"""Pieces in one act: as many as a pile begins with. Far more than hands do, and no slip of a key."""
LONGEST_TEXT = 2000
"""Characters of a note or a reason: more than a screen holds."""


def a_stage(state: State, id: str) -> RouteStage:
    """The stage called `id`; raises Refused, naming the nearest."""
    stage = state.route.stage(id)
    if stage is None:
        known = [stage.id for stage in state.route.stages]
        raise Refused(f"This quilt has no stage {quoted(id)}. {_nearest(id, known)}")
    return stage


def a_pile(state: State, id: str) -> str:
    """`id` if there is such a pile; raises Refused, naming the nearest."""
    piles = state.route.piles
    if id not in piles:
        raise Refused(f"This quilt has no pile {quoted(id)}. {_nearest(id, list(piles))}")
    return id


def a_number(n: int) -> int:
    """`n` from 1 to MOST_AT_ONCE; raises Refused."""
    if not 1 <= n <= MOST_AT_ONCE:
        raise Refused(f"Give a number from 1 to {MOST_AT_ONCE}.")
    return n


def short(n: int) -> str:
    """A number fit for a sentence: a tampered file can hold one of thousands of digits."""
    return str(n) if abs(n) < 10**9 else "far too many"


def quoted(name: str) -> str:
    """What somebody called a thing, as far as it fits a sentence: “pair”."""
    return f"“{name[:40]}”"


def are(n: int) -> str:
    """The verb for `n` of a thing: "is" or "are"."""
    return "is" if n == 1 else "are"


def lie(n: int) -> str:
    """The verb for `n` pieces of a pile: "lies" or "lie"."""
    return "lies" if n == 1 else "lie"


def _nearest(id: str, known: list[str]) -> str:
    # Loaded only for a refusal: it costs a good part of a start.
    from difflib import get_close_matches

    near = get_close_matches(id, known, n=1)
    return f"Did you mean {near[0]}?" if near else f"There are: {', '.join(known)}."
