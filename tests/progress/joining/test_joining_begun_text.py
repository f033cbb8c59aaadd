"""What is typed of rows begun, and what is no answer."""

from __future__ import annotations

import pytest

from sewalong.progress.joining.begun_text import read_begun
from sewalong.progress.record.begun_rows import Begun
from sewalong.progress.record.refused import Refused

READ: dict[str, Begun] = {
    "5": ((1, 5),),
    "5 units": ((1, 5),),
    "16 pairs": ((16, 2),),
    "1 pair": ((1, 2),),
    "3 of 4": ((3, 4),),
    "3x4": ((3, 4),),
    "3 pieces of 4 units, 10 pairs": ((3, 4), (10, 2)),
    "10 pairs and 3 of 4": ((3, 4), (10, 2)),
    "5, 5": ((2, 5),),
    "0": (),
    "": (),
    "nothing": (),
}


@pytest.mark.parametrize("text", READ)
def test_what_is_typed_is_read(text: str) -> None:
    assert read_begun(text) == READ[text]


@pytest.mark.parametrize("text", ["half", "3 of", "-5", "5;6", "pairs", "5 5", "99999"])
def test_what_does_not_say_it_is_refused_with_what_would(text: str) -> None:
    with pytest.raises(Refused, match="16 pairs"):
        read_begun(text)
