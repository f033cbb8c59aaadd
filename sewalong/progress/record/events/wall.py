"""Units on the wall: laid, moved, kept in their places; rows in another order.

Places are row and place in it, from 1; units are numbered from 0 as they were laid.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import ClassVar, Literal

from msgspec.structs import replace

from sewalong.progress.record.events.event import Event, Recorded
from sewalong.progress.record.limits import short
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.sewn_places import sewn_places, units_sewn
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally
from sewalong.progress.record.wall import (
    BY_LETTER,
    NOTHING_LAID,
    OF_NO_SET,
    At,
    LaidUnit,
    Lies,
    Row,
    TouchWord,
)
from sewalong.progress.record.web_rows import rows_joined

MOST_UNITS = 10_000
"""Units on one wall: as many as a pile may begin with."""

MOST_SQUARES = 100
"""Squares a unit may come of: more places than any method has letters for."""

HowLaid = Literal["proposed", "typed", "photograph"]
HowMoved = Literal["swapped", "turned", "put in", "taken out", "moved"]
HowOrdered = Literal["exchanged", "turned", "found"]

Moved = tuple[int, int, int, int]
"""Row and place, and what lies there from now on: a unit and its quarter turns; unit -1 for none."""

EMPTY = -1

A_HAIR = 1e-4
"""Inches by which a unit may be longer than wide and still be square: float noise (own choice)."""


class WallLaid(Event, frozen=True, kw_only=True, tag="wall laid"):
    """These units, laid so, in place of whatever was laid before; nothing for no rows.

    `rows` have for each place a unit and its quarter turns, or None; `touch`, `stacks` and `rim` are
    the rules (`WallNow`), and `how` says where it came from. What is `locked` stays so.
    """

    most_values: ClassVar[int] = MOST_UNITS * (MOST_SQUARES + 4) + 4 * MOST_UNITS

    units: tuple[LaidUnit, ...]
    rows: tuple[Row, ...]
    touch: TouchWord = "edge"
    stacks: bool = True
    rim: str = ""
    how: HowLaid = "proposed"

    def check(self, state: State) -> None:
        if not self.rows:
            if not state.wall.rows:
                raise Refused("Nothing is laid. Nothing was recorded.")
            return
        lengths = tuple(row.units for row in state.quilt.rows_for(state.target))
        if tuple(map(len, self.rows)) != lengths:
            raise Refused(
                f"The layout wanted is {state.target.rows} × {state.target.columns}, and these rows "
                "are others. Lay them anew, or change the target first."
            )
        _check_units(state, self.units)
        _check_places(state, self.units, [lies for row in self.rows for lies in row])
        if self.rim and self.rim not in {fabric.letter for fabric in state.quilt.fabrics}:
            raise Refused("The fabric at the rim is none of this quilt's. Name one by its letter.")
        if state.wall.rows:
            moved = [
                (at, _shown(self.units, lies), _shown(state.wall.units, state.wall.at(at)))
                for at, lies in _places(self.rows)
                if state.wall.has(at)
            ]
            _refuse_what_is_sewn(state, [at for at, new, old in moved if old and new != old])

    def apply(self, tally: Tally, seq: int) -> None:
        if not self.rows:
            # What is sewn stays pressed as it is, whatever is laid next.
            tally.wall = replace(NOTHING_LAID, pressed=tally.wall.pressed)
        else:
            was = tally.wall
            laid = replace(
                was, units=self.units, touch=self.touch, stacks=self.stacks, rim=self.rim
            )
            lengths = tuple(map(len, self.rows))
            fits = tuple(map(len, was.rows)) == lengths
            fitted = laid.fitted(lengths, anew=not fits)
            if not was.rows and len(was.pressed) == len(lengths):
                fitted = replace(fitted, pressed=was.pressed)
            locked = frozenset(at for at in fitted.locked if self.rows[at[0] - 1][at[1] - 1])
            tally.wall = replace(fitted, rows=self.rows, locked=locked)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        if not self.rows:
            return "Nothing is laid on the wall any more."
        n = sum(lies is not None for row in self.rows for lies in row)
        over = len(self.units) - n
        spare = f", {over} spare" if over else ""
        return f"Laid on the wall, {_HOW[self.how]}: {n} unit{'' if n == 1 else 's'}{spare}."


_HOW = {"proposed": "as proposed", "typed": "as typed", "photograph": "as photographed"}


class UnitsMoved(Event, frozen=True, kw_only=True, tag="units moved"):
    """From now on these places have this: two units swapped, one turned, a spare put in."""

    most_values: ClassVar[int] = 4 * MOST_UNITS + 10

    places: tuple[Moved, ...]
    how: HowMoved = "moved"

    def check(self, state: State) -> None:
        must_be_laid(state)
        moves = _as_moves(self.places)
        for at, _ in moves:
            a_place(state, at)
        if len({at for at, _ in moves}) != len(moves):
            raise Refused("Each place is named once.")
        after = state.wall.with_moves(moves)
        _check_places(state, after.units, [lies for row in after.rows for lies in row])
        if after.rows == state.wall.rows:
            raise Refused("That is how it lies already. Nothing was recorded.")
        _refuse_what_is_sewn(
            state,
            [at for at, lies in moves if (old := state.wall.at(at)) is not None and old != lies],
        )
        _refuse_what_is_locked(state, [at for at, lies in moves if lies != state.wall.at(at)])

    def apply(self, tally: Tally, seq: int) -> None:
        tally.wall = tally.wall.with_moves(_as_moves(self.places))
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        places = [place_called((row, place)) for row, place, _, _ in self.places]
        if self.how == "swapped" and len(places) == 2:
            return f"Swapped {places[0]} with {places[1]}."
        if len(places) == 1:
            return f"{_MOVED[self.how]} {places[0]}."
        return f"Moved what lies at {len(places)} places."


_MOVED = {
    "swapped": "Swapped",
    "turned": "Turned",
    "put in": "Put a spare in at",
    "taken out": "Taken out of",
    "moved": "Moved what lies at",
}


class PlacesLocked(Event, frozen=True, kw_only=True, tag="places locked"):
    """What lies at these places stays there, whatever is proposed; or no longer."""

    most_values: ClassVar[int] = 2 * MOST_UNITS + 10

    places: tuple[At, ...]
    locked: bool = True

    def check(self, state: State) -> None:
        must_be_laid(state)
        if not self.places:
            raise Refused("Name a place: its row and its place in the row.")
        for at in self.places:
            a_place(state, at)
            if self.locked and state.wall.at(at) is None:
                raise Refused(f"Nothing lies at {place_called(at)}, so nothing can be kept there.")
        if all((at in state.wall.locked) is self.locked for at in self.places):
            how = "That is locked already" if self.locked else "Nothing there is locked"
            raise Refused(f"{how}. Nothing was recorded.")

    def apply(self, tally: Tally, seq: int) -> None:
        now, places = tally.wall.locked, frozenset(filter(tally.wall.has, self.places))
        tally.wall = replace(tally.wall, locked=now | places if self.locked else now - places)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        n = len(self.places)
        what = place_called(self.places[0]).capitalize() if n == 1 else f"{n} places"
        verb = "is" if n == 1 else "are"
        return f"{what} {verb} {'locked' if self.locked else 'no longer locked'}."


class RowsReordered(Event, frozen=True, kw_only=True, tag="rows reordered"):
    """Whole rows lie otherwise: for each row from 1 on, `order` has the number of the one that lies
    there now, and `turned` those that lie end for end since, by their new numbers."""

    most_values: ClassVar[int] = 2 * MOST_UNITS + 10

    order: tuple[int, ...]
    turned: tuple[int, ...] = ()
    how: HowOrdered = "exchanged"

    def check(self, state: State) -> None:
        must_be_laid(state)
        rows = state.wall.rows
        if state.quilt.is_on_point:
            raise Refused(
                "Rows on point differ in length or in their ends, so none can change places."
            )
        if sorted(self.order) != list(range(1, len(rows) + 1)):
            raise Refused(f"Name each row once: they are numbered from 1 to {len(rows)}.")
        if len(set(self.turned)) != len(self.turned) or any(
            not 1 <= row <= len(rows) for row in self.turned
        ):
            raise Refused(f"The rows turned are numbered from 1 to {len(rows)}.")
        if self.order == tuple(range(1, len(rows) + 1)) and not self.turned:
            raise Refused("The rows lie in that order already. Nothing was recorded.")
        changed = {n for n, was in enumerate(self.order, 1) if n != was} | {*self.turned}
        _refuse_what_is_joined(state, changed)
        _refuse_half_sewn(state, self.order, changed)

    def apply(self, tally: Tally, seq: int) -> None:
        if sorted(self.order) == list(range(1, len(tally.wall.rows) + 1)):
            sewn = whole_rows_sewn(tally.freeze())
            tally.wall = tally.wall.with_rows(self.order, self.turned, sewn)
        tally.can_undo(seq)

    def words(self, state: State, record: Sequence[Recorded]) -> str:
        changed = [n for n, was in enumerate(self.order, 1) if n != was]
        if self.how == "exchanged" and len(changed) == 2 and not self.turned:
            return f"Rows {changed[0]} and {changed[1]} exchanged; exchange their tags too."
        if self.how == "turned" and not changed:
            said = ", ".join(map(str, self.turned))
            return f"Row{'' if len(self.turned) == 1 else 's'} {said} turned end for end."
        order = ", ".join(
            f"{was} turned" if n in self.turned else str(was)
            for n, was in enumerate(self.order, start=1)
        )
        return f"The rows lie in this order now: {order}. Number their tags anew."


def must_be_laid(state: State) -> None:
    """Raise Refused where nothing is on the wall."""
    if not state.wall.rows:
        raise Refused("Nothing is laid on the wall yet. Have a layout proposed, or type one.")


def a_place(state: State, at: At) -> At:
    """`at` if the layout has such a place; raises Refused."""
    if not state.wall.has(at):
        rows = len(state.wall.rows)
        row = at[0]
        if 1 <= row <= rows:
            n = len(state.wall.rows[row - 1])
            raise Refused(f"Row {row} has places 1 to {n}. Count along it again.")
        raise Refused(f"There is no row {short(row)}: the rows are numbered from 1 to {rows}.")
    return at


def place_called(at: At) -> str:
    """ "row 2 place 3" """
    return f"row {at[0]} place {at[1]}"


def whole_rows_sewn(state: State) -> frozenset[int]:
    """The numbers of the rows whose units are all sewn together."""
    lengths = (row.units for row in state.quilt.rows_for(state.target))
    sewn = units_sewn(state)
    return frozenset(
        n for n, (whole, has) in enumerate(zip(lengths, sewn, strict=True), start=1) if has >= whole
    )


def _places(rows: Sequence[Row]) -> list[tuple[At, Lies | None]]:
    return [
        ((row, place), lies)
        for row, there in enumerate(rows, start=1)
        for place, lies in enumerate(there, start=1)
    ]


def _as_moves(places: Sequence[Moved]) -> list[tuple[At, Lies | None]]:
    return [
        ((row, place), None if unit == EMPTY else (unit, turns))
        for row, place, unit, turns in places
    ]


def _shown(units: Sequence[LaidUnit], lies: Lies | None) -> tuple[LaidUnit, int] | None:
    return None if lies is None else (units[lies[0]], lies[1])


def _check_places(state: State, units: Sequence[LaidUnit], lying: Sequence[Lies | None]) -> None:
    there = [lies for lies in lying if lies is not None]
    if any(not 0 <= unit < len(units) or not 0 <= turns < 4 for unit, turns in there):
        raise Refused(
            "A place has a unit that there is not, or a turn beyond three quarters. Lay it anew."
        )
    if len({unit for unit, _ in there}) != len(there):
        raise Refused("A unit can lie in one place only. Swap the two, or take one out first.")
    if any(turns % 2 for _, turns in there) and not _is_square(state):
        raise Refused(
            "The units are longer than they are wide, so none fits its place by a quarter turn. Turn "
            "it half way round."
        )


def _is_square(state: State) -> bool:
    """Whether a unit fits its place in all four quarter turns."""
    from sewalong.quilt.derived import derived_if_any

    made = derived_if_any(state.quilt)
    if made is None:
        return True
    width, length = made.units[0].size
    return abs(width - length) < A_HAIR


def _check_units(state: State, units: Sequence[LaidUnit]) -> None:
    # It takes the geometry of the method, which nobody without a wall has to load.
    from sewalong.quilt.derived import derived_if_any

    if not 1 <= len(units) <= MOST_UNITS:
        raise Refused(f"There are 1 to {MOST_UNITS} units to lay. Accept sets, or type letters.")
    made = derived_if_any(state.quilt)
    of_a_set = made.unit_count if made else 0
    places = len(made.letters) if made else 0
    fabrics = {fabric.letter for fabric in state.quilt.fabrics}
    for unit in units:
        if unit.unit == BY_LETTER:
            if len(unit.squares) != 1 or not _is_letter(unit.squares[0]):
                raise Refused("A unit known by a letter has one letter or two, such as A or AB.")
            continue
        if not 0 <= unit.unit < of_a_set or len(unit.squares) != places:
            raise Refused("A unit is none that this method makes. Lay the units anew.")
        if unknown := {letter for letter in unit.squares if letter} - fabrics:
            raise Refused(
                f"There is no fabric {min(unknown)[:8]} in this quilt. Name its fabrics first."
            )
        if unit.set != OF_NO_SET and unit.set not in state.sets.sets:
            raise Refused(f"There is no set {short(unit.set)}. Lay the units anew.")
    named = [(unit.set, unit.unit) for unit in units if unit.set != OF_NO_SET]
    if len(set(named)) != len(named):
        raise Refused("A unit is named twice. Each unit of a set there is once.")


def _is_letter(letter: str) -> bool:
    return 1 <= len(letter) <= 2 and letter.isascii() and letter.isalpha() and letter.isupper()


def _refuse_what_is_sewn(state: State, moved: Sequence[At]) -> None:
    sewn = sewn_places(state)
    if found := [at for at in moved if at in sewn]:
        raise Refused(
            f"What lies at {place_called(min(found))} is sewn to its row already. Unpick it first, "
            "or exchange whole rows."
        )


def _refuse_what_is_locked(state: State, moved: Sequence[At]) -> None:
    if found := [at for at in moved if at in state.wall.locked]:
        raise Refused(f"{place_called(min(found)).capitalize()} is locked. Unlock it first.")


def _refuse_half_sewn(state: State, order: Sequence[int], changed: Collection[int]) -> None:
    """Rows are sewn in order, so one that is sewn cannot lie behind one that is not."""
    sewn = units_sewn(state)
    for n in sorted(changed):
        if sewn[n - 1] != sewn[order[n - 1] - 1]:
            raise Refused(
                f"One of rows {n} and {order[n - 1]} is sewn and the other is not. Exchange them once "
                "both are sewn, or before either is."
            )
        if 0 < sewn[n - 1] < len(state.wall.rows[n - 1]):
            raise Refused(
                f"Row {n} is half sewn. Sew it to its end first, then exchange or turn it."
            )


def _refuse_what_is_joined(state: State, rows: Collection[int]) -> None:
    if state.quilt.is_web and max(units_sewn(state)) > 0:
        raise Refused(
            "The threads of the web hold its rows in order. Cut them and unpick first, or leave them."
        )
    if found := sorted(rows_joined(state) & {*rows}):
        raise Refused(
            f"Row {found[0]} is joined to another already. Unpick that seam first, or leave it."
        )
