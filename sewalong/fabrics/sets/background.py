"""One background for all sets: which fabrics it is of, and how many sets it is enough for."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.fabrics.sets.rules import SetsRefused
from sewalong.fabrics.sets.wanted import Wanted
from sewalong.fabrics.swatch import Swatch


def background_letters(swatches: Sequence[Swatch], named: str) -> frozenset[str]:
    """The letters of the fabrics that `named` means: a fabric's letter or name, or a colour family.

    Raises SetsRefused where it means none, or all of them.
    """
    wanted = named.strip().casefold()
    for said in (
        {swatch.letter for swatch in swatches if swatch.letter.casefold() == wanted},
        {swatch.letter for swatch in swatches if swatch.name.casefold() == wanted},
        {swatch.letter for swatch in swatches if swatch.family and swatch.family == wanted},
    ):
        if said and len(said) < len(swatches):
            return frozenset(said)
    raise SetsRefused(
        f"{named.strip()!r} is not a background. Name one of several fabrics by its letter, "
        "or a colour family that some of them are of, such as blue."
    )


def room_for(
    two: tuple[frozenset[int], frozenset[int]], wanted: Wanted, background: int, others: int
) -> tuple[frozenset[int], int]:
    """The side of a set that the background takes, and the sets that gives: the side for which
    there are squares for the more sets. Raises SetsRefused where there are for none."""
    fits = [
        (min(wanted.sets, background // len(side), others // (wanted.places - len(side))), side)
        for side in two
    ]
    sets, side = max(fits, key=lambda one: one[0])
    if not sets:
        raise SetsRefused(
            f"A set takes {len(side)} squares of the background and {wanted.places - len(side)} "
            f"others; there are {background} and {others}. Choose another background."
        )
    return side, sets


def dealt_out(squares: Sequence[int], sets: int, each: int) -> list[tuple[int, ...]]:
    """So many of the squares to each set, like ones to different sets where that can be."""
    # One after the other in turn: squares of one print lie together in `squares`.
    return [tuple(squares[number : sets * each : sets]) for number in range(sets)]
