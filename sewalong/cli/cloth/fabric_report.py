"""The fabrics of a quilt, one a line and as data."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sewalong.fabrics.swatch_words import swatch_words
from sewalong.quilt.choices import ASSORTED
from sewalong.service.fabric_looks import fabrics_now

if TYPE_CHECKING:
    from sewalong.fabrics.swatch import Swatch
    from sewalong.service.open_quilt import OpenQuilt


def facts(quilt: OpenQuilt) -> tuple[str, ...]:
    """What is to be said of all fabrics together, one fact each."""
    now = fabrics_now(quilt)
    return (now.verdict, *now.facts)


def fabric_lines(quilt: OpenQuilt) -> tuple[str, ...]:
    """What is said of all, then every fabric by letter."""
    now = fabrics_now(quilt)
    if not now.rows:
        return (now.verdict, *_HOW)
    return (now.verdict, *now.facts, *map(swatch_words, _by_letter(now.swatches, quilt)))


_HOW = (
    "To say them: sewalong fabrics --say “lights 60, mediums 70, darks 38”",
    "To read them off one photograph: sewalong fabrics --photo FILE --grid 6x7",
)


def fabric_data(quilt: OpenQuilt) -> dict[str, object]:
    """Every fabric by letter. `lightness` is CIE L*, null where no colour was given."""
    now = fabrics_now(quilt)
    said = {one.letter: one for one in quilt.state.quilt.counted_fabrics}
    ordered = _by_letter(now.swatches, quilt)
    return {
        "fabrics": [
            {
                "letter": one.letter,
                "name": one.name,
                "squares": one.squares,
                "value": one.word,
                "lightness": round(one.value, 1) if one.colour and one.value else None,
                "colour": said[one.letter].colour,
                "from_afar": str(one.colour) if one.colour else None,
                "second": said[one.letter].second,
                "share": said[one.letter].share,
                "family": one.family.value if one.family else None,
                "kind": one.kind,
            }
            for one in ordered
        ],
        "piles": [one.letter for one in ordered if one.kind == ASSORTED],
        "squares": sum(one.squares for one in ordered),
        "facts": [now.verdict, *now.facts],
    }


def _by_letter(swatches: tuple[Swatch, ...], quilt: OpenQuilt) -> list[Swatch]:
    found = {swatch.letter: swatch for swatch in swatches}
    return [found[one.letter] for one in quilt.state.quilt.counted_fabrics if one.letter in found]
