"""The sheets of a quilt, drawn up and written: pages to print, and its top as pictures.

Colours are reckoned with here, so it is loaded only where they are wanted.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from sewalong.owner.preferences import AS_USUAL, Preferences
from sewalong.progress.joining.row_cards import row_cards
from sewalong.progress.joining.row_tags import row_label
from sewalong.progress.plan.plan import Plan, plan
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.record.time_words import day_and_time
from sewalong.progress.resuming.box_labels import box_labels
from sewalong.progress.resuming.stage_list import stage_list
from sewalong.progress.sets.set_list import set_list
from sewalong.progress.wall.top_as_laid import row_as_laid, units_as_laid
from sewalong.progress.wall.wall_words import row_read
from sewalong.quilt.derived import derived_if_any
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.in_short import in_short
from sewalong.quilt.worksheet.line import CANNOT_BE_HAD
from sewalong.quilt.worksheet.worksheet import worksheet
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.set_drawings import top_drawn
from sewalong.sheets.booklet import booklet
from sewalong.sheets.contents import Contents, LaidRow, TopOnPaper
from sewalong.store.folders import write_into
from sewalong.wall.drawing.drawn import (
    Drawing,
    drawing_of_pattern,
    drawing_of_row,
    drawing_of_top,
)
from sewalong.wall.drawing.png import CannotPaint, as_png
from sewalong.wall.drawing.svg import as_svg, bare_svg
from sewalong.wall.told import CANNOT_BE_MADE

SHEETS, TOP_SVG, TOP_PNG = "sheets.html", "top.svg", "top.png"

_NOTHING = {
    "layout": "Nothing is laid on the wall yet, so there is no layout to print.",
    "rows": "All rows are joined, so there is no row to tag.",
    "sets": "No sets are accepted yet, so there is no list of them to print.",
    "labels": "Nothing lies anywhere, so there is no box to label.",
}
"""What is said where one part is wanted in which there would be nothing."""


def write_sheets(
    quilt: OpenQuilt, folder: str, *, only: str = "", replace: bool = False
) -> tuple[tuple[str, ...], str]:
    """Write the sheets of a quilt and its top into a folder; the names of the files, and in a
    sentence why there is no PNG, empty where there is one. `only` one part of the pages may be
    wanted. Raises StoreFault, and Refused where there is nothing to say in that part."""
    drawing = top_of(quilt.state)
    contents = contents_of(quilt.state, drawing, quilt.now(), quilt.preferences, quilt.damage)
    if only and not contents.has(only):
        raise Refused(_NOTHING[only])
    files = {SHEETS: booklet(contents, only).encode()}
    why_not = ""
    if drawing is not None and only in ("", "top"):
        files[TOP_SVG] = as_svg(drawing).encode()
        try:
            files[TOP_PNG] = as_png(drawing)
        except CannotPaint as refused:
            why_not = str(refused)
    write_into(folder, files, replace=replace)
    return tuple(files), why_not


def top_of(state: State) -> Drawing | None:
    """The top as far as it is known which fabric lies where; None where no unit can be made."""
    if derived_if_any(state.quilt) is None:
        return None
    title = f"{state.quilt.name}: the top"
    if state.wall.is_laid:
        return drawing_of_top(state.quilt, state.target, units_as_laid(state), title)
    if state.sets.sets:
        return top_drawn(state)
    return drawing_of_pattern(state.quilt, state.target, title)


def contents_of(
    state: State,
    drawing: Drawing | None,
    at: datetime,
    preferences: Preferences = AS_USUAL,
    notice: str = "",
) -> Contents:
    """What the pages say of a quilt at that moment; `drawing` is its top, None where it has none."""
    now = plan(state)
    short = {one.pile: one.count for one in now.shortfall.pieces} if now.shortfall else {}
    numbers = worksheet(state.quilt, state.target, have=now.units.possible, short=short)
    return Contents(
        quilt=state.quilt.name,
        as_of=day_and_time(at),
        facts=tuple(_facts(state, now)),
        top=_on_paper(state, drawing),
        stages=stage_list(state, now, preferences.cautions),
        layout=tuple(_layout(state)),
        rows=row_cards(state),
        sets=set_list(state),
        cloth=(numbers.cut_list, numbers.shopping),
        labels=box_labels(state, now),
        notice=notice,
    )


def _on_paper(state: State, drawing: Drawing | None) -> TopOnPaper:
    if drawing is None:
        return TopOnPaper("", CANNOT_BE_MADE)
    legend = tuple((str(drawing.colours[key]), name) for key, name in drawing.names.items())
    return TopOnPaper(bare_svg(drawing), _shown(state), legend)


def _layout(state: State) -> Iterator[LaidRow]:
    if not state.wall.is_laid or derived_if_any(state.quilt) is None:
        return
    for row in range(1, len(state.wall.rows) + 1):
        label, units = row_label(row), row_as_laid(state, row)
        drawing = drawing_of_row(state.quilt, units, f"{state.quilt.name}: {label}")
        yield LaidRow(label, row_read(state, row), bare_svg(drawing), not state.quilt.is_on_point)


def _shown(state: State) -> str:
    if state.wall.is_laid:
        return "As it is laid on the wall."
    if state.sets.sets:
        return "With the sets that are accepted, their units row by row: no unit has its place yet."
    return "No unit has its place yet: the kinds of unit are shown by turns."


def _facts(state: State, now: Plan) -> Iterator[tuple[str, str]]:
    quilt = state.quilt
    noun = state.route.piles[quilt.method.unit].noun
    yield "Method", quilt.method.name
    yield "Layout", f"{state.target}, {noun.count(state.units_wanted)}"
    if quilt.setting is not None:
        yield "Set", quilt.setting.words
    if quilt.is_web:
        yield "Put together", "as a web, column by column"
    try:
        short = in_short(basis(quilt, state.target), now.units.possible)
    except CANNOT_BE_HAD as fault:
        yield "Sizes", str(fault)
        return
    if short.trim:
        yield "Units trimmed to", short.trim
    yield "A unit finishes at", short.unit
    yield "The top finishes at", short.top
