"""What is moved on the wall by plain command: each move says what it mends and costs, before and after."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk
from tests.cli.wall.conftest import N008, SQUARES, squares

THE_TOUCH = "row 3 place 3 meets row 3 place 4: B along a seam."


def letters(desk: Desk) -> str:
    """The wall as letters, row by row."""
    rows = desk.ok("wall", "--json").data["rows"]
    return " / ".join(
        "".join(place["unit"]["squares"][0] if place["unit"] else "-" for place in row)
        for row in rows
    )


def test_a_swap_is_looked_at_then_made_then_taken_back(maze: Desk) -> None:
    # N006: row 1 place 4 (D) with row 3 place 3 (B) is one of the eight swaps that mend it.
    before = maze.record()
    said = maze.ok("wall", "swap", "1.4", "3.3", "--look")
    assert said.lines == ["1 touch now, 0 after this.", f"It mends: {THE_TOUCH}", "Nothing was recorded."]  # fmt: skip
    assert maze.record() == before
    said = maze.ok("wall", "swap", "1·4", "row 3 place 3")
    assert said.lines[:3] == ["Swapped row 1 place 4 with row 3 place 3.", *said.lines[1:3]]
    assert said.lines[1] == "1 touch now, 0 after this."
    assert letters(maze) == "ABCBE / CDEAB / EADBC / DCADE"
    maze.ok("undo")
    assert letters(maze) == "ABCDE / CDEAB / EABBC / DCADE"


def test_exactly_eight_swaps_mend_the_maze(maze: Desk) -> None:
    # N006: exactly 8 of the 160 swaps of two unlike squares; those of the touch's own places are
    # all that can, so only these are tried here.
    places = [f"{row}.{place}" for row in range(1, 5) for place in range(1, 6)]
    mending = {
        frozenset((one, other))
        for one in ("3.3", "3.4")
        for other in places
        if one != other
        and maze.ok("wall", "swap", one, other, "--look", "--json").data["touches_after"] == 0
    }
    assert len(mending) == 8
    assert frozenset(("1.4", "3.3")) in mending


def test_the_fewest_moves_are_named_and_made_at_once(maze: Desk) -> None:
    said = maze.ok("wall", "mend")
    assert said.lines[0] == "1 move mends all, and fewer do not."
    assert said.lines[1].startswith("1. Row ")
    data = maze.ok("wall", "mend", "--json").data
    assert (data["fewest"], data["at_least"], data["left"]) == (True, 1, 0)
    maze.ok("wall", "mend", "--accept")
    assert "Nothing touches." in maze.ok("wall").lines
    assert maze.ok("wall", "mend").lines == ["Nothing touches, so nothing is to be moved."]
    maze.ok("undo")
    assert "1 touch." in maze.ok("wall").lines


@pytest.mark.parametrize(
    ("wall", "said", "still"),
    [
        # Of four places three of one fabric touch twice at least, wherever the fourth lies.
        ("AA / AB", "No move mends any.", 2),
        ("AA", "No move mends any.", 1),
        ("AAB", "1 move mends all, and fewer do not.", 0),
        # Four of six: at most three lie apart, and the fourth, in a corner, touches two of them.
        ("AAA / ABC", "1 move mends all but 2 touches.", 2),
    ],
)
def test_what_no_move_mends_is_said_to_be_left(
    desk: Desk, wall: str, said: str, still: int
) -> None:
    squares(desk, wall)
    lines = desk.ok("wall", "mend").lines
    assert lines[0] == said
    assert sum(line.startswith("Still: ") for line in lines) == still


def test_what_is_taken_out_is_spare_and_comes_in_elsewhere(maze: Desk) -> None:
    maze.ok("wall", "out", "3.3")
    assert letters(maze).split(" / ")[2] == "EA-BC"
    assert maze.ok("wall").lines[-2:] == ["1 unit is spare.", "Spare: B."]
    assert "is no spare" in maze.refused("wall", "spare", "3.3", "A").err
    maze.ok("wall", "out", "1.1")
    maze.ok("wall", "spare", "3.3", "A")
    assert letters(maze).split(" / ")[2] == "EAABC"
    assert "B" in maze.ok("wall", "spare", "1.1", "B").out


def test_a_unit_is_turned_and_its_spare_named_by_set(laid: Desk) -> None:
    def turns() -> int:
        found: int = laid.ok("wall", "--json").data["rows"][1][2]["turns"]
        return found

    was = turns()
    laid.ok("wall", "turn", "2.3")
    assert turns() == (was + 1) % 4
    laid.ok("wall", "turn", "2.3", "3")
    assert turns() == was
    spare = laid.ok("wall", "--json").data["spares"][0]
    said = laid.ok("wall", "spare", "2.3", f"{spare['set']}/{spare['unit']}/2", "--json").data
    now = laid.ok("wall", "--json").data
    assert now["rows"][1][2]["turns"] == 2
    assert now["rows"][1][2]["unit"] == spare
    assert said["touches_after"] == len(now["touches"])


def test_what_a_move_mends_and_makes_adds_up(laid: Desk) -> None:
    for words in (
        ["swap", "1.1", "3.3"],
        ["swap", "1.2/1", "1.3/3"],
        ["turn", "2.2", "2"],
        ["out", "5.5"],
    ):
        before = len(laid.ok("wall", "--json").data["touches"])
        said = laid.ok("wall", *words, "--json").data
        after = len(laid.ok("wall", "--json").data["touches"])
        assert (said["touches_before"], said["touches_after"]) == (before, after)
        assert len(said["makes"]) - len(said["mends"]) == after - before


def test_locked_places_stay_until_they_are_unlocked(laid: Desk) -> None:
    assert "2 places are locked." in laid.ok("wall", "lock", "2.2", "2.3").lines
    assert "Row 2 place 2 is locked" in laid.refused("wall", "turn", "2.2").err
    kept = laid.ok("wall", "--json").data["rows"][1][1:3]
    laid.ok("wall", "--propose", "--seed", "5", "--accept")
    assert laid.ok("wall", "--json").data["rows"][1][1:3] == kept
    laid.ok("wall", "unlock", "2.2")
    laid.ok("wall", "turn", "2.2")


@pytest.mark.parametrize(("row", "new"), [(1, 1), (2, 2), (3, 2), (4, 1)])
def test_a_row_turned_end_for_end_says_its_new_touches_first(
    desk: Desk, row: int, new: int
) -> None:
    # N008
    squares(desk, N008)
    said = desk.refused("wall", "turn-row", f"R{row}")
    assert said.err.splitlines()[0] == f"0 touches now, {new} after this."
    assert sum(line.startswith("It makes: ") for line in said.err.splitlines()) == new
    assert "--all-the-same" in said.err
    looked = desk.ok("wall", "turn-row", f"R{row}", "--look")
    assert looked.lines[0] == f"0 touches now, {new} after this."
    desk.ok("wall", "turn-row", f"R{row}", "--all-the-same")
    rows = N008.split(" / ")
    rows[row - 1] = rows[row - 1][::-1]
    assert letters(desk) == " / ".join(rows)
    # Now it would touch less, so nobody has to be asked; and the wall says so.
    assert f"Row {row} would touch {new} fewer if it lay end for end." in desk.ok("wall").lines
    desk.ok("wall", "turn-row", str(row))
    assert letters(desk) == N008


def test_somebody_who_is_there_is_asked(desk: Desk) -> None:
    squares(desk, N008)
    before = desk.record()
    assert desk.run("wall", "turn-row", "R2", typed="n\n").status == 2
    assert desk.record() == before
    desk.ok("wall", "turn-row", "R2", typed="\n")
    assert desk.record() != before


# N009: 8 rows of 6, pressed by turns. The squares are all different, so nothing touches.
EIGHT = " / ".join("".join(chr(65 + (6 * r + p) % 26) for p in range(6)) for r in range(8))


@pytest.mark.parametrize(
    ("first", "second", "joins", "anew"),
    [(3, 6, 4, [3, 6]), (3, 5, 0, []), (2, 3, 2, [2, 3])],
)
def test_rows_pressed_by_turns_are_exchanged_with_the_press_warned_of(
    desk: Desk, first: int, second: int, joins: int, anew: list[int]
) -> None:
    squares(desk, EIGHT)
    desk.ok("find", "unit", "48")
    desk.ok("count", "sew-rows", "8", "--caution-read")
    looked = desk.ok("wall", "exchange", f"R{first}", f"R{second}", "--look", "--json").data
    assert len(looked["ridge_on_ridge"]) == joins
    assert looked["press_anew"] == anew
    if joins:
        said = desk.refused("wall", "exchange", f"R{first}", f"R{second}")
        assert sum("lie ridge on ridge" in line for line in said.err.splitlines()) == joins
        assert "the other way, and all nest." in said.err
    said = desk.ok("wall", "exchange", f"R{first}", f"R{second}", "--all-the-same")
    assert said.lines[0].startswith(f"Rows {first} and {second} exchanged")
    rows = EIGHT.split(" / ")
    rows[first - 1], rows[second - 1] = rows[second - 1], rows[first - 1]
    assert letters(desk) == " / ".join(rows)


def test_a_lost_order_is_found_again(desk: Desk) -> None:
    # Rows that alternate two kinds of edge lie in two orders without a touch, out of 24.
    squares(desk, "ABAB / ABAB / BABA / BABA")
    said = desk.ok("wall", "order")
    assert said.lines[0] == "8 touches now, 0 in this order, and no order has fewer."
    data = desk.ok("wall", "order", "--json").data
    assert data["as_good"] == 8
    desk.ok("wall", "order", "--accept")
    assert letters(desk) in ("ABAB / BABA / ABAB / BABA", "BABA / ABAB / BABA / ABAB")
    assert desk.ok("wall", "order").lines[0] == (
        "As the rows lie there are 0 touches, and no order of these rows has fewer."
    )
    desk.ok("undo")
    turned = desk.ok("wall", "order", "--either-way", "--json").data
    assert turned["touches_after"] == 0


def test_rows_typed_as_they_come_are_laid_in_order(maze: Desk) -> None:
    rows = ["EABCD", "ABCDE", "BCDEA", "CDEAB"]
    file = maze.file("rows.txt", "\n".join(rows))
    before = maze.record()
    said = maze.ok("wall", "order", "--typed", file)
    assert "no order" in said.lines[0]
    assert maze.record() == before
    maze.ok("wall", "order", "--typed", file, "--accept")
    assert sorted(letters(maze).split(" / ")) == sorted(rows)
    assert "Nothing touches." in maze.ok("wall").lines


def test_all_is_cleared_and_comes_back(maze: Desk) -> None:
    assert "Nothing is laid on the wall any more." in maze.ok("wall", "clear").lines
    assert "Nothing is laid on the wall yet" in maze.refused("wall", "turn", "1.1").err
    maze.ok("undo")
    assert "1 touch." in maze.ok("wall").lines


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["swap", "1.1"], "Swap takes two places"),
        (["swap", "1.1", "1.1"], "Name two places"),
        (["swap", "1,1", "2.2"], "is no place"),
        (["swap", "9.1", "2.2"], "no row 9"),
        (["swap", "1.9", "2.2"], "Row 1 has places 1 to 5"),
        (["turn", "1.1/1"], "more than a place"),
        (["turn", "1.1", "4"], "1, 2 or 3 quarters"),
        (["turn"], "Turn takes a place"),
        (["lock"], "Lock takes places"),
        (["out"], "Out takes a place"),
        (["spare", "1.1"], "Spare takes a place"),
        (["exchange", "R1"], "Exchange takes two rows"),
        (["exchange", "R1", "R1"], "Name two rows"),
        (["turn-row", "1R"], "upside down"),
        (["turn-row"], "Turn-row takes a row"),
        (["clear", "1.1"], "nothing behind it"),
        (["dance"], "nothing that is done with the wall"),
        (["mend", "1.1"], "Nothing is typed behind mend"),
        (["mend", "--row", "1"], "One thing at a time"),
        (["--row", "1", "--rebuild"], "One thing at a time"),
        (["--accept"], "--accept goes with: --propose, --typed, --photo, mend, order."),
        (["swap", "1.1", "2.2", "--accept"], "--accept goes with"),
        (["--plan", "rings"], "--plan goes with: --propose."),
        (["--corners", "1,1"], "--corners goes with: --photo."),
        (["mend", "--look"], "--look goes with"),
        (["--propose", "--plan", "zigzag"], "light to dark, rings"),
        (["--propose", "--seconds", "0"], "whole number from 1"),
        (["--propose", "--plan", "rings"], "How light the units are is not known"),
        (["--rim", "oat"], "none of the fabrics"),
    ],
)  # fmt: skip
def test_what_is_not_clear_is_refused_in_a_sentence(
    maze: Desk, words: list[str], says: str
) -> None:
    assert says in maze.refused("wall", *words).err


def test_a_number_typed_as_nought_is_given(maze: Desk) -> None:
    before = maze.record()
    assert "One thing" in maze.refused("wall", "swap", "1.4", "3.3", "--row", "0").err
    assert "no row 0" in maze.refused("wall", "--row", "0").err
    maze.refused("wall", "--seed", "0")
    assert maze.record() == before


def test_a_turn_that_shows_nothing_is_refused_as_the_key_refuses_it(maze: Desk) -> None:
    assert "Whichever way it is turned" in maze.refused("wall", "turn", "1.4").err


def test_a_unit_known_by_its_patches_comes_back_in_by_them(desk: Desk) -> None:
    text = SQUARES.format(rows=1, columns=2, count=8).replace("plain-squares", "four-patch")
    desk.ok("start", desk.file("boat-house.toml", text))
    desk.ok("fabrics", "--say", "aa 2, oat 2, cc 2, dd 2")
    desk.ok("wall", "--typed", desk.file("wall.txt", "A+B+C+D B+A+D+C"), "--accept")
    desk.ok("wall", "out", "1.1")
    assert "no spare" in desk.refused("wall", "spare", "1.1", "0/1").err
    assert "no spare" in desk.refused("wall", "spare", "1.1", "D+C+B+A").err
    desk.ok("wall", "spare", "1.1", "A+B+C+D")
    assert "No unit is spare." in desk.ok("wall").lines
