"""How a screen looks does not go by which others were seen before it.

The library keeps the stylesheet of every screen that was opened, and applies it to all of them.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

import sewalong.screens
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.worksheet import WorksheetScreen
from tests.screens.sewing_room import at_sewing
from tests.screens.test_screens_help import ALL_KEYS

FOLDER = Path(sewalong.screens.__path__[0])

SHARED = {"lists.tcss", "facts.tcss", "sheet.tcss", "reasoned.tcss"}
"""Sheets for whatever screen has such a list, fact, page or row."""

OWN = [(kind, sheet) for kind in ALL_KEYS for sheet in kind.CSS_PATH or () if sheet not in SHARED]


@pytest.mark.parametrize(("kind", "sheet"), OWN)
def test_the_rules_of_one_screen_name_it(kind: type[Any], sheet: str) -> None:
    rules = re.findall(r"([^{}]+)\{[^}]*\}", next(FOLDER.rglob(sheet)).read_text(encoding="utf-8"))
    selectors = [one.strip() for rule in rules for one in rule.split(",")]
    loading = [one for one in ALL_KEYS if sheet in (one.CSS_PATH or ())]
    assert kind in loading
    names = {parent.__name__ for one in loading for parent in one.__mro__}
    assert len(selectors) > 5
    assert [one for one in selectors if re.split(r"[. ]", one)[0] not in names] == []


async def test_the_numbers_look_the_same_once_it_was_looked_how_it_is_going(tmp_path: Path) -> None:
    async with at_sewing(tmp_path / "quilts.db") as room:
        seen = []
        for keys in (("h",), ("g", "escape", "h")):
            await room.press(*keys)
            await room.screen_is(WorksheetScreen)
            await room.sees("unit finishes at")
            seen.append(room.text)
            await room.press("escape")
            await room.screen_is(SewingScreen)
        assert seen[0] == seen[1]
