"""What to cut and what to buy, with a box to tick at each line."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.quilt.worksheet.cut_list import RULE
from sewalong.quilt.worksheet.line import Line, Section
from sewalong.sheets.element import Element, el
from sewalong.sheets.marks import box, part


def cloth_pages(sections: Sequence[Section]) -> Element:
    """Each list as a table: what, how much, and why."""
    tables = (table for section in sections for table in _table(section))
    return part("cloth", "To cut and to buy", *tables)


def _table(section: Section) -> tuple[Element, ...]:
    head = (el("th", title, scope="col") for title in ("done", "what", "how much", "why"))
    rules = [line for line in section.lines if line.text == RULE]
    return (
        el("h3", section.title),
        *(el("p", f"{line.text[:1].upper()}{line.text[1:]}.") for line in rules),
        el(
            "table",
            el("thead", el("tr", *head)),
            el("tbody", *(_row(line) for line in section.lines if line not in rules)),
            class_="lines",
        ),
    )


def _row(line: Line) -> Element:
    return el(
        "tr",
        el("td", box()),
        el("th", line.label, scope="row"),
        el("td", line.text),
        el("td", line.reason),
    )
