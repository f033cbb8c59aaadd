"""Every page is HTML as the standard has it, needs no other file, and runs nothing."""

from __future__ import annotations

import re

import html5lib
import pytest

from sewalong.sheets.contents import PARTS
from sewalong.sheets.style import STYLE
from tests.sheets.conforming import called, faults, parsed, text_of
from tests.sheets.paper_quilts import STATES, page, parsed_page


@pytest.mark.parametrize("quilt", STATES)
def test_a_page_conforms(quilt: str) -> None:
    assert list(faults(parsed_page(quilt))) == []


@pytest.mark.parametrize("only", PARTS)
def test_a_part_alone_conforms_and_is_the_only_one(only: str) -> None:
    root = parsed(page(STATES["laid"], only))
    assert list(faults(root)) == []
    assert [one.get("id") for one in root.iter() if called(one) == "section"] == [only]


@pytest.mark.parametrize("quilt", ["laid", "begun, two places"])
def test_it_needs_nothing_from_elsewhere(quilt: str) -> None:
    text = page(STATES[quilt])
    assert "://" not in text.replace("http://www.w3.org/2000/svg", "")
    assert not re.search(r"\b(?:src|href|url|import|script|on\w+)\s*[=(]", text, re.IGNORECASE)


def test_all_parts_there_is_something_to_say_in_are_bound_in_order() -> None:
    for quilt, missing in (
        ("begun, two places", {"sets", "layout"}),
        ("sets", {"layout"}),
        ("laid", set()),
    ):
        root = parsed_page(quilt)
        ids = [one.get("id") for one in root.iter() if called(one) == "section"]
        assert ids == [id for id in PARTS if id not in missing]


GOOD = page(STATES["sets"])
BROKEN = {
    "a paragraph in a phrase": ("<strong>", "<strong><p>x</p>"),
    "a heading too low": ("<h2>The top</h2>", "<h3>The top</h3>"),
    "a script": ("<main>", "<main><script>alert(1)</script>"),
    "a link": ("<main>", '<main><a href="x">x</a>'),
    "a handler": ('<section id="top">', '<section id="top" onclick="x">'),
    "an id twice": ('<section id="rows">', '<section id="top">'),
    "a cell too few": ("<td><span", "<td></td><td><span"),
    "a column without a name": ('<th scope="col">', "<th>"),
    "no language": (' lang="en"', ""),
    "a list with text": ("<ul>", "<ul>x"),
    "an unescaped sign": ("The top</h2>", "The <top</h2>"),
    "a drawing that says nothing": ("<title>test quilt: the top</title>", ""),
    "a control character": ("The top</h2>", "The \x01top</h2>"),
    "no encoding": ('<meta charset="utf-8">', ""),
    "an empty heading": ("<h2>The top</h2>", "<h2></h2>"),
}


@pytest.mark.parametrize("what", BROKEN)
def test_the_judge_bites(what: str) -> None:
    was, becomes = BROKEN[what]
    assert was in GOOD
    try:
        found = list(faults(parsed(GOOD.replace(was, becomes))))
    except html5lib.html5parser.ParseError:
        return
    assert found, what


def test_the_style_is_read_as_it_is_written() -> None:
    (style,) = [one for one in parsed(GOOD).iter() if called(one) == "style"]
    assert text_of(style) == STYLE
