"""What a person asked for by name, number or words, as it may stand in the record."""

from __future__ import annotations

from difflib import get_close_matches

from sewalong.progress.acts.commands import Refused
from sewalong.progress.record.route import RouteStage
from sewalong.progress.record.state import State

MOST_AT_ONCE = 9999
LONGEST_TEXT = 2000
MOST_ROWS = 200


def a_stage(state: State, id: str) -> RouteStage:
    """The stage called `id`; raises Refused, naming the nearest."""
    stage = state.route.stage(id)
    if stage is None:
        known = [stage.id for stage in state.route.stages]
        raise Refused(f"This quilt has no stage “{id[:40]}”. {_nearest(id, known)}")
    return stage


def a_pile(state: State, id: str) -> str:
    """`id` if there is such a pile; raises Refused, naming the nearest."""
    if id not in state.route.piles:
        raise Refused(
            f"This quilt has no pile “{id[:40]}”. {_nearest(id, list(state.route.piles))}"
        )
    return id


def a_number(n: int) -> int:
    """`n` from 1 to MOST_AT_ONCE; raises Refused."""
    if not 1 <= n <= MOST_AT_ONCE:
        raise Refused(f"Give a number from 1 to {MOST_AT_ONCE}.")
    return n


def words(text: str, what: str) -> str:
    """Text that may not be empty; raises Refused asking for `what`."""
    text = maybe_words(text)
    if not text:
        raise Refused(f"Give {what}.")
    return text


def maybe_words(text: str) -> str:
    """Text that may be empty; too much of it is refused, not cut off unseen."""
    text = _plain(text)
    if len(text) > LONGEST_TEXT:
        raise Refused(
            f"That is {len(text)} letters; at most {LONGEST_TEXT} are kept. Say it shorter."
        )
    return text


def _plain(text: str) -> str:
    """Text on one line without control characters, which could drive a terminal."""
    return "".join(ch if ch.isprintable() else " " for ch in text).strip()


def _nearest(id: str, known: list[str]) -> str:
    near = get_close_matches(id, known, n=1)
    return f"Did you mean {near[0]}?" if near else f"There are: {', '.join(known)}."
