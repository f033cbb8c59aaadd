"""The two looks on a terminal of sixteen colours, each of which it shows as it likes.

So only those are set on each other that are far apart in all the usual palettes: white, bright
yellow, bright cyan and bright green on black and on blue; black and blue on white and on bright
yellow. The values are those of the VGA, so that each stands for the number it has there.
"""

from __future__ import annotations

from textual.theme import Theme

from sewalong.screens.widgets.themes import DAYLIGHT, LAMPLIGHT

BLACK, BLUE, WHITE = "#000000", "#0000aa", "#ffffff"
GREY, BRIGHT_GREEN, BRIGHT_CYAN, BRIGHT_YELLOW = "#aaaaaa", "#55ff55", "#55ffff", "#ffff55"

DARK = Theme(
    name=LAMPLIGHT.name,
    dark=True,
    background=BLACK,
    surface=BLUE,
    panel=BLACK,
    foreground=WHITE,
    primary=BRIGHT_YELLOW,
    secondary=BRIGHT_CYAN,
    accent=BRIGHT_YELLOW,
    warning=BRIGHT_YELLOW,
    error=BRIGHT_YELLOW,
    success=BRIGHT_GREEN,
    variables={
        "number": BRIGHT_YELLOW,
        "stage": BRIGHT_CYAN,
        "quiet": WHITE,
        "refusal": BRIGHT_YELLOW,
        "good": BRIGHT_GREEN,
        "chalk": GREY,
        "caution-back": WHITE,
        "caution-text": BLACK,
        "input-cursor-text-style": "reverse",
    },
)

LIGHT = Theme(
    name=DAYLIGHT.name,
    dark=False,
    background=WHITE,
    surface=BRIGHT_YELLOW,
    panel=WHITE,
    foreground=BLACK,
    primary=BLUE,
    secondary=BLUE,
    accent=BLUE,
    warning=BLUE,
    error=BLUE,
    success=BLUE,
    variables={
        "number": BLUE,
        "stage": BLUE,
        "quiet": BLACK,
        "refusal": BLUE,
        "good": BLUE,
        "chalk": GREY,
        "caution-back": BLACK,
        "caution-text": WHITE,
        "input-cursor-text-style": "reverse",
    },
)

FEW = {theme.name: theme for theme in (DARK, LIGHT)}
