"""No offer is refused: random histories are told by what the program offers, and by that alone.

Every question the sewing screen asks is asked here without a screen: a line is taken from each
list, what a form offers is handed in, and what has to be typed is something a person could type.
"""

from __future__ import annotations

import asyncio
import re
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path
from random import Random
from typing import Any

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids
from sewalong.progress.acts.act import Act
from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.joining import JoinRows
from sewalong.progress.acts.said import Answer
from sewalong.progress.acts.steering import ChangeTarget
from sewalong.progress.acts.undoing import Redo, Undo
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import Standing
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.screens.cloth.fabrics import FabricsScreen
from sewalong.screens.prompts.closing_prompts import close
from sewalong.screens.prompts.dialogs import (
    ChoiceDialog,
    Field,
    FormDialog,
    LinesDialog,
    QuestionDialog,
)
from sewalong.screens.prompts.floor_dialog import FloorDialog
from sewalong.screens.prompts.pile_prompts import count_by_hand
from sewalong.screens.prompts.registry import ASKS, ask
from sewalong.screens.wall.proposing import ProposedWallScreen
from sewalong.screens.wall.row_in_hand import RowInHandScreen
from sewalong.screens.wall.wall import WallScreen
from sewalong.screens.worksheet import WorksheetScreen
from sewalong.service.acting import Outcome, do, looked
from sewalong.service.looks import worth_counting
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.unsaved import Unsaved
from sewalong.store.library import Library
from tests.progress.building import a_quilt, suited
from tests.screens.sewing_room import EVENING, StandingClock

TYPED: dict[str, tuple[str, ...]] = {
    "n": ("1",),
    "reason": ("frayed", "waiting for backing"),
    "text": ("hold it by the middle",),
    "direction": ("towards the dark",),
    "place": ("blue tin", "tray"),
    "foot": ("patchwork foot", "walking foot"),
    "sewn": ("2", "1 pair", "0"),
    "next": ("press the last ten",),
}
"""What a person could type where nothing is offered."""

HERS_ALONE = ("readings", "size", "first", "second", "sewn")
"""Lines whose contents come from her tape, her tags or her head: what she types there may be
refused. A tag that is offered is no such line."""


class Refusal(AssertionError):
    """Something that was offered was refused."""


class Chair:
    """Who sits at the desk: takes what is offered, at random."""

    def __init__(self, quilt: OpenQuilt, chance: Random) -> None:
        self.quilt = quilt
        self.chance = chance
        self.outcome: Outcome = looked(quilt)
        self.told: list[str] = []
        self.unsaved = Unsaved(quilt)

    @property
    def app(self) -> Any:
        """The dialogs come to her."""
        return self

    def attempt(self, act: Act, *, say: bool = True) -> str | None:
        return self.carry(lambda: do(self.quilt, act), say=say)

    def carry(self, work: Callable[[], Outcome], *, say: bool = True) -> str | None:
        try:
            self.outcome = work()
        except CautionFirst:
            raise
        except Refused as refused:
            self.outcome = looked(self.quilt)
            return str(refused)
        return None

    def count(self, act: Count | JoinRows | BeginRows) -> str | None:
        try:
            return self.attempt(act)
        except CautionFirst:
            return self.attempt(replace(act, caution_read=True))

    def tell(self, text: str, *, refused: bool = False) -> None:
        self.told.append(text)

    async def push_screen_wait(self, dialog: object) -> Any:
        match dialog:
            case ChoiceDialog():
                self.told.append(dialog._title)
                chosen = self.chance.choice(dialog._choices).value
                self.told.append(f"  {chosen}")
                return chosen
            case FloorDialog() | WallScreen() | ProposedWallScreen():
                return None
            case FormDialog():
                return self._fill_in(dialog)
            case QuestionDialog():
                return "yes"
            case WorksheetScreen():
                return self._take_a_layout(dialog)
            case FabricsScreen() | RowInHandScreen():
                return None
            case _:
                assert isinstance(dialog, LinesDialog)
                return None

    def _fill_in(self, form: FormDialog) -> bool:
        values = {}
        for field in form._fields:
            known = TYPED.get(field.id, ("6 3/8",) if field.id in HERS_ALONE else ("",))
            values[field.id] = field.start or self._a_row(field) or self.chance.choice(known)
        self.told.append(f"{form._title}: {values}")
        hers = [f for f in form._fields if f.id in HERS_ALONE]
        tags = any(f.id == "first" and f.start for f in hers)
        refusal = form.carry_out(values)
        if refusal is not None and (not hers or tags):
            raise Refusal(f"{form._title}: {refusal}")
        return refusal is None

    def _a_row(self, field: Field) -> str:
        """Letters for the units of a row of the wall; empty for any other line."""
        units = re.fullmatch(r"Row \d+: (\d+) units?", field.label)
        return " ".join(self.chance.choices("ABC", k=int(units[1]))) if units else ""

    def _take_a_layout(self, sheet: WorksheetScreen) -> None:
        """One of the layouts that enter makes the target."""
        others = [one.target for one in sheet.layouts if not one.current]
        if others:
            target = self.chance.choice(others)
            self._must(sheet._attempt(ChangeTarget(target.rows, target.columns)))

    def _must(self, refusal: str | None) -> None:
        if refusal is not None:
            raise Refusal(refusal)

    # -- what she does ---------------------------------------------------------

    async def go_on(self) -> None:
        """One thing that is offered now."""
        turn = self.chance.random()
        state, now = self.quilt.state, self.outcome.plan
        if self.outcome.question is not None and turn < 0.9:
            self._must(self.attempt(Answer(self.outcome.question.id, "yes")))
        elif now.suggestion is not None and turn < 0.6:
            line = now.line(now.suggestion.stage)
            most = min(line.to_do, line.ready)
            n = self.chance.choice((1, most, most))
            self.told.append(f"count {line.stage.id} {n}")
            self._must(self.count(Count(line.stage.id, n)))
        elif now.shortfall is not None and now.shortfall.layouts and turn < 0.7:
            layout = self.chance.choice(now.shortfall.layouts)
            self.told.append(f"take {layout}")
            if state.standing is Standing.IN_PROGRESS:
                self._must(self.attempt(ChangeTarget(layout.rows, layout.columns)))
        elif state.last_act and turn < 0.73:
            self.told.append("undo")
            self._must(self.attempt(Undo(state.last_act[-1])))
            if len(self.quilt.record) % 2:
                self.told.append("redo")
                self._must(self.attempt(Redo(self.quilt.state.last_undone[-1])))
        elif turn < 0.76:
            for count in worth_counting(self.quilt):
                await count_by_hand(self, count)
        elif turn < 0.8:
            await close(self)
        else:
            what = self.chance.choice(
                [one for one in ASKS if one not in ("tonight", "where", "elsewhere")]
            )
            self.told.append(f"ask {what}")
            await ask(what)(self)


@pytest.mark.parametrize("seed", range(42))
def test_nothing_that_is_offered_is_refused(seed: int, tmp_path: Path) -> None:
    chance = Random(seed)
    clock = StandingClock()
    plain = a_quilt(
        method_ids()[seed % len(method_ids())],
        chance.choice((8, 24, 60)),
        chance.choice((1, 2, 3, 4)),
        chance.choice((1, 2, 3)),
        borders=chance.choice((0, 1, 2)),
        finishing=("layer", "quilt", "bind")[: chance.choice((0, 3))],
    )
    library = Library(tmp_path / "quilts.db", EVENING)
    try:
        entry = library.add(suited(plain), EVENING)
        chair = Chair(OpenQuilt(library, entry, clock), chance)
        for _ in range(60):
            clock.forward(timedelta(minutes=chance.choice((0, 1, 1, 5, 5, 20, 300, 60 * 24 * 30))))
            try:
                asyncio.run(chair.go_on())
            except Refusal as refusal:
                story = "\n".join(chair.told[-12:])
                raise AssertionError(f"{refusal}\n{story}") from None
    finally:
        library.close()
