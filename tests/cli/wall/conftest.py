"""Desks with units on the wall: squares typed by letters, and units of sets that are accepted."""

from __future__ import annotations

from functools import partial

import pytest

from sewalong.fabrics.sets.proposing import proposed
from sewalong.service import set_proposals
from sewalong.service.wall import proposals
from tests.cli.cloth.conftest import DRAWER
from tests.cli.conftest import Desk

SQUARES = """\
name = "Boat House"
method = "plain-squares"
notes = "Invented for a test."

[squares]
size = "4 1/2"
count = {count}

[layout]
rows = {rows}
columns = {columns}
"""

MAZE = "ABCDE / CDEAB / EABBC / DCADE"
"""N006: one touch, row 3, B in columns 3 and 4, and a swap that mends it."""

N008 = "ABCDE / CDEAB / EABCD / BCDEA"
"""No touch; row 1 or 4 turned end for end gives 1, row 2 or 3 gives 2."""


def squares(desk: Desk, wall: str) -> Desk:
    """Squares on the wall, typed by letters row by row: "AB / BA"."""
    rows = wall.split(" / ")
    layout = {"rows": len(rows), "columns": len(rows[0]), "count": len(rows) * len(rows[0])}
    desk.ok("start", desk.file("boat-house.toml", SQUARES.format(**layout)))
    desk.ok("wall", "--typed", desk.file("wall.txt", "\n".join(rows)), "--accept")
    return desk


@pytest.fixture
def maze(desk: Desk) -> Desk:
    """Twenty squares with one touch."""
    return squares(desk, MAZE)


@pytest.fixture
def chosen(begun: Desk) -> Desk:
    """Eight sets of eight fabrics are accepted, for 5 × 6 units; looks are short."""
    begun.ok("fabrics", "--say", DRAWER)
    begun.monkeypatch.setattr(set_proposals, "proposed", partial(proposed, looks=2))
    begun.monkeypatch.setattr(proposals, "LOOKS", 10)
    begun.ok("sets", "--accept")
    return begun


@pytest.fixture
def laid(chosen: Desk) -> Desk:
    """A layout of them is on the wall."""
    chosen.ok("wall", "--propose", "--accept")
    return chosen
