"""The file of preferences: read, every fault with its line; the one that is written is as usual."""

from __future__ import annotations

import re
from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import Unit
from sewalong.owner.key_names import cap, key_named
from sewalong.owner.preferences import AS_USUAL, USUAL_KEYS, Preferences
from sewalong.owner.reader import read_preferences
from sewalong.owner.template import TEMPLATE
from sewalong.quilt.file.faults import QuiltFileFaults

WHOLE = """\
unit = "cm"
session = 90
bell = true
[wear]
needle_hours = 6.5
blade = "25 m"
stop_minutes = 0
[cautions]
cutter = "thumb off the edge!"
iron = ["cord", "cat"]
[keys]
count = ["space", "F13"]
undo = "-"
help = "?"
"""


def test_everything_that_can_be_said() -> None:
    assert read_preferences(WHOLE.encode()) == Preferences(
        unit=Unit.CM,
        session_minutes=90,
        bell=True,
        needle_hours=6.5,
        stop_minutes=0,
        blade_inches=Fraction(2500 * 100, 254),
        cautions={"cutter": ("thumb off the edge!",), "iron": ("cord", "cat")},
        keys={"count": ("space", "f13"), "undo": ("minus",), "help": ("question_mark",)},
    )


def test_what_is_written_to_be_edited_is_as_usual_and_so_is_an_empty_file() -> None:
    assert read_preferences(b"") == read_preferences(TEMPLATE.encode()) == AS_USUAL


def test_every_remark_of_the_written_file_can_be_taken_away() -> None:
    bare = re.sub(r"(?m)^# (\w+ = )", r"\1", TEMPLATE)
    known = read_preferences(bare.encode())
    assert known.keys == {name: (key,) for name, key in USUAL_KEYS.items()}
    assert known.unit is Unit.CM
    assert set(known.cautions) == {"iron", "cutter", "needle", "pins"}


BOUNDS = (
    ("session = {}", (1, 1440), (0, 1441)),
    ("[wear]\nstop_minutes = {}", (0, 1, 1440), (-1, 1441)),
    ("[wear]\nneedle_hours = {}", (0, 0.5, 1000), (-0.1, 1000.5, 1001)),
    ("[wear]\nneedle_hours = {}", (), ("true", "false", '"6"', "nan", "inf")),
    ("[wear]\nstop_minutes = {}", (), ("true", "false", "1.5")),
    ("bell = {}", ("true", "false"), (0, 1, '"true"')),
    ("[keys]\ncount = {}", ('["v"]', '["f1", "f2", "f23", "f24"]'), ("[]", '["f0"]', '["f25"]')),
    ("[keys]\ncount = {}", (), ('["f1", "f2", "f3", "f4", "f5"]',)),
    ("[cautions]\niron = {}", ('["a", "b", "c"]',), ('["a", "b", "c", "d"]',)),
)


def is_read(text: str) -> bool:
    with suppress(QuiltFileFaults):
        return bool(read_preferences(text.encode()))
    return False


@pytest.mark.parametrize(("text", "good", "bad"), BOUNDS, ids=[f"{b[0]}: {b[2]}" for b in BOUNDS])
def test_what_may_stand_there_has_bounds(
    text: str, good: tuple[object, ...], bad: tuple[object, ...]
) -> None:
    assert [one for one in (*good, *bad) if is_read(text.format(one))] == list(good)


def test_the_cap_of_a_key_is_what_she_writes() -> None:
    assert [cap(key_named(typed)) for typed in ("+", "Space", "page up", "esc", "F13", "a", "?")] == [
        "+", "space", "page up", "esc", "f13", "a", "?",
    ]  # fmt: skip


FAULTY = (
    ('unit = "ell"', "unit", 1, "is not a unit to work in"),
    ("session = 0", "session", 1, "at least 1"),
    ("[wear]\nneedle_hours = -1", "wear.needle_hours", 2, "number of hours"),
    ('[wear]\nblade = "far"', "wear.blade", 2, "far"),
    ("[cautions]\ncutter = []", "cautions.cutter", 2, "1 to 3 lines"),
    ('[cautions]\nthumb = "left"', "cautions.thumb", 2, "is not known under [cautions]"),
    ('[keys]\ncount = "5"', "keys.count", 2, "Digits type a number"),
    ('[keys]\ncount = "ctrl+c"', "keys.count", 2, "no key that can be used"),
    ('[keys]\ncount = "u"', "keys.count", 2, "This key does “undo” as usual"),
    ('[keys]\ncount = "v"\nundo = "V"', "keys.undo", 3, "This key does “count”"),
    ('[keys]\ncuont = "v"', "keys.cuont", 2, 'The nearest known key is "count"'),
    ('count = "v"', "count", 1, "It belongs under [keys]"),
    ("keys = 3", "keys", 1, "This must be a table"),
)


@pytest.mark.parametrize(("text", "key", "line", "sentence"), FAULTY, ids=[f[0] for f in FAULTY])
def test_a_fault_is_named_with_its_line(text: str, key: str, line: int, sentence: str) -> None:
    with pytest.raises(QuiltFileFaults) as refused:
        read_preferences(text.encode())
    (fault,) = refused.value.faults
    assert (fault.key, fault.line) == (key, line)
    assert sentence in fault.sentence


def test_all_faults_come_at_once() -> None:
    with pytest.raises(QuiltFileFaults) as refused:
        read_preferences(b'unit = "ell"\nsession = 0\n[keys]\ncount = "5"\nnoun = "a"\n')
    assert len(refused.value.faults) == 4


@given(st.binary(max_size=200))
def test_no_file_breaks_it(data: bytes) -> None:
    with suppress(QuiltFileFaults):
        assert isinstance(read_preferences(data), Preferences)
