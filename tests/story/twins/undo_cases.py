"""Taking back: every kind that can be taken back, and the acts of several events."""

from __future__ import annotations

from fractions import Fraction

from msgspec.structs import replace

from sewalong.progress.acts.act import Act
from tests.progress import every_act as c
from tests.screens.sewing_room import a_quilt
from tests.story.twins.histories import (
    DONE,
    FOOT_CHANGED,
    LAID_ASIDE,
    MEASURED_WRONG,
    PAIRED,
    PROVED,
    PUT_AWAY_IN_CLOSING,
    ROWS,
    SEWN,
    UNITS,
    WENT_ON,
)
from tests.story.twins.set_cases import ACCEPTED
from tests.story.twins.set_cases import QUILT as OF_SETS
from tests.story.twins.twin import Case, press
from tests.story.twins.wall_cases import LAID
from tests.story.twins.wall_cases import QUILT as WITH_A_WALL

ON_THE_WALL = (*ACCEPTED, LAID)


def _undo(what: str, *history: Act, times: int = 1) -> Case:
    history_of_sets = history[:1] == ACCEPTED
    return Case(
        f"undo: {what}",
        c.Undo,
        (press("u"),),
        ("undo",),
        ("undone",) * times,
        history,
        (WITH_A_WALL if LAID in history else OF_SETS) if history_of_sets else a_quilt(),
    )


UNDOABLE: dict[str, tuple[Act, ...]] = {
    "counted": SEWN,
    "unpicked": (*SEWN, c.Unpick("sew", 2)),
    "spoiled": (*PAIRED, c.Spoil("pair", 1, "cut askew")),
    "found": (*PAIRED, c.Find("square", 2)),
    "recounted": (*PAIRED, c.Recount("pair", 19, "missing")),
    "put away": (*PAIRED, c.PutPileAway("pair", "tin")),
    "noted": (*PAIRED, c.WriteNote("hold it by the middle")),
    "settings recorded": PROVED[:2],
    "tool changed": FOOT_CHANGED,
    "checked": MEASURED_WRONG,
    "seen to": (*MEASURED_WRONG, c.SeeTo(1)),
    "went on": WENT_ON,
    "press noted": (*PAIRED, c.NotePress("sew", "towards the dark")),
    "rows joined": (*ROWS, c.JoinRows(1, 2)),
    "rows begun": (*UNITS, c.BeginRows(((2, 2),))),
    "bobbin ran out": (*SEWN, c.BobbinEmpty("sew", 3)),
    "target changed": (*PAIRED, c.ChangeTarget(3, 4)),
    "unit decided": (*PAIRED, c.DecideUnit(Fraction(25, 4), Fraction(25, 4))),
    "plan changed": (*PAIRED, c.ChangePlan(a_quilt(), replace(a_quilt(), name="Other hills"))),
    "laid aside": LAID_ASIDE,
    "picked up": (*LAID_ASIDE, c.PickUp()),
    "marked done": DONE,
    "sets accepted": ACCEPTED,
    "sets laid": (*ACCEPTED, c.SwapSquares(1, 1, 1, 2)),
    "set marked": (*ACCEPTED, c.MarkSet(1, "skipped")),
    "made elsewhere": (*PAIRED, c.CountElsewhere("sew", 2, by="Jo")),
    "set taken up": (*ACCEPTED, c.TakeUp("pair", 2)),
    "wall laid": ON_THE_WALL,
    "units moved": (*ON_THE_WALL, c.SwapPlaces(1, 1, 2, 2)),
    "places locked": (*ON_THE_WALL, c.LockPlaces(((1, 1),))),
    "rows reordered": (*ON_THE_WALL, c.ExchangeRows(1, 2)),
}
"""By kind of event: a history that ends with one."""

UNDOING = (
    *(_undo(kind, *history) for kind, history in UNDOABLE.items()),
    Case(
        "undo: going on and the count that came with it",
        c.Undo,
        (press("space"), press("u")),
        ("count sew", "undo"),
        ("went on", "counted", "undone", "undone"),
        FOOT_CHANGED,
    ),
    Case(
        "put back: going on and the count that came with it",
        c.Redo,
        (press("space"), press("u"), press("q")),
        ("count sew", "undo", "redo"),
        ("went on", "counted", "undone", "undone", "put back", "put back"),
        FOOT_CHANGED,
    ),
    _undo("what was put away in closing", *PUT_AWAY_IN_CLOSING, times=2),
)
