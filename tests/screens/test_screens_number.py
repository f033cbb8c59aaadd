"""The number to go, and words from far off, in large dots."""

from __future__ import annotations

import string

import pytest

from sewalong.screens.widgets.block_letters import Dot, can_be_drawn, drawn, width_of

SIGNS = string.digits + string.ascii_uppercase


@pytest.mark.parametrize("dot", [Dot(1, 1), Dot(2, 1), Dot(4, 2), Dot(10, 5)])
@pytest.mark.parametrize("number", ["0", "7", "42", "168", "9999", "12345"])
def test_a_number_has_its_size(number: str, dot: Dot) -> None:
    figures = len(number)
    lines = drawn(number, dot)
    assert len(lines) == 5 * dot.down
    wide = (3 * figures + figures - 1) * dot.across
    assert {len(line) for line in lines} == {wide} == {width_of(number, dot)}
    assert set("".join(lines)) <= {"█", " "}


def test_every_figure_and_letter_looks_like_no_other() -> None:
    pictures = {tuple(drawn(sign, Dot(1, 1))) for sign in SIGNS}
    # A nought is closed at its corners, the letter is not; S and 5, Z and 2 differ too.
    assert len(pictures) == len(SIGNS)


def test_a_one_is_drawn_as_a_one() -> None:
    assert drawn("1", Dot(2, 1)) == ["  ██  ", "████  ", "  ██  ", "  ██  ", "██████"]


def test_twice_the_size_is_the_same_figure() -> None:
    for number in ("4", "96"):
        small, large = drawn(number, Dot(2, 1)), drawn(number, Dot(4, 2))
        assert large[::2] == large[1::2]
        assert [line[::2] for line in large[::2]] == small


def test_what_has_no_dots_is_known_before() -> None:
    assert can_be_drawn("press open")
    assert can_be_drawn("Join R1 to R2; “blue tray” (5 × 6)?")
    assert not can_be_drawn("🧵")
