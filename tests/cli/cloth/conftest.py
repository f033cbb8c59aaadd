"""A desk with a quilt of 64 squares and the fabrics of an invented drawer."""

from __future__ import annotations

from functools import partial

import pytest

from sewalong.fabrics.sets.proposing import proposed
from sewalong.service import set_proposals
from tests.cli.conftest import Desk

DRAWER = (
    "chalk 8 #f4f0e6 solid, oat 8 #d8c9a8 small print, butter 8 #f0e2a0 small print, "
    "rust dots 8 #a5532f small print, moss sprig 8 #6a6f2c small print, navy 8 #22305c solid, "
    "plum check 8 #5b3050 large print, birds 8 #c9d8d0 one-way"
)


@pytest.fixture
def drawer(begun: Desk) -> Desk:
    """Eight fabrics of eight squares each, A to H, are in the plan."""
    begun.ok("fabrics", "--say", DRAWER)
    return begun


@pytest.fixture
def chosen(drawer: Desk) -> Desk:
    """Eight sets of them are accepted, without a long look for the best."""
    drawer.monkeypatch.setattr(set_proposals, "proposed", partial(proposed, looks=2))
    drawer.ok("sets", "--accept")
    return drawer
