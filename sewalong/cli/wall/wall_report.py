"""The wall told one fact a line, and as data: how it stands, a row of it, and all rows to be laid again."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.cli.frame.report import Report
from sewalong.progress.joining.nesting import nesting_facts
from sewalong.progress.record.events.wall import a_place, must_be_laid
from sewalong.progress.record.sewn_places import sewn_places
from sewalong.progress.record.state import State
from sewalong.progress.record.wall import OF_NO_SET, LaidUnit, Lies
from sewalong.progress.sets.set_words import called
from sewalong.progress.wall.on_wall import OnWall, on_wall
from sewalong.progress.wall.wall_words import (
    NOTHING,
    fabric_words,
    lies_words,
    row_read,
    turned_words,
    unit_words,
)
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.wall.changes import all_touches
from sewalong.service.wall.finding import units_with
from sewalong.service.wall.proposals import ToPropose, WallRules, to_propose, why_no_wall
from sewalong.wall.laying.blobs import family_blobs, value_blobs
from sewalong.wall.laying.laying import Touch
from sewalong.wall.laying.move_words import place_words
from sewalong.wall.laying.rows import perhaps_turned
from sewalong.wall.laying.touch_words import blob_words, touch_words, touches_left
from sewalong.wall.laying.verdict import Verdict
from sewalong.wall.laying.verdict_words import verdict_words

HOW = (
    "To propose a layout: sewalong wall --propose",
    "To read what lies there off a photograph: sewalong wall --photo FILE",
    "To type what lies there: sewalong wall --typed FILE",
)


def standing_report(name: str, state: State, rules: WallRules) -> Report:
    """What can be had, and how what is laid stands, in the quilt of this name."""
    if not state.wall.rows:
        if why := why_no_wall(state):
            return Report((why, *HOW), {"quilt": name, "laid": False, "possible": None})
        found = to_propose(state, rules)
        lines = (*verdict_lines(state, found, found.verdict), "Nothing is laid yet.", *HOW)
        return Report(lines, {"quilt": name, "laid": False, **verdict_data(found.verdict, rules)})
    lines, data = told(state, found=to_propose(state, rules))
    return Report(lines, {"quilt": name, "laid": True, **data})


def told(state: State, found: ToPropose) -> tuple[tuple[str, ...], dict[str, object]]:
    """Everything that is said of what is laid: the verdict, the touches, the blobs, every row, and
    the spares. `found` says by which rules, and what could be had."""
    now = on_wall(state)
    assert now is not None
    names = called(state.quilt)
    touches = all_touches(state)
    # A layout that lies there without a touch shows that it can be had.
    verdict = found.verdict if touches else Verdict(True, 0)
    least = verdict.least
    lines = [
        *verdict_lines(state, found, verdict),
        *how_full(state),
        touches_left(len(touches), least),
        *(touch_words(touch, names) for touch in touches),
        *_more(state, now),
        *rows_in_short(state),
        *spare_lines(state),
    ]
    return tuple(lines), {
        **verdict_data(verdict, found.rules),
        "touches": [touch_data(touch) for touch in touches],
        "blobs": _blobs_data(now),
        "perhaps_turned": [row for row, _ in perhaps_turned(now.laying, now.units, now.rules)],
        "pressed": list(state.wall.pressed),
        **places_data(state),
    }


def verdict_lines(state: State, found: ToPropose, verdict: Verdict) -> tuple[str, ...]:
    """Possible or not, and how many units there are for the places."""
    asked = found.asked
    said = verdict_words(verdict, asked.rules.touch, called(state.quilt))
    units, places = len(asked.units), sum(row.units for row in state.quilt.rows_for(state.target))
    if units < places:
        return (*said, f"There are {units} units for {places} places, so some stay empty.")
    return said


def verdict_data(one: Verdict, rules: WallRules) -> dict[str, object]:
    """The same as data, with the rules it goes by."""
    return {
        "possible": one.possible,
        "least": one.least,
        "too_many": [
            {"fabric": many.fabric, "units": many.units, "most": many.most} for many in one.too_many
        ],
        "rules": {
            "touch": "points" if rules.touch == "corner" else "seams",
            "stacks": "apart" if rules.stacks else "together",
            "rim": rules.rim or None,
        },
    }


def touch_data(touch: Touch) -> dict[str, object]:
    """One touch."""
    return {
        "kind": touch.kind.name.lower(),
        "places": [list(at) for at in touch.places],
        "fabric": touch.fabric or None,
        "inches": round(touch.inches, 4),
    }


def how_full(state: State) -> tuple[str, ...]:
    """How many places are taken, kept and sewn."""
    lying = [lies for row in state.wall.rows for lies in row]
    laid = sum(lies is not None for lies in lying)
    said = [f"{laid} of {len(lying)} places have a unit."]
    if locked := len(state.wall.locked):
        said.append(f"{locked} place{' is' if locked == 1 else 's are'} locked.")
    if sewn := len(sewn_places(state)):
        said.append(f"{sewn} unit{' is' if sewn == 1 else 's are'} sewn to a row.")
    return tuple(said)


def _more(state: State, now: OnWall) -> tuple[str, ...]:
    blobs = (
        *family_blobs(now.laying, now.units, rule=now.rules.touch),
        *value_blobs(now.laying, now.units, rule=now.rules.touch),
    )
    turned = tuple(
        f"Row {row} would touch {fewer} fewer if it lay end for end."
        for row, fewer in perhaps_turned(now.laying, now.units, now.rules)
    )
    return (*blob_words(blobs), *turned, *nesting_facts(state))


def rows_in_short(state: State) -> tuple[str, ...]:
    """Every row in one line, to be laid again by."""
    return tuple(
        f"Row {number}: {', '.join(_in_short(state, lies) for lies in row)}."
        for number, row in enumerate(state.wall.rows, start=1)
    )


def _in_short(state: State, lies: Lies | None) -> str:
    if lies is None:
        return NOTHING
    unit = state.wall.units[lies[0]]
    how = turned_words(state, unit, lies[1])
    return f"{unit_words(state, unit)} with {how}" if how else unit_words(state, unit)


def spare_lines(state: State) -> tuple[str, ...]:
    """What lies nowhere."""
    spares = state.wall.spares()
    if not spares:
        return ("No unit is spare.",)
    n = len(spares)
    return (
        f"{n} unit{' is' if n == 1 else 's are'} spare.",
        *(f"Spare: {unit_named(state, state.wall.units[number])}." for number in spares),
    )


def unit_named(state: State, unit: LaidUnit) -> str:
    """A unit with its fabrics: "unit 3 of set 7, of A chalk, F moss"."""
    said = unit_words(state, unit)
    return said if unit.set == OF_NO_SET else f"{said}, of {fabric_words(state, unit)}"


def row_report(quilt: OpenQuilt, row: int) -> Report:
    """One row, place by place."""
    state = quilt.state
    must_be_laid(state)
    a_place(state, (row, 1))
    lines = (f"Row {row}, {_units(len(state.wall.rows[row - 1]))}.", *row_read(state, row))
    return Report(lines, {"quilt": quilt.entry.name, **places_data(state, row)})


def rebuild_report(quilt: OpenQuilt) -> Report:
    """Every row in reading order, place by place, and what is in hand and belongs to none."""
    state = quilt.state
    must_be_laid(state)
    lines: list[str] = []
    for row, places in enumerate(state.wall.rows, start=1):
        lines.append(f"Row {row}, {_units(len(places))}.")
        lines += (f"Row {row}: {line[:1].lower()}{line[1:]}" for line in row_read(state, row))
    spare = state.wall.spares()
    if spare:
        lines.append("What you have in hand beside these lies in no row.")
    lines += (f"In no row: {unit_named(state, state.wall.units[number])}." for number in spare)
    return Report(tuple(lines), {"quilt": quilt.entry.name, **places_data(state)})


def units_with_report(quilt: OpenQuilt, letters: Sequence[str]) -> Report:
    """Where each unit lies that has all of these fabrics: for the one in hand."""
    state = quilt.state
    must_be_laid(state)
    names = called(state.quilt)
    found = units_with(state, letters)
    asked = " and ".join(names.get(letter, letter) for letter in letters)
    lines = [] if found else [f"No unit on the wall has {asked}."]
    for one in found:
        where = "Spare" if one.at is None else place_words(one.at).capitalize()
        said = unit_words(state, one.unit)
        if one.at is not None:
            said = lies_words(state, state.wall.at(one.at))
        lines.append(f"{where}: {said}.")
    data = {
        "quilt": quilt.entry.name,
        "fabrics": list(letters),
        "units": [
            {**unit_data(one.unit), "place": list(one.at) if one.at else None} for one in found
        ],
    }
    return Report(tuple(lines), data)


def _units(n: int) -> str:
    return f"{n} unit{'' if n == 1 else 's'}"


def places_data(state: State, only: int | None = None) -> dict[str, object]:
    """What lies at each place, of one row or of all, and the spares."""
    sewn = sewn_places(state)
    return {
        "rows": [
            [
                {
                    "row": row,
                    "place": place,
                    "unit": None if lies is None else unit_data(state.wall.units[lies[0]]),
                    "turns": None if lies is None else lies[1],
                    "locked": (row, place) in state.wall.locked,
                    "sewn": (row, place) in sewn,
                }
                for place, lies in enumerate(there, start=1)
            ]
            for row, there in enumerate(state.wall.rows, start=1)
            if only in (None, row)
        ],
        "spares": [unit_data(state.wall.units[number]) for number in state.wall.spares()],
    }


def unit_data(unit: LaidUnit) -> dict[str, object]:
    """A unit: its set and its number in it from 1, None of no set; its squares by place."""
    of_a_set = unit.set != OF_NO_SET
    return {
        "set": unit.set if of_a_set else None,
        "unit": unit.unit + 1 if of_a_set else None,
        "squares": [letter or None for letter in unit.squares],
    }


def _blobs_data(now: OnWall) -> list[dict[str, object]]:
    rule = now.rules.touch
    blobs = [
        ("family", family_blobs(now.laying, now.units, rule=rule)),
        ("value", value_blobs(now.laying, now.units, rule=rule)),
    ]
    return [
        {"of": what, "word": blob.word, "places": [list(at) for at in blob.places]}
        for what, found in blobs
        for blob in found
    ]
