"""Numbers below one another so that what they are counted in stands in one column."""

from __future__ import annotations

import re
from collections.abc import Sequence

_LENGTH = re.compile(r"^([\d][\d /.]*?)(| (?:in|cm|mm|yd|m)\b.*)$")
_TIMES = " × "


def lined_up(numbers: Sequence[str]) -> list[str]:
    """The same numbers, each with spaces before it as far as the longest needs; of a size both
    sides. What does not begin with a number alone stands as it is.

    "4 1/2 in", "41 3/4 in" → "4 1/2 in" with a space before it.
    """
    sides = [one.split(_TIMES, 1) for one in numbers]
    first = _ends_together([side[0] for side in sides])
    wide = max((len(one) for one, side in zip(first, sides, strict=True) if side[1:]), default=0)
    second = _ends_together([side[1] if side[1:] else "" for side in sides])
    return [
        f"{one:<{wide}}{_TIMES}{other}" if side[1:] else one
        for one, other, side in zip(first, second, sides, strict=True)
    ]


def _ends_together(numbers: Sequence[str]) -> list[str]:
    found = [_LENGTH.match(one) for one in numbers]
    digits = max((len(one[1]) for one in found if one), default=0)
    return [
        f"{one[1]:>{digits}}{one[2]}" if one else text
        for one, text in zip(found, numbers, strict=True)
    ]
