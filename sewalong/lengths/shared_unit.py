"""One unit said for several lengths: "15.9, 16.1 cm", "60 x 80 cm"."""

import re
from collections.abc import Sequence

_UNIT_BEHIND = r"(?i)([a-z\"″”]+)\.?$"


def unit_behind(text: str) -> str:
    """The unit a length ends on, without a full stop; empty where it has none."""
    found = re.search(_UNIT_BEHIND, text.strip())
    return found[1] if found else ""


def with_unit(parts: Sequence[str], shared: str) -> list[str]:
    """The parts, each with its own unit or else with the one they share."""
    return [part if not shared or unit_behind(part) else f"{part} {shared}" for part in parts]
