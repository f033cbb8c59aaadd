"""What one move mends and what it costs: a swap, a turn, or a spare brought in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from sewalong.wall.laying.board import Board
from sewalong.wall.laying.grid import At
from sewalong.wall.laying.laying import Laying, Put, Touch, touches_at


class Move(Struct, frozen=True):
    """What lies at `at` goes to `other`, and the other way round, each with its quarter turns there.

    For a turn `other` is None. For a spare it is None too, and `spare` the number of the unit
    that comes in; what lay there is a spare then. `turns` are those of what lies at `at`
    afterwards, `other_turns` of what lies at `other`.
    """

    at: At
    turns: int
    other: At | None = None
    other_turns: int = 0
    spare: int | None = None


class Effect(Struct, frozen=True):
    """A move: all touches `before` it and `after` it, those it mends, and those it makes."""

    before: int
    after: int
    mends: tuple[Touch, ...]
    makes: tuple[Touch, ...]


def cost(board: Board, move: Move) -> int:
    """How many touches more there would be, below 0 for fewer: known at once, and nothing moved.

    Raises ValueError where nothing lies at a place of the move, and KeyError where a place, or a
    unit to bring in, is not there.
    """
    one, new, other, other_new = _slots(board, move)
    before, other_before = board.lies[one], board.lies[other]
    more = board.change(one, new, other, other_new)
    board.put(one, before)
    board.put(other, other_before)
    return more


def carry_out(board: Board, move: Move) -> None:
    """Move it; raises as `cost`."""
    board.change(*_slots(board, move))


def effect(board: Board, move: Move) -> Effect:
    """What a move mends and what it makes; nothing is moved. Raises as `cost`."""
    one, new, other, other_new = _slots(board, move)
    lies = list(board.lies)
    lies[other] = other_new
    lies[one] = new
    places = {slot for slot in (one, other) if slot < board.places}
    lost = touches_at(board.grid, board.lies, board.units, board.rules, places)
    made = touches_at(board.grid, lies, board.units, board.rules, places)
    total = board.touches()
    return Effect(
        total,
        total - len(lost) + len(made),
        tuple(touch for touch in lost if touch not in made),
        tuple(touch for touch in made if touch not in lost),
    )


def moved(laying: Laying, move: Move) -> Laying:
    """The laying once a move is made. Raises ValueError where nothing lies at a place of it, and
    KeyError where there is no such place."""
    puts = list(laying.in_order)
    one = laying.grid.number(move.at)
    mine = _there(puts[one])
    if move.spare is not None:
        puts[one] = Put(move.spare, move.turns)
    elif move.other is None:
        puts[one] = Put(mine.unit, move.turns)
    else:
        other = laying.grid.number(move.other)
        puts[one] = Put(_there(puts[other]).unit, move.turns)
        puts[other] = Put(mine.unit, move.other_turns)
    return laying.with_places(puts)


def best_exchange(board: Board, one: int, other: int) -> tuple[int, Move]:
    """The swap of what lies in two slots, each turned as it touches least there, and how many
    touches more it makes; of turns as good, those nearest to how a unit lies now.

    The first slot is a place; the other may be that of a spare. Raises ValueError where nothing
    lies in one of them.
    """
    mine, theirs = _lying(board, one), _lying(board, other)
    news, others = _ways(board, theirs), _ways(board, mine)
    if other in board.beside[one]:
        found = []
        for new in news:
            for other_new in others:
                more = board.change(one, new, other, other_new)
                found.append((more, new, other_new))
                board.put(one, mine)
                board.put(other, theirs)
    else:
        before = board.around(one) + board.around(other)
        new, touched = _best_there(board, one, news)
        other_new, other_touched = _best_there(board, other, others)
        found = [(touched + other_touched - before, new, other_new)]
    board.put(one, mine)
    board.put(other, theirs)
    more, new, other_new = min(found, key=lambda way: way[0])
    return more, _exchange(board, one, new, other, other_new)


def _best_there(board: Board, slot: int, ways: Sequence[Put]) -> tuple[Put, int]:
    """The way that touches least in a slot, and how much; the slot is left with some of them."""
    best: tuple[Put, int] | None = None
    for put in ways:
        board.put(slot, put)
        touched = board.around(slot)
        if best is None or touched < best[1]:
            best = (put, touched)
    assert best is not None
    return best


def _ways(board: Board, put: Put) -> list[Put]:
    """A unit in every turn that shows something else, as it lies now first."""
    faces = board.faces.of[put.unit]
    turned = [
        quarters for quarters in board.faces.turns[put.unit] if faces[quarters] != faces[put.turns]
    ]
    return [put, *(Put(put.unit, quarters) for quarters in turned)]


def exchanges(board: Board, one: int, other: int) -> Iterator[Move]:
    """Every swap of what lies in two slots, each in every turn that shows something else."""
    mine, theirs = _lying(board, one), _lying(board, other)
    for new in _ways(board, theirs):
        for other_new in _ways(board, mine):
            yield _exchange(board, one, new, other, other_new)


def turns(board: Board, one: int) -> Iterator[Move]:
    """Every turn of what lies in a slot that shows something else than now."""
    for put in _ways(board, _lying(board, one))[1:]:
        yield Move(board.grid.places[one], put.turns)


def _exchange(board: Board, one: int, new: Put, other: int, other_new: Put) -> Move:
    at = board.grid.places[one]
    if other >= board.places:
        return Move(at, new.turns, spare=new.unit)
    return Move(at, new.turns, board.grid.places[other], other_new.turns)


def worst_spots(board: Board) -> tuple[At, ...]:
    """The places where something touches, the worst first, and like ones in reading order."""
    spots = [(-board.around(slot), slot) for slot in board.touching()]
    return tuple(board.grid.places[slot] for _, slot in sorted(spots))


def _slots(board: Board, move: Move) -> tuple[int, Put | None, int, Put | None]:
    one = board.slot(move.at)
    mine = _lying(board, one)
    if move.spare is not None:
        for slot in range(board.places, len(board.lies)):
            put = board.lies[slot]
            if put is not None and put.unit == move.spare:
                return one, Put(put.unit, move.turns), slot, Put(mine.unit)
        raise KeyError(move.spare)
    if move.other is None:
        turned = Put(mine.unit, move.turns)
        return one, turned, one, turned
    other = board.slot(move.other)
    theirs = _lying(board, other)
    return one, Put(theirs.unit, move.turns), other, Put(mine.unit, move.other_turns)


def _lying(board: Board, slot: int) -> Put:
    return _there(board.lies[slot])


def _there(put: Put | None) -> Put:
    if put is None:
        raise ValueError("nothing lies there")
    return put
