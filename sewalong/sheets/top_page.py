"""The first page: what the quilt is, and its top."""

from __future__ import annotations

from sewalong.sheets.contents import Contents
from sewalong.sheets.element import Element, Svg, el
from sewalong.sheets.marks import name, part


def top_page(contents: Contents) -> Element:
    """The top with what it shows, and the facts of the quilt."""
    facts = (el("div", el("dt", label), el("dd", text)) for label, text in contents.facts)
    top = contents.top
    drawn = (el("figure", Svg(top.svg), class_="top"),) if top.svg else ()
    names = (el("li", _swatch(colour), " ", name(called)) for colour, called in top.legend)
    legend = (el("ul", *names, class_="legend"),) if top.legend else ()
    return part("top", "The top", el("dl", *facts), el("p", top.words), *drawn, *legend)


def _swatch(colour: str) -> Element:
    """Drawn, since grounds are not printed."""
    square = el("rect", width="10", height="10", fill=colour, stroke="#000")
    return el("svg", square, viewBox="0 0 10 10", aria_hidden="true")
