"""A quilt lived through evening by evening, by the program's own commands and a clock of its own."""

from __future__ import annotations

from datetime import datetime, timedelta, timezone

from msgspec.structs import replace

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.sessions import CloseSession
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.progress.safety.closing_questions import questions
from sewalong.quilt.file.reader import read_quilt_bytes
from sewalong.service.demo_quilts import demo_folder, demo_key
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.library import Library
from tests.progress.every_act import ReadCaution

ZONE = timezone(timedelta(hours=1))


class Diary:
    """One quilt and the time on the wall."""

    def __init__(self, name: str, library: Library, begun: datetime) -> None:
        self.time = begun
        quilt = read_quilt_bytes((demo_folder() / f"{name}.toml").read_bytes())
        # Its file has the method; a history without keeps through every change of its words.
        quilt = replace(quilt, method_text=None)
        entry = library.add(quilt, begun, key=demo_key(name))
        self.quilt = OpenQuilt(library, entry, clock=lambda: self.time)

    def evening(self, day: str, clock: str) -> None:
        """Sit down on `day` at `clock`."""
        self.time = datetime.fromisoformat(f"{day}T{clock}").replace(tzinfo=ZONE)

    def do(self, act: Act, *, after: float = 1) -> None:
        """Carry a command out so many minutes later; a caution that is due is read first."""
        self.time += timedelta(minutes=after)
        try:
            self.quilt.do(act)
        except CautionFirst as due:
            self.quilt.do(ReadCaution(due.stage))
            self.time += timedelta(seconds=20)
            self.quilt.do(act)

    def count(self, stage: str, *batches: int, each: float = 1) -> None:
        """Count batch after batch, at so many minutes for one."""
        for n in batches:
            self.do(Count(stage, n), after=round(n * each, 1))

    def close(self, next_step: str = "", **answers: str) -> None:
        """Put away for today; what is asked about is answered yes but for `answers`."""
        self.time += timedelta(minutes=3)
        asked = {q.id: answers.get(q.id, "yes") for q in questions(self.quilt.state)}
        self.quilt.do(CloseSession(asked, next_step))
