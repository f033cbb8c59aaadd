"""Elements as they are written: escaped, and without what no page may hold."""

from __future__ import annotations

import unicodedata

from sewalong.sheets.element import Svg, el, page_text

CODES = [
    *range(0x10000),
    *(plane + end for plane in range(0x10000, 0x110000, 0x10000) for end in range(0xFF00, 0x10000)),
]
"""The first plane, and the end of every other."""

TURNS_WRITING = {*range(0x202A, 0x202F), *range(0x2066, 0x206A)}


def may_stand(code: int) -> bool:
    """Sources: HTML, "Text" (no noncharacters, surrogates, controls but white space); Unicode, 23.7:
    noncharacters are U+FDD0 to U+FDEF and the last two of every plane; UAX 9 for what turns
    writing round."""
    kind = unicodedata.category(chr(code))
    is_control = kind == "Cc" and chr(code) not in "\t\n"
    is_none = 0xFDD0 <= code <= 0xFDEF or code & 0xFFFE == 0xFFFE
    return not (is_control or is_none or kind == "Cs" or code in TURNS_WRITING)


def test_of_all_characters_those_stand_on_a_page_that_may() -> None:
    written = set(page_text(el("p", "".join(map(chr, CODES)))))
    assert {code for code in CODES if may_stand(code)} == {*map(ord, written)}


def test_signs_of_markup_are_escaped_in_texts_and_values() -> None:
    written = page_text(el("p", "<b> & \"'", class_="\"<&'>"))
    assert written == (
        '<!DOCTYPE html>\n<p class="&quot;&lt;&amp;&#x27;&gt;">&lt;b&gt; &amp; "\'</p>\n'
    )


def test_a_drawing_stands_as_it_is_and_what_holds_nothing_has_no_end() -> None:
    written = page_text(el("div", el("meta", charset="utf-8"), Svg("<svg></svg>"), aria_hidden="x"))
    assert written.endswith('<div aria-hidden="x"><meta charset="utf-8"><svg></svg></div>\n')
