"""A judge of pages: html5lib's strict parser, and behind it what it does not look at: which element
stands in which, headings in order, tables whose cells are named, nothing that runs or is fetched.

Source: the HTML standard (WHATWG), content models of the elements; WCAG 2.1 for headings and tables.
"""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Iterator
from xml.etree.ElementTree import Element

import html5lib

HTML = "{http://www.w3.org/1999/xhtml}"
SVG = "{http://www.w3.org/2000/svg}"

PHRASING = {"strong", "bdi", "span", "b", "code", "svg:svg"}
FLOW = PHRASING | {
    "p", "ul", "ol", "dl", "div", "article", "section", "figure", "table", "h1", "h2", "h3",
    "header", "main",
}  # fmt: skip

HOLDS = {
    "html": {"head", "body"},
    "head": {"meta", "title", "style"},
    "title": set[str](),
    "style": set[str](),
    "meta": set[str](),
    "body": FLOW,
    "header": FLOW - {"main", "header"},
    "main": FLOW - {"main"},
    "section": FLOW - {"main"},
    "article": FLOW - {"main"},
    "div": FLOW - {"main"} | {"dt", "dd"},
    "figure": FLOW,
    "ul": {"li"},
    "ol": {"li"},
    "li": FLOW,
    "dl": {"div"},
    "dt": PHRASING,
    "dd": PHRASING,
    "table": {"thead", "tbody"},
    "thead": {"tr"},
    "tbody": {"tr"},
    "tr": {"th", "td"},
    "th": PHRASING,
    "td": FLOW,
    **dict.fromkeys(("p", "h1", "h2", "h3", *PHRASING), PHRASING),
    "svg:svg": {"svg:title", "svg:desc", "svg:rect", "svg:g"},
    "svg:g": {"svg:polygon", "svg:text"},
    **{key: set[str]() for key in ("svg:title", "svg:desc", "svg:rect", "svg:polygon", "svg:text")},
}
"""By element, those that may stand in it; nothing else is on a page of ours."""

NO_TEXT = {
    "html",
    "head",
    "ul",
    "ol",
    "dl",
    "table",
    "thead",
    "tbody",
    "tr",
    "svg:svg",
    "svg:g",
    "main",
}

ATTRIBUTES = {
    "html": {"lang"},
    "meta": {"charset", "name", "content"},
    "section": {"id"},
    "th": {"scope"},
    **{tag: {"class"} for tag in ("p", "span", "div", "article", "figure", "h3", "table", "ul")},
    "svg:svg": {
        "viewBox", "width", "height", "role", "font-family", "aria-hidden",
        "{http://www.w3.org/2000/xmlns/}xmlns",
    },
    "svg:g": {"class", "stroke", "stroke-width", "stroke-linejoin", "fill"},
    "svg:rect": {"width", "height", "fill", "stroke"},
    "svg:polygon": {"points", "fill", "stroke-dasharray"},
    "svg:text": {"x", "y", "font-size", "text-anchor", "fill"},
}  # fmt: skip
"""By element, the attributes it may have. None of them is a style, a script or an address."""


def parsed(page: str) -> Element:
    """The document as a tree; raises html5lib's ParseError for anything the standard calls a parse
    error."""
    found: Element = html5lib.HTMLParser(
        html5lib.getTreeBuilder("etree"), strict=True, namespaceHTMLElements=True
    ).parse(page.encode(), transport_encoding="utf-8")
    return found


def called(element: Element) -> str:
    """ "p"; "svg:g" for one of a drawing."""
    return element.tag.replace(HTML, "").replace(SVG, "svg:")


def text_of(element: Element) -> str:
    """All text in it."""
    return "".join(element.itertext())


def faults(root: Element) -> Iterator[str]:
    """What is wrong with a page, a sentence each."""
    for element in root.iter():
        yield from _faults_of(element)
    yield from _of_the_whole(root)
    yield from (fault for table in root.iter(f"{HTML}table") for fault in _of_a_table(table))


def _faults_of(element: Element) -> Iterator[str]:
    tag = called(element)
    if tag not in HOLDS:
        yield f"there is a {tag}"
        return
    for child in element:
        if called(child) not in HOLDS[tag]:
            yield f"a {called(child)} in a {tag}"
    for name in element.attrib:
        if name not in ATTRIBUTES.get(tag, ()):
            yield f"{name} of a {tag}"
    own = [element.text, *(child.tail for child in element)]
    if tag in NO_TEXT and any((text or "").strip() for text in own):
        yield f"text in a {tag}"
    if tag == "svg:svg" and element.get("aria-hidden") != "true":
        titles = [called(child) for child in element][:2]
        if titles != ["svg:title", "svg:desc"] or element.get("role") != "img":
            yield "a drawing says nothing to those who cannot see it"


def _of_the_whole(root: Element) -> Iterator[str]:
    if root.get("lang") != "en":
        yield "no language is named"
    head = root[0]
    if [called(one) for one in head][:1] != ["meta"] or head[0].get("charset") != "utf-8":
        yield "the encoding does not come first"
    if not "".join(text_of(one) for one in head if called(one) == "title").strip():
        yield "it has no title"
    ids = Counter(element.get("id") for element in root.iter() if element.get("id"))
    yield from (f"{n} elements are called {id}" for id, n in ids.items() if n > 1)
    levels = [int(called(one)[1]) for one in root.iter() if called(one) in ("h1", "h2", "h3")]
    if levels[:1] != [1] or levels.count(1) != 1:
        yield "there is not one first heading"
    for before, after in itertools.pairwise(levels):
        if after > before + 1:
            yield f"a heading {after} behind a heading {before}"
    for element in root.iter():
        if called(element) in ("h1", "h2", "h3", "li", "dd", "dt") and not text_of(element).strip():
            yield f"a {called(element)} is empty"


def _of_a_table(table: Element) -> Iterator[str]:
    rows = list(table.iter(f"{HTML}tr"))
    if len({len(row) for row in rows}) != 1:
        yield "rows of a table differ in their cells"
    if [called(part) for part in table] != ["thead", "tbody"] or len(table[0]) != 1:
        yield "a table has no head"
        return
    if any(called(cell) != "th" or cell.get("scope") != "col" for cell in table[0][0]):
        yield "a column is not named"
    for row in table[1]:
        if [cell.get("scope") for cell in row].count("row") != 1:
            yield "a row is not named"
