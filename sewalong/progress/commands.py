"""What a person can ask for, in the imperative. `decide` turns one into events or refuses it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from sewalong.progress.events import Settings


@dataclass(frozen=True, slots=True)
class OpenSession:
    pass


@dataclass(frozen=True, slots=True)
class CloseSession:
    """`answers` maps each question's id (see `closing.questions`) to the person's answer."""

    answers: Mapping[str, str] = field(default_factory=dict)
    next_step: str = ""


@dataclass(frozen=True, slots=True)
class ChooseStage:
    stage: str


@dataclass(frozen=True, slots=True)
class Count:
    stage: str
    n: int = 1


@dataclass(frozen=True, slots=True)
class Unpick:
    stage: str
    n: int = 1


@dataclass(frozen=True, slots=True)
class Spoil:
    pile: str
    n: int
    reason: str


@dataclass(frozen=True, slots=True)
class Find:
    pile: str
    n: int
    how: Literal["found", "bought"] = "found"


@dataclass(frozen=True, slots=True)
class Recount:
    pile: str
    counted: int


@dataclass(frozen=True, slots=True)
class PutPileAway:
    pile: str
    place: str


@dataclass(frozen=True, slots=True)
class WriteNote:
    text: str


@dataclass(frozen=True, slots=True)
class RecordSettings:
    settings: Settings


@dataclass(frozen=True, slots=True)
class ChangeTool:
    tool: Literal["blade", "needle"]


@dataclass(frozen=True, slots=True)
class ChangeTarget:
    rows: int
    columns: int


@dataclass(frozen=True, slots=True)
class ReadCaution:
    """The caution now due at `stage` has been read."""

    stage: str


@dataclass(frozen=True, slots=True)
class Answer:
    question: str
    answer: str


@dataclass(frozen=True, slots=True)
class LayAside:
    reason: str = ""


@dataclass(frozen=True, slots=True)
class PickUp:
    pass


@dataclass(frozen=True, slots=True)
class MarkDone:
    pass


@dataclass(frozen=True, slots=True)
class Undo:
    """Take back one event. `of` is the one the person saw as the last; None means the last."""

    of: int | None = None


Command = (
    OpenSession
    | CloseSession
    | ChooseStage
    | Count
    | Unpick
    | Spoil
    | Find
    | Recount
    | PutPileAway
    | WriteNote
    | RecordSettings
    | ChangeTool
    | ChangeTarget
    | ReadCaution
    | Answer
    | LayAside
    | PickUp
    | MarkDone
    | Undo
)


class Refused(ValueError):
    """The command would not be true or not be possible. Nothing changed.

    `str()` is one plain sentence (or two) that says why and what to do next.
    """
