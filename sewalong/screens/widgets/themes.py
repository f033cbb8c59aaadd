"""Two looks of our own: indigo cloth by lamplight, and calico by day.

Every text colour has a contrast of at least 7:1 on its background (tested), because the
screen is read from a metre away by tired eyes; it has so too where a terminal shows the nearest
of 256 colours. Nothing is told by colour alone.
"""

from __future__ import annotations

from textual.theme import Theme

LAMPLIGHT = Theme(
    name="lamplight",
    dark=True,
    background="#171c2b",
    surface="#1f2638",
    panel="#2a2f49",
    foreground="#f3ecdd",
    primary="#ffc857",
    secondary="#a9cdea",
    accent="#ffc857",
    warning="#ffb59b",
    error="#ffb59b",
    success="#b9dba5",
    variables={
        "number": "#ffc857",
        "stage": "#a9cdea",
        "quiet": "#d3cbbb",
        "refusal": "#ffb59b",
        "good": "#b9dba5",
        "chalk": "#55648a",
        "caution-back": "#4a1f17",
        "caution-text": "#ffe3d8",
        "input-cursor-text-style": "reverse",
    },
)

DAYLIGHT = Theme(
    name="daylight",
    dark=False,
    background="#faf5e9",
    surface="#f1e9d6",
    panel="#e5dabf",
    foreground="#1d2233",
    primary="#7d2413",
    secondary="#172f66",
    accent="#7d2413",
    warning="#7f1e0e",
    error="#7f1e0e",
    success="#1f4d22",
    variables={
        "number": "#7d2413",
        "stage": "#172f66",
        "quiet": "#3f3b33",
        "refusal": "#7f1e0e",
        "good": "#1f4d22",
        "chalk": "#9c8f72",
        "caution-back": "#f6d3c5",
        "caution-text": "#4a1007",
        "input-cursor-text-style": "reverse",
    },
)

THEMES = {theme.name: theme for theme in (LAMPLIGHT, DAYLIGHT)}
