"""A quilt goes out to a file and comes in again without loss; a tampered file does not."""

from __future__ import annotations

import json
import tempfile
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.events.every_kind import LaidAside, Recorded
from sewalong.progress.record.fold import fold
from sewalong.progress.record.limits import LONGEST_TEXT
from sewalong.quilt.quilt import Quilt
from sewalong.store.archive import from_text, take_in, to_text
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from tests.progress import every_act as c
from tests.store.shelf import EVENING, a_quilt, begin, histories, opened, shelf

History = tuple[Quilt, tuple[Recorded, ...]]


@given(histories())
@settings(max_examples=80)
def test_any_record_there_can_be_passes_the_audit(history: History) -> None:
    quilt, record = history
    assert audit(quilt, record) is None


def test_a_row_that_was_found_is_not_unpicked_from_what_was_counted(tmp_path: Path) -> None:
    begin(tmp_path / "quilts.db")
    with opened(tmp_path / "quilts.db") as quilt:
        quilt.do(c.Find("row", 1))
        with pytest.raises(c.Refused):
            quilt.do(c.Unpick("sew-rows", 1))


@given(histories(most=40))
@settings(max_examples=15, deadline=None)
def test_a_quilt_comes_in_as_it_went_out(history: History) -> None:
    quilt, record = history
    with tempfile.TemporaryDirectory() as folder:
        with shelf(Path(folder, "here.db")) as here:
            name = fold(quilt, record).quilt.name
            called = name if name != quilt.name else None
            added = here.add(quilt, EVENING, events=[r.event for r in record], called=called)
            loaded = here.load(added)
            assert loaded.record == record
            text = to_text(loaded)
        with shelf(Path(folder, "there.db")) as there:
            entry = take_in(there, from_text(text), EVENING)
            again = there.load(entry)
            assert again.quilt == quilt
            assert again.record == record
            assert fold(again.quilt, again.record) == fold(quilt, record)
            assert (entry.key, entry.started) == (added.key, EVENING)
            assert entry.name == fold(quilt, record).quilt.name
            assert there.entries() == (entry,)
            # Nothing creeps in on a second journey either.
            assert to_text(again) == text


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "quilts.db"
    begin(path)
    with opened(path) as quilt:
        quilt.do(c.Count("pair", 5))
        quilt.do(c.Count("pair", 2))
        quilt.do(c.Undo())
        quilt.do(c.Spoil("pair", 1, "cut crooked"))
        quilt.do(c.Recount("square", 388))
        quilt.do(c.PutPileAway("pair", "blue tin, “upper” shelf"))
        quilt.do(c.WriteNote("Next: sew the pairs – foot ¼″"))
        quilt.do(c.ChangeTarget(4, 4))
        quilt.do(c.CloseSession(next_step="the rest of the pairs"))
        quilt.do(c.LayAside("holidays"))
    return path


@pytest.fixture
def text(path: Path) -> str:
    with shelf(path) as library:
        return to_text(library.load(library.find("Hedgerow")))


def test_the_file_can_be_read_by_a_person(text: str) -> None:
    assert '"text": "Next: sew the pairs – foot ¼″"' in text
    assert text.index('"quilt"') < text.index('"events"')
    assert max(map(len, text.splitlines())) < 120


def test_it_does_not_come_in_twice(path: Path, text: str) -> None:
    with shelf(path) as library:
        with pytest.raises(StoreFault, match=r"“Hedgerow” is here already\. Nothing was changed"):
            take_in(library, from_text(text), EVENING)
        assert len(library.entries()) == 1


def test_under_another_name_it_is_a_quilt_of_its_own(path: Path, text: str) -> None:
    with shelf(path) as library:
        first = library.load(library.find("Hedgerow"))
        entry = take_in(library, from_text(text), EVENING, name=" Hedgerow, second ")
        assert entry.name == "Hedgerow, second"
        assert entry.key != first.entry.key
        assert library.load(entry).record == first.record


@pytest.mark.parametrize("name", ["", "  ", "x" * 81, "two\nlines", "\x1b[2Jgone", "hedgerow"])
def test_a_name_that_will_not_do_is_refused(path: Path, text: str, name: str) -> None:
    with shelf(path) as library:
        with pytest.raises(StoreFault):
            take_in(library, from_text(text), EVENING, name=name)
        assert len(library.entries()) == 1


def test_a_byte_order_mark_and_windows_line_ends_do_no_harm(text: str) -> None:
    assert from_text("\ufeff" + text.replace("\n", "\r\n")) == from_text(text)


# Tampered with. The events are 1 session opened, 2 counted, 3 counted, 4 undone (of 3),
# 5 spoiled, 6 recounted, 7 put away, 8 noted, 9 target changed, 10 session closed,
# 11 laid aside.

Tamper = Callable[[dict[str, Any]], object]


def event(number: int, **change: object) -> Tamper:
    return lambda content: content["events"][number - 1].update(change)


def plan(**change: object) -> Tamper:
    return lambda content: content["quilt"].update(change)


def outside(**change: object) -> Tamper:
    return lambda content: content.update(change)


def without(key: str, number: int = 0) -> Tamper:
    return lambda content: (content["events"][number - 1] if number else content).pop(key)


def deep(levels: int) -> object:
    value: object = "bottom"
    for _ in range(levels):
        value = [value]
    return value


HUGE = 10**30
START = {"pile": "square", "size": "5", "count": 5, "packs": None, "length": None}

TAMPERED: dict[str, tuple[Tamper, str]] = {
    "a negative count": (event(2, n=-5), "event 2 (counted) cannot have happened"),
    "a count of nothing": (event(2, n=0), "event 2 (counted) cannot have happened"),
    "a huge count": (event(2, n=HUGE), "event 2 has a number in it that cannot be"),
    "more than there was": (event(2, n=201), "201 pairs at pair cannot be"),
    "a count of half": (
        event(2, n=2.5),
        "(n: it should be a whole number and is a number with a point)",
    ),
    "a count in text": (event(2, n="5"), "(n: it should be a whole number and is a text)"),
    "a count of yes": (event(2, n=True), "(n: it should be a whole number and is yes or no)"),
    "a count of nothing at all": (
        event(2, n=None),
        "(n: it should be a whole number and is nothing)",
    ),
    "an unknown stage": (event(2, stage="dye"), "no stage “dye”"),
    "another method's stage": (event(2, stage="stack"), "no stage “stack”"),
    "a spoiled pile that is none": (event(5, pile="socks"), "no pile “socks”"),
    "more spoiled than there": (event(5, n=6), "Only 5 pairs lie there"),
    "spoiled backward": (event(5, n=-1), "event 5 (spoiled) cannot have happened"),
    "a recount of less than nothing": (event(6, counted=-1), "A recount is a number from 0"),
    "a huge recount": (event(6, counted=HUGE), "event 6 has a number in it that cannot be"),
    "a recount of what was not there": (event(6, recorded=1), "The record says 390, not 1"),
    "a place of no pile": (event(7, pile="attic"), "no pile “attic”"),
    "no rows": (event(9, rows=0), "Rows and columns are numbers"),
    "rows for ever": (event(9, columns=HUGE), "event 9 has a number in it that cannot be"),
    "a number twice": (event(3, seq=2), "event 3 carries the number 2"),
    "a gap": (lambda content: content["events"].pop(4), "event 5 carries the number 6"),
    "an event first of all gone": (lambda content: content["events"].pop(0), "carries"),
    "a number that is yes": (event(1, seq=True), "An event has no number"),
    "a huge number": (event(1, seq=HUGE), "carries the number far too many"),
    "out of order": (lambda content: content["events"].reverse(), "carries the number 11"),
    "undo of what was not last": (event(4, of=2), "event 4 undoes number 2"),
    "undo of what is to come": (event(4, of=9), "event 4 undoes number 9"),
    "undo of itself": (event(4, of=4), "event 4 undoes number 4"),
    "undo of a session": (event(4, of=1), "event 4 undoes number 1"),
    "undo of a huge number": (event(4, of=-HUGE), "event 4 undoes number far too many"),
    "a session out of turn": (event(1, session=2), "Session 2 is opened out of turn"),
    "a session that was not": (event(2, session=7), "event 2 belongs to session 7"),
    "a huge session": (event(2, session=HUGE), "belongs to session far too many"),
    "a session twice": (
        event(8, kind="session opened", text=None),
        "cannot be read",
    ),
    "no offset": (event(2, at="2023-11-04T19:00:00"), "event 2 has a time without its offset"),
    "no offset at the end": (event(10, ended="2023-11-04T19:00:00"), "event 10 has a time without"),
    "a year nobody sewed in": (event(2, at="0001-01-01T00:00:00Z"), "event 2 is dated to the year"),
    "a time that is none": (
        event(2, at="after supper"),
        "(at: it should be a time with its offset)",
    ),
    "a time in seconds": (
        event(2, at=1699120800),
        "(at: it should be a time and is a whole number)",
    ),
    "a note of ten million letters": (event(8, text="x" * 10**7), "event 8 has a text that"),
    "a note one letter too long": (event(8, text="x" * (LONGEST_TEXT + 1)), "event 8 has a text"),
    "a note that clears the screen": (event(8, text="\x1b[2J"), "control character"),
    "half a character": (event(8, text="\ud800"), "cannot be read"),
    "a note that is a list": (event(8, text=["a"]), "(text: it should be a text and is a list)"),
    "a reason to fill the screen": (event(11, reason="x" * 9999), "event 11 has a text"),
    "a thousand answers": (
        event(10, answers={str(i): "no" for i in range(1000)}),
        "event 10 says more than",
    ),
    "an unknown kind": (event(8, kind="dyed"), "An event cannot be read"),
    "another kind": (event(8, kind="counted"), "An event cannot be read"),
    "an unknown key": (event(8, colour="red"), "An event cannot be read"),
    "a missing note": (without("text", 8), "An event cannot be read"),
    "a missing number": (without("seq", 8), "An event has no number"),
    "an event of text": (lambda content: content["events"].append("counted"), "no number"),
    "deep nesting in a note": (event(8, text=deep(10)), "cannot be read"),
    "deeper nesting in a note": (event(8, text=deep(20)), "more than 20 deep within each other"),
    "a number of 41 digits": (event(2, n=10**40), "a number in it has 41 digits"),
    "another format": (outside(format="cake"), "not a quilt exported by sewalong"),
    "a later version": (outside(version=2), "exported in version 2"),
    "a version of yes": (outside(version=True), "exported in version True"),
    "a version in text": (outside(version="1"), "exported in version 1 of"),
    "no version": (without("version"), "exported in version None"),
    "no key": (without("key"), "lacks “key”"),
    "no plan": (without("quilt"), "lacks “quilt”"),
    "no events": (without("events"), "lacks “events”"),
    "no start": (without("started"), "lacks “started”"),
    "something more": (outside(extra=1), "something unknown"),
    "a key of spaces": (outside(key="  "), "key is not a short text"),
    "a key too long": (outside(key="x" * 65), "key is not a short text"),
    "half a key": (outside(key="\ud800"), "key is not a short text"),
    "a key of a number": (outside(key=5), "key is not a short text"),
    "a start without offset": (outside(started="2023-11-04T19:00:00"), "start is not a time"),
    "a start in seconds": (outside(started=5), "start is not a time"),
    "a start of words": (outside(started="once"), "start is not a time"),
    "events that are a table": (outside(events={"1": {}}), "events are not a list"),
    "events that are nothing": (outside(events=None), "events are not a list"),
    "a plan that is nothing": (outside(quilt=None), "must be a table"),
    "a plan of an unknown method": (plan(method="origami"), "No method is called 'origami'"),
    "a plan of another method": (plan(method="plain-squares"), "no stage “pair”"),
    "a plan that begins elsewhere": (plan(starts=[{**START, "pile": "socks"}]), "a pile “socks”"),
    "a plan of less than was used": (plan(starts=[START]), "5 pairs at pair cannot be"),
    "a plan of a huge pile": (plan(starts=[{**START, "count": HUGE}]), "9,999"),
    "a plan of no rows": (plan(target={"rows": 0, "columns": 4}), "target.rows"),
    "a plan with no name": (plan(name=" "), "name: This is empty"),
    "a plan with half a name": (plan(name="\ud800"), "control character"),
    "a seam of nothing": (plan(seam="1/0"), "seam"),
    "deep nesting in the plan": (plan(notes=deep(10)), "notes"),
    "deeper nesting in the plan": (plan(notes=deep(300)), "more than 20 deep"),
}


@pytest.mark.parametrize(("tamper", "said"), TAMPERED.values(), ids=TAMPERED.keys())
def test_a_tampered_file_is_refused_in_a_sentence(text: str, tamper: Tamper, said: str) -> None:
    content = json.loads(text)
    tamper(content)
    with pytest.raises(StoreFault) as fault:
        from_text(json.dumps(content))
    sentence = str(fault.value)
    assert said in sentence
    assert len(sentence) < 500
    assert sentence.endswith(".")
    assert all(character.isprintable() for character in sentence)


NOT_JSON = {
    "nothing": lambda text: "",
    "cut short": lambda text: text[: len(text) // 2],
    "a letter": lambda text: "Dear Ada, the binding is done.",
    "a list": lambda text: f"[{text}]",
    "a number": lambda text: "5",
    "a number too long to read": lambda text: text.replace('"n": 5', '"n": ' + "9" * 5000),
    "a number beyond all numbers": lambda text: text.replace('"n": 5', '"n": 1e999'),
    "no number": lambda text: text.replace('"n": 5', '"n": NaN'),
    "endless": lambda text: text.replace('"n": 5', '"n": -Infinity'),
    "a key twice": lambda text: text.replace('"n": 5', '"n": 5, "n": 6'),
    "the record twice": lambda text: text.replace('"events"', '"events": [], "events"'),
    "a control character": lambda text: text.replace("cut crooked", "cut\x00crooked"),
    "deep": lambda text: text.replace('"n": 5', '"n": ' + "[" * 100_000 + "]" * 100_000),
    "deep, and not closed": lambda text: "[" * 1_000_000,
    "two quilts": lambda text: text + text,
}


@pytest.mark.parametrize("spoil", NOT_JSON.values(), ids=NOT_JSON.keys())
def test_a_file_that_is_none_is_refused_in_a_sentence(
    text: str, spoil: Callable[[str], str]
) -> None:
    spoilt = spoil(text)
    assert spoilt != text
    with pytest.raises(StoreFault) as fault:
        from_text(spoilt)
    sentence = str(fault.value)
    assert len(sentence) < 500
    assert sentence.endswith(".")
    for not_ours in ("recursion", "Expecting", "Unterminated", "delimiter", "sys.", "decod"):
        assert not_ours not in sentence


def test_a_refused_file_leaves_nothing_behind(path: Path, text: str) -> None:
    """Even a record that got past the reading comes in whole or not at all."""
    before = path.read_bytes()
    archive = from_text(text)
    last = archive.record[-1]
    assert isinstance(last.event, LaidAside)
    broken = replace(last, event=replace(last.event, reason="half a \ud800 character"))
    archive = replace(archive, record=(*archive.record[:-1], broken))
    with closing(Library(path, EVENING)) as library:
        with pytest.raises(StoreFault, match="cannot be kept"):
            take_in(library, archive, EVENING, name="Second")
        assert [entry.name for entry in library.entries()] == ["Hedgerow"]
    assert path.read_bytes() == before


def test_a_quilt_nobody_has_begun_goes_out_and_comes_in(tmp_path: Path) -> None:
    with shelf(tmp_path / "quilts.db") as library:
        loaded = library.load(library.add(a_quilt(), EVENING))
    archive = from_text(to_text(loaded))
    assert (archive.quilt, archive.record) == (loaded.quilt, ())
