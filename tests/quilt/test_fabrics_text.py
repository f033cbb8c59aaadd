"""Fabrics written so that they can be said again."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.quilt.choices import ASSORTED, FABRIC_KINDS, VALUES, Fabric
from sewalong.quilt.fabrics_said import fabrics_said
from sewalong.quilt.fabrics_text import fabric_text, fabrics_text

RUST = Fabric("B", "rust dots", "#a0522d", 4, "small print")


@pytest.mark.parametrize(
    ("fabric", "text"),
    [
        (Fabric("A", "lights", None, 60, ASSORTED, value="light"), "lights 60"),
        (Fabric("A", "navy", "#000080", 12), "navy 12"),
        (RUST, "rust dots 4 #a0522d small print"),
        (
            Fabric("C", "stars", "#1f2a55", 4, "small print", "#ffffff", 30),
            "stars 4 #1f2a55 with 30% #ffffff small print",
        ),
        (Fabric("D", "tin, of 1998", None, 4, value="dark"), "4 dark"),
    ],
)
def test_a_fabric_in_few_words(fabric: Fabric, text: str) -> None:
    assert fabric_text(fabric) == text


COLOUR = st.one_of(st.none(), st.sampled_from(["#a0522d", "#000080", "#ffffff"]))
NAME = st.one_of(
    st.sampled_from(["lights", "rust dots", "navy", "UK print", "no. 5", "a, b", "dark 4", "4"]),
    st.text(st.characters(categories=("L", "N", "P", "Zs")), min_size=1, max_size=9).filter(
        lambda text: text.strip() == text and bool(text.split())
    ),
)


@st.composite
def a_fabric(draw: st.DrawFn, letter: str) -> Fabric:
    colour = draw(COLOUR)
    two = colour is not None and draw(st.booleans())
    return Fabric(
        letter,
        draw(NAME),
        colour,
        draw(st.integers(1, 9999)),
        draw(st.one_of(st.none(), st.sampled_from(FABRIC_KINDS))),
        "#123456" if two else None,
        draw(st.integers(1, 99)) if two else None,
        draw(st.one_of(st.none(), st.sampled_from(VALUES))) if colour is None else None,
    )


@given(a_fabric("G"))
def test_said_again_of_its_letter_nothing_changes(fabric: Fabric) -> None:
    assert fabrics_said(f"G {fabric_text(fabric)}", (fabric,)) == (fabric,)


@given(st.tuples(*map(a_fabric, ("A", "D", "AB"))))
def test_all_of_them_are_read_as_they_are_or_not_said(fabrics: Sequence[Fabric]) -> None:
    other = Fabric("C", "what the method calls so")
    text = fabrics_text(fabrics, (other,))
    if text is not None:
        assert [one for one in fabrics_said(text, (other,)) if one.squares] == list(fabrics)


def test_usual_ones_are_said() -> None:
    piles = fabrics_said("lights 60, mediums 70, darks 38")
    assert fabrics_text(piles) == "A lights 60, B mediums 70, C darks 38"
    assert fabrics_text((*piles, RUST)) is None
