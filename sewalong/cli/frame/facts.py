"""One fact a line, for a screen reader or a script."""

from __future__ import annotations

from collections.abc import Iterable

from sewalong.quilt.worksheet.one_fact import apart


def each(label: str, facts: Iterable[str]) -> list[str]:
    """Every fact with what it is of before it: "Press: 6 of 16 done"."""
    return [f"{label}: {fact}" for fact in facts]


def sentences(text: str) -> list[str]:
    """Words of the program's own, each fact a sentence on its own line. Never for what a person
    wrote."""
    first, *others = apart(text)
    if not others:
        return [text]
    return [_stopped(first), *(_stopped(one[:1].upper() + one[1:]) for one in others)]


def _stopped(fact: str) -> str:
    return fact if fact.endswith((".", "?", "!")) else f"{fact}."
