"""How many squares there are, held against the plan, in words."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from sewalong.fabrics.counted import count_words
from sewalong.fabrics.swatch import swatches
from sewalong.quilt.choices import Fabric
from sewalong.quilt.set_shape import set_shape
from tests.progress.building import a_quilt


def words(method: str, *squares: int) -> str:
    """Of so many squares of each of a few fabrics, in a plan that begins with 16."""
    quilt = a_quilt(method)
    start = replace(quilt.starts[0], count=16, packs=None, lots=())
    quilt = replace(quilt, starts=(start, *quilt.starts[1:]))
    fabrics = [
        Fabric(letter, f"cloth {letter}", None, n) for letter, n in zip("AB", squares, strict=False)
    ]
    return count_words(swatches(fabrics), quilt, set_shape(quilt))


@pytest.mark.parametrize("method", ["stacked-four-patch", "plain-squares"])
@pytest.mark.parametrize(
    ("squares", "said"),
    [
        ((8, 8), "16 squares of 2 fabrics, as many as the plan begins with."),
        ((9,), "9 squares of 1 fabric, 7 fewer than the 16 the plan begins with."),
        ((17, 1), "18 squares of 2 fabrics, 2 more than the 16 the plan begins with."),
        ((1,), "1 square of 1 fabric, 15 fewer than the 16 the plan begins with."),
    ],
)
def test_the_count_is_held_against_the_plan(
    method: str, squares: tuple[int, ...], said: str
) -> None:
    assert words(method, *squares) == said
