"""What sets are chosen by: the rules she can pick from."""

from __future__ import annotations

from enum import StrEnum


class Rule(StrEnum):
    """A rule for choosing sets. In all of them no print is twice in a set where that can be, and
    colour families are spread."""

    BY_VALUE = "by value"
    BY_COLOUR = "by colour"
    LIGHT_ON_DARK = "light on dark"
    ONE_BACKGROUND = "one background"
    SCRAPPY = "scrappy"

    @property
    def words(self) -> str:
        """What it asks for, in a sentence."""
        return _WORDS[self]


_WORDS = {
    Rule.BY_VALUE: "The seam with the least difference of value is made as strong as can be.",
    Rule.BY_COLOUR: "The seam with the least difference of colour is made as strong as can be.",
    Rule.LIGHT_ON_DARK: "Lights and darks lie so that every seam has a light and a dark.",
    Rule.ONE_BACKGROUND: "Every second place is of one fabric, pile or family; the others differ.",
    Rule.SCRAPPY: "No print twice and the families spread; value is not asked for.",
}


class SetsRefused(ValueError):
    """Sets that cannot be proposed; the message is a sentence for the person who asked."""
