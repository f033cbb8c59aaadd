"""Two lengths in one line, across and down, or one for a square."""

import re

from sewalong.lengths.fault import LengthFault, quoted
from sewalong.lengths.reading import parse
from sewalong.lengths.units import Length, Unit

_BY = r"(?i)\s*[x×*]\s*"
_UNIT_BEHIND = r"(?i)[a-z\"″”]+\.?$"


def parse_across_and_down(text: str, unit: Unit = Unit.INCH) -> tuple[Length, Length]:
    """`60 x 80`, `60 x 80 cm`, or one length for a square, in inches.

    A unit behind the second is that of a first that has none. Raises `LengthFault`.
    """
    parts = re.split(_BY, text.strip())
    if len(parts) > 2:
        raise LengthFault(
            f"{quoted(text)} has more than two lengths. Write across x down: 60 x 80."
        )
    behind = re.search(_UNIT_BEHIND, parts[-1])
    if behind is not None and re.search(_UNIT_BEHIND, parts[0]) is None:
        parts[0] += f" {behind[0]}"
    return parse(parts[0], unit), parse(parts[-1], unit)
