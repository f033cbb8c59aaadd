"""Where two ways are both right, and what each costs; common practice."""

from __future__ import annotations

from sewalong.piecing.method import Either

BOTH_RIGHT = {
    Either.CORNERS: (
        "Pivot at the corners or sew off the edge: both are right. A pivot keeps the thread whole "
        "and closes the corner; off the edge every side is one straight seam, and the thread is "
        "cut at every side. The cuts go through the corners either way."
    ),
    Either.CROSSINGS: (
        "Seams may oppose or lie the same way: both are right. Opposed they nest, and the crossing "
        "lies flat and is felt to match; but each piece must be pressed for its place. The same "
        "way nothing has to be planned; but ridge lies on ridge, so pin each crossing, and it "
        "stays thicker."
    ),
}


def both_right(either: tuple[Either, ...]) -> tuple[str, ...]:
    """What there is to say of each choice of a stage."""
    return tuple(BOTH_RIGHT[one] for one in either)
