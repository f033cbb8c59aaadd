"""The wall looked at: what lies at a place and touches there, and what each move would do.

Colours are reckoned with here, so it is loaded only by whoever looks at the wall.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import StrEnum

from msgspec import Struct

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.looked_at import AS_IT_IS, View
from sewalong.progress.record.wall import BY_LETTER
from sewalong.progress.sets.set_words import called
from sewalong.progress.wall.wall_words import fabric_words, unit_words
from sewalong.quilt.derived import derived_if_any
from sewalong.service.wall.drawn import Hung, hung, unit_pictured, wall_colours
from sewalong.service.wall.in_hand import WallInHand
from sewalong.wall.keys import Key
from sewalong.wall.laying.blobs import Blob, family_blobs, value_blobs
from sewalong.wall.laying.grid import At
from sewalong.wall.laying.laying import Put, touches_at
from sewalong.wall.laying.lying_words import lying_words
from sewalong.wall.laying.move_words import place_words
from sewalong.wall.laying.moves import Move, cost, effect, worst_spots
from sewalong.wall.laying.print_words import print_words
from sewalong.wall.laying.touch_words import blob_words, effect_words, touch_words, touches_left
from sewalong.wall.picture import Picture

TOUCHES, LOCKED, SEWN = "!", "#", "="
"""Signs on places: something touches there, it is locked, it is sewn."""

TURNED = ("as it lies", "a quarter turn", "half way round", "three quarters")


class Shows(StrEnum):
    """What is marked on the wall."""

    TOUCHES = "where something touches"
    FAMILIES = "blobs of one colour family"
    VALUES = "blobs of one value"
    NOTHING = "nothing"


class PlacePage(Struct, frozen=True):
    """One place: its name, what lies there, what touches it, and what can be done there with what
    each would mend or cost. A sentence each."""

    title: str
    lies: tuple[str, ...]
    touches: tuple[str, ...]
    does: tuple[str, ...]

    def in_short(self, said: tuple[str, ...]) -> str:
        """Its name, and the first sentence of these."""
        return " ".join((f"{self.title.capitalize()}.", *said[:1]))


class Spare(Struct, frozen=True):
    """A spare as it would lie at a place: its number on the wall, its turn there, and in words what
    it is and how many touches there would be."""

    unit: int
    turns: int
    words: str


# -- drawn ---------------------------------------------------------------------


def drawn(wall: WallInHand) -> Hung:
    """It as it is drawn."""
    state = wall.state
    return hung(state.quilt, state.target, wall.pieced, wall.on.laying, _rows_sewn(wall))


def colours(wall: WallInHand, view: View = AS_IT_IS) -> Mapping[Key, Colour]:
    """The colours of all that is drawn, as they are looked at."""
    return wall_colours(wall.state.quilt, wall.pieced, view)


def pictured(wall: WallInHand, at: At, across: int, down: int) -> Picture | None:
    """The unit at a place, turned as it lies, as large as so many cells hold; None for none."""
    put = _lying(wall, at)
    if put is None:
        return None
    return unit_pictured(wall.state.quilt, wall.pieced[put.unit], put.turns, across, down)


def signs(wall: WallInHand, shows: Shows) -> Mapping[int, str]:
    """A sign for each place that is marked, by its number; a blob is marked with its own."""
    board = wall.board
    if shows is Shows.NOTHING:
        return {}
    if shows is Shows.TOUCHES:
        whole = _rows_sewn(wall)
        begun = [at for at in wall.on.sewn if at[0] not in whole]
        return {
            **{board.slot(at): SEWN for at in begun},
            **{board.slot(at): LOCKED for at in wall.on.locked},
            **dict.fromkeys(board.touching(), TOUCHES),
        }
    return {
        board.slot(at): str(number % 10)
        for number, blob in enumerate(_blobs(wall, shows), start=1)
        for at in blob.places
    }


def _rows_sewn(wall: WallInHand) -> frozenset[int]:
    """The rows that are sewn whole."""
    return frozenset(
        row
        for row, units in enumerate(wall.board.grid.rows, start=1)
        if all((row, place) in wall.on.sewn for place in range(1, units + 1))
    )


def _blobs(wall: WallInHand, shows: Shows) -> tuple[Blob, ...]:
    find = value_blobs if shows is Shows.VALUES else family_blobs
    return find(wall.on.laying, wall.on.units, rule=wall.on.rules.touch)


# -- said ----------------------------------------------------------------------


def verdict(wall: WallInHand) -> str:
    """How many touches there are, and how few any layout has."""
    return touches_left(wall.touches, wall.least)


def marked_words(wall: WallInHand, shows: Shows) -> tuple[str, ...]:
    """What the signs stand for; of blobs a sentence each, by their signs."""
    if shows is Shows.TOUCHES:
        return (f"{TOUCHES} touches  {LOCKED} locked  {SEWN} sewn",)
    if shows is Shows.NOTHING:
        return ("Nothing is marked.",)
    said = blob_words(_blobs(wall, shows))
    if not said:
        return (f"There are no {shows}.",)
    return (f"{shows.capitalize()}:", *(f"{n}: {one}" for n, one in enumerate(said, start=1)))


def place_page(wall: WallInHand, at: At, held: At | None = None) -> PlacePage:
    """What is to be said of a place, with the unit of another picked up or with none."""
    slot = wall.board.slot(at)
    swaps = held is not None and held != at
    touching = touches_at(wall.board.grid, wall.board.lies, wall.on.units, wall.on.rules, (slot,))
    touches = tuple(touch_words(touch, called(wall.state.quilt)) for touch in touching)
    none = ("Nothing touches here.",) if wall.board.lies[slot] is not None else ()
    return PlacePage(
        place_words(at),
        tuple(_lies(wall, at)),
        touches or none,
        _swapped(wall, held, at) if held is not None and swaps else tuple(_turns(wall, at)),
    )


def _lying(wall: WallInHand, at: At) -> Put | None:
    return wall.board.lies[wall.board.slot(at)]


def _lies(wall: WallInHand, at: At) -> Iterator[str]:
    put = _lying(wall, at)
    if put is None:
        yield "Nothing lies here."
        return
    state, unit = wall.state, wall.laid[put.unit]
    names, setting = called(state.quilt), state.quilt.setting
    how = lying_words(wall.on.units[put.unit], put.turns, setting, names)
    said = unit_words(state, unit)
    yield f"{said[:1].upper()}{said[1:]}{f', {how}' if how else ''}."
    if unit.set:
        yield f"{fabric_words(state, unit)}."
    yield from _prints(wall, put)
    if at in wall.on.sewn:
        yield "It is sewn, and stays where it is."
    elif at in wall.on.locked:
        yield "It is locked."


def _prints(wall: WallInHand, put: Put) -> tuple[str, ...]:
    """Which one-way prints do not stand upright there, a sentence each."""
    quilt, unit = wall.state.quilt, wall.laid[put.unit]
    one_way = {
        fabric.letter: fabric for fabric in quilt.counted_fabrics if fabric.kind == "one-way"
    }
    made = derived_if_any(quilt)
    if made is None or unit.unit == BY_LETTER or not one_way:
        return ()
    squares = zip(made.letters, unit.squares, strict=False)
    named = {place: one_way[letter].called for place, letter in squares if letter in one_way}
    return print_words(made.units[unit.unit], float(made.seam), put.turns, named, named)


def _turns(wall: WallInHand, at: At) -> Iterator[str]:
    """What each turn it may lie in would mend or cost."""
    put = _lying(wall, at)
    if put is None or at in wall.on.fixed:
        return
    turns = wall.on.units[put.unit].turns
    for quarters in sorted((turn - put.turns) % 4 for turn in turns if turn != put.turns):
        more = cost(wall.board, Move(at, (put.turns + quarters) % 4))
        yield f"{TURNED[quarters].capitalize()}: {_then(wall, more)}."


def _after(wall: WallInHand, more: int) -> str:
    """ "2 touches, 1 after this" """
    before = wall.touches
    return f"{before or 'no'} touch{'' if before == 1 else 'es'}, {_then(wall, more)}"


def _then(wall: WallInHand, more: int) -> str:
    """ "1 after this" """
    return f"{wall.touches + more or 'none'} after this"


def _swapped(wall: WallInHand, held: At, at: At) -> tuple[str, ...]:
    """What it would mend and make if what lies at these two places changed places."""
    fixed = [place for place in (held, at) if place in wall.on.fixed]
    if fixed:
        return (f"{place_words(fixed[0]).capitalize()} stays as it is.",)
    mine, theirs = _lying(wall, held), _lying(wall, at)
    if mine is None or theirs is None:
        more = _if_laid(wall, held, theirs, at, mine)
        return (f"Put down here: {_after(wall, more)}.",)
    found = effect(wall.board, Move(held, theirs.turns, at, mine.turns))
    _, *each = effect_words(found, called(wall.state.quilt))
    return (f"Put down here: {_after(wall, found.after - found.before)}.", *each)


def _if_laid(wall: WallInHand, one: At, put: Put | None, other: At, other_put: Put | None) -> int:
    """How many touches more there would be with this at two places."""
    board, slots = wall.board, (wall.board.slot(one), wall.board.slot(other))
    before = [board.lies[slot] for slot in slots]
    more = board.change(slots[0], put, slots[1], other_put)
    for slot, lay in zip(slots, before, strict=True):
        board.put(slot, lay)
    return more


def worst(wall: WallInHand) -> tuple[At, ...]:
    """The places where something touches, the worst first."""
    return worst_spots(wall.board)


def spares(wall: WallInHand, at: At) -> tuple[Spare, ...]:
    """Every unit that lies nowhere, turned as is best at a place, those that touch least there
    first; of several that are called alike the one that does."""
    found: dict[str, tuple[int, Spare]] = {}
    for put in wall.board.lies[wall.board.places :]:
        if put is None:
            continue
        ways = [
            (_if_laid(wall, at, Put(put.unit, turns), at, None), turns)
            for turns in wall.on.units[put.unit].turns
        ]
        more, turns = min(ways)
        said = unit_words(wall.state, wall.laid[put.unit])
        if said not in found or more < found[said][0]:
            found[said] = more, Spare(put.unit, turns, f"{said}: {_after(wall, more)}")
    return tuple(spare for _, spare in sorted(found.values(), key=lambda one: one[0]))
