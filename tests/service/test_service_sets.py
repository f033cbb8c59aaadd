"""Sets looked at for both faces: pages, what a swap is recorded as, and the pictures before the cut."""

from __future__ import annotations

import subprocess
import sys

import pytest
from msgspec.structs import replace

from sewalong.progress.record.refused import Refused
from sewalong.progress.sets.swapping import OVER, Square
from sewalong.quilt.quilt import Target
from sewalong.service.set_drawings import top_drawn
from sewalong.service.set_looks import (
    all_laid,
    first_page,
    hold_back,
    lock,
    page,
    pages,
    swap,
    what_a_swap_does,
    what_meets_what,
    why_no_sets,
)
from sewalong.service.set_pictures import (
    cloth_coloured,
    set_pictured,
    top_pictured_of,
    work_in_fabrics,
)
from sewalong.wall.keys import cloth_letter
from sewalong.wall.stage_picture import Shows
from tests.progress import every_act as c
from tests.progress.building import go_on, opening, play
from tests.progress.sets.fabrics import sets_of, with_fabrics

QUILT = replace(with_fabrics(), target=Target(6, 4))
ACCEPTED = c.AcceptSets(sets_of(8, 6), "by value")
STATE, _ = play(QUILT, ACCEPTED)


def test_a_page_for_every_set_and_the_last_for_what_is_over() -> None:
    assert pages(STATE) == (1, 2, 3, 4, 5, 6, OVER)
    first = page(STATE, 1)
    assert first.title == "set 1 of 6, next"
    assert [row.title for row in first.rows] == ["front", "back"]
    assert "".join(square.letter for square in first.squares) == "ABCDEFGH"
    assert [square.place for square in first.squares] == list(range(8))
    over = page(STATE, OVER)
    assert over.verdict == ("48 squares are in no set.",)
    assert over.counts == dict.fromkeys("ABCDEFGHIJKL", 4)
    with pytest.raises(Refused, match="There is no set 7"):
        page(STATE, 7)


def test_where_all_is_in_sets_nothing_is_over() -> None:
    state, _ = play(replace(QUILT, target=Target(8, 6)), c.AcceptSets(sets_of(8, 12)))
    assert page(state, OVER).verdict == ("Every square is in a set.",)
    assert page(state, OVER).squares == ()


def test_the_first_page_is_the_set_in_hand() -> None:
    assert first_page(STATE, "pair") == 1
    assert first_page(STATE, "stack") == 1, "nothing is there yet: the next one"
    state, _ = play(QUILT, ACCEPTED, c.Count("pair", 6), c.Count("sew", 2))
    assert [first_page(state, stage) for stage in ("pair", "sew", "press")] == [2, 2, 1]


def test_a_swap_between_sets_within_one_and_with_what_is_over() -> None:
    one = page(STATE, 1).squares
    two = page(STATE, 2).squares
    assert swap(STATE, one[0], two[7]) == c.SwapSquares(1, 1, 2, 8)
    assert swap(STATE, one[0], one[7]) == c.SwapSquares(1, 1, 1, 8)
    over = Square(OVER, 0, "L")
    laid = c.LayOwn(1, tuple("LBCDEFGH"))
    assert swap(STATE, one[0], over) == swap(STATE, over, one[0]) == laid
    for same in (Square(OVER, 0, "A"), one[0]):
        with pytest.raises(Refused, match=r"Both are the same fabric\."):
            swap(STATE, one[0], same)
    with pytest.raises(Refused, match="Both are in no set"):
        swap(STATE, over, Square(OVER, 0, "A"))
    assert what_a_swap_does(STATE, one[0], one[0]) == ("Both are the same fabric. Go to another.",)
    assert what_a_swap_does(STATE, one[0], two[7])[0].startswith("Set 1: weakest there ")


def test_a_set_is_held_back_and_let_in_locked_and_unlocked() -> None:
    state, _ = play(QUILT, ACCEPTED, hold_back(STATE, 2), lock(STATE, 3))
    assert state.sets.sets[2].held_back
    assert state.sets.sets[3].locked
    assert len(all_laid(state)) == 5
    assert hold_back(state, 2) == c.MarkSet(2, "back in")
    assert lock(state, 3) == c.MarkSet(3, "unlocked")


def test_every_contact_of_a_stack_is_told() -> None:
    assert len(what_meets_what(STATE, page(STATE, 1).laid)) == 12


def test_why_there_are_none() -> None:
    assert why_no_sets(STATE) == ""
    assert why_no_sets(opening(with_fabrics("rail-fence"))).startswith("This method has no sets")


def test_the_picture_of_the_set_in_hand_follows_the_counts() -> None:
    def shown(*commands: c.Act) -> set[str | None]:
        state, _ = play(QUILT, ACCEPTED, *commands)
        found = work_in_fabrics(state, state.quilt.method.stage("pair"), 40, 12)
        assert found is not None
        return {cloth_letter(key) for key in found.picture.keys}

    assert shown() == set("ABCDEFGH")
    assert shown(c.Count("pair", 4)) == {*"IJKL", *"ABCD"}


def test_a_stage_shows_the_units_then_its_own_pieces_in_the_fabrics_of_the_set() -> None:
    state, _ = play(QUILT, ACCEPTED, c.Count("pair", 5), c.Count("sew", 1))
    pair, sew, press = (state.quilt.method.stage(one) for one in ("pair", "sew", "press"))
    units = work_in_fabrics(state, pair, 40, 12)
    assert units is not None
    assert units.shows is Shows.UNITS
    # The next four-patch is the second of set 1, of the method's squares E to H.
    piece = work_in_fabrics(state, sew, 40, 12)
    assert piece is not None
    assert [cloth_letter(key) for key in piece.picture.keys] == ["E", "F", "G", "H"]
    # What was sewn of set 1 first waits at the iron.
    piece = work_in_fabrics(state, press, 40, 12)
    assert piece is not None
    assert [cloth_letter(key) for key in piece.picture.keys] == ["A", "B", "C", "D"]
    assert work_in_fabrics(opening(QUILT), pair, 40, 12) is None


def test_what_is_spoiled_is_not_known_in_the_picture() -> None:
    state, _ = play(QUILT, ACCEPTED, c.Count("pair"), c.Spoil("pair", 1, "torn", set=1))
    laid = page(state, 1).laid
    assert laid.count(None) == 2
    picture = set_pictured(state, tuple(laid), 40, 12)
    assert picture is not None
    assert "unknown" in picture.keys


def test_the_top_of_all_sets_is_full_where_there_are_enough() -> None:
    sets = [tuple(laid) for laid in all_laid(STATE)]
    picture = top_pictured_of(STATE, sets, 60, 40)
    assert picture is not None
    assert picture.is_whole
    assert {cloth_letter(key) for key in picture.keys} == set("ABCDEFGHIJKL")
    assert len(cloth_coloured(STATE)) == 12


def test_in_the_drawing_of_the_top_no_set_lies_that_is_held_back() -> None:
    two = c.AcceptSets(sets_of(8, 2))
    state, record = play(QUILT, two)
    both = top_drawn(state)
    assert {cloth_letter(key) for _, key in both.parts} >= set("ABCDEFGHIJKL")
    one = top_drawn(go_on(state, record, c.MarkSet(2, "held back")))
    assert not {cloth_letter(key) for _, key in one.parts} & set("IJKL")


def test_the_picture_of_plain_colours_loads_no_library_of_colours() -> None:
    """It stands on the sewing screen, whose first count may not wait for it."""
    script = (
        "import sys\n"
        "from tests.service.test_service_sets import *\n"
        "for name in [n for n in sys.modules if n.partition('.')[0] == 'coloraide']:\n"
        "    del sys.modules[name]\n"
        "pair = STATE.quilt.method.stage('pair')\n"
        "assert work_in_fabrics(STATE, pair, 40, 12) is not None\n"
        "assert cloth_coloured(STATE)\n"
        "print('coloraide' in sys.modules)\n"
    )
    run = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True, timeout=60
    )
    assert run.stdout.strip() == "False"
