"""Marks a screen as narrow or short, for the stylesheet."""

from __future__ import annotations

from typing import Any

from textual.screen import Screen

NARROW_BELOW = 70
SHORT_BELOW = 24


def mark_size(screen: Screen[Any]) -> None:
    """Set the classes `narrow` and `short` from the terminal's size now."""
    width, height = screen.app.size
    screen.set_class(width < NARROW_BELOW, "narrow")
    screen.set_class(height < SHORT_BELOW, "short")
