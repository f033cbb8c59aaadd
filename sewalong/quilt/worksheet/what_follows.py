"""What follows from a change of plan: the sizes that are others by it."""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.quilt.unit_size import unit_text
from sewalong.quilt.worksheet.basis import Basis


def what_follows(was: Basis, now: Basis) -> Iterator[str]:
    """`Top finishes at: 52 1/4 × 57 3/8 in → 50 1/4 × 55 3/8 in`, a line for each that differs."""
    unit = now.shown_in
    if was.unit != now.unit:
        yield f"Units: {unit_text(was.unit, unit)} → {unit_text(now.unit, unit)} unfinished"
    for what, before, after in (
        ("Centre", was.centre, now.centre),
        ("Top finishes at", was.finishes_at, now.finishes_at),
    ):
        if before != after:
            yield f"{what}: {before.show(unit)} → {after.show(unit)}"
