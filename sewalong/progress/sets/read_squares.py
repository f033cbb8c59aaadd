"""Squares as somebody types them: letters or names, one after another."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sewalong.fabrics.meant import fabric_meant
from sewalong.progress.record.refused import Refused
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.refusal import NumbersFault

_TIMES = re.compile(r"([1-9][0-9]?) ?[x×] ?(.+)")


def squares_typed(quilt: Quilt, text: str) -> tuple[str, ...]:
    """The letters of the fabrics meant by "A, rust dots, 2 x navy"; without commas by letters or
    one-word names: "A B navy". Raises Refused for one that none is meant by, or nothing."""
    return tuple(_squares(quilt, text))


def fabric_typed(quilt: Quilt, text: str) -> str:
    """The letter of the one fabric meant by its letter or its name. Raises Refused."""
    try:
        return fabric_meant(text, quilt.counted_fabrics).letter
    except NumbersFault as fault:
        raise Refused(fault.sentence) from None


def _squares(quilt: Quilt, text: str) -> Iterator[str]:
    parts = [part.strip() for part in re.split(r"[,;\n]", text) if part.strip()]
    if not parts:
        raise Refused("Write the fabrics by letter or name, such as A, rust dots, navy.")
    for part in parts:
        times = _TIMES.fullmatch(part)
        n, what = (int(times[1]), times[2]) if times else (1, part)
        for letter in _meant(quilt, what):
            yield from [letter] * n


def _meant(quilt: Quilt, text: str) -> list[str]:
    """One fabric, or where none goes by all of it one for each word."""
    try:
        return [fabric_typed(quilt, text)]
    except Refused:
        return [fabric_typed(quilt, word) for word in text.split()]
