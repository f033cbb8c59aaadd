"""Random histories: any command at any time, sensible or not, on a quilt of any method."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from fractions import Fraction
from functools import lru_cache
from random import Random
from typing import Literal, get_args

from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.definition import definition
from sewalong.piecing.derive import derive
from sewalong.piecing.method import Station
from sewalong.progress.acts.decide import decide
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.events.replanning import planned
from sewalong.progress.record.events.seam import Tool
from sewalong.progress.record.fold import fold
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.recount_rules import Accepted
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import State
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.quilt import Border, Quilt, Target
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint, Setting
from sewalong.quilt.size import Size
from sewalong.quilt.web import JOINED, ROWS, WEB
from tests.progress import every_act as c
from tests.progress.building import EVENING, a_quilt, opening

ASKS = (
    "count what is ready",
    "count on as suggested",
    "count",
    "unpick",
    "spoil",
    "find",
    "recount",
    "choose",
    "put away",
    "put some away",
    "accept",
    "recount a place",
    "measure",
    "go on",
    "press",
    "join",
    "begin rows",
    "bobbin",
    "mention",
    "note",
    "settings",
    "tool",
    "target",
    "trim",
    "plan",
    "read",
    "answer",
    "aside",
    "pick up",
    "done",
    "undo",
    "redo",
    "see to",
    "open",
    "close",
    "elsewhere",
)
OFTEN = ASKS[:2] * 9 + ASKS[2:6] * 3 + ASKS[6:17] * 2


@dataclass(frozen=True)
class Ask:
    """A command not yet tied to a quilt: `place` picks a stage or pile, `n` an amount."""

    what: str
    place: int
    n: int
    minutes: int


AMOUNTS = (1, 1, 1, 2, 2, 3, 4, 8, 0, -1, 10000)
MINUTES = (0, 1, 5, 20, 70, 300)

asks = st.lists(
    st.builds(
        Ask,
        what=st.sampled_from(OFTEN + ASKS),
        place=st.integers(0, 30),
        n=st.sampled_from(AMOUNTS),
        minutes=st.sampled_from(MINUTES),
    ),
    min_size=1,
    max_size=30,
)
HOW = get_args(Accepted)
TOOLS = get_args(Tool)
PIECES = ("unit", "row", "strips:3:3/2", "middle:3/2", "top:across", "no such piece")
LONG_ENOUGH_TO_REACH_THE_TOP = [Ask(ASKS[1], 0, 0, 1)] * 20


@lru_cache(maxsize=512)
def _small(
    method_id: str,
    pieces: int,
    rows: int,
    columns: int,
    borders: int,
    finished: bool,
    setting: Setting | Literal["web"] | None,
) -> Quilt:
    finishing = ("layer", "quilt", "bind") if finished else ()
    quilt = a_quilt(method_id, pieces, rows, columns, borders=borders, finishing=finishing)
    if setting == "web":
        return replace(quilt, joined=WEB if min(rows, columns) > 1 else ROWS)
    if isinstance(setting, Sashing) and setting.why_not(columns):
        setting = replace(setting, cornerstones=None)
    if isinstance(setting, SetOnPoint) and not _square_units(method_id):
        setting = None
    return replace(quilt, setting=setting)


def _square_units(method_id: str) -> bool:
    strips = definition(method_id).starts[0].strip
    unit = derive(method_id, Fraction(5, 2) if strips else Fraction(5)).unit
    return abs(unit.width - unit.height) < 1e-6


WIDE = Fraction(2)
STONES = Cornerstones("coral")
ON_POINT = SetOnPoint("oat")
SETTINGS = (
    Sashing(WIDE, "oat"),
    Sashing(WIDE, "oat", frame=True),
    Sashing(WIDE, "oat", cornerstones=STONES),
    Sashing(WIDE, "oat", frame=True, cornerstones=STONES),
)


small_quilt = st.builds(
    _small,
    st.sampled_from(method_ids()),
    st.integers(1, 40),
    st.integers(1, 3),
    st.integers(1, 4),
    st.integers(0, 1),
    st.booleans(),
    st.sampled_from((None, None, None, *SETTINGS, ON_POINT, ON_POINT, "web", "web")),
)


def _mixed(seed: int) -> list[Ask]:
    """A history in which everything comes up about equally often."""
    chance = Random(seed)
    return [
        Ask(
            what=chance.choice(OFTEN + ASKS),
            place=chance.randrange(31),
            n=chance.choice(AMOUNTS),
            minutes=chance.choice(MINUTES),
        )
        for _ in range(25)
    ]


histories = st.builds(
    lambda first, then: [*first, *then],
    st.sampled_from(([], [], LONG_ENOUGH_TO_REACH_THE_TOP)),
    st.one_of(asks, st.integers(0, 2**32).map(_mixed)),
)


@dataclass(frozen=True)
class Step:
    """One command of a history: refused (`new` empty, states the same) or carried out."""

    command: c.Act
    at: datetime
    before: State
    after: State
    new: tuple[Recorded, ...]
    refused: str | None
    caution_first: bool = False


def wander(
    quilt: Quilt, history: Sequence[Ask], record: list[Recorded] | None = None
) -> Iterator[Step]:
    """Carry a history out step by step; cautions met on the way are read."""
    record = [] if record is None else record
    state, at = opening(quilt), EVENING
    for ask in history:
        at += timedelta(minutes=ask.minutes)
        step = _carry_out(quilt, state, record, as_command(ask, state), at)
        if isinstance(step.command, c.Count | c.BeginRows) and step.caution_first:
            yield step
            stage = step.command.stage if isinstance(step.command, c.Count) else "sew-rows"
            step = _carry_out(quilt, state, record, c.ReadCaution(stage), at)
            yield step
            step = _carry_out(quilt, step.after, record, as_command(ask, state), at)
        yield step
        state = step.after


def _carry_out(
    quilt: Quilt, state: State, record: list[Recorded], command: c.Act, at: datetime
) -> Step:
    try:
        events = decide(state, command, at)
    except c.Refused as refused:
        return Step(command, at, state, state, (), str(refused), isinstance(refused, CautionFirst))
    new = tuple(Recorded(len(record) + i, event) for i, event in enumerate(events, start=1))
    record.extend(new)
    after = fold(quilt, record)
    return Step(command, at, state, after, new, None)


def as_command(ask: Ask, state: State) -> c.Act:
    """The command that `ask` is on this quilt; names that do not exist come up too."""
    stages = [stage.id for stage in state.route.stages]
    piles = list(state.route.piles)
    stage = ([*stages, "no-such-stage"] * 31)[ask.place]
    pile = ([*piles, "no-such-pile"] * 31)[ask.place]
    match ask.what:
        case "count what is ready":
            known = state.route.stage(stage)
            return c.Count(stage, max(1, ready(state, known)) if known else 1)
        case "count on as suggested":
            return _as_suggested(state)
        case "unpick":
            return c.Unpick(stage, ask.n)
        case "spoil":
            return c.Spoil(pile, ask.n, "frayed")
        case "find":
            return c.Find(pile, ask.n)
        case "recount":
            return c.Recount(pile, ask.n)
        case "choose":
            return c.ChooseStage(stage)
        case "put away":
            return c.PutPileAway(pile, f"box {ask.n}")
        case "put some away":
            return c.PutPileAway(pile, f"box {ask.place % 3}", ask.n)
        case "accept":
            return c.Recount(
                pile, _beside(state, pile, ask), HOW[(ask.place + ask.minutes) % len(HOW)]
            )
        case "recount a place":
            counted = _beside(state, pile, ask)
            return c.Recount(
                pile, counted, HOW[(ask.place + ask.minutes) % len(HOW)], f"box {ask.place % 3}"
            )
        case "measure":
            return c.Measure(PIECES[ask.place % len(PIECES)], (Fraction(ask.n, 2),))
        case "go on":
            return c.GoOn(stage)
        case "see to":
            return c.SeeTo(ask.n)
        case "press":
            return c.NotePress(stage, "towards the dark")
        case "join":
            return c.JoinRows(ask.place % 4, ask.place % 4 + ask.n)
        case "begin rows":
            return c.BeginRows(((ask.n, ask.place % 4),) if ask.place % 5 else ())
        case "bobbin":
            machine = [s.id for s in state.route.stages if s.station is Station.MACHINE]
            return c.BobbinEmpty(machine[ask.place % len(machine)], ask.n)
        case "mention":
            return c.Mention(f"thing {ask.n}")
        case "note":
            return c.WriteNote(f"note {ask.n}")
        case "settings":
            return c.RecordSettings(Settings(foot=f"foot {ask.n}"))
        case "tool":
            return c.ChangeTool(TOOLS[ask.place % len(TOOLS)])
        case "target":
            return c.ChangeTarget(ask.place % 5, max(ask.n, 0) % 5 or state.target.columns)
        case "trim":
            side = Fraction(ask.n + ask.place, 4)
            return c.DecideUnit(side, side)
        case "plan":
            was = planned(state)
            return c.ChangePlan(was, another_plan(was, ask.place, ask.n), ask.minutes > 60)
        case "read":
            return c.ReadCaution(stage)
        case "answer":
            return c.Answer("iron", "yes")
        case "aside":
            return c.LayAside()
        case "pick up":
            return c.PickUp()
        case "done":
            return c.MarkDone()
        case "undo":
            return c.Undo()
        case "redo":
            return c.Redo()
        case "open":
            return c.OpenSession()
        case "close":
            return c.CloseSession(dict.fromkeys(("iron", "blade", "machine", "pins"), "yes"))
        case "elsewhere":
            place = f"box {ask.place % 4}" if ask.place % 4 else ""
            return c.CountElsewhere(stage, ask.n, place, "Jo" if ask.minutes % 2 else "")
        case _:
            return c.Count(stage, ask.n)


def another_plan(was: Quilt, place: int, n: int) -> Quilt:
    """The plan with one thing different, `place` says which; some cannot be made."""
    first, *others = was.starts
    up = max(1, n % 7)
    changes: tuple[dict[str, object], ...] = (
        {"name": f"quilt {n}"},
        {"seam": Fraction(up, 16)},
        {"starts": (replace(first, size=first.size + Fraction(n % 5, 8)), *others)},
        {"starts": (replace(first, count=first.count + up), *others)},
        {"starts": (replace(first, count=max(1, first.count - up)), *others)},
        {"borders": (*was.borders, Border(Fraction(up), "oat linen"))},
        {"borders": was.borders[1:]},
        {"borders": tuple(replace(one, cut=one.cut + up) for one in was.borders)},
        {"finishing": ("layer", "quilt", "bind")[: n % 4]},
        {"trim": Size.square(Fraction(up, 2))},
        {"trim": None},
        {"unit": Unit.CM if was.unit is Unit.INCH else Unit.INCH},
        {"setting": (None, *SETTINGS, ON_POINT)[n % 6]},
        {"setting": replace(SETTINGS[n % 4], cut=Fraction(3))},
        {"joined": JOINED[n % 2]},
        {"target": Target(up % 4 + 1, n % 4 + 1)},
        {"choices": Choices(binding=Fraction(9, 4), corners="mitred", margin=Fraction(n % 3))},
        {"fabrics": (Fabric("A", f"print {n}"),), "notes": "two\nlines"},
    )
    return replace(was, **changes[place % len(changes)])


def _beside(state: State, pile: str, ask: Ask) -> int:
    """A count near what the record says, over or under it."""
    return state.piles.get(pile, 0) + (ask.n if ask.place % 2 else -ask.n)


def _as_suggested(state: State) -> c.Act:
    now = plan(state)
    if now.suggestion is None:
        return c.OpenSession()
    line = now.line(now.suggestion.stage)
    return c.Count(now.suggestion.stage, min(line.to_do, line.ready))
