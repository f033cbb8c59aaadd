"""Two lengths in one line, across and down, or one for a square."""

import re

from sewalong.lengths.fault import LengthFault, quoted
from sewalong.lengths.reading import parse
from sewalong.lengths.shared_unit import unit_behind, with_unit
from sewalong.lengths.units import Length, Unit

_BY = r"(?i)\s*[x×*]\s*"


def parse_across_and_down(text: str, unit: Unit = Unit.INCH) -> tuple[Length, Length]:
    """`60 x 80`, `60 x 80 cm`, or one length for a square, in inches.

    A unit behind either is that of the other where it has none. Raises `LengthFault`.
    """
    parts = re.split(_BY, text.strip())
    if len(parts) > 2:
        raise LengthFault(
            f"{quoted(text)} has more than two lengths. Write across x down: 60 x 80."
        )
    parts = with_unit(parts, unit_behind(parts[-1]) or unit_behind(parts[0]))
    return parse(parts[0], unit), parse(parts[-1], unit)
