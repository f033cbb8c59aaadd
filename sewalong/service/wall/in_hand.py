"""The wall while it is looked at: its board is kept from one change to the next.

Colours are reckoned with here, so it is loaded only by whoever looks at the wall.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from sewalong.progress.record.sewn_places import sewn_places
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import LaidUnit
from sewalong.progress.wall.on_wall import OnWall, laying_of, on_wall
from sewalong.progress.wall.units import as_it_is_now
from sewalong.wall.laying.board import Board
from sewalong.wall.laying.bounds import least_touches
from sewalong.wall.laying.laying import Laying, Put
from sewalong.wall.top_of_sets import UnitOf


class WallInHand:
    """A laying of the units `laid`, and its board: to make one takes longer than a move.

    `pieced` are the same units as they are drawn, `touches` how many there are, and `least` how few
    any laying of them has.
    """

    def __init__(self, state: State, laid: tuple[LaidUnit, ...], on: OnWall) -> None:
        self.state = state
        self.laid = laid
        self.on = on
        self.pieced = tuple(
            UnitOf(tuple(letter or None for letter in one.squares), one.unit) for one in laid
        )
        self._make_board()

    def _make_board(self) -> None:
        self.board: Board = self.on.board()
        self.least = least_touches(self.board.grid, self.on.units, self.on.rules)
        self.touches = self.board.touches()

    def lay(self, laying: Laying) -> None:
        """Have the same units lie so."""
        self.on = replace(self.on, laying=laying)
        puts, board = laying.in_order, self.board
        placed = {put.unit for put in puts if put is not None}
        lies = [*puts, *(Put(n) for n in range(len(self.laid)) if n not in placed)]
        # A place that was emptied makes one spare more than there was room for.
        if board.grid != laying.grid or len(lies) != len(board.lies):
            self._make_board()
            return
        for slot, put in enumerate(lies):
            if board.lies[slot] != put:
                board.put(slot, put)
        self.touches = board.touches()


def wall_in_hand(state: State, before: WallInHand | None = None) -> WallInHand | None:
    """The wall as it stands; None where nothing was laid. The one before goes on where its units and
    rules are the same."""
    wall = state.wall
    if not wall.rows:
        return None
    laid = tuple(as_it_is_now(state, unit) for unit in wall.units)
    if before is None or not _goes_on(before, state, laid):
        on = on_wall(state)
        return None if on is None else WallInHand(state, laid, on)
    before.on = replace(before.on, locked=wall.locked, sewn=sewn_places(state))
    if before.state.wall.rows != wall.rows:
        before.lay(laying_of(state, wall.rows))
    before.state = state
    return before


def _goes_on(before: WallInHand, state: State, laid: Sequence[LaidUnit]) -> bool:
    was = before.state
    rules = [(one.wall.touch, one.wall.stacks, one.wall.rim) for one in (was, state)]
    return (
        (was.quilt is state.quilt or was.quilt == state.quilt)
        and was.target == state.target
        and rules[0] == rules[1]
        and before.laid == laid
    )
