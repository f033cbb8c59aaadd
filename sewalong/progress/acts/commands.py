"""What a person can ask for, in the imperative. `decide` turns one into events or refuses it."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Literal

from msgspec import Struct, field

from sewalong.progress.record.events import Accepted, Settings, Tool


class OpenSession(Struct, frozen=True):
    pass


class CloseSession(Struct, frozen=True):
    """`answers` maps each question's id (see `closing.questions`) to the person's answer."""

    answers: Mapping[str, str] = field(default_factory=dict)
    next_step: str = ""


class ChooseStage(Struct, frozen=True):
    stage: str


class Count(Struct, frozen=True):
    stage: str
    n: int = 1


class Unpick(Struct, frozen=True):
    stage: str
    n: int = 1


class Spoil(Struct, frozen=True):
    pile: str
    n: int
    reason: str


class Find(Struct, frozen=True):
    pile: str
    n: int
    how: Literal["found", "bought"] = "found"


class Recount(Struct, frozen=True):
    """`how` says what the difference is; with a `place` only what lies there was counted."""

    pile: str
    counted: int
    how: Accepted = "stands"
    place: str = ""


class PutPileAway(Struct, frozen=True):
    """Put the pile somewhere, or only `n` of it."""

    pile: str
    place: str
    n: int | None = None


class WriteNote(Struct, frozen=True):
    text: str


class RecordSettings(Struct, frozen=True):
    settings: Settings


class ChangeTool(Struct, frozen=True):
    tool: Tool


class Measure(Struct, frozen=True):
    """One or several tape readings of a piece, in inches; see `measuring.pieces.read_piece`."""

    piece: str
    readings: tuple[Fraction, ...]


class GoOn(Struct, frozen=True):
    """Go on at a stage without a fresh proof."""

    stage: str


class NotePress(Struct, frozen=True):
    stage: str
    direction: str


class JoinRows(Struct, frozen=True):
    """Join two neighbouring rows by their numbers, in whichever order they are read."""

    first: int
    second: int


class BobbinEmpty(Struct, frozen=True):
    """The bobbin was empty: the last `unsewn` counted at the stage were never sewn."""

    stage: str
    unsewn: int


class Mention(Struct, frozen=True):
    what: str


class ChangeTarget(Struct, frozen=True):
    rows: int
    columns: int


class ReadCaution(Struct, frozen=True):
    """The caution now due at `stage` has been read."""

    stage: str


class Answer(Struct, frozen=True):
    question: str
    answer: str


class LayAside(Struct, frozen=True):
    reason: str = ""


class PickUp(Struct, frozen=True):
    pass


class MarkDone(Struct, frozen=True):
    pass


class Undo(Struct, frozen=True):
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
