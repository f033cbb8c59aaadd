"""A quilt file written to do harm: answered in a sentence, in the time and room of any other."""

from __future__ import annotations

import subprocess
import sys
import tomllib
import tracemalloc
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.quilt.file.reader import Fault, QuiltFileFaults, read_quilt
from sewalong.quilt.file.toml_bounds import (
    DEEPEST,
    LONGEST_WORD,
    MOST_KEYS,
    MOST_PARTS,
    out_of_bounds,
)
from sewalong.quilt.file.toml_errors import LONGEST_FILE

ROOM = 200_000_000
"""Bytes that an answer may take, beyond what the program itself takes."""

# Each makes a text of about so many bytes.
HOSTILE: dict[str, Callable[[int], str]] = {
    "a heading of parts": lambda n: "[" + ".".join("a" * (n // 2)) + "]",
    "a key of parts": lambda n: ".".join("a" * (n // 2)) + " = 1",
    "a key of quoted parts": lambda n: "['" + "'.'".join("a" * (n // 4)) + "']",
    "a key of parts in braces": lambda n: "a = {" + ".".join("a" * (n // 2)) + " = 1}",
    "headings of parts": lambda n: "".join(f"[{'a.' * 100}k{i}]\n" for i in range(n // 210)),
    "lists in lists": lambda n: "a = " + "[" * (n // 2) + "]" * (n // 2),
    "lists in lists over lines": lambda n: "a = " + "[\n" * (n // 2),
    "tables in tables": lambda n: "a = " + "{a = " * (n // 6) + "1" + "}" * (n // 6),
    "keys": lambda n: "".join(f"k{i} = 1\n" for i in range(n // 9)),
    "keys in braces": lambda n: "a = {" + ",".join(f"k{i}=1" for i in range(n // 8)) + "}",
    "headings": lambda n: "".join(f"[k{i}]\n" for i in range(n // 9)),
    "borders": lambda n: "[[border]]\n" * (n // 11),
    "fabrics without anything": lambda n: "fabric = [" + "{}," * (n // 3 - 5) + "]",
    "piles without anything": lambda n: "more = [" + "{}," * (n // 3 - 5) + "]",
    "a long list": lambda n: "a = [" + "1," * (n // 2 - 5) + "]",
    "a list of lists": lambda n: "a = [" + "[]," * (n // 3 - 5) + "]",
    "stages": lambda n: "[finishing]\nstages = [" + '"x",' * (n // 4 - 9) + "]",
    "digits": lambda n: "a = " + "9" * (n - 9),
    "digits joined": lambda n: "a = " + "1_" * (n // 2 - 9) + "1",
    "digits behind a point": lambda n: "seam = 0." + "9" * (n - 20),
    "digits in quotes": lambda n: 'seam = "' + "9" * (n - 20) + '"',
    "fractions": lambda n: 'seam = "' + "1/" * (n // 2 - 10) + '"',
    "spaced digits": lambda n: 'seam = "' + "9 " * (n // 2 - 10) + '"',
    "a name": lambda n: 'name = "' + "x" * (n - 20) + '"',
    "a key": lambda n: '"' + "x" * (n - 20) + '" = 1',
    "escapes": lambda n: 'name = "' + "\\u0041" * (n // 6 - 9) + '"',
    "a text without end": lambda n: 'notes = """' + '\\" ' * (n // 3 - 9),
    "quotes": lambda n: '"' * n,
    "points": lambda n: "a." * (n // 2),
    "spaces": lambda n: " " * n,
    "lines": lambda n: "\r\n" * (n // 2),
}


def answer(text: str) -> tuple[Fault, ...]:
    with pytest.raises(QuiltFileFaults) as refused:
        read_quilt(text)
    return refused.value.faults


def test_any_hostile_file_is_answered_within_its_room() -> None:
    """In a process of its own, whose room is bounded; it is ended when it goes on for ever."""
    read = """if True:
        import resource, sys
        from pathlib import Path
        from tests.quilt.file.test_quilt_file_hostile import HOSTILE, LONGEST_FILE, ROOM, answer
        answer("a = 1")  # whatever is loaded for a file is loaded now
        taken = int(Path("/proc/self/statm").read_text().split()[0]) * resource.getpagesize()
        resource.setrlimit(resource.RLIMIT_AS, (taken + ROOM, taken + ROOM))
        for name, make in HOSTILE.items():
            text = make(LONGEST_FILE)[:LONGEST_FILE]
            assert len(text) > 0.8 * LONGEST_FILE, name
            assert all(fault.sentence.isprintable() for fault in answer(text)), name
            print(name, flush=True)
        """
    done = subprocess.run(
        [sys.executable, "-c", read], capture_output=True, text=True, timeout=120, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert done.stdout.split("\n")[:-1] == list(HOSTILE)


@pytest.mark.parametrize("make", HOSTILE.values(), ids=HOSTILE.keys())
def test_the_room_grows_no_faster_than_the_file(make: Callable[[int], str]) -> None:
    def room(size: int) -> int:
        text = make(size)[:size]
        tracemalloc.start()
        try:
            answer(text)
            return tracemalloc.get_traced_memory()[1]
        finally:
            tracemalloc.stop()

    answer(make(1000))
    small = room(LONGEST_FILE // 4)
    # What grew by its square would take sixteen times as much.
    assert room(LONGEST_FILE) < 6 * small + 100_000


@pytest.mark.parametrize(
    ("fits", "too_much", "line", "opening"),
    [
        (
            ".".join("a" * MOST_PARTS) + " = 1",
            "b = 1\n" + ".".join("a" * (MOST_PARTS + 1)) + " = 1",
            2,
            "A key or heading here has more than 8 parts joined by points.",
        ),
        (
            "a = " + "[" * DEEPEST + "]" * DEEPEST,
            "# a\na = " + "[" * (DEEPEST + 1) + "]" * (DEEPEST + 1),
            2,
            "Brackets stand more than 20 deep within brackets here.",
        ),
        (
            "a = " + "9" * LONGEST_WORD,
            '[layout]\n\n\nnotes = """\n\n"""\nrows = ' + "9" * (LONGEST_WORD + 1),
            7,
            "A key or a number of 101 characters stands here, and at most 100 can be read.",
        ),
        (
            "".join(f"a{i} = 1\n" for i in range(MOST_KEYS)),
            "".join(f"a{i} = 1\n" for i in range(MOST_KEYS + 1)),
            MOST_KEYS + 1,
            "Up to here there are more than 2,000 keys and headings.",
        ),
    ],
    ids=["parts", "brackets", "digits", "keys"],
)
def test_what_is_too_much_is_said_with_its_line(
    fits: str, too_much: str, line: int, opening: str
) -> None:
    assert out_of_bounds(fits) is None
    (fault,) = answer(too_much)
    assert (fault.key, fault.line) == ("", line)
    assert fault.sentence.startswith(opening)


def test_what_stands_in_text_or_behind_a_hash_is_not_counted() -> None:
    much = "a." * 50 + "[" * 50 + "9" * 200 + "=" * 3000
    for text in (f'a = "{much}"', f"a = '{much}'", f'a = """\n"{much}\n"" """', f"# {much}"):
        tomllib.loads(text)
        assert out_of_bounds(text) is None


SOUP = st.lists(
    st.sampled_from(
        [*"[]{}=.,\"'#\n\\ ", '"""', "'''", "a", "name", "[border]", "a.", "9", "\r\n", "\t", "½"]
    ),
    max_size=60,
).map("".join)


@settings(max_examples=400, deadline=None)
@given(SOUP, st.integers(1, 40))
def test_a_soup_of_toml_is_answered_in_sentences(soup: str, times: int) -> None:
    for fault in answer(soup * times):
        assert fault.sentence.isprintable()
        assert fault.line is None or fault.line <= (soup * times).count("\n") + 1


def parts_of(value: object, depth: int = 0) -> int:
    """How many keys deep a table goes."""
    if isinstance(value, dict):
        return max((parts_of(held, depth + 1) for held in value.values()), default=depth)
    return depth


@settings(max_examples=400, deadline=None)
@given(SOUP, SOUP)
def test_no_text_hides_a_key_of_many_parts(before: str, behind: str) -> None:
    """Whatever stands before it that is TOML, the bounds see what `tomllib` would see."""
    text = f"{before}\n{'b.' * MOST_PARTS}b = 1\n{behind}"
    try:
        read = tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        return
    assert (out_of_bounds(text) is not None) == (parts_of(read) > MOST_PARTS)
