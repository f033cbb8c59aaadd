"""Fabrics in the few words by which they can be said again: what `fabrics_said` reads."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from sewalong.quilt.choices import Fabric
from sewalong.quilt.fabrics_said import fabrics_said
from sewalong.quilt.refusal import NumbersFault


def fabric_text(fabric: Fabric) -> str:
    """A counted fabric without its letter, such as "rust dots 4 #a0522d small print".

    Where its name would be read as something else, such as one with a number in it, the name is
    left out; said again of the letter it has, it keeps that.
    """
    rest = " ".join(_rest(fabric))
    texts = (f"{fabric.name} {fabric.squares}", f"{fabric.name} {rest}")
    return next((text for text in texts if _says(text, fabric)), rest)


def fabrics_text(fabrics: Sequence[Fabric], others: Sequence[Fabric] = ()) -> str | None:
    """All of these counted fabrics with their letters, beside `others` that stay; None where they
    cannot be said so that they are read as they are."""
    text = ", ".join(f"{fabric.letter} {fabric_text(fabric)}" for fabric in fabrics)
    try:
        read = fabrics_said(text, others)
    except NumbersFault:
        return None
    return text if [one for one in read if one.squares is not None] == list(fabrics) else None


def _rest(fabric: Fabric) -> Iterator[str]:
    yield str(fabric.squares)
    if fabric.colour:
        yield fabric.colour
    if fabric.second:
        yield f"with {fabric.share}% {fabric.second}"
    if fabric.value:
        yield fabric.value
    if fabric.kind:
        yield fabric.kind


def _says(text: str, fabric: Fabric) -> bool:
    """Whether `text` says all of a fabric, whatever its letter."""
    try:
        return fabrics_said(f"A {text}") == (replace(fabric, letter="A"),)
    except NumbersFault:
        return False
