"""The style sheet, read by `tinycss2`: it names no size of paper, and prints without colour."""

from __future__ import annotations

import re
from typing import Any

import tinycss2
from hypothesis import example, given
from hypothesis import strategies as st
from tinycss2.color4 import parse_color

from sewalong.fabrics.colours import parse_colour
from sewalong.sheets.style import STYLE
from sewalong.wall.drawing.ink import ink_on
from tests.sheets.paper_quilts import STATES, page

RULES = tinycss2.parse_stylesheet(STYLE, skip_comments=True, skip_whitespace=True)
MOST_ACROSS, MOST_DOWN = 216 - 25.4 + 2, 279.4 - 24
"""Millimetres of Letter, the lower paper; A4 is the narrower: 210 less the margins."""


def declarations(content: Any) -> list[Any]:
    return [*tinycss2.parse_blocks_contents(content, skip_comments=True, skip_whitespace=True)]


def every_declaration() -> list[Any]:
    found = []
    for rule in RULES:
        if rule.type == "qualified-rule" or rule.lower_at_keyword == "page":
            found += declarations(rule.content)
        else:
            inner = tinycss2.parse_rule_list(rule.content, skip_whitespace=True)
            found += [one for each in inner for one in declarations(each.content)]
    return found


def test_it_has_no_fault() -> None:
    assert [rule for rule in RULES if rule.type == "error"] == []
    found = every_declaration()
    assert len(found) > 60
    assert {one.type for one in found} == {"declaration"}


def test_it_holds_on_both_papers() -> None:
    (paper,) = [r for r in RULES if r.type == "at-rule" and r.lower_at_keyword == "page"]
    assert [one.lower_name for one in declarations(paper.content)] == ["margin"]
    for one in every_declaration():
        for token in one.value:
            if token.type == "dimension" and token.lower_unit == "mm":
                most = MOST_DOWN if one.lower_name == "max-height" else 210 - 24
                assert token.value <= most, one.lower_name


def test_cards_lines_and_stages_are_never_cut_in_two() -> None:
    kept = {
        tinycss2.serialize(rule.prelude).strip()
        for rule in RULES
        if rule.type == "qualified-rule"
        for one in declarations(rule.content)
        if one.lower_name == "break-inside" and tinycss2.serialize(one.value).strip() == "avoid"
    }
    assert kept >= {".card", "tr", ".stage", "figure"}


def test_nothing_is_said_by_colour_or_by_a_ground() -> None:
    """Black on white has 21:1; what WCAG 2.1 asks of lines is 3:1."""
    for one in every_declaration():
        colours = [c for token in one.value if (c := parse_color(token)) is not None]
        for colour in colours:
            assert tuple(colour) in ((0, 0, 0, 1), (1, 1, 1, 1))
        if one.lower_name.startswith("background"):
            assert [tuple(colour) for colour in colours] == [(1, 1, 1, 1)]


def test_every_class_it_names_is_on_a_page_and_the_other_way_round() -> None:
    in_style = set(re.findall(r"\.([a-z]+)[ ,{:]", STYLE))
    pages = "".join(page(STATES[one]) for one in ("laid", "begun, two places"))
    on_page = set(re.findall(r'(?<!<g )class="([a-z]+)"', pages))
    assert in_style == on_page


def luminance(colour: str) -> float:
    """Relative luminance of "#rrggbb". Source: WCAG 2.1, "relative luminance"."""
    parts = [int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.03928 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@given(st.text("0123456789abcdef", min_size=6, max_size=6))
@example("808080")
@example("787878")
def test_letters_on_cloth_can_be_read_in_grey(digits: str) -> None:
    """WCAG 2.1 asks for 4.5:1 of small text; no ink has that on every colour, 3:1 always is."""
    ground = luminance(f"#{digits}")
    ink = luminance(str(ink_on(parse_colour(f"#{digits}"))))
    high, low = max(ground, ink), min(ground, ink)
    assert (high + 0.05) / (low + 0.05) >= 3.9
