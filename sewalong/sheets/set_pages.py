"""The sets as a list, to lay squares by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sewalong.progress.sets.set_list import ListedSet
from sewalong.sheets.element import Element, Node, el
from sewalong.sheets.marks import box, name, part


def set_pages(sets: Sequence[ListedSet]) -> Element:
    """One set a line, each fabric with letter and name."""
    titles = [title for title, _ in sets[0].groups]
    head = el("tr", *(el("th", title, scope="col") for title in ("laid", "set", *titles)))
    return part(
        "sets",
        "Set list",
        el("table", el("thead", head), el("tbody", *map(_row, sets)), class_="sets"),
    )


def _row(one: ListedSet) -> Element:
    number = f"{one.number}{f', {one.standing}' if one.standing else ''}"
    return el(
        "tr",
        el("td", box()),
        el("th", number, scope="row"),
        *(el("td", *_fabrics(fabrics)) for _, fabrics in one.groups),
    )


def _fabrics(fabrics: Sequence[str]) -> Iterator[Node]:
    for number, fabric in enumerate(fabrics):
        if number:
            yield ", "
        yield name(fabric)
