"""What happened to a quilt: the base of every event, and its place in the record.

Events are frozen, in the past tense, and the only truth: piles, counts and places are what
they add up to (`fold`). Nothing here is ever edited; taking something back is an event too.
"""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Sequence
from datetime import datetime
from typing import ClassVar

from msgspec import Struct

from sewalong.piecing.method import Noun
from sewalong.progress.record.route import ROW
from sewalong.progress.record.state import State
from sewalong.progress.record.tally import Tally
from sewalong.quilt.setting import SETTING_PILES
from sewalong.quilt.web import WEB_PILES


class Event(
    Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, tag_field="kind", tag=""
):
    """When it happened (with an offset from UTC) and in which session (0: in none).

    A kind of event is one subclass: its fields, what must hold for it to be true, what it
    changes, and its words. Its tag is its kind in the record and never changes.
    """

    undoable: ClassVar[bool] = True
    """Whether a person can take it back."""

    most_values: ClassVar[int] = 200
    """Texts and numbers it may hold: fifty readings, or a dozen settings, answers or hazards."""

    at: datetime
    session: int

    @property
    def kind(self) -> str:
        """The kind as the record writes it: "session opened"."""
        return str(self.__struct_config__.tag)

    def check(self, state: State) -> None:
        """Raise Refused where the event cannot have happened to a quilt in `state`.

        Asked before it is written, and again of a record that comes from outside.
        """

    @abstractmethod
    def apply(self, tally: Tally, seq: int) -> None:
        """Change the tally by this event, number `seq` of the record. It trusts the record."""

    @abstractmethod
    def words(self, state: State, record: Sequence[Recorded]) -> str:
        """The event in one short sentence, as it is said when it was just recorded.

        `state` is the quilt as it stands now; `record` is where another event is looked up.
        """

    def in_full(self, state: State, record: Sequence[Recorded]) -> str:
        """The same for the log, with all that the event holds."""
        return self.words(state, record)

    def facts(self, state: State, record: Sequence[Recorded]) -> tuple[str, ...]:
        """The same, one fact each, where it holds several."""
        return (self.in_full(state, record),)


class Recorded(Struct, frozen=True):
    """An event in its place in the record; `seq` counts from 1 within a quilt."""

    seq: int
    event: Event


_OF_ANY_SETTING = {ROW.id: ROW, **SETTING_PILES, **WEB_PILES}


def noun_of(state: State, pile: str) -> Noun:
    """The word for the pieces of a pile, one of an earlier setting of the quilt too."""
    found = state.route.piles.get(pile) or _OF_ANY_SETTING.get(pile)
    return found.noun if found else Noun(pile, pile)


def counts_of(state: State, stage: str) -> Noun:
    """The word a stage is counted in; a stage of another target is counted in pieces."""
    found = state.route.stage(stage)
    return found.counts if found else Noun("piece", "pieces")


def label_of(state: State, stage: str) -> str:
    """A stage by its name."""
    found = state.route.stage(stage)
    return found.label if found else stage


def stopped(text: str) -> str:
    """The owner's words with one full stop after them."""
    return text if text.endswith((".", "!", "?")) else f"{text}."
