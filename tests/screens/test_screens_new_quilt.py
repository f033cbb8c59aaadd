"""A new quilt by a few questions: complete at once, back and forth, kept where it is left."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from textual.widgets import Input, OptionList

from sewalong.quilt.beginning.filled_in import FilledIn
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.quilt import Quilt
from sewalong.screens.new_quilt import NewQuiltScreen
from sewalong.screens.prompts.begun_prompt import BegunDialog
from sewalong.screens.prompts.dialogs import ChoiceDialog, FormDialog
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.widgets.answer_row import AnswerRow
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.store.drafts import Draft, Drafts
from sewalong.store.library import Library
from tests.screens.sewing_room import (
    EVENING,
    LARGE,
    Room,
    StandingClock,
    a_quilt,
    put_on_shelf,
    the_app,
)

WIDE = (160, 50)
PLACE = {"method": 0, "size": 1, "count": 2, "seam": 3, "trim": 4, "setting": 5, "layout": 6,
         "borders": 7, "finishing": 8, "fabrics": 9,
         "name": 10}  # fmt: skip


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "quilts.db"


@asynccontextmanager
async def at_the_form(path: Path, size: tuple[int, int] = LARGE) -> AsyncIterator[Room]:
    """The form, opened from the list of quilts."""
    async with the_app(path, StandingClock(), size=size) as room:
        await room.screen_is(QuiltsScreen)
        await room.press("n")
        await room.screen_is(NewQuiltScreen)
        yield room


def form(room: Room) -> FilledIn:
    screen = room.app.screen
    assert isinstance(screen, NewQuiltScreen)
    return screen._form.filled


def drafts(path: Path) -> tuple[Draft, ...]:
    return Drafts(str(path.parent)).all()[0]


def quilts(path: Path) -> list[Quilt]:
    library = Library(path, EVENING)
    try:
        return [library.load(entry).quilt for entry in library.entries()]
    finally:
        library.close()


async def go_to(room: Room, id: str) -> None:
    """Walk down to a question from the first one."""
    await room.press(*["down"] * PLACE[id])


async def answer(room: Room, id: str, text: str) -> None:
    """Type an answer to a question, which is walked to from the first, and walk back."""
    await go_to(room, id)
    await room.press("enter")
    if room.app.screen.query_one(OptionList).has_focus:
        await room.press("end", "enter")
    await room.write_over(text)
    await room.press("enter")
    at = room.app.screen._at  # type: ignore[attr-defined]
    await room.press(*["up"] * at)


async def test_s_alone_begins_the_quilt_that_stands_there(path: Path) -> None:
    async with at_the_form(path) as room:
        await room.sees("4 packs of 42", "9 × 9", "3 spare", "168 squares make 84 units.")
        wanted = form(room).quilt
        await room.press("s")
        await room.screen_is(BegunDialog)
        # The path may be broken over lines.
        await room.sees("Begun: Stacked four-patch", "It is kept on this computer")
        await room.press("enter")
        await room.screen_is(SewingScreen)
        assert room.sewing.quilt.state.quilt == wanted
    assert quilts(path) == [wanted]
    assert drafts(path) == ()


@pytest.mark.parametrize(
    ("id", "text", "shown"),
    [
        ("size", "6", "6 in"),
        ("count", "120", "120 squares make 60 units."),
        ("seam", "3/8", "3/8 in"),
        ("trim", "6", "Units are trimmed to 6 in."),
        ("setting", "sashes 3", "sashes 3 in"),
        ("layout", "6 x 7", "6 × 7 takes 42: 42 spare."),
        ("borders", "none", "borders none"),
        ("finishing", "bind", "finishing bind"),
        ("name", "Sunday squares", "Sunday squares"),
    ],
)
async def test_each_answer_changes_what_stands_beside_it(
    path: Path, id: str, text: str, shown: str
) -> None:
    async with at_the_form(path) as room:
        await answer(room, id, text)
        await room.sees(shown)
        assert set(form(room).answers.said) == {id}
        assert [one.answers.said for one in drafts(path)] == [form(room).answers.said]


async def test_methods_are_looked_at_as_they_are_walked(path: Path) -> None:
    async with at_the_form(path) as room:
        picture = room.app.screen.query(PictureView).last()
        before = picture._shown
        await room.press("enter")
        await room.sees("By which method?", "Two four-patches face to face")
        await room.press("up")
        await room.sees("Three strips joined and cut across", "20 dark strips")
        assert picture._shown != before
        # Nothing is taken yet, and escape leaves it as it was.
        await room.press("escape")
        await room.sees("168 squares make 84 units.")
        assert picture._shown == before
        assert drafts(path) == ()
        await room.press("enter", "up", "enter")
        await room.sees("strip length", "medium strips")
        assert len(form(room).rows) == 13
        assert len(room.app.screen.query(AnswerRow)) == 13


async def test_a_layout_is_chosen_from_those_that_fit(path: Path) -> None:
    async with at_the_form(path) as room:
        await go_to(room, "layout")
        await room.press("enter")
        await room.sees("9 × 9", "65 3/4 × 65 3/4 in, 3 spare", "0 spare")
        await room.press("down", "enter")
        assert form(room).row("layout").text == "12 × 7"


async def test_a_layout_that_no_longer_fits_is_said_and_those_that_do_are_offered(
    path: Path,
) -> None:
    async with at_the_form(path) as room:
        await answer(room, "layout", "9 x 9")
        assert "Enter at it shows" not in room.flowing
        await answer(room, "count", "64")
        await room.sees("layout: 9 × 9 is 49 short now. Enter at it shows those that fit.")
        await go_to(room, "layout")
        await room.press("enter", "down", "enter")
        found = form(room)
        assert found.layouts[0].short == 0
        assert "short now" not in room.flowing


async def test_what_will_not_do_is_said_and_put_right_where_it_stands(path: Path) -> None:
    async with at_the_form(path) as room:
        await go_to(room, "size")
        await room.press("enter")
        await room.write("large")
        await room.press("enter")
        await room.sees("No number was found in 'large'.")
        assert room.app.screen.query(AnswerRow)[1].query_one(Input).has_focus
        await room.write_over("7")
        await room.press("enter")
        assert form(room).row("size").text == "7 in"
        assert "No number" not in room.flowing


async def test_a_number_is_typed_over_and_a_name_written_on(path: Path) -> None:
    async with at_the_form(path) as room:
        await go_to(room, "count")
        await room.press("enter")
        await room.write("80")
        await room.press("enter")
        assert form(room).row("count").text == "80"
        await room.press("up", *["down"] * (PLACE["name"] - PLACE["count"]), "enter")
        await room.write(" too")
        await room.press("enter")
        assert form(room).row("name").text == "Stacked four-patch too"


async def test_an_answer_that_breaks_another_is_marked_there(path: Path) -> None:
    async with at_the_form(path) as room:
        await answer(room, "borders", "1")
        await answer(room, "seam", "1/2")
        await room.sees(
            "borders: A border cut at 1 in is used up", "! 1", "layout follows from the others"
        )
        await room.press("s")
        await room.sees("Not begun: First put right, borders")
        await answer(room, "borders", "2")
        await room.press("s")
        await room.screen_is(BegunDialog)


async def test_escape_keeps_a_draft_and_enter_goes_on_with_it(path: Path) -> None:
    async with at_the_form(path) as room:
        assert "keep as a draft" not in room.flowing
        await answer(room, "name", "Harbour lights")
        await room.sees("keep as a draft")
        await answer(room, "count", "64")
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        await room.sees("Harbour lights", "a draft: enter goes on with it")
    # And from another start.
    async with the_app(path, StandingClock()) as room:
        await room.sees("Harbour lights", "a draft")
        await room.press("enter")
        await room.screen_is(NewQuiltScreen)
        await room.sees("Harbour lights", "64 squares make 32 units.")
        await room.press("s")
        await room.screen_is(BegunDialog)
        await room.press("enter")
        await room.screen_is(SewingScreen)
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        assert "a draft" not in room.flowing
    assert drafts(path) == ()


async def test_nothing_answered_nothing_kept(path: Path) -> None:
    async with at_the_form(path) as room:
        await room.press("enter", "escape", "escape")
        await room.screen_is(QuiltsScreen)
        await room.sees("No quilt yet.")
    assert not (path.parent / "drafts").exists()


async def test_ctrl_c_in_the_middle_keeps_what_was_answered(path: Path) -> None:
    async with at_the_form(path) as room:
        await answer(room, "count", "64")
        await room.press("down", "enter")
        await room.press("ctrl+c")
        await room.until(lambda: room.app.return_code == 0, "the end")
    assert [one.answers.said for one in drafts(path)] == [{"count": "64"}]


async def test_a_draft_is_thrown_away_only_when_that_is_confirmed(path: Path) -> None:
    async with at_the_form(path) as room:
        await room.press("t")
        await room.screen_is(NewQuiltScreen)
        await answer(room, "count", "64")
        await room.press("t")
        await room.screen_is(ChoiceDialog)
        await room.press("enter")
        await room.screen_is(NewQuiltScreen)
        assert len(drafts(path)) == 1
        await room.press("t", "down", "enter")
        await room.screen_is(QuiltsScreen)
    assert drafts(path) == ()


async def test_a_damaged_draft_is_said_and_the_list_stands(path: Path) -> None:
    put_on_shelf(path, StandingClock(), quilt=a_quilt("Hop garden"))
    folder = path.parent / "drafts"
    folder.mkdir()
    (folder / "x.json").write_text("{")
    async with the_app(path, StandingClock()) as room:
        await room.sees("Hop garden", "A draft could not be read and is set aside")


async def test_a_name_that_is_taken_is_said_at_once(path: Path) -> None:
    put_on_shelf(path, StandingClock(), quilt=a_quilt("Hop garden"))
    async with at_the_form(path) as room:
        await answer(room, "name", "hop garden")
        await room.sees("A quilt is called that already.")


async def test_as_a_file_it_says_the_same_and_begins_nothing(path: Path) -> None:
    file = path.parent / "sunday.toml"
    async with at_the_form(path) as room:
        await answer(room, "count", "64")
        wanted = form(room).quilt
        await room.press("f")
        await room.screen_is(FormDialog)
        await room.write_over(str(file))
        await room.press("enter")
        await room.sees("Written:", "sewalong start FILE")
        # What is there stays as it is.
        await room.press("f")
        await room.write_over(str(file))
        await room.press("enter")
        await room.sees("is there already")
    assert read_quilt(file.read_text(encoding="utf-8")) == wanted
    assert quilts(path) == []


async def test_once_begun_the_file_is_offered(path: Path) -> None:
    file = path.parent / "begun.toml"
    async with at_the_form(path) as room:
        await room.press("s", "f")
        await room.screen_is(FormDialog)
        await room.write_over(str(file))
        await room.press("enter")
        await room.screen_is(SewingScreen)
    assert [read_quilt(file.read_text(encoding="utf-8"))] == quilts(path)


@pytest.mark.parametrize("size", [(40, 20), LARGE, (120, 36), WIDE])
async def test_at_every_size_all_questions_and_the_first_facts_stand_there(
    path: Path, size: tuple[int, int]
) -> None:
    async with at_the_form(path, size) as room:
        for row in form(room).rows:
            assert row.question.label in room.flowing
            assert row.text.split()[0] in room.flowing
        await room.sees("168 squares make 84 units.", "9 × 9 takes 81: 3 spare.", "5 7/8 in")
        await room.sees("s start", "esc back", "? help")
        wide = size[0] >= 70
        pictures = [one for one in room.app.screen.query(PictureView) if one.size.area]
        assert len(pictures) == (2 if wide else 0)
        await room.press("enter")
        await room.sees("By which method?", "enter take it", "Two four-patches face to face")


async def test_what_has_no_room_is_read_with_page_down(path: Path) -> None:
    async with at_the_form(path, (40, 20)) as room:
        await room.sees("more below (page down)")
        assert "Border cloth" not in room.flowing
        await room.press("pagedown")
        await room.sees("Border cloth: 1/2 yd")
        await room.press("pageup")
        await room.sees("168 squares make 84 units.")


async def test_where_no_draft_can_be_kept_that_is_said_and_it_goes_on(path: Path) -> None:
    (path.parent / "drafts").write_text("a file where the folder should be")
    async with at_the_form(path) as room:
        await answer(room, "count", "64")
        await room.sees("Not kept as a draft:", "64 squares make 32 units.")
        await room.press("s")
        await room.screen_is(BegunDialog)


async def test_a_row_can_be_clicked(path: Path) -> None:
    async with at_the_form(path) as room:
        await room.pilot.click(room.app.screen.query(AnswerRow)[2])
        await room.until(
            lambda: room.app.screen.query(AnswerRow)[2].query_one(Input).has_focus, "the line"
        )


async def test_the_help_does_what_it_says(path: Path) -> None:
    async with at_the_form(path) as room:
        await room.press("question_mark")
        await room.write("start")
        await room.press("enter")
        await room.screen_is(BegunDialog)
