"""Plain signs for a terminal that shows nothing else: sign for sign as wide, and never a traceback."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from sewalong.owner.ascii_only import ascii_only


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("9 × 8 → 8 × 8", "9 x 8 > 8 x 8"),
        ("“Café” · naïve…", '"Cafe" . naive.'),
        ("██ ▀▄ ━━╌╌", "## ## ==--"),
        ("毛糸", "????"),
        ("plain", "plain"),
    ],
)
def test_what_stands_for_what(text: str, plain: str) -> None:
    assert ascii_only(text) == plain


@given(st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Cn", "Co"))))
def test_it_is_ascii_and_for_most_signs_as_wide(text: str) -> None:
    plain = ascii_only(text)
    assert plain.isascii()
    if all(ord(sign) < 0x2500 for sign in text):
        assert abs(cell_len(plain) - cell_len(text)) <= sum(not sign.isascii() for sign in text)
