"""What happens to piles besides counting: spoiled, recounted, found, put away, unpicked."""

from __future__ import annotations

from pathlib import Path

import pytest

from sewalong.screens.prompts.dialogs import ChoiceDialog, FormDialog
from sewalong.screens.sewing import SewingScreen
from tests.progress import every_act as c
from tests.screens.choosing import choose
from tests.screens.sewing_room import SIZES, SMALL, at_sewing, up_to


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


@pytest.mark.parametrize("size", SIZES)
async def test_spoiled_pieces_are_set_aside_with_the_reason(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, c.Count("pair", 3), size=size) as room:
        await room.press("s")
        await choose(room, "pairs: 3")
        await room.sees("Spoiled pairs", "How many pairs?", "What happened?")
        await room.write_over("2")
        await room.press("enter")
        await room.write("cut askew")
        await room.press("enter")
        await room.sees("Spoiled 2 pairs: cut askew.")
        there = room.on_disk()
        assert there.piles["pair"] == 1
        assert there.spoilage[-1].reason == "cut askew"


async def test_what_is_typed_takes_the_place_of_what_was_offered(path: Path) -> None:
    """One is offered: whoever types 3 means three, not thirteen."""
    async with at_sewing(path, c.Count("pair", 20)) as room:
        await room.press("s")
        await choose(room, "pairs: 20")
        await room.write("3")
        await room.press("enter")
        await room.write("cut askew")
        await room.press("enter")
        await room.sees("Spoiled 3 pairs: cut askew.")


@pytest.mark.parametrize("size", [SMALL])
async def test_a_refusal_stands_in_the_dialog_and_changes_nothing(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(path, c.Count("pair", 3), size=size) as room:
        before = room.seq()
        await room.press("s")
        await choose(room, "pairs: 3")
        await room.write_over("9")
        await room.press("enter")
        await room.write("lost")
        await room.press("enter")
        await room.sees("Only 3 pairs lie there, so 9")
        await room.screen_is(FormDialog)
        await room.write_over("many")
        await room.press("enter", "enter")
        await room.sees("Write a whole number, such as 4.")
        await room.write_over("1")
        await room.press("enter")
        await room.write_over("")
        await room.press("enter")
        await room.sees("Give a reason")
        assert room.seq() == before
        await room.press("escape")
        await room.screen_is(SewingScreen)
        assert room.seq() == before


async def test_only_piles_with_something_in_them_can_be_spoiled(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("s")
        await room.screen_is(ChoiceDialog)
        await room.sees("squares: 48")
        assert "pairs:" not in room.text
        await room.press("escape")
        await room.screen_is(SewingScreen)


async def test_a_recount_stands_and_the_difference_is_kept(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("r")
        await choose(room, "squares: 48")
        await room.sees("The record says 48 squares. Your count stands.")
        await room.write("46")
        await room.press("enter")
        await room.sees("2 squares fewer than recorded. What are they?")
        await choose(room, "just take the new count")
        await room.sees("Recounted the squares: 46, 2 fewer than recorded.", "46 squares wait")
        there = room.on_disk()
        assert there.piles["square"] == 46
        assert there.recounted["square"] == -2


async def test_a_recount_of_an_empty_pile_is_possible(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("r")
        await choose(room, "stacks: 0")
        await room.write("2")
        await room.press("enter")
        await choose(room, "just take the new count")
        await room.sees("Recounted the stacks: 2, 2 more than recorded.")


@pytest.mark.parametrize(
    ("way", "said"), [("found again", "Found 8 squares."), ("bought", "Bought 8 squares.")]
)
async def test_pieces_come_by_finding_or_buying(path: Path, way: str, said: str) -> None:
    async with at_sewing(path) as room:
        await room.press("f")
        await choose(room, "squares: 48")
        await choose(room, way)
        await room.sees("How many squares?")
        await room.write("8")
        await room.press("enter")
        await room.sees(said, "56 squares wait")
        assert room.on_disk().found["square"] == 8


async def test_leaving_halfway_through_finding_adds_nothing(path: Path) -> None:
    async with at_sewing(path) as room:
        before = room.seq()
        await room.press("f")
        await choose(room, "squares: 48")
        await room.screen_is(ChoiceDialog)
        await room.press("escape")
        await room.screen_is(SewingScreen)
        assert room.seq() == before


async def test_a_pile_is_put_away_and_its_place_is_shown(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 3)) as room:
        await room.press("p")
        await choose(room, "pairs: 3")
        await room.sees("Put away pairs", "Where?")
        await room.write("the blue biscuit tin")
        await room.press("enter", "enter")
        await room.sees("Put the pairs away: the blue biscuit tin.")
        assert room.on_disk().where["pair"] == "the blue biscuit tin"
        await room.press("p")
        await room.sees("pairs: 3 – the blue biscuit tin")


async def test_unpicked_pieces_go_back_to_their_pile(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 8), c.Count("sew", 3)) as room:
        await room.press("k")
        await choose(room, "sew: 3 done")
        await room.sees("For pieces really taken apart. A miscount is better")
        await room.write_over("2")
        await room.press("enter")
        await room.sees("Unpicked 2 four-patches from sew.")
        there = room.on_disk()
        assert (there.piles["pair"], there.done["sew"]) == (6, 1)


async def test_nothing_sewn_is_nothing_to_unpick(path: Path) -> None:
    async with at_sewing(path) as room:
        before = room.seq()
        await room.press("k")
        await room.sees("Not done: There is nothing now that can be unpicked.")
        assert room.seq() == before


async def test_units_that_are_not_there_are_made_but_not_found(path: Path) -> None:
    async with at_sewing(path, c.Count("pair", 8)) as room:
        await room.press("r")
        await choose(room, "pairs: 8")
        await room.write("5")
        await room.press("enter")
        await choose(room, "made, but not found")
        await room.until(lambda: room.on_disk().missing.get("pair") == 3)
        assert room.on_disk().piles["pair"] == 5


async def test_a_pile_in_two_places_is_counted_place_by_place(path: Path) -> None:
    async with at_sewing(
        path,
        c.Count("pair", 9),
        c.PutPileAway("pair", "tin", 4),
        c.PutPileAway("pair", "blue bag", 5),
    ) as room:
        await room.press("r")
        await choose(room, "pairs: 9")
        await choose(room, "blue bag")
        await room.sees("Count the pairs – blue bag – by hand.", "The record says 5 pairs.")
        await room.write("4")
        await room.press("enter")
        await choose(room, "lost for good")
        await room.until(lambda: room.on_disk().piles["pair"] == 8)


async def test_rows_already_joined_are_not_offered_as_spoiled(path: Path) -> None:
    made = [*up_to("cut-twice"), c.Count("cut-twice", 5), c.Count("press-open", 20)]
    joined = [*made, c.Answer("iron", "yes"), c.Count("sew-rows", 4), c.Count("join-rows", 3)]
    async with at_sewing(path, *joined) as room:
        await room.press("s")
        await room.sees("Spoiled pieces of which pile?", "squares: 8")
        assert "rows: 4" not in room.flowing
