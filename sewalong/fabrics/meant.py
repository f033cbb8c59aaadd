"""Which fabric somebody means by its letter, its name or a part of that; or a colour alone."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.fabrics.swatch import Swatch, swatches
from sewalong.lengths.fault import quoted
from sewalong.quilt.choices import Fabric
from sewalong.quilt.file.values import colour
from sewalong.quilt.refusal import NumbersFault


def fabric_meant(text: str, fabrics: Sequence[Fabric]) -> Fabric:
    """The fabric of this letter, letter and name, name, or the only one with this in its name.

    Raises NumbersFault where none is, or several are.
    """
    found = _found(text, fabrics)
    if found is None:
        there = ", ".join(one.called for one in fabrics[:8])
        more = f" and {len(fabrics) - 8} more" if len(fabrics) > 8 else ""
        known = f"There are {there}{more}." if fabrics else "The quilt has no counted fabrics yet."
        raise NumbersFault(f"{quoted(text)} is none of the fabrics. {known}")
    return found


def side_by_side(texts: Sequence[str], fabrics: Sequence[Fabric]) -> tuple[Swatch, ...]:
    """The fabrics meant, in order; each may also be a colour, "#a0522d" or a name CSS has, which is
    looked at among the fabrics. Raises NumbersFault as `fabric_meant`."""
    meant = [_found(text, fabrics) or _colour(text, fabrics) for text in texts]
    colours = dict.fromkeys(one for one in meant if one not in fabrics)
    known = {swatch.letter: swatch for swatch in swatches([*fabrics, *colours])}
    return tuple(known[one.letter] for one in meant)


def _found(text: str, fabrics: Sequence[Fabric]) -> Fabric | None:
    wanted = _plain(text)
    called = {one: (one.letter, one.called, one.name) for one in fabrics}
    for way in range(3):
        if found := [one for one, ways in called.items() if _plain(ways[way]) == wanted]:
            return _the_one(text, found)
    return _the_one(text, [one for one in fabrics if wanted and wanted in _plain(one.name)])


def _the_one(text: str, found: Sequence[Fabric]) -> Fabric | None:
    if len(found) > 1:
        which = " or ".join(one.called for one in found)
        raise NumbersFault(f"{quoted(text)} may be {which}. Give the letter.")
    return found[0] if found else None


def _plain(text: str) -> str:
    """Without capitals, and places as they can be typed: "2.5" for "2·5"."""
    return " ".join(text.replace("·", ".").casefold().split())


def _colour(text: str, fabrics: Sequence[Fabric]) -> Fabric:
    """A colour as a fabric of one square, with what was typed for its letter."""
    try:
        said = colour("".join(text.split()))
    except ValueError as fault:
        if text.lstrip().startswith("#"):
            raise NumbersFault(f"{quoted(text)}: {fault}") from None
        return fabric_meant(text, fabrics)
    return Fabric(said, "" if text.lstrip().startswith("#") else text.strip(), said, 1)
