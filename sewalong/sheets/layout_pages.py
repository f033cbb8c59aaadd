"""The layout row by row, to lay it again when it is lost and to read it aloud."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.sheets.contents import LaidRow
from sewalong.sheets.element import Element, Svg, el
from sewalong.sheets.marks import part


def layout_pages(rows: Sequence[LaidRow]) -> Element:
    """Every row with its picture, and what lies at each of its places."""
    return part("layout", "The layout, row by row", *map(_row, rows))


def _row(row: LaidRow) -> Element:
    return el(
        "article",
        el("h3", row.label),
        strip(row),
        el("ol", *(el("li", place) for place in row.places)),
        class_="laid",
    )


def strip(row: LaidRow) -> Element:
    """The picture of a row, and under it at which of its ends it begins."""
    ends = ("begins here", "ends here") if row.begins_first else ("ends here", "begins here")
    return el(
        "figure",
        Svg(row.svg),
        el("p", *(el("span", end) for end in ends), class_="ends"),
        class_="strip",
    )
