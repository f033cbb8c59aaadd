"""What a person types of the rows she has begun, read once for the key and the command."""

from __future__ import annotations

import re

from sewalong.progress.record.begun_rows import Begun, in_order
from sewalong.progress.record.refused import Refused

HOW_TO_SAY = "5 (units sewn together), 16 pairs, or 3 of 4; commas between several; 0: nothing"

_PAIRS = r"(?i)([0-9]{1,4}) *pairs?"
_SEVERAL = r"(?i)([0-9]{1,4}) *(?:pieces? +)?(?:of|x|×) *([0-9]{1,4})(?: *units?)?"
_ONE = r"(?i)([0-9]{1,4})(?: *units?)?"
_NOTHING = ("", "0", "none", "nothing")


def read_begun(text: str) -> Begun:
    """The pieces meant: "5", "16 pairs", "3 of 4, 10 pairs"; "0" or nothing for none.

    Raises Refused for what is none of these.
    """
    if text.strip().casefold() in _NOTHING:
        return ()
    return in_order(tuple(_piece(part.strip()) for part in re.split(r",| and ", text)))


def _piece(part: str) -> tuple[int, int]:
    if pairs := re.fullmatch(_PAIRS, part):
        return int(pairs[1]), 2
    if several := re.fullmatch(_SEVERAL, part):
        return int(several[1]), int(several[2])
    if one := re.fullmatch(_ONE, part):
        return 1, int(one[1])
    raise Refused(f"“{part[:30]}” does not say what is sewn. Say {HOW_TO_SAY}.")
