"""What is said over the sheet of a photograph while a person looks it over."""

from __future__ import annotations

from sewalong.fabrics.photo.result import Place, ReadPhoto
from sewalong.fabrics.photo.taken_in import name_of
from sewalong.fabrics.sight import value
from sewalong.quilt.worksheet.line import plural


def sheet_in_short(photo: ReadPhoto) -> str:
    """How many squares and fabrics there are, and that doubles are likely at most."""
    fabrics = photo.fabrics
    places = len(photo.places)
    said = f"{plural(places, 'square')}, {plural(len(fabrics), 'fabric')}"
    if photo.packs > 1:
        said += f"; {photo.packs} packs, {places * photo.packs:,} squares in all"
    several = sum(len(fabric.places) > 1 for fabric in fabrics)
    if not several:
        return f"{said}. No two look alike."
    lie = "lies" if several == 1 else "lie"
    same = f"{plural(several, 'fabric')} {lie} at several places"
    return f"{said}. {same}: that is likely, not sure."


def place_in_hand(photo: ReadPhoto, place: Place) -> str:
    """ "2·5: C blue 2·5, small print, #2f4a7c, value 31 of 100. Likely the same at 4·1." """
    fabric = next(one for one in photo.fabrics if one.letter == place.letter)
    said = (
        f"{place.address}: {place.letter} {name_of(fabric)}, {place.kind}, {place.colour}, "
        f"value {value(place.colour):.0f} of 100."
    )
    others = [one.address for one in fabric.places if one != place]
    if not others:
        return said
    more = f" and {len(others) - _NAMED} more" if len(others) > _NAMED else ""
    return f"{said} Likely the same at {', '.join(others[:_NAMED])}{more}."


_NAMED = 4
"""Places that are named before the rest are counted (own choice)."""
