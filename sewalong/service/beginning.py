"""Beginning a quilt by questions, for both faces; what was answered is kept as a draft."""

from __future__ import annotations

import os
from collections.abc import Callable, Collection
from datetime import UTC, datetime
from functools import lru_cache

from sewalong.lengths import Unit, unit_typed
from sewalong.progress.joining.stage_words import what_is_left_of_the_point
from sewalong.progress.pace.before_sewing import hours_before_sewing
from sewalong.progress.pace.duration_words import hours_between
from sewalong.quilt.beginning.answers import Answers
from sewalong.quilt.beginning.filled_in import FilledIn, fill_in
from sewalong.quilt.beginning.questions import METHOD, SIZE
from sewalong.quilt.beginning.tables import method_in
from sewalong.quilt.file.commented import commented_file
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.in_short import InShort, in_short
from sewalong.service.begin import begin
from sewalong.store.bounded import read_at_most
from sewalong.store.drafts import Draft, Drafts, new_key
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from sewalong.store.quilt_files import write_quilt_file
from sewalong.store.shelved import Shelved, folded

ANY_TIME = datetime(2000, 1, 1, tzinfo=UTC)
"""When nothing has happened yet, it changes nothing how long ago that was."""

LONGEST_METHOD_FILE = 200_000
"""Bytes in a method file: what may be in it as text, in letters of four bytes."""


class Beginning:
    """A quilt to be begun: its questions, filled in. From the first answer on it is a draft.

    `fault` says why the last answer could not be kept on disk; the answers hold all the same.
    """

    def __init__(
        self,
        drafts: Drafts,
        clock: Callable[[], datetime],
        *,
        unit: Unit | None = None,
        names: Collection[str] = (),
        draft: Draft | None = None,
    ) -> None:
        """`unit` is the one she prefers, `names` are those of the quilts there are."""
        self._drafts = drafts
        self._clock = clock
        self._taken = frozenset(map(folded, names))
        self._prefers_one = unit is not None
        self._key = draft.key if draft else new_key()
        self.is_kept = draft is not None
        self.fault = ""
        self.filled = self.with_all(draft.answers if draft else Answers(unit or Unit.INCH))

    def with_all(self, answers: Answers) -> FilledIn:
        """What these answers come to."""
        return fill_in(answers, load=load_method, is_taken=lambda name: folded(name) in self._taken)

    def with_answer(self, id: str, text: str) -> FilledIn:
        """What the answers and this one would come to; nothing is kept."""
        return self.with_all(self.filled.answers.answered(id, in_full(id, text)))

    def answer(self, id: str, text: str) -> str:
        """Take an answer and keep it; an empty one is as usual again. The sentence why it will not
        do is returned, and then nothing has changed; else empty."""
        filled = self.with_answer(id, text)
        if why := fault_of(filled, id):
            return why
        filled = self._in_its_unit(filled, id, text)
        if filled.answers != self.filled.answers:
            self.filled = filled
            self._keep()
        return ""

    def _in_its_unit(self, filled: FilledIn, id: str, text: str) -> FilledIn:
        """Where she prefers no unit, she works in that of the size she typed; what she said before
        stays what it was."""
        unit = unit_typed(text)
        if unit is None or unit is filled.answers.unit or id != SIZE:
            return filled
        if self._prefers_one or filled.quilt is None:
            return filled
        said = {
            key: text if key == METHOD else filled.row(key).text
            for key, text in filled.answers.said.items()
        }
        return self.with_all(Answers(unit, said))

    def _keep(self) -> None:
        try:
            self._drafts.keep(Draft(self._key, self._clock(), self.filled.answers))
            self.is_kept, self.fault = True, ""
        except StoreFault as fault:
            self.fault = f"Not kept as a draft: {fault}"

    def throw_away(self) -> None:
        """Take the draft away. Raises StoreFault."""
        self._drafts.throw_away(self._key)
        self.is_kept = False

    def begin(self, library: Library) -> Shelved:
        """Begin the quilt; its draft goes once the quilt is on disk.

        Raises StoreFault, and ValueError with the first fault of the answers.
        """
        entry = begin(library, self.quilt(), self._clock())
        try:
            self.throw_away()
        except StoreFault as fault:
            self.fault = str(fault)
        return entry

    def quilt(self) -> Quilt:
        """The quilt. Raises ValueError, naming the question, where an answer will not do."""
        return quilt_of(self.filled)

    def beside(self) -> tuple[InShort, tuple[str, ...]]:
        """What stands beside the questions; raises as `quilt`."""
        return beside(self.quilt(), self.filled.units)

    def write_file(self, path: str) -> None:
        """Write the quilt as a quilt file. Raises StoreFault, and ValueError as `quilt`."""
        write_quilt_file(path, self.file())

    def file(self) -> str:
        """The quilt as a quilt file with remarks; raises as `quilt`."""
        key, said = method_in(self.filled.answers.said.get(METHOD, ""))
        return commented_file(self.quilt(), said if key != METHOD else "")


def quilt_of(filled: FilledIn) -> Quilt:
    """The quilt that is filled in. Raises ValueError, naming the question, for what is wrong."""
    if filled.quilt is None:
        row = filled.faults[0]
        raise ValueError(f"First put right, {row.question.label}: {row.fault}")
    return filled.quilt


def fault_of(filled: FilledIn, id: str) -> str:
    """Why the answer to a question will not do; empty when it will."""
    return next((row.fault for row in filled.faults if row.question.id == id), "")


def beside(quilt: Quilt, units: int) -> tuple[InShort, tuple[str, ...]]:
    """A quilt in few words, and one fact a line what it takes; `units` is how many there will be."""
    short = in_short(basis(quilt), units)
    point = what_is_left_of_the_point(quilt)
    said = (*short.first, how_long(quilt), *short.then, point)
    return short, tuple(filter(None, said))


@lru_cache(maxsize=32)
def how_long(quilt: Quilt) -> str:
    """The hours a quilt nobody has sewn at will take, in words, as the guess they are."""
    hours = hours_before_sewing(quilt, ANY_TIME)
    if hours is None:
        return ""
    words = hours_between(hours)
    return f"{words[:1].upper()}{words[1:]}, a guess until you have sewn."


def in_full(id: str, text: str) -> str:
    """An answer as it is kept: a method file by its whole path, so that it is found from anywhere."""
    if id == METHOD and method_in(text.strip())[0] != METHOD:
        return os.path.abspath(os.path.expanduser(text.strip()))
    return text


def load_method(file: str) -> bytes:
    """The bytes of a method file; raises ValueError for one that cannot be read."""
    try:
        return read_at_most(file, LONGEST_METHOD_FILE)
    except StoreFault as fault:
        raise ValueError(str(fault)) from fault
