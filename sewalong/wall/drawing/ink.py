"""What a letter is written in on a colour."""

from __future__ import annotations

from sewalong.fabrics.colours import Colour

DARK, PALE = Colour(29, 34, 51), Colour(255, 255, 255)
"""Of seams and letters, and of paper (own choice)."""


def ink_on(ground: Colour) -> Colour:
    """The dark ink or the pale one, whichever parts more from the ground by WCAG's contrast."""
    # The library takes long to load, and is wanted only by whoever draws.
    from sewalong.fabrics.sight import contrast

    return max((DARK, PALE), key=lambda ink: contrast(ink, ground))
