"""Touches, blobs and what a move does in sentences that can be read aloud."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from msgspec.structs import replace

from sewalong.quilt.setting import Sashing
from sewalong.wall.laying.blobs import Blob
from sewalong.wall.laying.board import Board
from sewalong.wall.laying.edges import TouchRule
from sewalong.wall.laying.laying import Rules, touches
from sewalong.wall.laying.moves import Move, effect
from sewalong.wall.laying.touch_words import blob_words, effect_words, touch_words, touches_left
from tests.wall.laying.walls import made, typed

MAZE = "ABCDE / CDEAB / EABBC / DCADE"
"""N006: one touch, row 3, B in columns 3 and 4, and a swap that mends it."""

NAMES = {"A": "A rust dots", "B": "B [red]"}


@pytest.mark.parametrize(
    ("wall", "rules", "said"),
    [
        (MAZE, Rules(), ["Row 3 place 3 meets row 3 place 4: B [red] along a seam."]),
        (
            "AC / DA",
            Rules(touch=TouchRule.CORNER),
            ["Row 1 place 1 meets row 2 place 2: A rust dots at a point."],
        ),
        (
            "AC",
            Rules(rim="C"),
            ["Row 1 place 2 meets what lies around the units: C."] * 3,
        ),
    ],
)
def test_a_touch_is_said_by_its_places_and_its_fabric(
    wall: str, rules: Rules, said: list[str]
) -> None:
    units, laying = typed(wall)
    assert [touch_words(touch, NAMES) for touch in touches(laying, units, rules)] == said


def test_units_of_one_stack_and_sashes() -> None:
    units = made("stacked-four-patch", 2, 8)
    _, laying = typed("AB")
    said = [touch_words(one) for one in touches(laying, units, Rules(stacks=True))]
    assert "Row 1 place 1 meets row 1 place 2: units of one stack." in said
    squares, _ = typed("AB")
    sashed = replace(laying, setting=Sashing(cut=F(2), cloth="oat"))
    found = touches(sashed, squares, Rules(sash="A"))
    assert touch_words(found[0], NAMES) == "Row 1 place 1 meets a sash: A rust dots."


@pytest.mark.parametrize(
    ("touches", "least", "said"),
    [
        (0, 0, "Nothing touches."),
        (1, 0, "1 touch."),
        (5, 2, "5 touches, and no layout has fewer than 2."),
        (13, 13, "13 touches, and no layout has fewer."),
    ],
)
def test_nothing_is_called_the_fewest_that_does_not_meet_the_bound(
    touches: int, least: int, said: str
) -> None:
    assert touches_left(touches, least) == said


def test_what_a_move_mends_and_makes() -> None:
    units, laying = typed(MAZE)
    board = Board(laying, units, Rules())
    mended = effect(board, Move((1, 4), 0, (3, 3), 0))
    assert effect_words(mended, NAMES) == (
        "1 touch now, 0 after this.",
        "It mends: row 3 place 3 meets row 3 place 4: B [red] along a seam.",
    )
    spoiled = effect(board, Move((1, 1), 0, (1, 3), 0))
    made = [line for line in effect_words(spoiled, NAMES) if line.startswith("It makes: ")]
    assert effect_words(spoiled)[0] == f"1 touch now, {spoiled.after} after this."
    assert len(made) == len(spoiled.makes) > 0


def test_a_blob_is_said_with_its_places() -> None:
    blob = Blob("red", ((1, 1), (1, 2), (2, 2), (2, 3)))
    assert blob_words([blob]) == ("4 units hang together that are red: 1·1, 1·2, 2·2, 2·3.",)
    assert blob_words([]) == ()
    (said,) = blob_words([Blob("dark", tuple((1, place) for place in range(1, 13)))])
    assert said.endswith(", 1·12.")
    (said,) = blob_words([Blob("dark", tuple((1, place) for place in range(1, 14)))])
    assert said.endswith(", 1·12 and 1 more.")
    large = Blob("dark", tuple((1, place) for place in range(1, 21)))
    (said,) = blob_words([large])
    assert said.startswith("20 units hang together that are dark: 1·1, 1·2, ")
    assert said.endswith(", 1·12 and 8 more.")
