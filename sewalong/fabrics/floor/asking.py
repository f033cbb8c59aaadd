"""What is asked of one place of a photograph of units, and the reading once it is answered."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.floor.floor_words import candidate_words, fabric_words, told_apart
from sewalong.fabrics.floor.mending import patch_said, said
from sewalong.fabrics.floor.result import FloorPlace, FloorReading, HowSure
from sewalong.fabrics.sight import from_afar


class Question(Struct, frozen=True):
    """`words` say what is taken to lie there and how sure that is; `options` are what it may be, the
    likeliest first; `tells` what tells them apart. Of units that are not known it is asked of one
    patch, by its number from 1."""

    words: str
    options: tuple[str, ...]
    tells: tuple[str, ...] = ()
    patch: int | None = None


def question_at(reading: FloorReading, place: FloorPlace, names: Mapping[str, str]) -> Question:
    """What there is to say of a place; `names` are those of her fabrics by letter. Of patches it is the
    first that is not sure, else the first."""
    how = "as you said" if place.said else str(place.sure)
    if not reading.known:
        number = _patch_in_hand(place)
        patch = place.patches[number - 1]
        letters = [one for one in (patch.fabric, *patch.others) if one is not None]
        shown = fabric_words(patch.fabric, names)
        words = f"{place.address} patch {number} of {len(place.patches)}: {shown}, {patch.sure}."
        return Question(words, tuple(fabric_words(one, names) for one in letters), (), number)
    options = tuple(candidate_words(reading, one) for one in place.candidates)
    if place.sure is HowSure.CANNOT_TELL:
        return Question(f"{place.address}: no unit that is known looks like it.", options)
    tells = told_apart(reading, place, names) if place.sure is HowSure.NOT_SURE else ()
    return Question(f"{place.address}: {options[0]}, {how}.", options, tells)


def with_option(reading: FloorReading, place: FloorPlace, option: int) -> FloorReading:
    """The reading once it is said that what lies there is the option of this number, from 0. Raises
    PhotoRefused as `said`, and IndexError where there is no such option."""
    if reading.known:
        one = place.candidates[option]
        return said(reading, place.row, place.column, one.unit, one.turn)
    number = _patch_in_hand(place)
    patch = place.patches[number - 1]
    letters = [one for one in (patch.fabric, *patch.others) if one is not None]
    return patch_said(reading, place.row, place.column, number, letters[option])


def next_asked(reading: FloorReading, at: int) -> int | None:
    """The number of the next place, from 0 in reading order, that is not sure, behind `at` and then
    from the first on; None where all are."""
    count = len(reading.places)
    order = [*range(at + 1, count), *range(at + 1)]
    return next((n for n in order if reading.places[n].sure is not HowSure.SURE), None)


def _patch_in_hand(place: FloorPlace) -> int:
    unsure = (n for n, one in enumerate(place.patches, 1) if one.sure is not HowSure.SURE)
    return next(unsure, 1)


def colour_from_afar(place: FloorPlace) -> Colour | None:
    """The colour of a place as its patches look together from afar; None where none was seen."""
    mean: Colour | None = None
    for count, patch in enumerate(place.patches, start=1):
        mean = patch.colour if mean is None else from_afar(mean, patch.colour, 1 / count)
    return mean
