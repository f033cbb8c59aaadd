"""Sets of squares by keys: proposed and accepted, looked at, swapped, laid otherwise, found again."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from msgspec.structs import replace
from rich.cells import cell_len

from sewalong.fabrics.sets.asked import Asked
from sewalong.fabrics.sets.proposing import Proposal
from sewalong.quilt.fabrics_said import fabrics_said
from sewalong.quilt.quilt import Quilt, Target
from sewalong.screens.cloth.proposing import ProposingScreen
from sewalong.screens.cloth.sets import SetsScreen
from sewalong.screens.prompts.dialogs import ChoiceDialog, FormDialog, LinesDialog
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.picture_view import PictureView
from tests.goldens import compare
from tests.progress import every_act as c
from tests.progress.sets.fabrics import sets_of, with_fabrics
from tests.screens.choosing import choose
from tests.screens.fitting import faults_of
from tests.screens.sewing_room import LARGE, SIZES, SMALL, Room, a_quilt, at_sewing
from tests.screens.test_screens_every_size import look

GOLDENS = Path(__file__).parent / "goldens_of_sets"

QUILT = replace(with_fabrics(), name="Meadow", target=Target(6, 4), borders=())
"""96 squares of twelve fabrics; six sets are wanted."""

ACCEPTED = c.AcceptSets(sets_of(8, 6), "by value")


@pytest.fixture(autouse=True)
def soon_good_enough(monkeypatch: pytest.MonkeyPatch) -> None:
    """No test waits for the best of all."""
    monkeypatch.setattr(ProposingScreen, "looks_in_vain", 5)


@asynccontextmanager
async def at_sets(
    tmp_path: Path, *acts: c.Act, quilt: Quilt = QUILT, size: tuple[int, int] = LARGE
) -> AsyncIterator[Room]:
    """The screen of six accepted sets, after whatever else was done."""
    path = tmp_path / "quilts.db"
    async with at_sewing(path, ACCEPTED, *acts, quilt=quilt, size=size) as room:
        await room.press("full_stop")
        await room.screen_is(SetsScreen)
        await room.pilot.pause()
        yield room


@asynccontextmanager
async def at_a_proposal(
    tmp_path: Path, *, quilt: Quilt = QUILT, size: tuple[int, int] = LARGE
) -> AsyncIterator[tuple[Room, ProposingScreen]]:
    """The screen of proposed sets, once it has stopped looking."""
    async with at_sewing(tmp_path / "quilts.db", quilt=quilt, size=size) as room:
        await room.press("full_stop")
        yield room, await proposed(room)


async def proposed(room: Room) -> ProposingScreen:
    """The proposing screen, once it has stopped looking."""
    await room.screen_is(ProposingScreen)
    await room.sees("y has them.")
    screen = room.app.screen
    assert isinstance(screen, ProposingScreen)
    return screen


def laid(room: Room, number: int) -> str:
    return "".join(room.state.sets.sets[number].squares)


@pytest.mark.parametrize(
    ("quilt", "says"),
    [
        (a_quilt(), "Press , at the sewing screen and say which there are"),
        (a_quilt(), "There are no fabrics yet to make sets of"),
        (replace(with_fabrics("rail-fence"), fabrics=()), "This method has no sets"),
    ],
)
async def test_where_there_can_be_no_sets_two_lines_say_what_to_do(
    tmp_path: Path, quilt: Quilt, says: str
) -> None:
    async with at_sewing(tmp_path / "quilts.db", quilt=quilt) as room:
        await room.press("full_stop")
        await room.screen_is(LinesDialog)
        await room.sees(says)
        await room.press("escape")
        await room.screen_is(SewingScreen)


async def test_sets_are_proposed_at_once_and_accepted(tmp_path: Path) -> None:
    async with at_a_proposal(tmp_path) as (room, screen):
        await room.sees("set 1 of 6", "Weakest: ", "No choice of sets passes ", "front", "back")
        assert screen.query_one(PictureView)._strips
        await room.press("right", "right")
        await room.sees("set 3 of 6")
        assert not room.on_disk().sets.sets, "nothing is accepted yet"
        sets = tuple(screen._sets)
        await room.press("y")
        await room.screen_is(SetsScreen)
        assert tuple(one.squares for one in room.on_disk().sets.sets.values()) == sets
        await room.press("u")
        await room.until(lambda: not room.state.sets.sets, "undone")
        await room.press("escape")
        await room.screen_is(SewingScreen)


async def test_leaving_accepts_nothing(tmp_path: Path) -> None:
    async with at_a_proposal(tmp_path) as (room, _):
        await room.press("escape")
        await room.screen_is(SewingScreen)
        assert not room.on_disk().sets.sets


async def test_while_it_looks_keys_are_answered_and_enter_stops(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ProposingScreen, "looks_in_vain", 10**9)
    async with at_sewing(tmp_path / "quilts.db", quilt=QUILT) as room:
        await room.press("full_stop")
        await room.screen_is(ProposingScreen)
        await room.sees("looking for better: enter stops.", "set 1 of 6")
        await room.press("right")
        await room.sees("set 2 of 6")
        await room.press("enter")
        await room.sees("y has them.")
        await room.press("enter")
        await room.sees("looking for better")
        await room.press("escape")
        await room.screen_is(SewingScreen)


async def test_rules_are_chosen_by_number_and_in_words(tmp_path: Path) -> None:
    async with at_a_proposal(tmp_path) as (room, _):
        await room.press("3")
        await room.sees("Chosen light on dark; y has them.")
        await room.press("c")
        await room.screen_is(ChoiceDialog)
        await room.sees("scrappy: No print twice")
        await room.press("down", "down", "enter")
        await room.sees("Chosen scrappy; y has them.")
        await room.press("4")
        await room.screen_is(FormDialog)
        await room.write("nothing")
        await room.press("enter")
        await room.sees("Not done: 'nothing' is not a background.")
        await room.press("4")
        await room.screen_is(FormDialog)
        await room.write("A")
        await room.press("enter")
        await room.sees("Chosen one background, A")


async def test_a_locked_set_stays_when_others_are_proposed(tmp_path: Path) -> None:
    async with at_a_proposal(tmp_path) as (room, screen):
        await room.press("right")
        kept = screen._sets[1]
        await room.press("l")
        await room.sees("set 1 of 6, locked", "y has them.")
        await room.press("n")
        await proposed(room)
        assert screen._sets[0] == kept
        assert len(screen._sets) == 6
        await room.press("space")
        await room.screen_is(SetsScreen)
        assert room.state.sets.sets[1].squares == kept


async def test_of_sets_that_are_alike_only_those_are_locked_that_were(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def alike(asked: Asked) -> Iterator[Proposal]:
        yield Proposal((tuple("ABABABAB"),) * asked.sets, {}, None, None, 0, ("Alike.",))

    monkeypatch.setattr("sewalong.screens.cloth.proposing.propose", alike)
    piles = fabrics_said("lights 48, darks 48")
    async with at_a_proposal(tmp_path, quilt=replace(QUILT, fabrics=piles)) as (room, screen):
        await room.press("l")
        await room.sees("set 1 of 6, locked", "y has them.")
        await room.press("right")
        await room.sees("set 2 of 6")
        assert "locked" not in room.lines[0]
        await room.press("l")
        await room.sees("set 2 of 6, locked", "y has them.")
        await room.press("l")
        await room.until(lambda: len(screen._held) == 1 and "locked" not in room.lines[0])
        assert len(screen._sets) == 6


async def test_every_set_can_be_locked_and_accepted_so(tmp_path: Path) -> None:
    quilt = replace(QUILT, target=Target(2, 2))
    async with at_a_proposal(tmp_path, quilt=quilt) as (room, screen):
        (only,) = screen._sets
        await room.press("l")
        await room.sees("Not done: No more sets are wanted")
        await room.press("y")
        await room.screen_is(SetsScreen)
        assert room.state.sets.sets[1].squares == only


async def test_a_swap_says_what_it_does_is_made_and_undone(tmp_path: Path) -> None:
    async with at_sets(tmp_path) as room:
        await room.sees("set 1 of 6, next", "A chalk", "Weakest here: ")
        await room.press("down", "w")
        await room.sees("Marked: B of set 1.", "* B oat")
        await room.press("right")
        await room.sees("Set 1: weakest there ", "Set 2: weakest there ", "w changes them.")
        await room.press("w")
        await room.sees("Swapped squares in sets 1 and 2.")
        assert (laid(room, 1), laid(room, 2)) == ("AJCDEFGH", "IBKLABCD")
        await room.press("u")
        await room.until(lambda: laid(room, 1) == "ABCDEFGH", "undone")
        await room.press("q")
        await room.until(lambda: laid(room, 1) == "AJCDEFGH", "put back")


async def test_where_a_swap_cannot_be_no_key_is_said_to_make_it(tmp_path: Path) -> None:
    async with at_sets(tmp_path) as room:
        await room.press("w", "left")
        await room.sees("Both are the same fabric. Go to another.")
        assert "w changes them." not in room.flowing


@pytest.mark.parametrize("typed", ["a", "chalk"])
async def test_what_is_spoiled_is_said_by_letter_or_name(tmp_path: Path, typed: str) -> None:
    async with at_sewing(tmp_path / "quilts.db", ACCEPTED, quilt=QUILT) as room:
        await room.press("s")
        await choose(room, "squares: 96")
        await room.press("enter")
        await room.write("torn")
        await room.press("enter")
        await room.sees("Of which fabric, by letter or name?")
        await room.write("nobody")
        await room.press("enter")
        await room.sees("'nobody' is none of the fabrics.")
        await room.press("enter", "enter")
        await room.write_over(typed)
        await room.press("enter")
        await room.screen_is(SewingScreen)
        assert room.on_disk().spoilage[-1].fabric == "A"


async def test_a_square_is_swapped_with_what_is_over(tmp_path: Path) -> None:
    async with at_sets(tmp_path) as room:
        await room.press("w", "left")
        await room.sees("48 squares are in no set.", "A chalk 4")
        await room.press("down", "down", "down", "down", "down", "w")
        await room.sees("Set 1 is your own")
        assert laid(room, 1) == "FBCDEFGH"


async def test_escape_lets_a_marked_square_go_before_it_leaves(tmp_path: Path) -> None:
    async with at_sets(tmp_path) as room:
        await room.press("w", "escape")
        await room.sees("No square is marked any more.")
        await room.press("escape")
        await room.screen_is(SewingScreen)
        assert laid(room, 1) == "ABCDEFGH"


async def test_skip_hold_back_lock_and_take_up(tmp_path: Path) -> None:
    async with at_sets(tmp_path) as room:
        await room.press("k")
        await room.sees("Set 1 comes last now.")
        assert room.state.sets.order("square") == (2, 3, 4, 5, 6, 1)
        await room.press("b")
        await room.sees("set 1 of 6, held back", "Set 1 is held back.")
        await room.press("b")
        await room.sees("Set 1 is back in")
        await room.press("l")
        await room.sees("set 1 of 6, locked")
        await room.press("l", "right", "right", "t")
        await room.sees("In hand at pair: set 3.", "set 3 of 6, next")
        assert room.state.sets.order("square")[0] == 3
        for _ in range(6):
            await room.press("u")
        assert room.state.sets.order("square") == (1, 2, 3, 4, 5, 6)


async def test_what_is_over_cannot_be_skipped(tmp_path: Path) -> None:
    async with at_sets(tmp_path) as room:
        await room.press("left", "k")
        await room.sees("Not done: These are in no set.")


async def test_her_own_set_by_letters_and_names(tmp_path: Path) -> None:
    async with at_sets(tmp_path) as room:
        await room.press("o")
        await room.screen_is(FormDialog)
        await room.write_over("A, rust dots, nobody")
        await room.press("enter")
        await room.sees("is none of the fabrics")
        await room.write_over("3 x chalk, rust dots, A navy, G H")
        await room.press("enter")
        await room.screen_is(SetsScreen)
        await room.sees("Set 1 is your own", "A chalk lies in it more than once.")
        assert laid(room, 1) == "AAAEAHGH"


async def test_the_rest_is_proposed_anew_beside_what_is_locked(tmp_path: Path) -> None:
    async with at_sets(tmp_path, c.MarkSet(2, "locked")) as room:
        await room.press("r")
        screen = await proposed(room)
        assert len(screen._sets) == 5
        await room.press("y")
        await room.screen_is(SetsScreen)
        await room.sees("Accepted 5 sets, by value.")
        assert laid(room, 2) == "".join(ACCEPTED.sets[1])
        assert len(room.state.sets.sets) == 6


async def test_which_set_has_these_two(tmp_path: Path) -> None:
    async with at_sets(tmp_path, c.Count("pair")) as room:
        await room.press("f")
        await room.screen_is(FormDialog)
        await room.write("chalk, oat")
        await room.press("enter")
        await room.screen_is(LinesDialog)
        await room.sees("Set 1: 1 pair, 6 squares. They are in one piece there.")
        await room.press("escape")
        await room.sees("set 1 of 6, begun")


async def test_what_meets_what_the_weakest_first(tmp_path: Path) -> None:
    async with at_sets(tmp_path, size=(100, 60)) as room:
        await room.press("m")
        await room.screen_is(LinesDialog)
        numbers = [int(n) for n in re.findall(r"(\d+) apart:", room.flowing)]
        assert len(numbers) == 12, "a stack is a cube: eight squares, twelve contacts"
        assert numbers == sorted(numbers)


async def test_the_whole_top_takes_the_room_and_gives_it_back(tmp_path: Path) -> None:
    async with at_sets(tmp_path) as room:
        await room.press("v")
        await room.sees("the top with all sets")
        assert "front" not in room.text
        await room.press("v")
        await room.sees("front", "the units it gives")


@pytest.mark.long
async def test_all_of_it_can_be_read_at_every_size(tmp_path: Path) -> None:
    async with at_sets(tmp_path) as room:
        found = await look(room, "a set")
        await room.press("w", "right")
        found += await look(room, "a swap")
        await room.press("left", "left")
        found += await look(room, "what is over")
        await room.press("v")
        found += await look(room, "the top")
        await room.press("escape", "r")
        await proposed(room)
        found += await look(room, "a proposal")
        await room.press("v")
        found += await look(room, "the top as proposed")
    assert found == [], "\n".join(found)


HARD = ("[red]x[/]", "猫" * 30, "a name that goes on and on behind every edge there is")


@pytest.mark.parametrize("size", SIZES, ids=["80x24", "40x20"])
async def test_names_show_as_typed_and_what_is_not_known_is_said(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    fabrics = [
        replace(one, name=name, colour=None) if n == 2 else replace(one, name=name)
        for n, (one, name) in enumerate(zip(QUILT.fabrics, HARD, strict=False))
    ]
    quilt = replace(QUILT, fabrics=(*fabrics, *QUILT.fabrics[len(HARD) :]))
    torn = (c.Count("pair", 2), c.Spoil("pair", 2, "torn", set=1))
    async with at_sets(tmp_path, *torn, quilt=quilt, size=size) as room:
        await room.sees("set 1 of 6", "not known")
        assert faults_of(room.app.screen) == []
        await room.press("right")
        await room.sees("A [red]x[/]", "猫猫")
        assert faults_of(room.app.screen) == []
        for line in room.lines:
            assert cell_len(line) <= size[0]


@pytest.mark.parametrize("size", [LARGE, SMALL], ids=["80x24", "40x20"])
async def test_the_sets_look_as_accepted(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_sets(tmp_path, size=size) as room:
        await room.press("right", "down", "w", "right")
        await room.pilot.pause()
        compare(GOLDENS / f"a-set-{size[0]}x{size[1]}.txt", room.text + "\n")


@pytest.mark.parametrize("size", [LARGE, SMALL], ids=["80x24", "40x20"])
async def test_a_proposal_looks_as_accepted(
    tmp_path: Path, size: tuple[int, int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """How it looks, whatever is proposed: that is held elsewhere, and is better from time to time."""
    found = Proposal(
        sets_of(8, 6),
        {},
        4.0,
        16.0,
        0,
        (
            "Weakest: D butter and E rust dots, 4 apart, in set 1.",
            "No choice of sets passes 16.",
            "No print is twice in a set.",
        ),
    )
    monkeypatch.setattr("sewalong.screens.cloth.proposing.propose", lambda _: iter([found]))
    async with at_a_proposal(tmp_path, size=size) as (room, _):
        await room.pilot.pause()
        compare(GOLDENS / f"a-proposal-{size[0]}x{size[1]}.txt", room.text + "\n")


@pytest.mark.parametrize(
    "surroundings", [{"NO_COLOR": "1"}, {"COLORTERM": "", "TERM": "xterm"}], ids=["none", "sixteen"]
)
async def test_with_no_colour_or_few_letters_stand_in_the_picture(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, surroundings: dict[str, str]
) -> None:
    for name, value in surroundings.items():
        monkeypatch.setenv(name, value)
    async with at_sets(tmp_path) as room:
        view = room.app.screen.query_one(PictureView)
        shown = {letter for strip in view._strips for segment in strip for letter in segment.text}
        assert shown - {" "} == set("ABCDEFGH")
