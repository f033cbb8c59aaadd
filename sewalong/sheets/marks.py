"""Small marks that many sheets have: a box to tick, a line to write on, a name of hers."""

from __future__ import annotations

from sewalong.sheets.element import Element, el


def box() -> Element:
    """A box to tick."""
    return el("span", class_="box")


def blank() -> Element:
    """A line to write on."""
    return el("span", class_="blank")


def name(text: str) -> Element:
    """What somebody called something: however it is written, what stands beside it keeps its place."""
    return el("bdi", text)


def labelled(label: str, text: Element | str) -> Element:
    """A paragraph of a label and what it is of."""
    return el("p", el("strong", f"{label}: "), text)


def part(id: str, title: str, *children: Element) -> Element:
    """One part of the sheets, which begins on a new page."""
    return el("section", el("h2", title), *children, id=id)
