"""Somebody new, from an empty home and by keys alone: begun, sewn to the end, resumed after weeks.

Every ask of the sewing screen is used once at least. Each screen is compared line by line with
what was accepted, as in tests/screens/test_screens_goldens.py, which says how to accept others.
The quilt is invented.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from sewalong.progress.record.state import Standing
from sewalong.screens.new_quilt import NewQuiltScreen
from sewalong.screens.prompts.begun_prompt import BegunDialog
from sewalong.screens.prompts.dialogs import (
    CautionDialog,
    ChoiceDialog,
    Dialog,
    FormDialog,
    LinesDialog,
    QuestionDialog,
)
from sewalong.screens.prompts.facts import FactsDialog
from sewalong.screens.prompts.help import HelpDialog
from sewalong.screens.prompts.registry import ASKS
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.returning import ReturnScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.captioned import Captioned
from sewalong.screens.widgets.keys import SEWING_KEYS
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.screens.widgets.return_sheet import ReturnSheet
from tests.goldens import compare
from tests.screens.sewing_room import DAY, HOUR, MINUTE, Room, StandingClock, the_app

SIZES = (
    pytest.param((80, 24), marks=pytest.mark.long),
    pytest.param((40, 20), marks=pytest.mark.long),
    pytest.param((160, 50), marks=pytest.mark.long),
)
KEY_OF = {key.action: key.key for key in SEWING_KEYS}


class Newcomer:
    """Somebody at the keys, who looks at each screen once."""

    def __init__(self, room: Room, clock: StandingClock) -> None:
        self.room = room
        self.clock = clock
        self.seen: dict[str, str] = {}
        self.asked: set[str] = set()

    def look(self, name: str) -> None:
        """Keep the screen as it stands."""
        assert name not in self.seen
        self.seen[name] = self.room.text

    async def pictured(self) -> None:
        """Wait until every picture that has room stands there."""

        def stand() -> bool:
            views = [one for one in self.room.app.screen.query(Captioned) if one.size]
            return all(one.query_one(PictureView).size for one in views)

        await self.room.until(stand, "the pictures")
        await self.room.pilot.pause()

    @property
    def front(self) -> object:
        return self.room.app.screen

    async def read_on(self) -> None:
        """Read the cautions and answer the questions that come up, until she can sew."""
        await self.room.pilot.pause()
        for _ in range(8):
            if isinstance(self.front, CautionDialog):
                await self.room.press("enter")
            elif isinstance(self.front, QuestionDialog):
                await self.room.press("y")
            else:
                return
        raise AssertionError(f"it goes on asking\n{self.room.text}")

    async def ask(self, what: str, *doing: str, name: str = "") -> None:
        """Press the key of an ask, look at what comes up, and go through it: `doing` has what is
        typed, and behind a `>` the name of a key. What is left open at its end is left."""
        await self.room.press(KEY_OF[f"ask('{what}')"])
        await self.room.until(lambda: not isinstance(self.front, SewingScreen), what)
        await self.room.pilot.pause()
        self.asked.add(what)
        self.look(name or what)
        for step in doing:
            if step.startswith(">"):
                await self.room.press(step[1:])
            else:
                await self.room.write_over(step)
        await self.room.pilot.pause()
        for _ in range(4):
            if isinstance(self.front, SewingScreen):
                return
            await self.room.press("escape")
        raise AssertionError(f"{what} does not end\n{self.room.text}")

    async def count(self, n: int) -> None:
        """Type a number and count so many; cautions are read."""
        self.clock.forward(MINUTE)
        await self.room.press(*str(n), "enter")
        await self.read_on()

    @property
    def stage(self) -> str:
        return self.room.sewing.outcome.hand.line.stage.id

    async def sew_on(self, until: str = "") -> None:
        """Count whatever the stage in hand has to do, stage by stage."""
        for _ in range(60):
            line = self.room.sewing.outcome.hand.line
            if line.stage.id == until or self.room.sewing.outcome.plan.complete:
                return
            before = line.stage.id
            if before == "join-rows":
                await self.ask("join", ">enter", ">enter", name=f"join {line.done + 1}")
                await self.read_on()
            else:
                await self.count(line.to_do)
            await self.room.until(lambda: isinstance(self.front, SewingScreen), "the next stage")
        raise AssertionError(f"it never ends\n{self.room.text}")


async def begin(maker: Newcomer) -> None:
    """From nothing to the first stage, by a few questions."""
    room = maker.room
    await room.screen_is(QuiltsScreen)
    maker.look("no quilt yet")
    await room.press("n")
    await room.screen_is(NewQuiltScreen)
    await room.sees("finishes at" if room.app.size.width > 40 else "A unit")
    await maker.pictured()
    maker.look("a new quilt")
    await room.press("enter")
    await room.pilot.pause()
    await maker.pictured()
    maker.look("which method")
    await room.press("escape", "down", "down", "enter")
    await room.write_over("24")
    await room.press("enter")
    await room.sees("12 units")
    maker.look("24 squares")
    for _ in range(7):
        await room.press("down")
    await room.press("enter")
    await room.write_over("Rainy evenings")
    await room.press("enter")
    await room.press("question_mark")
    await room.screen_is(HelpDialog)
    maker.look("help with a new quilt")
    await room.press("escape", "s")
    await room.screen_is(BegunDialog)
    await room.sees("Begun: Rainy evenings")
    await room.press("enter")
    await room.screen_is(SewingScreen)
    maker.look("the first stage")


async def first_evening(maker: Newcomer) -> None:
    """Every ask there is but for those about rows."""
    room = maker.room
    await room.press("space")
    maker.look("one pair")
    await room.press("u")
    maker.look("undone")
    await room.press("q")
    maker.look("put back")
    await maker.ask("note", "the rain ones are bias, go easy", ">enter")
    await maker.ask("spoil", ">enter", "1", ">enter", "cut askew", ">enter")
    await maker.ask("find", ">enter", ">down", ">enter", "3", ">enter")
    await maker.ask("put", ">enter", "shoe box", ">enter", ">enter")
    await maker.ask("recount", ">enter", ">escape")
    await maker.ask("about", ">enter")
    await maker.ask("numbers", ">escape")
    await maker.ask("fabrics", ">escape")
    await maker.ask("sets", ">escape")
    await maker.ask("wall", ">escape")
    await maker.ask("where", ">escape")
    assert isinstance(maker.front, SewingScreen)
    await room.press("question_mark")
    await room.screen_is(HelpDialog)
    maker.look("help at sewing")
    await room.write("needle")
    await room.pilot.pause()
    maker.look("help for the needle")
    await room.press("escape")
    await maker.count(11)
    await maker.ask("machine", "old machine", *[">enter"] * 8)
    await maker.ask("changed", ">enter")
    await maker.ask("measure", ">home", ">down", ">down", ">enter", "9 1/2", ">enter")
    await maker.read_on()
    await maker.ask("tonight", ">enter", ">enter", ">enter")
    await maker.ask("press", ">enter", "towards the dark", ">enter")
    await maker.ask("target", ">escape")
    await room.press("v")
    await room.pilot.pause()
    maker.look("far view")
    await room.press("v")
    await room.press("space")
    await room.screen_is(CautionDialog)
    maker.look("a caution")
    await maker.read_on()
    await maker.sew_on("press")
    await maker.ask("unpick", ">enter", "1", ">enter")
    await maker.sew_on("press-open")
    await maker.count(3)
    await maker.ask("stage", ">escape")
    await maker.ask("elsewhere", ">escape")
    await maker.ask("brought", ">enter", ">escape")
    await maker.ask("aside", ">escape")
    await room.press("g")
    await room.until(lambda: not isinstance(maker.front, SewingScreen), "how it is going")
    await room.pilot.pause()
    maker.look("how is it going")
    await room.press("escape")
    await room.press("x")
    for _ in range(12):
        await room.pilot.pause()
        if isinstance(maker.front, QuiltsScreen):
            break
        kind = type(maker.front).__name__
        if kind not in maker.seen:
            maker.look(kind)
        if isinstance(maker.front, QuestionDialog):
            await room.press("y")
        elif isinstance(maker.front, FormDialog | LinesDialog | ChoiceDialog):
            await room.press("enter")
        else:
            assert isinstance(maker.front, Dialog), room.text
            await room.press("enter")
    await room.screen_is(QuiltsScreen)
    maker.look("all quilts")


async def weeks_later(maker: Newcomer) -> None:
    """Back again, the facts read, and sewn to the end."""
    room = maker.room
    await room.press("enter")
    await room.screen_is(ReturnScreen)
    sheet = room.app.screen.query_one(ReturnSheet)
    await room.until(lambda: sheet.is_filled, "hours and picture")
    await room.pilot.pause()
    maker.look("where was I")
    await room.press("enter")
    await room.screen_is(SewingScreen)
    await room.press("w")
    await room.screen_is(FactsDialog)
    await room.press("escape")
    await maker.sew_on("sew-rows")
    maker.look("sew rows")
    await maker.ask("begun", "2", ">enter")
    await maker.read_on()
    await maker.sew_on("join-rows")
    maker.look("join rows")
    await maker.sew_on("add-borders")
    maker.look("borders")
    await maker.sew_on()
    maker.look("every stage done")
    await maker.ask("aside", ">down", ">enter", name="done")
    maker.look("a done quilt")


@pytest.mark.parametrize("size", SIZES, ids=["80x24", "40x20", "160x50"])
async def test_a_newcomer_gets_from_an_empty_home_to_a_done_quilt(
    tmp_path: Path, size: tuple[int, int], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path))
    clock = StandingClock()
    path = tmp_path / "quilts.db"
    async with the_app(path, clock, size=size) as room:
        maker = Newcomer(room, clock)
        await begin(maker)
        await first_evening(maker)
    clock.forward(24 * DAY + HOUR)
    async with the_app(path, clock, size=size) as room:
        maker.room = room
        await weeks_later(maker)
        state = room.state
    assert maker.asked == set(ASKS)
    assert state.standing is Standing.DONE
    drawn = "".join(f"=== {name}\n{text}\n" for name, text in maker.seen.items())
    # Where the record lies is another place each time.
    there = re.sub(r"^.*/\S*pytest.*$", "(a line with a path)", drawn, flags=re.MULTILINE)
    compare(Path(__file__).parent / "goldens" / f"newcomer-{size[0]}x{size[1]}.txt", there)
