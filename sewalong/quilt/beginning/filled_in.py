"""The questions with what holds for each, and the quilt they make, or what is wrong with which.

Answers are put into the tables of a quilt file and read by its reader, so that a quilt begun by
questions and one begun from a file follow one set of rules.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from copy import deepcopy

from msgspec import Struct
from msgspec.structs import replace

from sewalong.lengths import LengthFault, parse
from sewalong.piecing.catalogue import UnknownMethod, written_method
from sewalong.piecing.definition import Definition
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.start_sizes import starts_from
from sewalong.quilt.beginning.answers import LONGEST_ANSWER, Answers
from sewalong.quilt.beginning.questions import (
    COUNT,
    COUNT_OF,
    LAYOUT,
    METHOD,
    NAME,
    SEAM,
    SIZE,
    Question,
    questions,
)
from sewalong.quilt.beginning.tables import (
    Tables,
    main_pile,
    method_in,
    pile_table,
    put,
    put_pile,
    question_of,
)
from sewalong.quilt.beginning.usual import USUAL_METHOD, usual_answer, usual_layout
from sewalong.quilt.beginning.wording import (
    borders_text,
    count_text,
    fabrics_answer,
    finishing_text,
    layout_text,
    length_text,
    setting_text,
    trim_text,
)
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.file.faults import QuiltFileFaults
from sewalong.quilt.file.method_file import LoadMethod, method_text, read_method
from sewalong.quilt.file.reader import read_tables
from sewalong.quilt.file.toml_errors import read_toml
from sewalong.quilt.file.writer import quilt_file
from sewalong.quilt.layouts.yield_of_method import pieces_for, units_of
from sewalong.quilt.quilt import Quilt, StartPile
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.rules import MOST_PIECES, a_text
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.layout_lines import LayoutLine, choice_of, fitting


class Row(Struct, frozen=True):
    """One question with what holds: `text` is its answer, as it can be typed, and `usual` says
    that she left it so. `beside` is what follows from it; `fault` why it will not do, if so."""

    question: Question
    text: str
    usual: bool
    beside: str = ""
    fault: str = ""


class FilledIn(Struct, frozen=True):
    """All questions, in order. `quilt` is None where there is a fault.

    `units` is how many there are or will be, and `layouts` those in reach of them, the one that
    holds first.
    """

    answers: Answers
    rows: tuple[Row, ...]
    quilt: Quilt | None = None
    units: int = 0
    layouts: tuple[LayoutLine, ...] = ()

    def row(self, id: str) -> Row:
        """The row of a question; raises KeyError where it is not asked by this method."""
        for row in self.rows:
            if row.question.id == id:
                return row
        raise KeyError(id)

    @property
    def faults(self) -> tuple[Row, ...]:
        """The rows whose answers will not do."""
        return tuple(row for row in self.rows if row.fault)


class UnderWay(Struct, frozen=True):
    """A quilt that is begun: its `plan` as it stands, which holds where nothing is answered, and
    the `units` that come of it by the record."""

    plan: Quilt
    units: int

    @property
    def fixed(self) -> Mapping[str, str]:
        """What cannot be answered otherwise here, by question, with the reason."""
        first, *others = self.plan.starts
        wrong = {METHOD: _METHOD_STAYS}
        if first.lots:
            wrong |= {SIZE: _LOTS, COUNT: _LOTS}
        return wrong | {f"{COUNT_OF}{start.pile}": _LOTS for start in others if start.lots}


_METHOD_STAYS = (
    "The method of a quilt under way stays as it is, for every count is of one of its stages. "
    "Begin another quilt for another method."
)
_LOTS = "These came in several sizes. Change them in the quilt file: sewalong quilt-file"
_NAME_TAKEN = "A quilt is called that already. Give this one another name."


def fill_in(
    answers: Answers,
    *,
    load: LoadMethod | None = None,
    is_taken: Callable[[str], bool] = lambda name: False,
    under_way: UnderWay | None = None,
) -> FilledIn:
    """What the answers come to. `load` gives a method file of her own, `is_taken` says whether a
    quilt is called so already. With `under_way` they change the plan of that quilt."""
    return _Filling(answers, load, is_taken, under_way).filled_in()


class _Filling:
    """The tables while they are filled; `wrong` has the first fault of each question."""

    def __init__(
        self,
        answers: Answers,
        load: LoadMethod | None,
        is_taken: Callable[[str], bool],
        under_way: UnderWay | None,
    ) -> None:
        self.answers = answers
        self.unit = answers.unit if under_way is None else under_way.plan.unit
        self.load = load
        self.is_taken = is_taken
        self.was = under_way
        self.wrong: dict[str, str] = {}
        self.tables: Tables = {"unit": self.unit.value}
        if under_way is None:
            self.written = self._written() or written_method(USUAL_METHOD)
        else:
            self.written = under_way.plan.written_method
            self.tables = dict(read_toml(quilt_file(under_way.plan)))
        self.questions = questions(self.written)
        self.texts = {one.id: self._text(one.id) for one in self.questions}

    def _written(self) -> Definition | None:
        """The method answered; None where it cannot be had, and the reader will say why."""
        key, said = method_in(self.answers.said.get(METHOD, USUAL_METHOD))
        try:
            if key == METHOD:
                return written_method(said)
            return None if self.load is None else read_method(said, method_text(self.load(said)))
        except (UnknownMethod, ValueError):
            return None

    def _text(self, id: str) -> str:
        """The answer to a question; empty where it follows from the others."""
        if id in self.answers.said or self.was is not None:
            return self.answers.said.get(id, "")
        if id == LAYOUT or id.startswith(COUNT_OF):
            return ""
        return usual_answer(id, self.written, self.unit, self.is_taken)

    def filled_in(self) -> FilledIn:
        for id, text in self.texts.items():
            # A seam left as usual is the reader's own, and a size too small for it is at fault.
            if text and (id != SEAM or id in self.answers.said):
                self._put(id, text)
        self._refuse()
        quilt = self._quilt()
        if quilt is None:
            return FilledIn(self.answers, tuple(self._row(one, None) for one in self.questions))
        units = self._units(quilt)
        found = fitting(basis(quilt), units)
        rows = tuple(self._row(one, quilt, found[0]) for one in self.questions)
        return FilledIn(self.answers, rows, quilt, units, found)

    def _put(self, id: str, text: str) -> None:
        try:
            put(self.tables, id, a_text(text, LONGEST_ANSWER), self.written, self.unit)
        except ValueError as fault:
            self.wrong.setdefault(id, str(fault))

    def _refuse(self) -> None:
        """What the tables cannot know: answers that are fixed, and names that are taken."""
        said = self.answers.said
        if self.was is not None:
            fixed = self.was.fixed
            self.wrong |= {id: fixed[id] for id in said if id in fixed}
        name = said.get(NAME)
        if name is not None and self.is_taken(name):
            self.wrong[NAME] = _NAME_TAKEN

    def _quilt(self) -> Quilt | None:
        """The quilt; None with `wrong` where the answers make none.

        What follows from the other answers is settled on a quilt with pieces enough of the other
        piles, and then read with them.
        """
        follows = [id for id, text in self.texts.items() if not text and self.was is None]
        self._others_follow()
        if LAYOUT in follows:
            self._put(LAYOUT, "2 x 2")
        quilt = self._read()
        if quilt is None or not follows:
            return quilt
        quilt = self._with_others(quilt, follows)
        if LAYOUT in follows:
            try:
                best = usual_layout(choice_of(basis(quilt), units_of(quilt)))
            except NumbersFault as fault:
                self.wrong[LAYOUT] = str(fault)
                return None
            self._put(LAYOUT, f"{best.rows} x {best.columns}")
        return self._read()

    def _others_follow(self) -> None:
        """The sizes of the other piles follow that of the main one, once that is answered."""
        if self.was is not None and SIZE not in self.answers.said:
            return
        main = main_pile(self.tables, self.written)
        for start in self.written.starts[1:]:
            if self.was is not None and self._pile(start.pile).lots:
                continue
            self._put(f"{COUNT_OF}{start.pile}", self._count_said(start.pile))
            pile = pile_table(self.tables, start.pile)
            side = "width" if start.strip else "size"
            pile[side] = self._suited(start.pile) or main.get(side, main.get("size", ""))

    def _pile(self, pile: str) -> StartPile:
        assert self.was is not None
        return next(start for start in self.was.plan.starts if start.pile == pile)

    def _count_said(self, pile: str) -> str:
        if said := self.texts.get(f"{COUNT_OF}{pile}"):
            return said
        return str(MOST_PIECES) if self.was is None else count_text(self._pile(pile))

    def _suited(self, pile: str) -> str:
        """The size a pile is cut at to go with the main one; empty where none does."""
        main = main_pile(self.tables, self.written)
        side = "width" if self.written.starts[0].strip else "size"
        try:
            size = parse(main[side], self.unit)
            seam = parse(self.texts[SEAM] or str(self.tables[SEAM]), self.unit)
            cut = size if "packs" in main else to_cut(size, self.unit).length
            found = starts_from(self.written, cut, seam, self.unit.step)[pile].cutting
        except (LengthFault, SizeRefused, MethodFault, KeyError):
            return ""
        return length_text(found, self.unit) if found > 0 else ""

    def _with_others(self, quilt: Quilt, follows: list[str]) -> Quilt:
        """As many of the other piles as the main one needs, where she said none."""
        alone = [start for start in quilt.starts if f"{COUNT_OF}{start.pile}" in follows]
        if not alone:
            return quilt
        units = units_of(quilt)
        need = pieces_for(quilt.method, units)
        for start in alone:
            count = min(MOST_PIECES, max(1, need[start.pile]))
            put_pile(self.tables, replace(start, count=count), self.unit)
        starts = (
            replace(start, count=min(MOST_PIECES, max(1, need[start.pile])))
            if start in alone
            else start
            for start in quilt.starts
        )
        return replace(quilt, starts=tuple(starts))

    def _read(self) -> Quilt | None:
        kept = None if self.was is None else self.was.plan.method_key
        try:
            quilt = read_tables(deepcopy(self.tables), self.load, kept)
            basis(quilt)
        except QuiltFileFaults as found:
            for fault in found.faults:
                self.wrong.setdefault(question_of(fault.key, self.tables), fault.sentence)
        except NumbersFault as fault:
            self.wrong.setdefault(SEAM, str(fault))
        if not self.wrong:
            return quilt
        # What she said is at fault, rather than a usual answer that will not go with it.
        said = {id: why for id, why in self.wrong.items() if id in self.answers.said}
        self.wrong = said or self.wrong
        return None

    def _units(self, quilt: Quilt) -> int:
        """The units there will be: by the record and what is more or fewer to begin with than in
        the plan, or by the plan alone."""
        if self.was is None:
            return units_of(quilt)
        more = units_of(quilt) - units_of(self.was.plan)
        return max(0, self.was.units + more)

    def _row(self, one: Question, quilt: Quilt | None, now: LayoutLine | None = None) -> Row:
        text, usual = self.texts[one.id], one.id not in self.answers.said
        beside = ""
        if one.id in self.wrong:
            return Row(one, text, usual, fault=self.wrong[one.id])
        if quilt is None or now is None:
            if self.was is not None and not text:
                text, beside = _of_quilt(one.id, self.was.plan)
        else:
            text, beside = _of_quilt(one.id, quilt)
            if one.id == LAYOUT:
                beside = _leaves(now)
        if one.id == METHOD and self.was is None:
            text, beside = _method_text(self.texts[METHOD], self.written)
        return Row(one, text, usual, beside)


def _leaves(now: LayoutLine) -> str:
    if now.short:
        return f"{now.short:,} short"
    return f"{now.spare:,} spare" if now.spare else "takes every unit"


def _method_text(said: str, written: Definition) -> tuple[str, str]:
    return (said, written.name) if method_in(said)[0] != METHOD else (written.name, "")


def _of_quilt(id: str, quilt: Quilt) -> tuple[str, str]:
    """The answer to a question as the quilt has it, and what follows from it."""
    first, unit = quilt.starts[0], quilt.unit
    if id.startswith(COUNT_OF):
        start = next(one for one in quilt.starts if one.pile == id.removeprefix(COUNT_OF))
        return count_text(start), f"of {length_text(start.size, unit)}"
    match id:
        case "method":
            return quilt.method.name, ""
        case "size":
            return length_text(first.size, unit), ""
        case "length":
            return length_text(first.length or first.size, unit), ""
        case "count":
            return count_text(first), f"{first.count:,} in all" if first.packs else ""
        case "seam":
            return length_text(quilt.seam, unit), ""
        case "trim":
            return trim_text(quilt), ""
        case "setting":
            return setting_text(quilt), ""
        case "layout":
            return layout_text(quilt.target, as_web=quilt.is_web), ""
        case "borders":
            return borders_text(quilt), ""
        case "fabrics":
            squares = sum(fabric.squares or 0 for fabric in quilt.counted_fabrics)
            return fabrics_answer(quilt), f"{squares:,} squares" if squares else ""
        case "finishing":
            return finishing_text(quilt.finishing), ""
        case _:
            return quilt.name, ""
