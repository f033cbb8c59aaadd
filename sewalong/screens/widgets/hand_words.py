"""What is said of the stage in hand, fitted into the lines there are.

The number's noun, what to do and what to check always stand; what explains them gives way first.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from msgspec import Struct
from textual.content import Content

MORE = "…"


class HandWords(Struct, frozen=True):
    """The texts of one stage, each may be empty.

    `noun` stands below the number and `caption` below the picture. `waits` says what waits,
    `place` where, `flow` what a count takes and makes, `which` which row or side is next, `do`
    what to do, `ruler` what to have at hand, `check` what to look at, `then` what comes after.
    `more` is the key that tells all.
    """

    noun: str
    caption: str
    waits: str
    place: str
    flow: str
    which: str
    do: str
    ruler: str
    check: str
    then: str
    more: str


class _Way(Struct, frozen=True):
    """How much is said: blank lines between the blocks, and what is left out of them."""

    blanks: int = 3
    then: bool = True
    flow: bool = True
    ruler: bool = True
    place: bool = True
    sentences: int = 99


def _ways(words: HandWords) -> Iterator[_Way]:
    """From all of it to the least."""
    yield from (_Way(blanks) for blanks in (3, 2, 1, 0))
    yield _Way(0, then=False)
    yield _Way(0, then=False, flow=False)
    yield _Way(0, then=False, flow=False, ruler=False)
    yield _Way(0, then=False, flow=False, ruler=False, place=False)
    for kept in range(len(_sentences(words.do)) - 1, 0, -1):
        yield _Way(0, False, False, False, False, kept)


def facts_fitted(facts: tuple[str, ...], width: int, height: int) -> list[Content]:
    """Facts one below the other, the first in bold; the last are left out where room ends."""
    lines: list[Content] = []
    for number, fact in enumerate(facts):
        lines += _wrapped(fact, width, "" if number else "bold")
    return lines[:height]


def fitted(words: HandWords, width: int, height: int, caption_at: int = 0) -> list[Content]:
    """The lines for `width` × `height` cells; the caption begins at column `caption_at`.

    Where not even the least fits, what to do is cut, never the check.
    """
    lines: list[Content] = []
    for way in _ways(words):
        lines = _lines(words, way, width, caption_at)
        if len(lines) <= height:
            return lines
    check = _wrapped(words.check, width, "$quiet")
    more = Content.styled(f"{MORE} {words.more}", "$quiet")
    return [*lines[: max(1, height - len(check) - 1)], more, *check][:height]


def _lines(words: HandWords, way: _Way, width: int, caption_at: int) -> list[Content]:
    place = f": {words.place}" if way.place and words.place else ""
    flow = words.flow if way.flow else ""
    sentences = _sentences(words.do)
    do = " ".join(sentences[: way.sentences])
    if way.sentences < len(sentences):
        do = f"{do} {MORE} {words.more}"
    do = " ".join(filter(None, (words.which, do, words.ruler if way.ruler else "")))
    blocks = {
        "noun": _noun(words, width, caption_at),
        "waits": [
            *_wrapped(f"{words.waits}{place}." if words.waits else "", width, ""),
            *_wrapped(flow, width, "$quiet"),
        ],
        "do": _wrapped(do, width, ""),
        "check": _wrapped(words.check, width, "$quiet"),
        "then": _wrapped(words.then if way.then else "", width, "$quiet"),
    }
    parted = PARTED[len(PARTED) - way.blanks :]
    lines: list[Content] = []
    for name, block in blocks.items():
        if block and lines and name in parted:
            lines.append(Content(""))
        lines += block
    return lines


PARTED = ("waits", "do", "check")
"""What a blank line stands before, while there is room; before the last longest."""


def _noun(words: HandWords, width: int, caption_at: int) -> list[Content]:
    """The noun, and from below the picture on what that shows where both fit beside each other."""
    noun, caption = words.noun, words.caption
    at = max(caption_at, len(noun) + 3)
    if not caption or at + len(caption) > width:
        return _wrapped(noun, width, "bold")
    return [Content.assemble((f"{noun:<{at}}", "bold"), (caption, "$quiet"))]


def _sentences(text: str) -> list[str]:
    return re.split(r"(?<=[.?]) (?=[A-Z])", text)


def _wrapped(text: str, width: int, style: str) -> list[Content]:
    return Content.styled(text, style).wrap(max(1, width)) if text else []
