"""Units and places of the wall in words, for a screen and for somebody who reads aloud."""

from __future__ import annotations

from sewalong.progress.record.sewn_places import units_sewn
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import BY_LETTER, OF_NO_SET, LaidUnit, Lies
from sewalong.progress.sets.set_words import NOT_KNOWN, called
from sewalong.progress.wall import units
from sewalong.progress.wall.units import as_it_is_now, shown_by
from sewalong.quilt.derived import derived_if_any
from sewalong.wall.laying.lying_words import lying_words

NOTHING = "nothing"


def unit_words(state: State, unit: LaidUnit) -> str:
    """How a unit is spoken of: "unit 3 of set 7", "A chalk", or of no set its fabrics."""
    if unit.set != OF_NO_SET:
        return f"unit {unit.unit + 1} of set {unit.set}"
    names = called(state.quilt)
    fabrics = [names.get(one, one) if one else NOT_KNOWN for one in fabrics_shown(state, unit)]
    return " + ".join(fabrics) or NOT_KNOWN


def fabrics_shown(state: State, unit: LaidUnit) -> tuple[str, ...]:
    """Her letters for the patches of a unit, each once, in the order of the method's letters; "" for
    those not known."""
    unit = as_it_is_now(state, unit)
    made = derived_if_any(state.quilt)
    if unit.unit == BY_LETTER or made is None:
        return unit.squares
    laid = dict(zip(made.letters, unit.squares, strict=False))
    shown = {letter for letter, _ in made.units[unit.unit].shares(float(made.seam))}
    return tuple(dict.fromkeys(laid.get(letter, "") for letter in made.letters if letter in shown))


def fabric_words(state: State, unit: LaidUnit) -> str:
    """The fabrics of a unit with letter and name: "A rust dots, F moss"."""
    names = called(state.quilt)
    return ", ".join(
        names.get(one, one) if one else NOT_KNOWN for one in fabrics_shown(state, unit)
    )


def lies_words(state: State, lies: Lies | None) -> str:
    """What lies at a place and how: "unit 3 of set 7, F moss towards row 1"."""
    if lies is None:
        return NOTHING
    unit = state.wall.units[lies[0]]
    how = turned_words(state, unit, lies[1])
    return f"{unit_words(state, unit)}, {how}" if how else unit_words(state, unit)


def turned_words(state: State, unit: LaidUnit, turns: int) -> str:
    """How a unit lies so turned: "F moss towards row 1"; empty where each turn shows the same."""
    shown = shown_by(state, unit)
    unsure = {
        span.fabric: NOT_KNOWN
        for side in shown.sides
        for span in side
        if span.fabric.startswith(units.NOT_KNOWN)
    }
    return lying_words(shown, turns, state.quilt.setting, {**called(state.quilt), **unsure})


def row_read(state: State, row: int) -> tuple[str, ...]:
    """One line for each place of a row, from 1 on, to be read aloud: place, unit, turn, its fabrics,
    and whether it is sewn. Raises IndexError for no such row."""
    sewn = units_sewn(state)[row - 1]
    found = []
    for place, lies in enumerate(state.wall.rows[row - 1], start=1):
        said = f"Place {place}: {lies_words(state, lies)}"
        if lies is not None and state.wall.units[lies[0]].set != OF_NO_SET:
            said += f", shows {fabric_words(state, state.wall.units[lies[0]])}"
        found.append(f"{said}{', sewn' if place <= sewn else ''}.")
    return tuple(found)


def pressed_under(state: State) -> tuple[int, ...]:
    """For each row in order the number it is pressed under, below zero where it lies end for end
    since: its own for one that is not sewn yet."""
    sewn = units_sewn(state)
    return tuple(
        under if sewn[number - 1] else number
        for number, under in enumerate(state.wall.pressed, start=1)
    )
