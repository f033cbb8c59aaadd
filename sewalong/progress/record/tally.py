"""The running tally of a quilt: events are applied to it one by one; nothing is copied for one.

It is frozen into a `State` once, when the events are through.
"""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct, field

from sewalong.piecing.method import Hazard, Stage
from sewalong.progress.record.begun_rows import Begun, left_begun, pieces_held, units_across
from sewalong.progress.record.places import came_to, known, settled
from sewalong.progress.record.route import JOIN_ROWS, ROW, SEW_ROWS, Route, RouteStage, route_for
from sewalong.progress.record.sets.track import SetTrack
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.state import (
    Check,
    Note,
    SeamChange,
    SessionRecord,
    Spoilage,
    Standing,
    State,
)
from sewalong.progress.record.wall import NOTHING_LAID, WallNow
from sewalong.quilt.quilt import Quilt, Target


class Sitting(Struct):
    """The open session so far."""

    number: int
    opened: datetime
    last_at: datetime
    counts: dict[str, int] = field(default_factory=dict)

    def frozen(self) -> SessionRecord:
        """As it stands now."""
        return SessionRecord(self.number, self.opened, self.last_at, dict(self.counts))


class Tally(Struct):
    """What the events have added up to so far; the fields are those of `State`.

    `sitting` is the open session and `sessions` those before it. `acts` holds, for each act
    that can be taken back, the numbers of its events, and `taken_back` those of each act that can
    be put back, the next last. `seq` and `last_at` are the number and
    the time of the last event; `put_away` is the first and the last number of the last run of
    puttings away of one time.
    """

    quilt: Quilt
    target: Target
    route: Route
    piles: dict[str, int]
    done: dict[str, int]
    spoiled: dict[str, int] = field(default_factory=dict)
    found: dict[str, int] = field(default_factory=dict)
    recounted: dict[str, int] = field(default_factory=dict)
    spoilage: list[Spoilage] = field(default_factory=list)
    missing: dict[str, int] = field(default_factory=dict)
    places: dict[str, dict[str, int | None]] = field(default_factory=dict)
    settings: Settings | None = None
    settings_at: datetime | None = None
    notes: list[Note] = field(default_factory=list)
    sessions: list[SessionRecord] = field(default_factory=list)
    sitting: Sitting | None = None
    standing: Standing = Standing.IN_PROGRESS
    aside_reason: str = ""
    chosen: str | None = None
    chosen_by_hand: bool = False
    last_lot: dict[str, int] = field(default_factory=dict)
    last_counted: str = ""
    cautions_read: dict[str, datetime] = field(default_factory=dict)
    changed: dict[str, datetime] = field(default_factory=dict)
    checks: list[Check] = field(default_factory=list)
    seam_changes: list[SeamChange] = field(default_factory=list)
    went_on: int = 0
    press: dict[str, str] = field(default_factory=dict)
    joints: list[tuple[int, int]] = field(default_factory=list)
    mentioned: dict[str, datetime] = field(default_factory=dict)
    seen_to: list[int] = field(default_factory=list)
    iron_asked: bool = True
    begun: Begun = ()
    elsewhere: dict[str, str] = field(default_factory=dict)
    sets: SetTrack = field(default_factory=SetTrack)
    wall: WallNow = NOTHING_LAID
    acts: list[tuple[int, ...]] = field(default_factory=list)
    taken_back: list[tuple[int, ...]] = field(default_factory=list)
    seq: int = 0
    last_at: datetime | None = None
    put_away: tuple[int, int] = (0, 0)

    def change(self, pile: str, n: int) -> None:
        """`n` pieces come to a pile (below zero: leave it); no place then holds more than it."""
        self.piles[pile] += n
        places = self.places.get(pile)
        if places:
            self.places[pile] = settled(places, self.piles[pile], self.elsewhere)

    def count(self, stage_id: str, n: int) -> None:
        """Count `n` of a stage; a negative `n` puts the pieces back.

        A stage that another target had and this one has not is passed over.
        """
        stage = self.route.stage(stage_id)
        if stage is None:
            return
        self.pass_on(stage, n)
        if stage_id == SEW_ROWS and n < 0 and self.wall.pressed and ROW.id in self.piles:
            self.wall = self.wall.unpicked_to(max(0, self.piles[ROW.id]))
        if isinstance(stage, Stage):
            self.sets.flow(self.quilt, stage, n, self.piles)
        if stage_id == JOIN_ROWS:
            # What is unpicked without saying which were the seams sewn last.
            del self.joints[self.done[JOIN_ROWS] :]
        self.work_at(stage_id, n)

    def pass_on(self, stage: RouteStage, n: int, *, of_begun: bool = True) -> None:
        """`n` of a stage are done: its pieces go from pile to pile, wherever and by whomever. Rows
        begun are among them unless they lie elsewhere."""
        self.take(stage, n, of_begun=of_begun)
        if isinstance(stage, Stage):
            self.change(stage.makes.pile, n * stage.makes.count)
        self.done[stage.id] += n

    def lies_at(self, pile: str, place: str, n: int) -> None:
        """`n` more of a pile come to lie at a place (below zero: are used up there); told before the
        pile itself changes."""
        places = came_to(self.places.get(pile, {}), place, n, self.piles[pile])
        if places:
            self.places[pile] = places
        else:
            self.places.pop(pile, None)

    def taken_anywhere(self, pile: str, n: int) -> None:
        """`n` of a pile are about to be used up, and nobody said where."""
        places = self.places.get(pile, {})
        if known(places) > self.piles[pile] - n:
            self.places[pile] = dict.fromkeys(places, None)

    def sets_unseen(self, stage: RouteStage, n: int) -> None:
        """`n` of a stage were done where nobody looked which sets they were of."""
        for taken in stage.takes:
            self.sets.leave(self.quilt, taken.pile, n * taken.count, self.piles)
        if isinstance(stage, Stage):
            self.sets.come(self.quilt, stage.makes.pile, n * stage.makes.count)

    def take(self, stage: RouteStage, n: int, *, of_begun: bool = True) -> None:
        """Take from their piles what `n` of a stage take; rows begun are finished first."""
        if of_begun and stage.id == SEW_ROWS and n > 0 and self.begun:
            unit = self.quilt.method.unit
            across = units_across(self.route, unit)
            for pile, there in pieces_held(stage, unit, self.begun, across, n).items():
                self.change(pile, there)
            self.begun = left_begun(self.begun, across, n)
        for taken in stage.takes:
            self.change(taken.pile, -n * taken.count)

    def work_at(self, stage_id: str, n: int = 0) -> None:
        """The person is at a stage of the route, where she counted `n`; at 0 it is only begun."""
        self.chosen, self.chosen_by_hand = stage_id, False
        if self.sitting is not None:
            counts = self.sitting.counts
            counts[stage_id] = counts.get(stage_id, 0) + n
        stage = self.route.stage(stage_id)
        # Nothing is heated to take apart what was pressed.
        if n >= 0 and stage is not None and Hazard.IRON in stage.hazards:
            self.iron_asked = False

    def spoil(self, spoilage: Spoilage) -> None:
        """Pieces leave their pile for good."""
        self.change(spoilage.pile, -spoilage.n)
        of = (spoilage.set, spoilage.fabric)
        self.sets.leave(self.quilt, spoilage.pile, spoilage.n, self.piles, *of)
        if spoilage.fabric and not spoilage.set:
            self.sets.lose(spoilage.fabric, spoilage.n)
        plus(self.spoiled, spoilage.pile, spoilage.n)
        self.spoilage.append(spoilage)

    def differ(self, pile: str, n: int) -> None:
        """There are `n` more in a pile than was thought (below zero: fewer), and nobody knows of
        which sets they are."""
        self.change(pile, n)
        if n < 0:
            self.sets.leave(self.quilt, pile, -n, self.piles)
        else:
            self.sets.come(self.quilt, pile, n)

    def find(self, pile: str, n: int) -> None:
        """Pieces come to a pile from outside."""
        self.differ(pile, n)
        plus(self.found, pile, n)

    def turn_up(self, pile: str, n: int) -> None:
        """What comes to light is taken to be of what was missing, as far as any was."""
        self.miss(pile, -min(n, self.missing.get(pile, 0)))

    def miss(self, pile: str, n: int) -> None:
        """`n` more of a pile are missing; a pile of which none is, is not named."""
        plus(self.missing, pile, n)
        if not self.missing[pile]:
            del self.missing[pile]

    def retarget(self, target: Target, *, anew: bool = False) -> None:
        """Another layout is wanted. What was done at a stage it has not is no longer counted; no
        unit on the wall keeps its place if units are set `anew` in another way."""
        self.target, self.route = target, route_for(self.quilt, target)
        self.piles = dict.fromkeys(self.route.piles, 0) | self.piles
        self.done = {stage.id: self.done.get(stage.id, 0) for stage in self.route.stages}
        rows = len(self.quilt.rows_for(target))
        self.joints = [joint for joint in self.joints if max(joint) <= rows]
        if self.wall.rows:
            lengths = [row.units for row in self.quilt.rows_for(target)]
            self.wall = self.wall.fitted(lengths, anew=anew)
        if self.chosen not in self.done:
            self.chosen, self.chosen_by_hand = None, False

    def replan(self, quilt: Quilt) -> None:
        """The plan is another: as many more pieces as it begins with come to their piles."""
        for was, now in zip(self.quilt.starts, quilt.starts, strict=True):
            self.change(now.pile, now.count - was.count)
        anew = quilt.is_on_point is not self.quilt.is_on_point
        self.quilt = quilt
        self.retarget(quilt.target, anew=anew)

    def can_undo(self, seq: int) -> None:
        """The event numbered `seq` can be taken back by itself, and nothing put back over it."""
        self.acts.append((seq,))
        self.taken_back.clear()

    def one_act(self, events: int) -> None:
        """The last so many events that can be taken back were one act, and one undo is enough."""
        self.acts[-events:] = [tuple(seq for act in self.acts[-events:] for seq in act)]

    def took_back(self, seq: int, *, together: bool) -> None:
        """The event numbered `seq` can be put back, with the act taken back last if `together`."""
        rest = self.taken_back.pop() if together and self.taken_back else ()
        self.taken_back.append((seq, *rest))

    def put_back(self) -> None:
        """The first event of the act that was to be put back next counts again."""
        _, *rest = self.taken_back.pop() if self.taken_back else (0,)
        if rest:
            self.taken_back.append(tuple(rest))

    def forget_the_past(self) -> None:
        """Let go of what only grows and no event is checked against.

        Of the sessions the last is kept, and of the measurements the last of each piece and person.
        """
        for past in (self.notes, self.spoilage, self.seam_changes, self.mentioned):
            past.clear()
        self.seen_to.clear()
        self.acts.clear()
        self.taken_back.clear()
        del self.sessions[:-1]
        last = {(check.piece, check.by): check for check in self.checks}
        self.checks = [one for one in self.checks if last[(one.piece, one.by)] is one]

    def copy(self) -> Tally:
        """The same, changed apart from this one."""
        kept = {name: getattr(self, name) for name in self.__struct_fields__}
        for name, value in kept.items():
            if isinstance(value, dict | list):
                kept[name] = value.copy()
        if self.sitting is not None:
            sitting = self.sitting
            kept["sitting"] = Sitting(
                sitting.number, sitting.opened, sitting.last_at, dict(sitting.counts)
            )
        kept["sets"] = self.sets.copy()
        return Tally(**kept)

    def freeze(self) -> State:
        """Everything so far, as it can be handed about."""
        sessions = tuple(self.sessions)
        if self.sitting is not None:
            sessions = (*sessions, self.sitting.frozen())
        return State(
            quilt=self.quilt,
            target=self.target,
            route=self.route,
            piles=dict(self.piles),
            done=dict(self.done),
            spoiled=dict(self.spoiled),
            found=dict(self.found),
            recounted=dict(self.recounted),
            spoilage=tuple(self.spoilage),
            missing=dict(self.missing),
            places=dict(self.places),
            elsewhere=dict(self.elsewhere),
            settings=self.settings,
            settings_at=self.settings_at,
            notes=tuple(self.notes),
            sessions=sessions,
            standing=self.standing,
            aside_reason=self.aside_reason,
            chosen=self.chosen,
            chosen_by_hand=self.chosen_by_hand,
            last_lot=dict(self.last_lot),
            last_counted=self.last_counted,
            cautions_read=dict(self.cautions_read),
            changed=dict(self.changed),
            checks=tuple(self.checks),
            seam_changes=tuple(self.seam_changes),
            went_on=self.went_on,
            press=dict(self.press),
            joints=tuple(self.joints),
            begun=self.begun,
            mentioned=dict(self.mentioned),
            seen_to=tuple(self.seen_to),
            sets=self.sets.frozen(),
            wall=self.wall,
            iron_asked=self.iron_asked,
            last_act=self.acts[-1] if self.acts else (),
            last_undone=self.taken_back[-1] if self.taken_back else (),
            seq=self.seq,
        )


def opening(quilt: Quilt) -> Tally:
    """The tally before anything happened: all start pieces in their piles."""
    route = route_for(quilt, quilt.target)
    piles = dict.fromkeys(route.piles, 0)
    for start in quilt.starts:
        piles[start.pile] += start.count
    return Tally(
        quilt=quilt,
        target=quilt.target,
        route=route,
        piles=piles,
        done={stage.id: 0 for stage in route.stages},
    )


def plus(counts: dict[str, int], key: str, n: int) -> None:
    """`n` more under `key`."""
    counts[key] = counts.get(key, 0) + n
