"""What a change of the wall would do, before it is done; nothing is recorded."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.progress.joining.nesting import nesting
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.wall import LaidUnit
from sewalong.progress.wall.units import units_by_letter
from sewalong.quilt.quilt import Target
from sewalong.service.wall.changes import all_touches, effect_of, with_laid, would_be
from tests.progress import every_act as c
from tests.screens.sewing_room import a_quilt
from tests.service.opened_quilt import a_window

QUILT = replace(a_quilt(), target=Target(2, 3))


def by_letters(*rows: str) -> c.LayWall:
    numbers = iter(range(6))
    lies = tuple(
        tuple(None if letter == "-" else (next(numbers), 0) for letter in row) for row in rows
    )
    units = units_by_letter("".join(rows).replace("-", ""))
    return c.LayWall(units, lies, how="typed")


def test_the_quilt_as_it_would_be_is_the_one_that_comes_of_it(tmp_path: Path) -> None:
    with a_window(tmp_path, by_letters("AAB", "CDE"), quilt=QUILT) as window:
        quilt, act = window.quilt, c.SwapPlaces(1, 1, 2, 3)
        before, events = quilt.state, len(quilt.record)
        after = would_be(quilt, act)
        assert (quilt.state, len(quilt.record)) == (before, events)
        found = effect_of(before, after)
        assert (found.before, found.after) == (1, 0)
        assert [touch.places for touch in found.mends] == [((1, 1), (1, 2))]
        assert found.makes == ()
        quilt.do(act)
        assert quilt.state.wall == after.wall
        with pytest.raises(Refused):
            would_be(quilt, c.SwapPlaces(1, 1, 9, 9))


def test_what_is_only_looked_at_keeps_locks_where_something_lies(tmp_path: Path) -> None:
    laid = by_letters("AAB", "CDE")
    lock = c.LockPlaces(((1, 2), (2, 3)))
    with a_window(tmp_path, laid, lock, quilt=QUILT) as window:
        state = window.quilt.state
        looked = with_laid(state, replace(by_letters("AB-", "CD-"), touch="corner", rim="A"))
        assert looked.wall.locked == {(1, 2)}
        assert (looked.wall.touch, looked.wall.rim) == ("corner", "A")
        assert looked.wall.pressed == (1, 2)
        assert {touch.fabric for touch in all_touches(looked)} == {"A"}
        assert window.quilt.state.wall.locked == {(1, 2), (2, 3)}


def test_of_nothing_laid_nothing_touches(tmp_path: Path) -> None:
    with a_window(tmp_path, quilt=QUILT) as window:
        state = window.quilt.state
        assert all_touches(state) == ()
        assert nesting(state).collide == ()
        laid = with_laid(state, by_letters("AAB", "CDE"))
        assert laid.wall.pressed == (1, 2)
        assert laid.wall.units[0] == LaidUnit(0, -1, ("A",))
        assert len(all_touches(laid)) == 1
