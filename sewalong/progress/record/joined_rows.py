"""Which neighbouring rows are joined, as far as their numbers were given."""

from __future__ import annotations

from sewalong.progress.record.route import JOIN_ROWS
from sewalong.progress.record.state import State


def unnumbered(state: State) -> int:
    """Seams between rows that were counted without saying which rows."""
    return state.done.get(JOIN_ROWS, 0) - len(state.joints)


def joined(state: State, first: int, second: int) -> bool:
    """Whether these two neighbours are joined by their numbers, in either order."""
    return (min(first, second), max(first, second)) in state.joints


def neighbours(first: int, second: int) -> bool:
    """Whether rows of these numbers lie side by side."""
    return abs(first - second) == 1
