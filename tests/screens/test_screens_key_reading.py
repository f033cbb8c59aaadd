"""Whatever a terminal sends is read as keys or passed over; nothing it sends ends the app."""

from __future__ import annotations

import importlib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from textual.driver import Driver
from textual.events import Key, Resize
from textual.message import Message

from sewalong.screens.key_reading import ForgivingParser, _forgiving_decoder, forgive_bad_bytes

DRIVERS = ("linux_driver:LinuxDriver", "linux_inline_driver:LinuxInlineDriver")


def read(data: bytes) -> list[Message]:
    """What a driver makes of the bytes: it decodes them, and feeds its parser, twice over."""
    parser, decoder = ForgivingParser(), _forgiving_decoder("utf-8")()
    half = len(data) // 2
    messages: list[Message] = []
    for part, final in ((data[:half], False), (data[half:], True)):
        text = decoder.decode(part, final)
        if text:
            messages += parser.feed(text)
    messages += parser.tick()
    return messages


def typed(data: bytes) -> str:
    return "".join(key.character or "" for key in read(data) if isinstance(key, Key))


@pytest.mark.parametrize("name", DRIVERS)
def test_every_driver_is_made_forgiving(name: str) -> None:
    module, _, kind = name.partition(":")
    there = importlib.import_module(f"textual.drivers.{module}")
    driver: type[Driver] = getattr(there, kind)
    # A driver of somebody else's, on top of one of the library's.
    forgive_bad_bytes(type("Another", (driver,), {}))
    decode = there.getincrementaldecoder("utf-8")().decode
    assert decode(b"caf\xe9 ok") == "caf\ufffd ok"
    assert there.XTermParser is ForgivingParser


CODES = st.builds(
    "\x1b[{}{}".format,
    st.lists(st.integers(0, 2**40).map(str) | st.sampled_from(["", "97:65", "1:"]), max_size=5).map(
        ";".join
    ),
    st.sampled_from("u~ABCRtMmyzI"),
).map(str.encode)


@settings(max_examples=500, deadline=None)
@given(st.lists(CODES | st.binary(max_size=6) | st.sampled_from([b"\x1b", b"\x1b[<", b"\x1bO"])))
def test_any_bytes_are_read(parts: list[bytes]) -> None:
    for message in read(b"".join(parts)):
        if isinstance(message, Key):
            (message.character or "").encode()
        if isinstance(message, Resize):
            assert max(message.size) <= 10_000


@pytest.mark.parametrize(
    "code",
    [b"\x1b[99999999999u", b"\x1b[97:65;;97u", b"\x1b[97;1;99999999999u", b"\x1b[97;1;55296u",
     b"\x1b[1114112u", b"\x1b[48;99999999;99999999;1;1t"],
    ids=repr,
)  # fmt: skip
def test_a_code_that_is_none_is_passed_over_whole(code: bytes) -> None:
    assert typed(code + b"a") == "a"


@pytest.mark.parametrize(
    ("code", "key", "character"),
    [
        (b"\x1b[32u", "space", " "),
        (b"\x1b[32;1u", "space", " "),
        (b"\x1b[32;129u", "space", " "),
        (b"\x1b[97u", "a", "a"),
        (b"\x1b[97;2u", "A", "A"),
        (b"\x1b[55u", "7", "7"),
        (b"\x1b[32;1;32u", "space", " "),
        (b"\x1b[229u", "å", "å"),
        # With other keys held it is another key, and types nothing.
        (b"\x1b[122;5u", "ctrl+z", None),
        (b"\x1b[97;3u", "alt+a", None),
        (b"\x1b[49;2u", "shift+1", None),
        (b"\x1b[27u", "escape", None),
    ],
    ids=repr,
)
def test_a_bare_code_types_its_character(code: bytes, key: str, character: str | None) -> None:
    (found,) = read(code)
    assert isinstance(found, Key)
    assert (found.key, found.character) == (key, character)


def test_text_with_bytes_that_are_none_is_read_around_them() -> None:
    assert typed(b"caf\xe9 \xff\xfeok") == "caf\ufffd \ufffd\ufffdok"


ANSWERS = (
    b"\x1b]11;rgb:1111/2222/3333\x1b\\",
    b"\x1b]11;rgb:11/22/33\x07",
    b"\x1b]11;rgba:1111/2222/3333/ffff\x1b\\",
    b"\x1b[?62;22c",
    b"\x1b]11;rgb:1111/2222/3333\x1b\\\x1b[?1;2c",
)
"""What terminals answer about their background and about what they are."""


@pytest.mark.parametrize("answer", ANSWERS, ids=repr)
def test_an_answer_of_the_terminal_is_no_key_wherever_it_is_parted(answer: bytes) -> None:
    for parted in range(len(answer) + 1):
        parser = ForgivingParser()
        found = list(parser.feed("7"))
        for part in (answer[:parted], answer[parted:], b"8"):
            if part:
                found += parser.feed(part.decode())
        keys = [key.key for key in found if isinstance(key, Key)]
        assert keys == ["7", "8"], parted


def test_an_answer_that_breaks_off_takes_no_key_with_it(monkeypatch: pytest.MonkeyPatch) -> None:
    at = [100.0]
    monkeypatch.setattr("sewalong.screens.key_reading.time.monotonic", lambda: at[0])
    parser = ForgivingParser()
    assert not list(parser.feed("\x1b]11;rgb:12/34"))
    # What no colour has in it ends it at once; so does a second.
    assert [key.key for key in parser.feed("u") if isinstance(key, Key)] == ["u"]
    assert not list(parser.feed("\x1b]11;rgb:12/34"))
    at[0] += 1.5
    assert [key.key for key in parser.feed("5") if isinstance(key, Key)] == ["5"]
