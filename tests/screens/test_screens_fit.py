"""Every stage of every method can be read whole: nothing is cut off below or at the side."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest
from msgspec.structs import replace
from textual.widget import Widget

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.definition import definition
from sewalong.piecing.method_tables import (
    LONGEST_CHECK,
    LONGEST_DO,
    LONGEST_NAME,
    LONGEST_WORD,
)
from sewalong.quilt.file.method_file import read_method
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target
from sewalong.screens.prompts.dialogs import Dialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.literal_text import Words
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.progress.wandering import ON_POINT, SETTINGS
from tests.quilt.file.own_method import OWN
from tests.screens.sewing_room import (
    LARGE,
    SMALL,
    Room,
    StandingClock,
    at_sewing,
    put_on_shelf,
    the_app,
)


def quilt_by(method_id: str) -> Quilt:
    """An invented quilt by any method, with a border and every finishing stage."""
    return Quilt(
        name=method_id,
        method_id=method_id,
        unit=Unit.INCH,
        seam=Fraction(1, 4),
        starts=tuple(
            StartPile(
                pile=start.pile,
                size=Fraction(5, 2) if start.strip or place else Fraction(5),
                count=400,
                length=Fraction(40) if start.strip else None,
            )
            for place, start in enumerate(definition(method_id).starts)
        ),
        target=Target(3, 4),
        borders=(Border(Fraction(3), "cream linen"),),
        finishing=("layer", "quilt", "bind"),
    )


def cut_off(room: Room, ids: tuple[str, ...]) -> list[str]:
    """Which of the widgets stick out of the room the screen gives them."""
    body = room.sewing.query_one("#body").region
    found = []
    for id in ids:
        widget = room.sewing.query_one(id, Widget)
        region = widget.region
        if widget.display and region and not body.contains_region(region):
            found.append(f"{id} {region} in {body}")
    return found


WHOLE = {
    LARGE: ("#stage", "#number", "#noun", "#flow", "#do", "#check", "#route"),
    SMALL: ("#stage", "#number", "#noun", "#flow", "#do"),
}


METHODS = {
    LARGE: method_ids(),
    SMALL: ("flying-geese-four", "hourglass", "stacked-four-patch"),
}


LONGEST = {
    "name": LONGEST_NAME, "label": LONGEST_WORD, "do": LONGEST_DO, "check": LONGEST_CHECK,
}  # fmt: skip


def with_the_longest_words() -> Quilt:
    """By a method of a maker's own, all its texts as long as they may be."""

    def filled(start: str, most: int) -> str:
        words = f"{start} " + "patchwork of several pieces " * 9
        return words[:most].strip().ljust(most, "s")

    text = re.sub(
        r'^(name|label|do|check) = "(.*)"$',
        lambda found: f'{found[1]} = "{filled(found[2], LONGEST[found[1]])}"',
        OWN,
        flags=re.MULTILINE,
    )
    text = re.sub(
        r'^noun = \["(.*)", "(.*)"\]$',
        lambda found: (
            f'noun = ["{filled(found[1], LONGEST_WORD)}", "{filled(found[2], LONGEST_WORD)}"]'
        ),
        text,
        flags=re.MULTILINE,
    )
    read_method("own.toml", text)
    return replace(quilt_by("four-patch"), method_id="turned-twos", method_text=text)


@pytest.mark.parametrize("size", WHOLE, ids=["80x24", "40x20"])
async def test_every_stage_fits(tmp_path: Path, size: tuple[int, int]) -> None:
    quilts = [quilt_by(id) for id in METHODS[size]]
    # Of the method with the most stages, so that not all of the road has room.
    quilts += [
        replace(quilt_by("hourglass"), name=f"set {place}", setting=setting)
        for place, setting in enumerate((*SETTINGS, ON_POINT))
    ]
    assert await _cut_off(tmp_path, size, WHOLE[size], quilts) == []


@pytest.mark.parametrize("size", WHOLE, ids=["80x24", "40x20"])
async def test_every_stage_of_a_method_with_the_longest_words_fits(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    # The end of a longest check may be cut off below on 80 × 24; what is done is there whole.
    assert await _cut_off(tmp_path, size, WHOLE[SMALL], [with_the_longest_words()]) == []


async def _cut_off(
    tmp_path: Path, size: tuple[int, int], ids: tuple[str, ...], quilts: list[Quilt]
) -> list[str]:
    path, clock = tmp_path / "quilts.db", StandingClock()
    for quilt in quilts:
        put_on_shelf(path, clock, c.OpenSession(), quilt=quilt)
    library = Library(path, clock())
    faults: list[str] = []
    async with the_app(path, clock, size=size) as room:
        for entry in library.entries():
            screen = SewingScreen(OpenQuilt(library, entry, clock))
            await room.app.push_screen(screen)
            route = screen.quilt.state.route
            # The stages of the top are the same for every method.
            whole = entry.name == "hourglass" or entry.name.startswith("set ")
            for stage in route.stages if whole else route.of_pieces:
                screen.attempt(c.ChooseStage(stage.id))
                await room.sees(f"{stage.label.upper()} at the", f"Working at {stage.label}.")
                faults += [f"{entry.name}, {stage.id}: {out}" for out in cut_off(room, ids)]
            await room.app.pop_screen()
    library.close()
    return faults


@pytest.mark.parametrize(("height", "whole"), [(24, False), (36, True), (50, True)])
async def test_the_route_takes_the_room_there_is(tmp_path: Path, height: int, whole: bool) -> None:
    quilt = replace(quilt_by("hourglass"), setting=ON_POINT)
    async with at_sewing(tmp_path / "quilts.db", quilt=quilt, size=(120, height)) as room:
        assert ("more stages after" in room.flowing) is not whole
        assert ("bind" in room.flowing) is whole


@pytest.mark.parametrize("size", [LARGE, SMALL, (200, 60)], ids=["80x24", "40x20", "200x60"])
async def test_no_label_of_any_question_is_cut(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_sewing(tmp_path / "quilts.db", c.Count("pair", 4), size=size) as room:
        for key in "cdtezmbpfniykrsjaox":
            await room.press(key)
            await room.until(lambda: isinstance(room.app.screen, Dialog), f"what {key} asks")
            for words in room.app.screen.query(Words):
                if words.display and words.size.width and words._said.plain:
                    lines = len(words._said.wrap(words.size.width))
                    assert words.size.height == lines, (key, words._said.plain)
            await room.press("escape")
            await room.screen_is(SewingScreen)
