"""What a command has to tell: facts in words, one a line, and the same as data."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct, field


class Report(Struct, frozen=True):
    """`lines` are printed, or `data` when JSON was asked for.

    `aside` goes to stderr: remarks that are no part of the answer. `whole` is text to be
    handed on as it is, in place of the lines. `recorded`: something is on disk now that was not
    before, so the command has been carried out even if nobody can be told.
    """

    lines: tuple[str, ...] = ()
    data: Mapping[str, object] = field(default_factory=dict)
    aside: tuple[str, ...] = ()
    whole: str = ""
    exit_status: int = 0
    recorded: bool = False


def events_said(n: int) -> str:
    """`1 event`, `12 events`."""
    return f"{n} event{'' if n == 1 else 's'}"
