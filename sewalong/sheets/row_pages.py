"""Row cards, to be cut out and pinned on the first unit of each row."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from sewalong.progress.joining.row_cards import RowCard
from sewalong.progress.joining.row_tags import HOW_TO_TAG
from sewalong.sheets.contents import LaidRow
from sewalong.sheets.element import Element, el
from sewalong.sheets.layout_pages import strip
from sewalong.sheets.marks import blank, labelled, name, part


def row_pages(quilt: str, rows: Sequence[RowCard], layout: Sequence[LaidRow]) -> Element:
    """A card for each row, with its picture where it is laid. A number alone could be read upside down, so each says in three ways
    which edge is up: the letter first, the line under the number, the thick edge with its words."""
    return part(
        "rows",
        "Row cards",
        el("p", f"{HOW_TO_TAG} The thick edge of the card goes up."),
        el("div", *map(partial(_card, quilt), rows, layout or (None,) * len(rows)), class_="cards"),
    )


def _card(quilt: str, row: RowCard, laid: LaidRow | None) -> Element:
    return el(
        "article",
        el("p", f"▲ This edge up: {row.up}", class_="up"),
        el("div", el("h3", row.label, class_="tag"), _who(quilt, row), class_="who"),
        *(() if laid is None else (strip(laid),)),
        *_ends(row),
        el("p", row.press),
        el("p", f"This edge down: {row.down}", class_="down"),
        class_="card",
    )


def _who(quilt: str, row: RowCard) -> Element:
    sewn = ", sewn" if row.is_sewn else ""
    return el(
        "div",
        el("p", el("strong", row.row), f": {row.holds}{sewn}"),
        el("p", name(quilt), class_="small"),
    )


def _ends(row: RowCard) -> tuple[Element, ...]:
    """Its end units; where neither is known, both lines to write on side by side."""
    first, last = labelled("First unit", row.first or blank()), labelled("last", blank())
    if not row.first and not row.last:
        return (el("p", *first.children, " ", *last.children, class_="both"),)
    return (first, labelled("Last unit", row.last or blank()))
