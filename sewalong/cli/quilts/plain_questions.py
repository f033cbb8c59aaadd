"""The questions a quilt begins with, asked line by line: each with its usual answer, back and forth."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.sanitize import shown
from sewalong.cli.frame.selection import opened
from sewalong.quilt.beginning.filled_in import Row
from sewalong.quilt.beginning.offered import offered
from sewalong.quilt.beginning.questions import FINISHING, LAYOUT, METHOD, SETTING
from sewalong.service.beginning import Beginning
from sewalong.service.preferences import own_preferences
from sewalong.store.begun import is_there
from sewalong.store.drafts import Draft, Drafts
from sewalong.store.faults import StoreFault
from sewalong.store.home import data_folder, record_path

BACK = "back"
LIST = "?"
NUMBERED = (METHOD, SETTING, LAYOUT, FINISHING)
"""Questions whose list is chosen from by number; at the others a bare number is a length."""
YES = ("", "yes", "y")
HELP = (
    "An empty line takes what stands in [ ]; back goes back; ? lists what there is to choose from."
)

KEPT = (
    "Your answers are kept as a draft. Go on with: sewalong new --plain, or in the list of quilts."
)


class LeftOff(Exception):
    """Nobody answers any more."""


class PlainQuestions:
    """Asks on standard error and reads standard input, so that the answer stands alone."""

    def __init__(self, context: Context) -> None:
        self._context = context
        self._drafts = Drafts(data_folder())
        self._told: tuple[str, ...] = ()

    def ask_all(self) -> Report:
        """Every question, then whether to begin."""
        self._say(HELP)
        try:
            self._beginning = self._begun_or_new()
            return self._walk()
        except (LeftOff, KeyboardInterrupt):
            self._say("")
            raise CommandError(self._kept()) from None

    def _kept(self) -> str:
        beginning = getattr(self, "_beginning", None)
        if beginning is not None and beginning.fault:
            return f"Nothing was begun. {beginning.fault}"
        if beginning is not None and beginning.is_kept:
            return f"Nothing was begun. {KEPT}"
        return "Nothing was begun, and nothing was answered that could be kept."

    def _begun_or_new(self) -> Beginning:
        """With the draft kept last, if she goes on with it, else from the beginning."""
        drafts, unread = self._drafts.all()
        if unread:
            self._say(unread)
        for draft in drafts:
            answer = self._which(draft)
            if answer in YES:
                return self._on(draft)
            if answer == "throw away":
                self._drafts.throw_away(draft.key)
        return self._on(None)

    def _which(self, draft: Draft) -> str:
        name = draft.answers.said.get("name", "a new quilt")
        said = f"There is a draft: {name}. Go on with it? (yes, no, throw away) [yes]"
        while (answer := self._line(said).casefold()) not in (*YES, "no", "n", "throw away"):
            self._say("Answer yes, no, or throw away.")
        return answer

    def _on(self, draft: Draft | None) -> Beginning:
        names: Sequence[str] = ()
        if is_there(record_path()):
            with opened(record_path(), self._context) as library:
                names = [entry.name for entry in library.entries()]
        unit = own_preferences()[0].unit
        return Beginning(self._drafts, self._context.clock, unit=unit, names=names, draft=draft)

    def _walk(self) -> Report:
        place = 0
        while True:
            rows = self._beginning.filled.rows
            if place < len(rows):
                place = max(0, place + self._ask(place, rows[place]))
                continue
            said = self._line("Begin it? (yes, back, file: write a quilt file, later) [yes]")
            match said.casefold():
                case "" | "yes" | "y":
                    try:
                        return self._begin()
                    except ValueError as refusal:
                        self._say(str(refusal))
                case "back":
                    place -= 1
                case "file":
                    self._write_file()
                case "later" | "no" | "n":
                    return Report((self._kept(),), {"quilt": None})
                case _:
                    self._say("Answer yes, back, file, or later.")

    def _ask(self, place: int, row: Row) -> int:
        """Ask one question; how many questions to go on, 0 to ask it again."""
        if row.fault:
            self._say(row.fault)
        beside = f" ({row.beside})" if row.beside else ""
        number = f"{place + 1} of {len(self._beginning.filled.rows)}"
        said = self._line(f"{number}. {row.question.ask} [{row.text}]{beside}")
        if said.casefold() == BACK:
            return -1
        if said == LIST:
            self._list(row)
            return 0
        if said and (why := self._beginning.answer(row.question.id, self._meant(row, said))):
            self._say(why)
            return 0
        if self._beginning.fault:
            self._say(self._beginning.fault)
        self._tell_what_is_other()
        return 1

    def _list(self, row: Row) -> None:
        self._say(row.question.how)
        id = row.question.id
        for number, one in enumerate(offered(self._beginning.filled, id), start=1):
            about = f": {one.about}" if one.about else ""
            mark = f"{number}." if id in NUMBERED else "-"
            self._say(f"  {mark} {one.text}{about}")

    def _meant(self, row: Row, said: str) -> str:
        """An answer by its number in the list, where a number is no answer itself."""
        if row.question.id not in NUMBERED:
            return said
        found = offered(self._beginning.filled, row.question.id)
        if said.isascii() and said.isdigit() and 1 <= int(said[:4]) <= len(found):
            return found[int(said[:4]) - 1].text
        return said

    def _tell_what_is_other(self) -> None:
        """What the answers come to, where it is other than was said last."""
        try:
            _, lines = self._beginning.beside()
        except ValueError:
            return
        for line in lines:
            if line not in self._told:
                self._say(f"   {line}")
        self._told = lines

    def _write_file(self) -> None:
        path = self._line("To which file? [none]")
        if not path:
            return
        try:
            self._beginning.write_file(os.path.expanduser(path))
        except (StoreFault, ValueError) as fault:
            self._say(str(fault))
            return
        self._say(f"Written: {path}")

    def _begin(self) -> Report:
        quilt = self._beginning.quilt()
        with opened(record_path(), self._context) as library:
            entry = self._beginning.begin(library)
            path = library.file
        _, lines = self._beginning.beside()
        aside = (self._beginning.fault,) if self._beginning.fault else ()
        told = (
            f"Begun: {quilt.name}",
            *lines,
            f"Kept in: {path}",
            "The same as a quilt file: sewalong quilt-file",
            "Open it with: sewalong",
        )
        data = {"quilt": quilt.name, "key": entry.key, "number": entry.id, "kept_in": path}
        return Report(told, data, aside, recorded=True)

    def _say(self, line: str) -> None:
        if sys.stderr is not None:
            print(shown(line), file=sys.stderr)

    def _line(self, question: str) -> str:
        """The answer to a question, without the blanks around it. Raises LeftOff."""
        if sys.stderr is not None:
            print(shown(question), end=" ", file=sys.stderr, flush=True)
        line = sys.stdin.readline() if sys.stdin is not None else ""
        if not self._context.interactive:
            # Nobody pressed enter where the question stands.
            self._say("")
        if not line.endswith("\n"):
            raise LeftOff
        return line.strip()
