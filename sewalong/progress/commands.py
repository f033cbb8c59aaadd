"""What a person can ask for, in the imperative. `decide` turns one into events or refuses it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from sewalong.progress.events import Accepted, Settings, Tool


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
    """`how` says what the difference is; with a `place` only what lies there was counted."""

    pile: str
    counted: int
    how: Accepted = "stands"
    place: str = ""


@dataclass(frozen=True, slots=True)
class PutPileAway:
    """Put the pile somewhere, or only `n` of it."""

    pile: str
    place: str
    n: int | None = None


@dataclass(frozen=True, slots=True)
class WriteNote:
    text: str


@dataclass(frozen=True, slots=True)
class RecordSettings:
    settings: Settings


@dataclass(frozen=True, slots=True)
class ChangeTool:
    tool: Tool


@dataclass(frozen=True, slots=True)
class Measure:
    """One or several tape readings of a piece, in inches; see `measuring.pieces.read_piece`."""

    piece: str
    readings: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class GoOn:
    """Go on at a stage without a fresh proof."""

    stage: str


@dataclass(frozen=True, slots=True)
class NotePress:
    stage: str
    direction: str


@dataclass(frozen=True, slots=True)
class JoinRows:
    """Join two neighbouring rows by their numbers, in whichever order they are read."""

    first: int
    second: int


@dataclass(frozen=True, slots=True)
class BobbinEmpty:
    """The bobbin was empty: the last `unsewn` counted at the stage were never sewn."""

    stage: str
    unsewn: int


@dataclass(frozen=True, slots=True)
class Mention:
    what: str


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
    | Measure
    | GoOn
    | NotePress
    | JoinRows
    | BobbinEmpty
    | Mention
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
