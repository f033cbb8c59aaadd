"""The library calls the handler of every class of a screen: one that calls its base's has it done twice."""

from __future__ import annotations

import re
from pathlib import Path

import sewalong.screens

BY_ITSELF = {"on_event"}
"""Called by name and not by the library for each class."""


def test_no_handler_calls_that_of_its_base() -> None:
    found = [
        (file.name, name)
        for file in Path(sewalong.screens.__path__[0]).rglob("*.py")
        for name in re.findall(r"super\(\)\.(on_\w+)", file.read_text(encoding="utf-8"))
    ]
    assert [one for one in found if one[1] not in BY_ITSELF] == []
    assert found
