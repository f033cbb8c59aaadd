"""Every key of the sewing screen stands in one list: bound, in the help, with its own id."""

from __future__ import annotations

from pathlib import Path

import pytest
from textual.containers import VerticalScroll

from sewalong.owner.key_names import cap
from sewalong.screens.app import SewalongApp
from sewalong.screens.prompts.dialogs import (
    CautionDialog,
    ChoiceDialog,
    Dialog,
    FormDialog,
    QuestionDialog,
)
from sewalong.screens.prompts.facts import FactsDialog
from sewalong.screens.prompts.help import HelpDialog
from sewalong.screens.prompts.registry import ASKS
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.keys import SEWING_KEYS, key_line
from tests.screens.sewing_room import LARGE, SMALL, at_sewing

BOUND = (
    SewalongApp,
    QuiltsScreen,
    ReturnScreen,
    SewingScreen,
    Dialog,
    CautionDialog,
    ChoiceDialog,
    FormDialog,
    QuestionDialog,
    HelpDialog,
    FactsDialog,
)


def test_every_key_and_every_id_is_there_once() -> None:
    assert len({key.id for key in SEWING_KEYS}) == len(SEWING_KEYS)
    assert len({key.key for key in SEWING_KEYS}) == len(SEWING_KEYS)


def test_every_binding_of_ours_has_an_id_of_its_own() -> None:
    ids = [binding.id for kind in BOUND for binding in vars(kind).get("BINDINGS", ())]
    assert None not in ids
    assert len(set(ids)) == len(ids)


def test_every_key_does_something_that_is_there() -> None:
    for key in SEWING_KEYS:
        whose, _, name = key.action.partition("(")[0].rpartition(".")
        on = SewalongApp if whose == "app" else SewingScreen
        assert callable(getattr(on, f"action_{name}", None)), key.id


def test_no_key_needs_ctrl_or_alt() -> None:
    for key in SEWING_KEYS:
        assert len(cap(key.key)) == 1 or key.key in ("space", "enter", "escape")


async def test_every_key_is_bound_and_letters_in_both_cases(tmp_path: Path) -> None:
    async with at_sewing(tmp_path / "quilts.db") as room:
        bound = room.sewing.active_bindings
        for key in SEWING_KEYS:
            cases = {key.key, key.key.upper()} if len(key.key) == 1 else {key.key}
            for case in cases:
                assert bound[case].binding.id == key.id


@pytest.mark.parametrize("size", [LARGE, SMALL])
async def test_every_key_is_in_the_help(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(tmp_path / "quilts.db", size=(size[0], 130)) as room:
        await room.press("question_mark")
        await room.screen_is(HelpDialog)
        for key in SEWING_KEYS:
            await room.sees(f"{key.cap} {' '.join(key.help.split()[:3])}")
        await room.sees("Cautions here are general advice")


@pytest.mark.parametrize("size", [LARGE, SMALL])
async def test_the_help_can_be_read_to_the_end(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(tmp_path / "quilts.db", size=size) as room:
        await room.press("question_mark")
        await room.sees("Count one at the stage", "esc: back")
        await room.press("end")
        await room.sees("Cautions here are general advice", "show you.")
        await room.press("escape")
        await room.screen_is(SewingScreen)


@pytest.mark.parametrize("width", range(34, 130, 5))
def test_the_key_line_shows_whole_keys_and_always_the_way_to_all_of_them(width: int) -> None:
    line = key_line(width)
    assert len(line) <= width
    assert line.startswith("space count 1")
    assert line.endswith("? all keys")


@pytest.mark.parametrize("size", [LARGE, SMALL])
async def test_the_caution_can_be_read_to_the_end(tmp_path: Path, size: tuple[int, int]) -> None:
    from tests.progress import every_act as c
    from tests.screens.sewing_room import up_to

    at_the_mat = [*up_to("cut-twice"), c.ChooseStage("cut-twice")]
    async with at_sewing(tmp_path / "quilts.db", *at_the_mat, size=size) as room:
        await room.press("space")
        await room.screen_is(CautionDialog)
        await room.sees("CAUTION Rotary cutter", "enter: I have read this esc: not now")
        scroll = room.app.screen.query_one(VerticalScroll)
        read = set(room.lines)
        await room.press("end")
        assert scroll.scroll_y == scroll.max_scroll_y
        read |= set(room.lines)
        words = " ".join(" ".join(read).split())
        for piece in ("Close the blade", "Turn the mat", "General advice", "come first."):
            assert piece in words


@pytest.mark.parametrize("size", [LARGE, SMALL])
async def test_the_key_lines_of_all_screens_are_whole(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(tmp_path / "quilts.db", size=size) as room:
        assert room.lines[-1].endswith("? all keys")
        await room.press("h")
        await room.sees("how much?")
        assert room.lines[-1].endswith("esc back  ? help")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        assert room.lines[-1].endswith("q leave  ? help")


def test_every_longer_ask_has_its_key() -> None:
    asked = {key.action[5:-2] for key in SEWING_KEYS if key.action.startswith("ask('")}
    assert asked == set(ASKS)
