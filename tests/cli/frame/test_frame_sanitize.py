"""Text on its way to the terminal can do no harm, and JSON says what it said."""

from __future__ import annotations

import json
import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from sewalong.cli.frame.sanitize import as_json, safe_json, shown

anything = st.text(alphabet=st.characters(codec=None, exclude_categories=()))


@given(anything)
def test_nothing_shown_is_a_control_character_or_ends_a_line(text: str) -> None:
    assert not [c for c in shown(text) if unicodedata.category(c) in ("Cc", "Cs", "Zl", "Zp")]
    assert len(shown(text).splitlines()) <= 1


@given(st.text(alphabet=st.characters(exclude_categories=("C", "Z"))))
def test_ordinary_text_is_shown_as_typed(text: str) -> None:
    assert shown(text) == text


def test_each_control_character_has_its_picture() -> None:
    assert shown("\x1b[2J\x00\x7f\x9b") == "␛[2J␀␡\ufffd"
    assert shown("a\n\tb") == "a b"
    assert shown("\u202eabc") == "\ufffdabc"


@given(st.dictionaries(anything, st.lists(anything, max_size=3), max_size=3))
def test_json_is_safe_and_says_the_same(data: dict[str, list[str]]) -> None:
    text = as_json(data)
    assert not [c for c in text if unicodedata.category(c) in ("Cc", "Cs") and c != "\n"]
    assert json.loads(text) == data
    assert safe_json(text) == text
