"""Several lengths in one line, as a person reads them off the tape."""

import re

from sewalong.lengths.reading import parse
from sewalong.lengths.units import Length, Unit

_UNIT_BEHIND = r"(?i)[a-z\"″”]+\.?$"
_METRIC = ("mm", "cm", "m", "metre", "metres", "meter", "meters")


def parse_several(text: str, unit: Unit = Unit.INCH) -> tuple[Length, ...]:
    """The lengths in `text`, in inches, with commas or semicolons between them.

    A unit behind the last is that of all that have none of their own: "15.9, 16.1 cm". Where
    the unit is metric, a comma between two digits with no space is a decimal comma ("15,9"),
    for it cannot be told from one. Raises `LengthFault` for whatever is no length.
    """
    text = text.strip()
    behind = re.search(_UNIT_BEHIND, text)
    metric = behind[0].rstrip(".").lower() in _METRIC if behind else unit is Unit.CM
    between = r";|,(?!\d)|(?<!\d)," if metric else r"[;,]"
    parts = [part.strip() for part in re.split(between, text)]
    if behind is not None:
        parts = [p if re.search(_UNIT_BEHIND, p) else f"{p} {behind[0]}" for p in parts]
    return tuple(parse(part, unit) for part in parts if part) or (parse(text, unit),)
