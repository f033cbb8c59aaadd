"""The refusal of a number no quilt can have, and the few checks every calculation begins with."""

from sewalong.lengths import Length


class NumbersFault(ValueError):
    """Something that cannot be worked out. `sentence` says why and what to do next."""

    def __init__(self, sentence: str) -> None:
        super().__init__(sentence)
        self.sentence = sentence


def above_zero(length: Length, what: str) -> Length:
    """`length` as it came. Raises `NumbersFault` naming `what` when it is zero or less."""
    if length <= 0:
        raise NumbersFault(f"The {what} must be more than nothing. Give a length above zero.")
    return length


def not_below_zero(length: Length, what: str) -> Length:
    """`length` as it came. Raises `NumbersFault` naming `what` when it is less than zero."""
    if length < 0:
        raise NumbersFault(f"The {what} cannot be less than nothing. Give zero or more.")
    return length


def at_least(least: int, count: int, what: str) -> int:
    """`count` as it came. Raises `NumbersFault` naming `what` when it is below `least`."""
    if count < least:
        raise NumbersFault(f"The number of {what} must be at least {least}, not {count}.")
    return count
