"""What msgspec says in one line, taken apart: what is wrong, where, and which key."""

from __future__ import annotations

import msgspec
import pytest
from msgspec import Struct

from sewalong.misfit import SOMEWHERE, Misfit, dotted, misfit


class Inner(Struct, forbid_unknown_fields=True):
    n: int


class Outer(Struct, forbid_unknown_fields=True):
    one: Inner
    many: list[Inner]
    free: dict[str, int] = {}


@pytest.mark.parametrize(
    ("plain", "expected"),
    [
        ([], Misfit((), "Expected `object`, got `array`")),
        ({}, Misfit((), "Object missing required field `one`", missing="one")),
        (
            {"one": {"n": 1}, "many": [{"n": 1}, {}]},
            Misfit(("many", 1), "Object missing required field `n`", missing="n"),
        ),
        (
            {"one": {"a - at `$.b`\n": 1}},
            Misfit(
                ("one",),
                "Object contains unknown field `a - at `$.b`\n`",
                unknown="a - at `$.b`\n",
            ),
        ),
        (
            {"one": {"n": 1}, "many": [{"n": "x"}]},
            Misfit(("many", 0, "n"), "Expected `int`, got `str`"),
        ),
        (
            {"one": {"n": 1}, "many": [], "free": {"a b": "x"}},
            Misfit(("free", SOMEWHERE), "Expected `int`, got `str`"),
        ),
    ],
)
def test_the_parts_of_what_did_not_fit(plain: object, expected: Misfit) -> None:
    with pytest.raises(msgspec.ValidationError) as caught:
        msgspec.convert(plain, Outer)
    assert misfit(caught.value) == expected


def test_what_is_listed_is_counted_from_1() -> None:
    assert dotted(()) == ""
    assert dotted(("starts",)) == "starts"
    assert dotted(("starts", 0, "count")) == "starts[1].count"


def test_a_key_that_is_not_said_stands_as_dots() -> None:
    assert dotted(("answers", SOMEWHERE)) == "answers[...]"
