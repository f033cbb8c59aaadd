"""The number to go in large figures."""

from __future__ import annotations

import pytest

from sewalong.screens.widgets.big_number import drawn


@pytest.mark.parametrize("scale", [1, 2])
@pytest.mark.parametrize("number", [0, 7, 42, 168, 9999])
def test_a_number_has_its_size(number: int, scale: int) -> None:
    figures = len(str(number))
    lines = drawn(number, scale)
    assert len(lines) == 5 * scale
    assert {len(line) for line in lines} == {(6 * figures + 2 * (figures - 1)) * scale}
    assert set("".join(lines)) <= {"█", " "}


def test_every_figure_looks_like_no_other() -> None:
    pictures = {tuple(drawn(figure)) for figure in range(10)}
    assert len(pictures) == 10


def test_a_one_is_drawn_as_a_one() -> None:
    assert drawn(1) == ["  ██  ", "████  ", "  ██  ", "  ██  ", "██████"]


def test_twice_the_size_is_the_same_figure() -> None:
    for number in (4, 96):
        small, large = drawn(number), drawn(number, 2)
        assert large[::2] == large[1::2]
        assert [line[::2] for line in large[::2]] == small


def test_less_than_none_to_go_is_none() -> None:
    assert drawn(-3) == drawn(0)
