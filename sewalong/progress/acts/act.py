"""What a person can ask for: the base of every act, in the imperative."""

from __future__ import annotations

from abc import abstractmethod
from datetime import datetime
from typing import ClassVar

from msgspec import Struct

from sewalong.progress.record.events.event import Event
from sewalong.progress.record.limits import LONGEST_TEXT
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State


class Now(Struct, frozen=True):
    """When an act happens (with an offset from UTC), and in which session (0: in none)."""

    at: datetime
    session: int


class Act(Struct, frozen=True):
    """One thing asked for. A kind of act is one subclass: what was asked, and its decision."""

    sits_down: ClassVar[bool] = True
    """Whether asking it means that somebody sat down to sew."""

    closes_session: ClassVar[bool] = False
    """Whether it ends the open session, however long ago that was heard from."""

    needs_progress: ClassVar[bool] = False
    """Whether the quilt must be in progress for it."""

    @abstractmethod
    def decide(self, state: State, now: Now) -> tuple[Event, ...]:
        """The events it gives, in order; raises Refused, and then nothing changes."""


def text(typed: str, what: str = "") -> str:
    """What was typed, on one line without control characters, which could drive a terminal.

    Raises Refused for more than can be kept (it is not cut off unseen), and, with `what`,
    asks for it where there is nothing.
    """
    plain = "".join(ch if ch.isprintable() else " " for ch in typed).strip()
    if what and not plain:
        raise Refused(f"Give {what}.")
    if len(plain) > LONGEST_TEXT:
        raise Refused(
            f"That is {len(plain)} letters; at most {LONGEST_TEXT} are kept. Say it shorter."
        )
    return plain
