"""The squares of a set as they lie on the table: which are the front of a stack, which the back."""

from __future__ import annotations

from msgspec import Struct

from sewalong.quilt.quilt import Quilt
from sewalong.quilt.set_shape import SetShape

_LAY = "lay"
"""The operation that lays a piece face down on another (`piecing.operation_words`)."""

FACE_TO_FACE = ("front", "back")
"""The first lies face up, the second face down upon it."""


class Group(Struct, frozen=True):
    """Squares that are one piece before they meet the others: what they are called, and their
    places in the set, from 0 on."""

    title: str
    places: tuple[int, ...]


def groups(quilt: Quilt, shape: SetShape) -> tuple[Group, ...]:
    """The pieces of which a set is put together last, such as the two four-patches of a stack."""
    every = list(range(len(shape.places)))
    for stage in reversed(quilt.written_method.stages):
        for run in shape.runs.get(stage.id, ()):
            parts = [shape.squares_of[piece] for piece in run.takes]
            if len(parts) > 1 and sorted(place for part in parts for place in part) == every:
                if stage.operations[-1] == _LAY and len(parts) == len(FACE_TO_FACE):
                    return tuple(map(Group, FACE_TO_FACE, parts))
                titles = (
                    f"{_noun(quilt, shape, part)} {n}" for n, part in enumerate(parts, start=1)
                )
                return tuple(map(Group, titles, parts))
    return (Group("squares", tuple(every)),)


def _noun(quilt: Quilt, shape: SetShape, part: tuple[int, ...]) -> str:
    """What these squares are called when they are first one piece: a pair before it is sewn."""
    pile = next(pile for (pile, _), places in shape.squares_of.items() if places == part)
    return quilt.method.pile(pile).noun.one
