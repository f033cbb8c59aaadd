"""A key and a plain command are one act: twin quilts record the same, whichever asked.

Every act a person has is done once by keys and once by command. The clock stands still, so
what is recorded is equal to the second.
"""

from __future__ import annotations

import importlib
import pkgutil
from pathlib import Path

import pytest

import sewalong.progress.acts
from sewalong.progress.acts.act import Act
from sewalong.progress.record.events.every_kind import EVENTS
from tests.story.twins.counting_cases import COUNTING
from tests.story.twins.fabric_cases import FABRICS
from tests.story.twins.leaving_cases import LEAVING
from tests.story.twins.machine_cases import MACHINE
from tests.story.twins.pile_cases import PILES
from tests.story.twins.set_cases import SETS
from tests.story.twins.twin import Case, by_command, by_key, twins
from tests.story.twins.undo_cases import UNDOABLE, UNDOING
from tests.story.twins.wall_cases import LONG_ONLY, WALL

CASES = (*COUNTING, *PILES, *FABRICS, *MACHINE, *LEAVING, *SETS, *WALL, *UNDOING)

LONG = (*UNDOING[4:], *(case for case in WALL if case.what in LONG_ONLY))

NOBODY_ASKS = {"OpenSession", "Mention"}
"""Sitting down goes with whatever is asked first; what was said is written by the program."""


FIRST_OF_ITS_ACT = {case.act: case for case in reversed(CASES)}


@pytest.mark.parametrize(
    "case",
    [
        # In the short form each act is done once; in the long one in all the ways there are.
        pytest.param(
            case,
            id=case.what,
            marks=() if FIRST_OF_ITS_ACT[case.act] is case else pytest.mark.long,
        )
        for case in CASES
    ],
)
async def test_a_key_and_a_command_record_the_same(
    case: Case, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    alike = twins(case, tmp_path)
    typed = by_command(case, alike, monkeypatch)
    pressed = await by_key(case, alike)
    assert pressed.events == typed.events
    besides = "mentioned" if "mentioned" not in case.gives else ""
    assert [event.kind for event in typed.events if event.kind != besides] == list(case.gives)
    assert case.act in typed.acts
    assert (case.by_key or case.act) in pressed.acts


def test_no_act_is_left_out() -> None:
    asked = {case.act.__name__ for case in CASES}
    assert every_act() == asked | NOBODY_ASKS


def test_whatever_can_be_taken_back_is_taken_back() -> None:
    assert set(UNDOABLE) == {str(kind.__struct_config__.tag) for kind in EVENTS if kind.undoable}


def every_act() -> set[str]:
    """The names of all acts there are, whoever asks them."""
    found: set[str] = set()
    for module in pkgutil.iter_modules(sewalong.progress.acts.__path__):
        name = f"{sewalong.progress.acts.__name__}.{module.name}"
        for thing in vars(importlib.import_module(name)).values():
            if isinstance(thing, type) and issubclass(thing, Act) and thing is not Act:
                found.add(thing.__name__)
    return found
