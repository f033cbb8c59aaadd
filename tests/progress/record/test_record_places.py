"""Where the pieces of a pile lie, in words and in numbers."""

from __future__ import annotations

import pytest

from sewalong.progress.record.places import (
    Places,
    expected_at,
    held_at,
    in_words,
    put_away,
    settled,
)


@pytest.mark.parametrize(
    ("places", "there", "words"),
    [
        ({"tin": None}, 40, "tin"),
        ({"tin": 40}, 40, "tin"),
        ({"tin": 40}, 41, "tin (40), 1 not written down"),
        ({"tin": 40, "bag": 12}, 52, "tin (40), bag (12)"),
        ({"tin": 40, "bag": 12}, 53, "tin (40), bag (12), 1 not written down"),
        ({"tin": 40, "bag": None}, 52, "tin (40), bag (the rest)"),
        ({"tin": None, "bag": None}, 52, "tin (some), bag (some)"),
    ],
)
def test_where_a_pile_lies(places: Places, there: int, words: str) -> None:
    assert in_words(places, there) == words


def test_what_is_put_away_leaves_the_other_places_what_the_pile_still_has() -> None:
    assert put_away({"tin": 30}, "bag", None, 40) == {"bag": None}
    assert put_away({"tin": 30}, "bag", 40, 40) == {"bag": None}
    assert put_away({"tin": 30}, "bag", 10, 40) == {"tin": 30, "bag": 10}
    assert put_away({"tin": 30}, "bag", 11, 40) == {"tin": None, "bag": 11}
    assert put_away({"tin": 30, "bag": 5}, "bag", 10, 40) == {"tin": 30, "bag": 10}


def test_no_number_stands_that_is_more_than_there_is() -> None:
    places: dict[str, int | None] = {"tin": 30, "bag": 10}
    assert settled(places, 40) == places
    assert settled(places, 39) == {"tin": None, "bag": None}


def test_the_only_place_without_a_number_holds_the_rest() -> None:
    assert held_at({"tin": 30, "bag": None}, "bag", 40) == 10
    assert held_at({"tin": None, "bag": None}, "bag", 40) is None
    assert held_at({"tin": 30}, "bag", 40) is None


def test_a_place_counted_that_nobody_wrote_down_holds_what_has_no_place() -> None:
    assert expected_at({"tin": 30}, "bag", 40, 7, new=False) == 7
    assert expected_at({"tin": 30}, "bag", 40, 17, new=False) == 10
    assert expected_at({"tin": 30}, "bag", 40, 7, new=True) == 0
    assert expected_at({"tin": 30}, "tin", 40, 7, new=True) == 30
