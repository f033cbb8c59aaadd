"""All sets as a list to lay squares by: of which fabrics each is, front and back."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.record.squares_left import shape_of_sets
from sewalong.progress.record.state import State
from sewalong.progress.sets.groups import groups
from sewalong.progress.sets.set_words import NOT_KNOWN, called
from sewalong.progress.sets.where_words import standing_words


class ListedSet(Struct, frozen=True):
    """A set: the fabrics of its squares by what lies together, each with letter and name, and how it
    stands ("next", "held back"), empty for one that waits its turn."""

    number: int
    groups: tuple[tuple[str, tuple[str, ...]], ...]
    standing: str


def set_list(state: State) -> tuple[ListedSet, ...]:
    """Every set that is accepted, by number; empty where none is."""
    if not state.sets.sets:
        return ()
    names = called(state.quilt)
    parts = groups(state.quilt, shape_of_sets(state.quilt))
    return tuple(
        ListedSet(
            number,
            tuple(
                (
                    part.title,
                    tuple(names.get(one, one) or NOT_KNOWN for one in laid.fabrics(part.places)),
                )
                for part in parts
            ),
            standing_words(state, laid),
        )
        for number, laid in sorted(state.sets.sets.items())
    )
