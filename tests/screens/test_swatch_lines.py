"""Where swatches stand, in windows of any width; and their blocks with colour and without."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.segment import Segment

from sewalong.fabrics.colours import Colour
from sewalong.screens.widgets.cloth.swatch_lines import HEADING, SwatchRow, swatch_lines
from sewalong.screens.widgets.colour_block import EDGES, Block, block, texture
from sewalong.screens.widgets.themes import DAYLIGHT, LAMPLIGHT

ROWS = (
    SwatchRow("light", "neutral", 3),
    SwatchRow("light", "yellow", 1),
    SwatchRow("dark-medium", "neutral", 2),
)


def test_beside_them_a_value_is_said_once() -> None:
    found = swatch_lines(ROWS, 76)
    assert found.indent == HEADING
    assert [(line.heading, line.swatches) for line in found.lines] == [
        ("light        neutral", (0, 1)),
        ("", (2,)),
        ("             yellow", (3,)),
        ("dark-medium  neutral", (4, 5)),
    ]


def test_in_a_narrow_window_headings_stand_above() -> None:
    found = swatch_lines(ROWS, 38)
    assert found.indent == 0
    assert [line.heading for line in found.lines if line.heading] == [
        "light, neutral",
        "light, yellow",
        "dark-medium, neutral",
    ]
    assert [line.swatches for line in found.lines if line.swatches] == [(n,) for n in range(6)]


def test_from_sixty_columns_on_headings_stand_beside() -> None:
    assert swatch_lines(ROWS, 59).indent == 0
    assert swatch_lines(ROWS, 60).indent == HEADING


def test_the_line_of_a_swatch_is_found() -> None:
    found = swatch_lines(ROWS, 76)
    assert [found.line_of(swatch) for swatch in range(6)] == [0, 0, 1, 2, 3, 3]
    assert found.line_of(9) == 0
    assert swatch_lines((), 76).lines == ()


def test_the_arrows_go_by_lines_and_stay_at_the_ends() -> None:
    found = swatch_lines(ROWS, 76)
    assert found.moved(1, 0, 1) == 2
    assert found.moved(2, 0, 1) == 3
    assert found.moved(5, 0, -1) == 3
    assert found.moved(0, 0, -1) == 0
    assert found.moved(5, 0, 1) == 5
    assert (found.moved(0, -1, 0), found.moved(0, 1, 0), found.moved(5, 1, 0)) == (0, 1, 5)
    assert swatch_lines((), 76).moved(0, 0, 1) == 0


WORDS = st.sampled_from(["light", "light-medium", "medium", "dark"])
FAMILIES = st.sampled_from(["neutral", "red", ""])


@given(
    st.lists(st.builds(SwatchRow, WORDS, FAMILIES, st.integers(1, 40)), max_size=12),
    st.integers(30, 240),
)
def test_every_swatch_stands_once_and_within_the_width(
    rows: Sequence[SwatchRow], width: int
) -> None:
    found = swatch_lines(rows, width)
    numbers = [number for line in found.lines for number in line.swatches]
    assert numbers == list(range(sum(row.count for row in rows)))
    for line in found.lines:
        assert found.indent + len(line.swatches) * found.width <= max(width, found.indent + 30)
        assert len(line.heading) < (found.indent or width)
    # Every one can be reached by the arrows alone.
    at = 0
    for _ in numbers:
        at = found.moved(at, 0, 1)
    assert not numbers or at in found.lines[-1].swatches


def text_of(segments: Sequence[Segment]) -> str:
    return "".join(segment.text for segment in segments)


@pytest.mark.parametrize("theme", [LAMPLIGHT, DAYLIGHT], ids=lambda theme: theme.name)
def test_a_block_is_in_its_colour_between_edges_that_show(theme: object) -> None:
    assert theme in (LAMPLIGHT, DAYLIGHT)
    look = LAMPLIGHT if theme is LAMPLIGHT else DAYLIGHT
    rust = Block(Colour(165, 83, 47), 45.0)
    found = block(rust, 4, look, in_colour=True)
    assert text_of(found) == "▐    ▌"
    assert len(text_of(found)) == 4 + EDGES
    style = found[1].style
    assert style
    assert style.bgcolor
    assert style.bgcolor.name == "#a5532f"


def test_a_value_alone_is_struck_through_and_nothing_known_is_empty() -> None:
    pile = Block(Colour(211, 211, 211), 85.0, only_value=True)
    assert text_of(block(pile, 4, DAYLIGHT, in_colour=True)) == "▐╱╱╱╱▌"
    assert text_of(block(Block(None, None), 4, DAYLIGHT, in_colour=True)) == "▐    ▌"


def test_without_colour_the_texture_says_light_or_dark() -> None:
    levels = (0, 25, 50, 75, 99.9, 100)
    assert "".join(texture(level, pale_ink=False) for level in levels) == "█╳╱┄  "
    assert "".join(texture(level, pale_ink=True) for level in levels) == " ┄╱╳██"
    rust = Block(Colour(165, 83, 47), 45.0)
    assert text_of(block(rust, 3, LAMPLIGHT, in_colour=False)) == "▐╱╱╱▌"
