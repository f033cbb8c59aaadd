"""Marks a screen as narrow or short, wide or roomy, for the stylesheet."""

from __future__ import annotations

from typing import Any

from textual.screen import Screen

LOOK_AGAIN = 1.0
"""Seconds between looks at the record for what another window wrote, and at the clock."""

NARROW_BELOW = 70
SHORT_BELOW = 24
WIDE_FROM = 130
"""Columns from which on two columns of a page stand side by side."""
ROOMY = (120, 36)
"""From so many columns and lines on, pictures are large, and at sewing the top stands there too."""


def mark_size(screen: Screen[Any]) -> None:
    """Set the classes `narrow`, `short`, `wide` and `roomy` from the terminal's size now."""
    width, height = screen.app.size
    screen.set_class(width < NARROW_BELOW, "narrow")
    screen.set_class(height < SHORT_BELOW, "short")
    screen.set_class(is_wide(screen), "wide")
    screen.set_class(is_roomy(screen), "roomy")


def is_narrow(screen: Screen[Any]) -> bool:
    """Whether one thing stands below the other."""
    return screen.app.size.width < NARROW_BELOW


def is_wide(screen: Screen[Any]) -> bool:
    """Whether two columns of a page stand side by side."""
    return screen.app.size.width >= WIDE_FROM


def is_roomy(screen: Screen[Any]) -> bool:
    """Whether there is room for large pictures."""
    width, height = screen.app.size
    return width >= ROOMY[0] and height >= ROOMY[1]
