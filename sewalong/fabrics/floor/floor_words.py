"""What was read from a photograph of units in words: a line a fact, and what must be asked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from sewalong.fabrics.floor.known import UNKNOWN
from sewalong.fabrics.floor.result import Candidate, FloorPlace, FloorReading, HowSure
from sewalong.fabrics.floor.ways import ways_of
from sewalong.quilt.worksheet.line import plural

TURNS = ("as made", "turned a quarter", "turned half way round", "turned three quarters")
"""By quarter turns, each of which brings the edge towards row 1 towards the end of the row."""

ABOUT_TURNS = "A quarter turn brings the edge towards row 1 towards the end of the row."
ABOUT_PATCHES = "Patches are counted in reading order, from row 1 down."


def floor_lines(reading: FloorReading) -> tuple[str, ...]:
    """How much is sure, first; then the notes, and what the words of the places mean."""
    count = Counter(place.sure for place in reading.places)
    lines = [f"{count[HowSure.SURE]} of {plural(len(reading.places), 'place')} are sure."]
    if count[HowSure.NOT_SURE]:
        lines.append(f"{plural(count[HowSure.NOT_SURE], 'place')} to be asked about.")
    if count[HowSure.CANNOT_TELL]:
        lines.append(f"{plural(count[HowSure.CANNOT_TELL], 'place')} cannot be told.")
    if not reading.known:
        return (*lines, *reading.notes, ABOUT_PATCHES)
    is_turned = any(place.lies and place.lies.turn for place in reading.places)
    return (*lines, *reading.notes, *([ABOUT_TURNS] if is_turned else []))


def place_lines(reading: FloorReading, names: Mapping[str, str]) -> tuple[str, ...]:
    """A line for each place, row by row; where the units are not known, one for each patch. `names`
    are those of her fabrics by letter."""
    if reading.known:
        return tuple(f"{_where(place)}: {_lies(reading, place)}" for place in reading.places)
    return tuple(
        f"{_where(place)} patch {number}: {fabric_words(patch.fabric, names)}, {patch.sure}"
        for place in reading.places
        for number, patch in enumerate(place.patches, 1)
    )


def question_lines(reading: FloorReading, names: Mapping[str, str]) -> tuple[str, ...]:
    """What a person must say, a line a fact: which of what lies at a place, and what tells it."""
    if reading.known:
        return tuple(
            line
            for place in reading.places
            if place.sure is not HowSure.SURE
            for line in _asked(reading, place, names)
        )
    return tuple(
        f"{_where(place)} patch {number}: {_one_of([patch.fabric, *patch.others], names)}?"
        for place in reading.places
        for number, patch in enumerate(place.patches, 1)
        if patch.sure is not HowSure.SURE
    )


def _lies(reading: FloorReading, place: FloorPlace) -> str:
    lies = place.lies
    if lies is None:
        return f"no unit that is known looks like it, {place.sure}"
    said = f"{candidate_words(reading, lies)}, {'said' if place.said else place.sure}"
    if place.same:
        said += f", one of {len(place.same) + 1} that look the same"
    return said


def _asked(reading: FloorReading, place: FloorPlace, names: Mapping[str, str]) -> list[str]:
    where = _where(place)
    options = [candidate_words(reading, one) for one in place.candidates]
    if place.sure is HowSure.CANNOT_TELL:
        nearest = [f"{where}: {options[0]} comes nearest."] if options else []
        return [f"{where}: no unit that is known looks like it, so what lies there?", *nearest]
    if len(options) == 1:
        return [
            f"{where}: is it {options[0]}?",
            f"{where}: its colours are far from those of its fabrics.",
        ]
    lines = [f"{where}: is it {', or '.join(options)}?"]
    return [*lines, *(f"{where}: {told}" for told in told_apart(reading, place, names))]


def told_apart(
    reading: FloorReading, place: FloorPlace, names: Mapping[str, str]
) -> tuple[str, ...]:
    """What tells the two likeliest units at a place apart, a sentence for each patch."""
    if len(place.candidates) < 2:
        return ()
    first, second = (_shown(reading, one) for one in place.candidates[:2])
    return tuple(
        f"what tells them apart is patch {number}, {fabric_words(fabric, names)} or "
        f"{fabric_words(second[region], names)}."
        for number, (region, fabric) in enumerate(first.items(), 1)
        if region in second and second[region] != fabric
    )


def _shown(reading: FloorReading, candidate: Candidate) -> dict[int, str]:
    """The fabric in each region where this candidate lies."""
    if candidate.unit is None:
        return {}
    unit = reading.units[candidate.unit]
    ways = ways_of([unit], reading.seen.outlines)
    return dict(next(way.patches for way in ways if candidate.turn in way.turns))


def candidate_words(reading: FloorReading, candidate: Candidate) -> str:
    """What may lie at a place: "set 7 unit 2 turned a quarter", or nothing."""
    if candidate.unit is None:
        return "nothing"
    return f"{reading.units[candidate.unit].called} {TURNS[candidate.turn]}"


def _one_of(fabrics: list[str | None], names: Mapping[str, str]) -> str:
    if fabrics == [None]:
        return "no fabric is like it; which is it"
    if len(fabrics) == 1:
        return f"is it {fabric_words(fabrics[0], names)}"
    return "is it " + ", or ".join(fabric_words(fabric, names) for fabric in fabrics)


def fabric_words(letter: str | None, names: Mapping[str, str]) -> str:
    """Letter and name: nobody has to know a letter by heart."""
    if letter is None or letter == UNKNOWN:
        return "a fabric that is not known"
    return f"{letter} {names[letter]}" if names.get(letter) else letter


def _where(place: FloorPlace) -> str:
    return f"row {place.row} place {place.column}"
