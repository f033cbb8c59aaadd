"""One fabric as it is said in a few words: "rust dots 4 #a0522d small print", "60 lights"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec import Struct

from sewalong.lengths.fault import quoted
from sewalong.quilt import rules
from sewalong.quilt.choices import ASSORTED, FABRIC_KINDS, VALUES
from sewalong.quilt.file import values
from sewalong.quilt.refusal import NumbersFault


class SaidFabric(Struct, frozen=True):
    """What was said of one fabric; None, or an empty name, where nothing was. `squares` may be 0.

    `named_colour` is that of a name that is one, such as navy: what it has where no colour is given.
    """

    words: str
    squares: int
    letter: str | None = None
    name: str = ""
    colour: str | None = None
    kind: str | None = None
    second: str | None = None
    share: int | None = None
    value: str | None = None
    named_colour: str | None = None


_COUNT = re.compile(r"[x×]?([0-9]+)[x×]?", re.ASCII)
_SHARE = re.compile(r"([0-9]{1,9})%", re.ASCII)
_FILLERS = ("squares", "square", "of", "x", "×")
"""Words between a number and what it is of."""

_NAMED_VALUE = re.compile(
    r"\b(?:(light|dark)[ -]mediums|medium[ -](light|dark)s|(light|medium|dark)s)\b"
)
"""A name that says a pile of one value: "lights", "light mediums of the scrap bag"."""

_KINDS = {kind.replace("-", " "): kind for kind in FABRIC_KINDS} | {"oneway": "one-way"}
_VALUES = {value.replace("-", " "): value for value in VALUES} | {
    "medium light": "light-medium",
    "medium dark": "dark-medium",
}
_LONGEST = 3
"""Words in one attribute: CSS has "light sea green"."""


def said_fabric(words: str) -> SaidFabric:
    """The fabric these words say: the name, how many squares, and in any order its colour ("#a0522d",
    or a name CSS has), kind and value, and "30 % white" of a second colour. A capital letter in
    front is its letter. The number may also come first: "60 lights".

    A name that says a value makes it an assorted pile of that. Raises NumbersFault, which repeats
    the words, for what is not clear.
    """
    words = " ".join(words.split())
    said = re.sub(r"[:=]", " ", words).replace(" %", "%").split()
    counts = [at for at, word in enumerate(said) if _COUNT.fullmatch(word)]
    if not counts:
        raise _unclear(words, "says no number of squares. Write it behind the name: “lights 60”.")
    if len(counts) > 1:
        raise _unclear(
            words,
            "has more than one number. Write fabrics apart with a comma, and a number in a name as "
            "a word.",
        )
    before, behind = said[: counts[0]], said[counts[0] + 1 :]
    while behind and behind[0].casefold() in _FILLERS:
        del behind[0]
    while before and before[-1].casefold() in _FILLERS:
        del before[-1]
    found = _Found(words)
    letter = before.pop(0) if before and re.fullmatch("[A-Z]{1,2}", before[0]) else None
    rest = found.take(behind)
    if before or letter:
        if rest:
            raise _unclear(
                words,
                f"has {quoted(' '.join(rest))} in it, which is no colour, kind or value. The name "
                "goes before the number.",
            )
        name = " ".join(found.take(before, in_name=True))
    else:
        name = " ".join(rest or behind)
    return found.said(letter, name, _number(words, said[counts[0]]))


def _number(words: str, word: str) -> int:
    found = _COUNT.fullmatch(word)
    assert found is not None
    count = int(found[1].lstrip("0")[:9] or "0")
    if count > rules.MOST_PIECES:
        raise _unclear(words, f"has more than {rules.MOST_PIECES:,} squares. Write fewer.")
    return count


class _Found:
    """What was said beside the name, taken off word by word."""

    def __init__(self, words: str) -> None:
        self.words = words
        self.parts: dict[str, str | int] = {}

    def take(self, said: Sequence[str], *, in_name: bool = False) -> list[str]:
        """Take off what stands at the end; the words before it are left. What ends a name is
        taken only where it can be nothing else: “plum navy” may be what she calls it."""
        left = list(said)
        while left:
            for many in range(min(_LONGEST, len(left)), 0, -1):
                if part := _part(left[-many:], in_name=in_name):
                    del left[-many:]
                    self._keep(*part, left)
                    break
            else:
                return left
        # All of it may be a name as well: of “navy 4” it is, and of “12 navy”.
        return list(said) if in_name else left

    def _keep(self, key: str, said: str, left: list[str]) -> None:
        share = _SHARE.fullmatch(left[-1]) if key == "colour" and left else None
        if share:
            del left[-1]
            self._put("share", int(share[1]))
            key = "second"
        if left and left[-1].casefold() == "with":
            del left[-1]
        self._put(key, said)

    def _put(self, key: str, said: str | int) -> None:
        if key in self.parts:
            raise _unclear(self.words, f"says its {_CALLED[key]} twice. Say it once.")
        self.parts[key] = said

    def said(self, letter: str | None, name: str, squares: int) -> SaidFabric:
        """All that was said, held together."""
        parts = self.parts
        if named := _values_in(name):
            if len(named) > 1:
                raise _unclear(
                    self.words,
                    f"names {' and '.join(sorted(named))}. Give each pile its own number.",
                )
            parts.setdefault("kind", ASSORTED)
            if "colour" not in parts and parts.setdefault("value", *named) not in named:
                raise _unclear(self.words, "says two values. Say one.")
        if "colour" in parts and "value" in parts:
            raise _unclear(
                self.words, "says a colour and a value. The colour says how light it is; say one."
            )
        try:
            if name:
                rules.a_name(name)
            if "share" in parts:
                rules.share(parts["share"])
        except ValueError as fault:
            raise NumbersFault(f"{quoted(self.words)}: {fault}") from None
        named_colour = _colour(name.split()) if name else None
        return SaidFabric(self.words, squares, letter, name, named_colour=named_colour, **parts)  # type: ignore[arg-type]


_CALLED = {"colour": "colour", "second": "second colour", "share": "second colour"} | {
    word: word for word in ("kind", "value")
}


def _part(words: Sequence[str], *, in_name: bool) -> tuple[str, str] | None:
    """The key these words say something of, and what; None where they say nothing."""
    plain = " ".join(words).casefold().replace("-", " ")
    if plain in _KINDS:
        return "kind", _KINDS[plain]
    if in_name:
        return ("colour", colour) if words[-1][:1] == "#" and (colour := _colour(words)) else None
    if plain in _VALUES:
        return "value", _VALUES[plain]
    return ("colour", colour) if (colour := _colour(words)) else None


def _colour(words: Sequence[str]) -> str | None:
    """The colour of these words, a name of several written as one; None where it is none."""
    try:
        return values.colour("".join(words))
    except ValueError:
        return None


def _values_in(name: str) -> set[str]:
    """The values that a name says."""
    whole = _VALUES.get(name.casefold().replace("-", " "))
    if whole:
        return {whole}
    return {
        f"{first or second}-medium" if first or second else alone
        for first, second, alone in _NAMED_VALUE.findall(name.casefold())
    }


def _unclear(words: str, why: str) -> NumbersFault:
    return NumbersFault(f"{quoted(words)} {why}")
