"""An exported quilt written or spoiled to do harm: refused in a sentence, at a cost like its size."""

from __future__ import annotations

import json
import tracemalloc
from collections.abc import Callable, Iterable
from contextlib import suppress
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.progress.record.fold import fold
from sewalong.quilt.json_codec import quilt_to_dict
from sewalong.store.archive import FORMAT, VERSION, Archive, from_text
from sewalong.store.faults import StoreFault
from tests.store.shelf import EVENING, a_quilt


def written(quilt: object = None, events: object = ()) -> str:
    """An archive with these things in it, whatever they are."""
    return json.dumps(
        {
            "format": FORMAT,
            "version": VERSION,
            "key": "abc",
            "started": EVENING.isoformat(),
            "quilt": quilt_to_dict(a_quilt()) if quilt is None else quilt,
            "events": list(events) if isinstance(events, tuple) else events,
        }
    )


def with_events(events: str) -> str:
    return written(events="HERE").replace('"HERE"', events)


def session_and(*, count: str, then: Iterable[str]) -> str:
    """A session opened, one count, and behind it events as they are written, numbered."""
    at = f'"at":"{EVENING.isoformat()}"'
    opened = f'{at},"session":1,"kind":"session opened"'
    events = (
        opened,
        f'{at},"session":1,{count},"kind":"counted"',
        *(f"{at},{one}" for one in then),
    )
    return with_events(
        "[" + ",".join(f'{{"seq":{i},{one}}}' for i, one in enumerate(events, start=1)) + "]"
    )


def with_plan(plan: str) -> str:
    return written(quilt="HERE").replace('"HERE"', plan)


# Each makes a text of about so many bytes.
HOSTILE: dict[str, Callable[[int], str]] = {
    "lists in lists": lambda n: with_events("[" * (n // 2) + "]" * (n // 2)),
    "lists in lists without end": lambda n: "[" * n,
    "tables in tables": lambda n: with_events('{"a":' * (n // 6) + "1" + "}" * (n // 6)),
    "digits": lambda n: with_events("[" + "9" * n + "]"),
    "digits of an event": lambda n: with_events('[{"seq":' + "9" * n + "}]"),
    "digits behind a point": lambda n: with_events("[0." + "9" * n + "]"),
    "numbers of many digits": lambda n: with_events(f"[{','.join(['9' * 4000] * (n // 4001))}]"),
    "lists": lambda n: with_events(f"[{','.join(['[]'] * (n // 3))}]"),
    "tables": lambda n: with_events(f"[{','.join(['{}'] * (n // 3))}]"),
    "texts": lambda n: with_events("[" + ",".join(['"ab"'] * (n // 5)) + "]"),
    "keys of the plan": lambda n: with_plan(
        "{" + ",".join(f'"k{i}":1' for i in range(n // 10)) + "}"
    ),
    "piles of the plan": lambda n: with_plan('{"starts":[' + ",".join(["{}"] * (n // 3)) + "]}"),
    "a long text": lambda n: with_events('["' + "x" * n + '"]'),
    "a text without end": lambda n: '{"a":"' + '\\"' * (n // 2),
    "quotes": lambda n: '"' * n,
    "spaces": lambda n: " " * n,
}


@pytest.mark.parametrize("make", HOSTILE.values(), ids=HOSTILE.keys())
def test_the_room_grows_no_faster_than_the_file(make: Callable[[int], str]) -> None:
    def room(size: int) -> int:
        text = make(size)
        tracemalloc.start()
        try:
            with pytest.raises(StoreFault) as refused:
                from_text(text)
            sentence = str(refused.value)
            assert sentence.endswith("Nothing was taken in.")
            assert len(sentence) < 400
            return tracemalloc.get_traced_memory()[1]
        finally:
            tracemalloc.stop()

    small = room(60_000)
    # What grew by its square would take sixteen times as much.
    assert room(240_000) < 6 * small + 100_000


def a_good_one() -> str:
    """An archive with a few counts, undone and not, and a note."""
    bodies: list[dict[str, object]] = [
        {"kind": "session opened"},
        {"kind": "counted", "stage": "pair", "n": 5},
        {"kind": "counted", "stage": "pair", "n": 2},
        {"kind": "undone", "of": 3},
        {"kind": "noted", "text": "the blue ones “first”"},
        {"kind": "spoiled", "pile": "pair", "n": 1, "reason": "cut crooked"},
    ]
    at = (EVENING + timedelta(minutes=1)).isoformat()
    events = [{"seq": i, "at": at, "session": 1, **one} for i, one in enumerate(bodies, start=1)]
    return written(events=events)


GOOD = a_good_one()
SNIPPETS = st.sampled_from(
    ["", "[", "]", "{", "}", ",", ":", '"', "null", "1e999", "-1", "NaN", '"seq"', "\\u0000"]
) | st.text(max_size=5)


@settings(max_examples=400, deadline=None)
@given(st.lists(st.tuples(st.integers(0, len(GOOD)), st.integers(0, 30), SNIPPETS), max_size=4))
def test_a_spoiled_archive_is_taken_whole_or_refused_in_a_sentence(
    spoiled: list[tuple[int, int, str]],
) -> None:
    text = GOOD
    for at, length, snippet in spoiled:
        text = text[:at] + snippet + text[at + length :]
    said, archive = "", None
    try:
        archive = from_text(text)
    except StoreFault as refused:
        said = str(refused)
    assert said.endswith(".") if archive is None else not said


VALUES = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**12), 10**12) | st.floats() | st.text(max_size=9),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner),
    max_leaves=8,
)


@settings(max_examples=300, deadline=None)
@given(st.data())
def test_any_value_in_any_place_is_taken_or_refused_in_a_sentence(data: st.DataObject) -> None:
    content = json.loads(GOOD)
    holder = data.draw(
        st.sampled_from(
            [content, content["quilt"], content["quilt"]["starts"][0], *content["events"]]
        )
    )
    holder[data.draw(st.sampled_from(sorted(holder)))] = data.draw(VALUES)
    with suppress(StoreFault):
        assert isinstance(from_text(json.dumps(content)), Archive)


PAIR = '"stage":"pair","n":1'


def test_undos_of_undos_are_refused_at_the_first() -> None:
    undos = (f'"session":1,"of":{i + 1},"kind":"undone"' for i in range(1, 100_000))
    with pytest.raises(StoreFault, match="event 4 undoes number 3, which was not the last"):
        from_text(session_and(count=PAIR, then=undos))


def test_undone_and_put_back_again_and_again_costs_what_reading_it_does() -> None:
    """No more room than its text takes, and no step into a step."""
    turns = ('"session":1,"of":2,"kind":"undone"', '"session":1,"of":2,"kind":"put back"')
    text = session_and(count=PAIR, then=turns * 10_000)
    tracemalloc.start()
    try:
        read = from_text(text)
        _, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert len(read.record) == 20_002
    assert fold(read.quilt, read.record).done["pair"] == 1
    assert most < 12 * len(text)
