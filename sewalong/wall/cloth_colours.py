"""The colours in which her own fabrics are drawn."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.quilt.choices import Fabric
from sewalong.wall.keys import Key, cloth_key


@lru_cache(maxsize=4)
def cloth_colours(fabrics: tuple[Fabric, ...]) -> Mapping[Key, Colour]:
    """The colour of each of the fabrics that has squares: of a print that of the whole from afar,
    and where only its value is known a grey of that value. Those of which neither is known are
    left out, and have the palette's."""
    counted = [fabric for fabric in fabrics if fabric.squares is not None]
    plain = {
        cloth_key(fabric.letter): parse_colour(fabric.colour)
        for fabric in counted
        if fabric.colour and not (fabric.second and fabric.share)
    }
    if len(plain) == len(counted):
        return plain
    # Only these need the library that knows how colours are seen, which takes long to load.
    from sewalong.fabrics.sight import grey
    from sewalong.fabrics.swatch import swatches

    return plain | {
        cloth_key(one.letter): one.colour or grey(one.value)
        for one in swatches(counted)
        if cloth_key(one.letter) not in plain and one.value is not None
    }
