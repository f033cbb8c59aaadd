"""Every stage of every method can be read whole: nothing is cut off below or at the side."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest
from msgspec.structs import replace
from textual.content import Content
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
from sewalong.progress.joining.current_stage import in_hand
from sewalong.progress.joining.cut_span import ruler_words
from sewalong.progress.joining.stage_words import what_to_do
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.route import RouteStage
from sewalong.quilt.file.method_file import read_method
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target
from sewalong.screens.prompts.dialogs import Dialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.hand_panel import Saying, Shown, words_of
from sewalong.screens.widgets.hand_words import fitted
from sewalong.screens.widgets.keys import SEWING_KEYS
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.sewing_layout import sewing_layout
from tests.progress import every_act as c
from tests.progress.building import opening, play
from tests.progress.wandering import ON_POINT, SETTINGS
from tests.quilt.file.own_method import OWN
from tests.screens.sewing_room import (
    LARGE,
    SMALL,
    Room,
    at_sewing,
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


ALL_SIZES = (LARGE, SMALL, (70, 24), (78, 24), (100, 30), (120, 36), (160, 50), (200, 60))


def said_of(quilt: Quilt, stage: RouteStage, *acts: c.Act) -> Shown:
    """What the panel is given of a stage in hand, laid out for 80 × 24."""
    state, _ = play(quilt, *acts)
    state = replace(state, chosen=stage.id, chosen_by_hand=True)
    hand = in_hand(state, plan(state))
    saying = Saying(
        do=what_to_do(quilt, stage), which=hand.which, ruler=ruler_words(quilt, stage.id)
    )
    return Shown(hand, saying, sewing_layout(*LARGE, 2))


def flowing(lines: list[Content]) -> str:
    """The lines as they are read, without regard to where they end."""
    return " ".join(" ".join(line.plain for line in lines).split())


OF_THE_PROGRAM = [quilt_by(id) for id in method_ids()] + [
    # Of the method with the most stages.
    replace(quilt_by("hourglass"), name=f"set {place}", setting=setting)
    for place, setting in enumerate((*SETTINGS, ON_POINT))
]


@pytest.mark.parametrize("size", ALL_SIZES, ids=[f"{w}x{h}" for w, h in ALL_SIZES])
@pytest.mark.parametrize("quilt", OF_THE_PROGRAM, ids=[quilt.name for quilt in OF_THE_PROGRAM])
def test_what_to_do_and_what_to_check_stand_whole_at_every_stage(
    quilt: Quilt, size: tuple[int, int]
) -> None:
    for stage in opening(quilt).route.stages:
        shown = said_of(quilt, stage)
        words = words_of(shown, SEWING_KEYS)
        layout = sewing_layout(*size, len(str(shown.hand.line.to_do)), 20)
        lines = fitted(words, *layout.texts)
        assert len(lines) <= layout.texts[1]
        assert max(line.cell_length for line in lines) <= layout.texts[0]
        read = flowing(lines)
        for needed in (words.noun, words.waits, words.which, words.do, words.check):
            assert " ".join(needed.split()) in read, (stage.id, read)


@pytest.mark.parametrize("lines", range(4, 9))
def test_however_little_room_there_is_the_check_is_whole(lines: int) -> None:
    quilt = with_the_longest_words()
    for stage in quilt.method.stages:
        words = words_of(said_of(quilt, stage), SEWING_KEYS)
        drawn = fitted(words, 36, lines)
        assert len(drawn) <= lines
        assert flowing(drawn).endswith(words.check)


def test_what_is_left_out_is_said_to_be() -> None:
    """Of several sentences the first stays; the key that tells all stands behind it."""
    quilt = quilt_by("nine-patch")
    stage = opening(quilt).route.stage("add-borders")
    assert stage is not None
    words = replace(words_of(said_of(quilt, stage), SEWING_KEYS), do="Do one. Do two. Do three.")
    words = replace(words, which="", do=f"Do one. {'Do two ' * 9}. Do three.")
    height = len(fitted(words, 30, 99))
    shorter = [flowing(fitted(words, 30, lines)) for lines in range(height, 6, -1)]
    assert "Do three." in shorter[0]
    assert "Do one. … y: all of it" in shorter[-1]
    assert all("Do one." in read for read in shorter)


@pytest.mark.parametrize("size", ALL_SIZES, ids=[f"{w}x{h}" for w, h in ALL_SIZES])
async def test_the_screen_is_laid_out_as_it_is_worked_out(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    """Every part has the room the layout says and none sticks out, with four digits too."""
    quilt = replace(
        quilt_by("stacked-four-patch"),
        starts=(StartPile("square", Fraction(5), 4000),),
        target=Target(30, 40),
    )
    async with at_sewing(tmp_path / "quilts.db", quilt=quilt, size=size) as room:
        for stage in ("pair", "cut-twice", "sew-rows", "join-rows", "add-borders"):
            room.sewing.attempt(c.ChooseStage(stage))
            await room.sees(f"Working at {room.state.route.stage(stage).label}.")  # type: ignore[union-attr]
            layout = room.sewing._layout()
            texts = room.sewing.query_one("#texts")
            await room.until(lambda t=texts, to=layout.texts: tuple(t.size) == to, stage)  # type: ignore[misc]
            view = room.sewing.query_one("#picture")
            await room.until(lambda v=view: v.size.width > 0, stage)  # type: ignore[misc]
            picture = view.size
            assert picture.width <= layout.picture[0]
            assert picture.height <= layout.picture[1]
            assert picture.width >= 10, stage
            shown = ["#stage", "#number", "#picture", "#texts"]
            shown += ["#route"] if layout.route else []
            shown += ["#top-now"] if layout.top[0] else []
            assert cut_off(room, tuple(shown)) == []


@pytest.mark.parametrize(("height", "whole"), [(24, False), (36, True), (50, True)])
async def test_the_route_takes_the_room_there_is(tmp_path: Path, height: int, whole: bool) -> None:
    quilt = replace(quilt_by("hourglass"), setting=ON_POINT)
    async with at_sewing(tmp_path / "quilts.db", quilt=quilt, size=(120, height)) as room:
        assert ("more stages after" in room.flowing) is not whole
        assert ("bind" in room.flowing) is whole


@pytest.mark.parametrize(
    "size",
    [LARGE, SMALL, pytest.param((200, 60), marks=pytest.mark.long)],
    ids=["80x24", "40x20", "200x60"],
)
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
