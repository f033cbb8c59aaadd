"""How many squares there are, held against the plan, in words."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from sewalong.fabrics.counted import count_words
from sewalong.fabrics.swatch import swatches
from sewalong.quilt.choices import Fabric
from sewalong.quilt.set_shape import set_shape
from tests.progress.building import a_quilt


def words(method: str, *squares: int, **said: str) -> tuple[str, ...]:
    """Of so many squares of each of a few fabrics, in a plan that begins with 16."""
    quilt = a_quilt(method)
    start = replace(quilt.starts[0], count=16, packs=None, lots=())
    quilt = replace(quilt, starts=(start, *quilt.starts[1:]))
    fabrics = tuple(
        Fabric(letter, f"cloth {letter}", said.get(letter), n)
        for letter, n in zip("ABCDEF", squares, strict=False)
    )
    return count_words(swatches(fabrics), quilt, set_shape(quilt))


KNOWN = dict.fromkeys("ABCDEF", "#a5532f")


@pytest.mark.parametrize(
    ("squares", "first", "sets"),
    [
        (
            (8, 8),
            "16 squares of 2 fabrics, as many as the plan begins with.",
            "2 sets of 8, nothing",
        ),
        ((9,), "9 squares of 1 fabric, 7 fewer than the 16 the plan", "1 set of 8, 1 square over."),
        ((17, 1), "18 squares of 2 fabrics, 2 more than the 16", "2 sets of 8, 2 squares over."),
        ((3, 2), "5 squares of 2 fabrics, 11 fewer", "0 sets of 8, 5 squares over."),
    ],
)
def test_the_count_is_held_against_the_plan(
    squares: tuple[int, ...], first: str, sets: str
) -> None:
    verdict, makes = words("stacked-four-patch", *squares, **KNOWN)
    assert verdict.startswith(first)
    assert makes.startswith(f"They make {sets}")


def test_what_is_not_known_is_named_and_more_than_three_are_counted() -> None:
    *_, unknown = words("stacked-four-patch", 8, 8, A="#a5532f")
    assert "not known of B cloth B. Give" in unknown
    *_, unknown = words("stacked-four-patch", 1, 1, 1, 1, 1)
    assert "of A cloth A, B cloth B, C cloth C and 2 more." in unknown


def test_a_method_without_sets_is_said_to_have_none() -> None:
    verdict, none = words("plain-squares", 8, 8, **KNOWN)
    assert verdict.endswith("as many as the plan begins with.")
    assert "takes no sets" in none
