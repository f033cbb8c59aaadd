"""What meets what in a method, in words: one fact each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from sewalong.lengths import Unit, show
from sewalong.piecing.derive import Derivation
from sewalong.piecing.edges import Side
from sewalong.quilt.method_seams import MethodSeams
from sewalong.quilt.set_shape import shape_of

_SIDES = {
    Side.TOP: "towards row 1",
    Side.BOTTOM: "away from row 1",
    Side.NEAR_START: "where the row begins",
    Side.FAR: "where the row goes on",
}

_WAYS = (
    "towards row 1",
    "towards row 1 and where the row goes on",
    "where the row goes on",
    "away from row 1 and where the row goes on",
    "away from row 1",
    "away from row 1 and where the row begins",
    "where the row begins",
    "towards row 1 and where the row begins",
)
"""By eighths of a circle from the unit's up, x axis towards y axis."""


def called(made: Derivation) -> Mapping[str, str]:
    """What the method's letters are called: the place in the set, as it is counted at the table, or
    where there are no sets the fabric by its letter."""
    shape = shape_of(made)
    if shape is None:
        return {letter: f"fabric {letter}" for letter in made.letters}
    return {letter: f"place {number}" for number, letter in enumerate(shape.places, start=1)}


def seam_words(made: Derivation, seams: MethodSeams, unit: Unit) -> tuple[str, ...]:
    """What meets what, along which length, in which units; what their outer edges show; and which
    way a one-way print stands in each."""
    names = called(made)
    return (
        *_of_set(made),
        *_meet(seams, names, unit),
        *_edges(seams, names),
        *_stand(seams, names),
    )


def _of_set(made: Derivation) -> Iterator[str]:
    shape = shape_of(made)
    if shape is None:
        yield "This method has no sets, so its fabrics are told by the letters of the method."
        return
    yield f"A set: {len(shape.places)} squares, its places numbered as squares are taken."
    yield f"Units of a set: {shape.units}."


def _meet(seams: MethodSeams, names: Mapping[str, str], unit: Unit) -> Iterator[str]:
    if not seams.seams:
        yield "Nothing meets inside a unit."
    for one in seams.seams:
        first, other = (names[letter] for letter in one.letters)
        where = "every unit" if len(one.units) == seams.units > 1 else units_words(one.units)
        met = f"meets {other}" if first != other else "meets itself"
        yield f"{_capital(first)} {met} along {show(one.length, unit)}: {where}."


def _edges(seams: MethodSeams, names: Mapping[str, str]) -> Iterator[str]:
    for edge in seams.edges:
        shown = " and ".join(names[letter] for letter in edge.letters)
        yield f"Edge of unit {edge.unit} {_SIDES[edge.side]}: {shown}."


def _stand(seams: MethodSeams, names: Mapping[str, str]) -> Iterator[str]:
    for one in seams.stands:
        ways = " and ".join(way_words(degrees) for degrees in one.degrees)
        yield f"A one-way print at {names[one.letter]} points in unit {one.unit} {ways}."


def units_show(made: Derivation, lies: Mapping[str, str]) -> tuple[tuple[str, ...], ...]:
    """What shows in each different unit of a batch, in reading order; `lies` has what lies at each
    place by the method's letter."""
    return tuple(
        tuple(lies[patch.letter] for patch in unit.finished(float(made.seam)))
        for unit in made.units
    )


def way_words(degrees: int) -> str:
    """Where a print's up points, to the nearest eighth of a circle."""
    return _WAYS[round(degrees / 45) % 8]


def units_words(numbers: Sequence[int]) -> str:
    """ "unit 1", "units 1 and 4"."""
    *others, last = map(str, numbers)
    return f"units {', '.join(others)} and {last}" if others else f"unit {last}"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
