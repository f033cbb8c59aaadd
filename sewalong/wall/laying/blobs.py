"""Places that hang together and are of one family, or of one value: what the eye takes for a blob."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from sewalong.fabrics.value_words import value_words
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.grid import CORNERS, At
from sewalong.wall.laying.laying import Laying
from sewalong.wall.laying.units import WallUnit

LARGEST = 3
"""Units of one family or value that may hang together before they are called a blob. Own choice."""


class Blob(Struct, frozen=True):
    """Places that hang together, in order, and the word for what they have in common."""

    word: str
    places: tuple[At, ...]


def family_blobs(
    laying: Laying,
    units: Sequence[WallUnit],
    largest: int = LARGEST,
    rule: TouchRule = TouchRule.EDGE,
) -> tuple[Blob, ...]:
    """Blobs of one colour family, the largest first."""
    return blobs(laying, [unit.family for unit in units], largest, rule)


def value_blobs(
    laying: Laying,
    units: Sequence[WallUnit],
    largest: int = LARGEST,
    rule: TouchRule = TouchRule.EDGE,
) -> tuple[Blob, ...]:
    """Blobs of one of the five values, the largest first; words relative to these units."""
    known = [unit.value for unit in units if unit.value is not None]
    words = iter(value_words(known))
    return blobs(
        laying, [None if unit.value is None else next(words) for unit in units], largest, rule
    )


def blobs(
    laying: Laying,
    words: Sequence[str | None],
    largest: int = LARGEST,
    rule: TouchRule = TouchRule.EDGE,
) -> tuple[Blob, ...]:
    """Groups of more than `largest` places whose units have one word, the largest first.

    `words` has one for each unit, None for a unit that is in no blob. By the corner rule what
    meets at a point hangs together too.
    """
    grid, puts = laying.grid, laying.in_order
    word_at = [None if put is None else words[put.unit] for put in puts]
    seen: set[int] = set()
    found: list[Blob] = []
    for start, word in enumerate(word_at):
        if word is None or start in seen:
            continue
        group, todo = {start}, [start]
        while todo:
            for link in grid.links[todo.pop()]:
                near = link.other
                joins = link.mine < CORNERS or rule is TouchRule.CORNER
                if near >= 0 and joins and near not in group and word_at[near] == word:
                    group.add(near)
                    todo.append(near)
        seen |= group
        if len(group) > largest:
            found.append(Blob(word, tuple(grid.places[place] for place in sorted(group))))
    return tuple(sorted(found, key=lambda blob: (-len(blob.places), blob.places)))
