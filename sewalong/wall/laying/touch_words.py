"""Touches and blobs in words, a sentence each, and what a move mends and makes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sewalong.wall.laying.blobs import Blob
from sewalong.wall.laying.laying import Kind, Touch
from sewalong.wall.laying.move_words import place_words
from sewalong.wall.laying.moves import Effect


def touch_words(touch: Touch, called: Mapping[str, str] | None = None) -> str:
    """ "Row 2 place 3 meets row 2 place 4: A rust dots along a seam." """
    here = place_words(touch.places[0]).capitalize()
    fabric = (called or {}).get(touch.fabric, touch.fabric)
    if touch.kind is Kind.RIM:
        return f"{here} meets what lies around the units: {fabric}."
    if touch.kind is Kind.SASH:
        return f"{here} meets a sash: {fabric}."
    both = f"{here} meets {place_words(touch.places[1])}"
    if touch.kind is Kind.STACK:
        return f"{both}: units of one stack."
    where = "along a seam" if touch.kind is Kind.FABRIC else "at a point"
    return f"{both}: {fabric} {where}."


def touches_left(touches: int, least: int) -> str:
    """How many touches there are, and how few any layout has; nothing is called the fewest that does
    not meet `least`, which no layout passes."""
    if not touches:
        return "Nothing touches."
    left = f"{touches} touch{'' if touches == 1 else 'es'}"
    if touches <= least:
        return f"{left}, and no layout has fewer."
    return f"{left}, and no layout has fewer than {least}." if least else f"{left}."


def effect_words(effect: Effect, called: Mapping[str, str] | None = None) -> tuple[str, ...]:
    """ "2 touches now, 1 after this.", and then each touch it mends and each it makes."""
    now = f"{effect.before} touch{'' if effect.before == 1 else 'es'} now"
    return (
        f"{now}, {effect.after} after this.",
        *(f"It mends: {_lower(touch_words(touch, called))}" for touch in effect.mends),
        *(f"It makes: {_lower(touch_words(touch, called))}" for touch in effect.makes),
    )


NAMED = 12
"""Places of a blob that are named: enough to see where it lies (own choice)."""


def blob_words(blobs: Sequence[Blob]) -> tuple[str, ...]:
    """A sentence for each blob: how many units, what they have in common, and where it lies."""
    return tuple(
        f"{len(blob.places)} units hang together that are {blob.word}: {_where(blob)}."
        for blob in blobs
    )


def _where(blob: Blob) -> str:
    named = ", ".join(f"{row}·{place}" for row, place in blob.places[:NAMED])
    more = len(blob.places) - NAMED
    return f"{named} and {more} more" if more > 0 else named


def _lower(sentence: str) -> str:
    return f"{sentence[:1].lower()}{sentence[1:]}"
