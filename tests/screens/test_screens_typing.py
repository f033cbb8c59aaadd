"""What is typed: a number over what is offered, words behind it, and never what was not seen."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from pathlib import Path

import pytest
from textual.widgets import Input

from sewalong.progress.record.limits import MOST_AT_ONCE
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.settings import Settings
from sewalong.screens.prompts.common import whole
from sewalong.screens.prompts.dialogs import ChoiceDialog, FormDialog, QuestionDialog
from sewalong.screens.prompts.facts import FactsDialog
from sewalong.screens.prompts.help import HelpDialog
from sewalong.screens.sewing import SewingScreen
from tests.progress import every_act as c
from tests.screens.choosing import choose
from tests.screens.sewing_room import Room, at_sewing, up_to


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


def boxes(room: Room) -> list[Input]:
    return list(room.app.screen.query(Input))


async def first(room: Room) -> None:
    await choose(room, "")


async def straight(room: Room) -> None:
    """No list comes before the form."""


NUMBERS: tuple[tuple[str, Callable[[Room], Awaitable[None]], int], ...] = (
    ("s", first, 0),
    ("k", first, 0),
    ("t", straight, 0),
    ("t", straight, 1),
    ("e", straight, 0),
    ("m", straight, 3),
    ("m", straight, 4),
)
"""A key, what is chosen behind it, and which line of the form is a number that is filled in."""

WORDS: tuple[tuple[str, Callable[[Room], Awaitable[None]], int], ...] = (
    ("m", straight, 0),
    ("m", straight, 6),
    ("p", first, 0),
    ("d", straight, 0),
    ("z", straight, 0),
    ("x", straight, 0),
)

WRITTEN: list[c.Act] = [
    c.Count("pair", 4),
    c.PutPileAway("square", "red tin"),
    c.NotePress("pair", "towards the dark"),
    c.RecordSettings(
        Settings(machine="black", needle_position="5.5", stitch_length="2.2", proof="strips")
    ),
]


async def test_a_number_that_is_filled_in_is_replaced_and_words_are_written_on(path: Path) -> None:
    async with at_sewing(path, *WRITTEN) as room:
        for key, choosing, line in (*NUMBERS, *WORDS):
            await room.press(key)
            await choosing(room)
            await room.screen_is(FormDialog)
            await room.press(*["tab"] * line)
            offered = boxes(room)[line].value
            assert offered, f"{key} {line}"
            await room.press("3")
            typed = "3" if (key, choosing, line) in NUMBERS else f"{offered}3"
            assert boxes(room)[line].value == typed, f"{key} {line}"
            await room.press("escape")
            await room.screen_is(SewingScreen)


async def test_a_long_text_that_is_offered_shows_how_it_begins(path: Path) -> None:
    long = f"A {'very ' * 20}long way, then open"
    async with at_sewing(path, c.NotePress("pair", long)) as room:
        await room.press("d")
        await room.sees("A very very", "…")
        assert "then open" not in room.text
        await room.press("!")
        await room.sees("then open!")
        assert "…" not in room.text


async def test_a_number_typed_ahead_of_the_form_replaces_what_it_offers(path: Path) -> None:
    """Typed when the form is on its way, with the list before it gone."""
    async with at_sewing(path) as room:
        await room.burst("t", "8", "enter", "x")
        await room.screen_is(FormDialog)
        await room.until(lambda: boxes(room)[0].value == "8", "8 and not 48")
        assert room.on_disk().target == room.state.target


async def test_a_number_typed_straight_behind_the_choice_is_in_the_form(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("s")
        await room.screen_is(ChoiceDialog)
        # What was pressed before it was chosen is not.
        await room.press("7")
        await room.burst("enter", "3", "enter")
        await room.screen_is(FormDialog)
        await room.until(lambda: boxes(room)[0].value == "3", "3 and not 13")
        assert room.on_disk().spoilage == ()
        await room.press("escape")
        await room.screen_is(SewingScreen)
        await room.press("s")
        await room.screen_is(ChoiceDialog)
        await room.press("7", "escape")
        await room.screen_is(SewingScreen)
        assert room.sewing.typed == ""


@pytest.mark.parametrize("all_at_once", [True, False])
async def test_an_answer_pressed_once_too_often_is_not_in_the_words_that_follow(
    path: Path, all_at_once: bool
) -> None:
    async with at_sewing(path, *up_to("stack")) as room:
        await room.press("x")
        await room.screen_is(QuestionDialog)
        if all_at_once:
            await room.burst("y", "y", "y", "y")
            while not isinstance(room.app.screen, FormDialog):
                await room.burst("y", "y", "y", "y")
        else:
            await room.press("y", "y", "y", "y", "Y", "y")
        await room.screen_is(FormDialog)
        offered = boxes(room)[0].value
        assert "yy" not in offered
        assert offered.endswith("to go.")
        await room.press("space", "y")
        assert boxes(room)[0].value == f"{offered} y"


async def test_words_are_not_typed_ahead_of_a_form_that_came_by_a_list(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("p")
        await room.screen_is(ChoiceDialog)
        await room.burst("enter", "space", "space", "u", "2")
        await room.screen_is(FormDialog)
        assert [box.value for box in boxes(room)] == ["", ""]


async def test_the_key_that_opened_a_form_pressed_twice_is_no_text(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.burst("n", "n", "n")
        await room.screen_is(FormDialog)
        assert boxes(room)[0].value == ""


@pytest.mark.parametrize(("key", "dialog"), [("w", FactsDialog), ("question_mark", HelpDialog)])
async def test_no_dialog_is_left_by_the_key_that_opened_it_pressed_twice(
    path: Path, key: str, dialog: type[FactsDialog | HelpDialog]
) -> None:
    async with at_sewing(path) as room:
        await room.burst(key, key, key)
        await room.screen_is(dialog)


async def test_a_fifth_digit_is_refused_and_the_four_stay(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("1", "2", "3", "4", "5")
        await room.sees("Not done: 4 digits are the most. Enter counts 1234, esc clears it.")
        assert room.sewing.typed == "1234"
        await room.press("backspace", "backspace", "backspace", "backspace")
        await room.press("0", "0", "0", "0", "4", "enter")
        await room.sees("Counted 4 pairs.")


async def test_undoing_while_a_number_is_half_typed_clears_it_and_takes_nothing_back(
    path: Path,
) -> None:
    async with at_sewing(path, c.Count("pair", 4)) as room:
        before = room.seq()
        for key in ("u", "ctrl+z", "q", "ctrl+y"):
            await room.press("1", "2", key)
            await room.sees("12 is cleared. Nothing else was changed.")
            assert room.sewing.typed == ""
        assert room.seq() == before
        await room.press("u")
        await room.sees("Undone: counted 4 pairs.")


@pytest.mark.parametrize(
    ("typed", "said"),
    [("4.5", "a whole number"), ("", "a whole number"), ("-3", "a whole number"), ("٣", "a whole")],
)
def test_what_is_no_whole_number_is_said(typed: str, said: str) -> None:
    with pytest.raises(Refused, match=said):
        whole(typed)


def test_a_number_too_long_is_refused_and_not_cut() -> None:
    assert whole(" 0009999 ") == MOST_AT_ONCE
    for too_long in ("10000", "1" * 30):
        with pytest.raises(Refused, match=f"too long; {MOST_AT_ONCE} is the most"):
            whole(too_long)


async def test_a_number_too_long_in_a_form_is_said_there_and_stays(path: Path) -> None:
    async with at_sewing(path) as room:
        await room.press("t")
        await room.write("123456")
        await room.press("enter", "enter")
        await room.sees("That number is too long; 9999 is the most.")
        assert boxes(room)[0].value == "123456"
