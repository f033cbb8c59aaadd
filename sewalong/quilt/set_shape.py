"""A set: the squares of one run of a method, and which pieces they become on the way to the unit."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

from sewalong.piecing.derive import Derivation
from sewalong.piecing.flow import PieceAt
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.quilt import Quilt


class Run(Struct, frozen=True):
    """One count of a stage within a set: the pieces it takes, in order, and those it makes."""

    takes: tuple[PieceAt, ...]
    makes: tuple[PieceAt, ...]


class SetShape(Struct, frozen=True):
    """How the squares of a set come together.

    `places` are the method's letters for its squares, in the order they are taken from `pile`.
    `runs` has for each stage its counts within a set, in order. `squares_of` says of each piece
    which places of the set it holds, by their number in `places`. `units` come of a set.
    """

    pile: str
    places: tuple[str, ...]
    runs: Mapping[str, tuple[Run, ...]]
    squares_of: Mapping[PieceAt, tuple[int, ...]]
    units: int


@lru_cache(maxsize=16)
def set_shape(quilt: Quilt) -> SetShape | None:
    """The sets of a quilt's method; None where there are none.

    Strips have none, for what is cut off them is all alike; nor has a plain square, which meets
    nothing within its unit; nor a method of squares of several sizes, for her squares of a fabric
    are of one.
    """
    made = derived_if_any(quilt)
    return None if made is None else shape_of(made)


def shape_of(made: Derivation) -> SetShape | None:
    """The same, of what a method comes to."""
    piles = set(made.letters.values())
    if len(piles) != 1 or len(made.letters) < 2:
        return None
    (pile,) = piles
    places = tuple(made.letters)
    taken = [piece for run in made.drawn for piece in run.takes if piece[0] == pile]
    # A pile whose pieces all have one letter (strips) is drawn from again and again.
    if len(taken) != len(places):
        return None
    number = {letter: place for place, letter in enumerate(places)}
    squares_of: dict[PieceAt, tuple[int, ...]] = {
        (pile, place): (place,) for place in range(len(places))
    }
    runs: dict[str, list[Run]] = {}
    for run in made.drawn:
        runs.setdefault(run.stage, []).append(Run(run.takes, run.makes))
        for piece, letters in zip(run.makes, run.letters, strict=True):
            squares_of[piece] = tuple(number[letter] for letter in letters)
    return SetShape(
        pile=pile,
        places=places,
        runs={stage: tuple(found) for stage, found in runs.items()},
        squares_of=squares_of,
        units=made.unit_count,
    )
