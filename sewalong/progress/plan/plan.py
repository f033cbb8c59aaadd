"""The plan, looked at backward from the target: what every stage still needs, and what is short.

Netting, stage by stage from the last: what is still wanted of a pile, less what lies in
it, is what the stage before must make. Pieces that wait half way are so used before new
squares are, and a spoiled piece shows at once as more to do.
"""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace

from sewalong.piecing.method import Noun, Pieces, Stage, Station
from sewalong.progress.plan.smaller_layouts import layouts_within
from sewalong.progress.record.begun_rows import part_sewn, pieces_held, units_across
from sewalong.progress.record.joined_rows import pieces_to_join
from sewalong.progress.record.layouts_in_reach import must_be_within_reach
from sewalong.progress.record.readiness import ready
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import JOIN_ROWS, ROW, SEW_ROWS, RouteStage, TopStage
from sewalong.progress.record.rows_sewn import units_in_rows, wanted_in_rows
from sewalong.progress.record.state import Standing, State
from sewalong.quilt.quilt import Target
from sewalong.quilt.web import WEB_ROW


class StageLine(Struct, frozen=True):
    """One stage as it stands, counted in `stage.counts`.

    `needed` is all the target needs of the stage, `done` what was counted (more than
    `needed` where more was made than the target takes), `to_do` what is left, `ready` how
    many could be done now with what waits. `waiting` is the pieces in its pile now (the
    scarcer pile, when it takes two), at joining whole rows and rows joined already; of what is
    cut from cloth all that is left waits. `begun` is how much of what is left is sewn already, in
    counts: 0.5 for half a row.
    """

    stage: RouteStage
    needed: int
    done: int
    to_do: int
    ready: int
    waiting: int
    waiting_noun: Noun
    begun: float = 0.0

    @property
    def from_cloth(self) -> bool:
        """Whether it cuts pieces from cloth, which no pile is counted of."""
        return isinstance(self.stage, Stage) and not self.stage.takes


class Suggestion(Struct, frozen=True):
    stage: str
    reason: str


class Units(Struct, frozen=True):
    """`made`: whole units now, loose, in rows or in rows begun. `spare`: over, once all there is is made up."""

    made: int
    to_go: int
    spare: int
    possible: int


class Shortfall(Struct, frozen=True):
    """The target is out of reach by `units`; `pieces` more of the start piles would mend it.

    `spare_after` units would be over then. `layouts` are smaller layouts that what is
    left would fill, the nearest first.
    """

    units: int
    pieces: tuple[Pieces, ...]
    spare_after: int
    layouts: tuple[Target, ...]


class Plan(Struct, frozen=True):
    """What to do next and how far it is. `work_done` is from 0 to 1, weighed by work."""

    lines: tuple[StageLine, ...]
    units: Units
    over: tuple[Pieces, ...]
    shortfall: Shortfall | None
    suggestion: Suggestion | None
    work_done: float
    complete: bool

    def line(self, stage: str) -> StageLine:
        """The line of a stage; raises KeyError when the route has no such stage."""
        for line in self.lines:
            if line.stage.id == stage:
                return line
        raise KeyError(stage)


def plan(state: State) -> Plan:
    """The plan for `state`."""
    of_the_top = {top.id: top.steps - state.done[top.id] for top in state.route.of_the_top}
    wants = dict(wanted_in_rows(state.quilt, state.target))
    for top in state.route.of_the_top:
        for taken in top.takes:
            wants[taken.pile] = of_the_top[top.id] * taken.count
    to_do, missing, beyond = _backward(state, wants)
    to_do |= of_the_top
    possible = _possible(state)
    wanted = state.units_wanted
    made = state.piles[state.quilt.method.unit] + units_in_rows(state)
    units = Units(
        made=made,
        to_go=max(0, wanted - made),
        spare=max(0, possible - wanted),
        possible=possible,
    )
    lines = tuple(
        _line(state, stage, to_do[stage.id], beyond.get(stage.id, 0))
        for stage in state.route.stages
    )
    return Plan(
        lines=lines,
        units=units,
        over=_over(state, possible),
        shortfall=_shortfall(state, possible, missing),
        suggestion=_suggest(state, lines, possible),
        work_done=_work_done(lines),
        complete=all(line.to_do == 0 for line in lines),
    )


def _backward(
    state: State, wanted: Mapping[str, int]
) -> tuple[dict[str, int], dict[str, int], dict[str, int]]:
    """From the pieces `wanted` back to the start piles.

    By stage: counts still to do; by start pile: pieces missing; by stage: counts done
    beyond what is wanted, which went into pieces that lie over.
    """
    wants = dict(wanted)
    to_do: dict[str, int] = {}
    beyond: dict[str, int] = {}
    spent: dict[str, int] = {}
    for stage in reversed(state.route.of_pieces):
        made = stage.makes
        more = wants.get(made.pile, 0) - state.piles[made.pile]
        to_do[stage.id] = -(-max(0, more) // made.count)
        beyond[stage.id] = (max(0, -more) + spent.get(made.pile, 0)) // made.count
        for taken in stage.takes:
            wants[taken.pile] = wants.get(taken.pile, 0) + to_do[stage.id] * taken.count
            spent[taken.pile] = spent.get(taken.pile, 0) + beyond[stage.id] * taken.count
        if stage.id == SEW_ROWS and state.begun:
            unit = state.quilt.method.unit
            across = units_across(state.route, unit)
            there = pieces_held(stage, unit, state.begun, across, to_do[stage.id])
            for pile, n in there.items():
                wants[pile] -= n
    missing = {
        pile: wants[pile] - state.piles[pile]
        for pile in state.route.starts
        if wants[pile] > state.piles[pile]
    }
    return to_do, missing, beyond


def _possible(state: State) -> int:
    """Units there can be in all from what is left, whatever the target."""
    unit = state.quilt.method.unit

    def can_be(loose: int) -> bool:
        _, missing, _ = _backward(state, {unit: loose})
        return not missing

    enough, too_many = 0, 1
    while can_be(too_many):
        enough, too_many = too_many, too_many * 2
    while too_many - enough > 1:
        middle = (enough + too_many) // 2
        if can_be(middle):
            enough = middle
        else:
            too_many = middle
    return enough + units_in_rows(state)


def _over(state: State, possible: int) -> tuple[Pieces, ...]:
    """The pieces that cannot make a whole unit, brought as far as they go."""
    method = state.quilt.method
    unit = method.unit
    to_do, _, _ = _backward(state, {unit: possible - units_in_rows(state)})
    stages = list(method.stages)
    stock = {pile.id: state.piles[pile.id] for pile in method.piles}
    for stage in stages:
        _make(stock, stage, to_do[stage.id])
    for stage in stages:
        _make(stock, stage, min(stock[taken.pile] // taken.count for taken in stage.takes))
    over = {pile: n for pile, n in stock.items() if pile != unit}
    return _as_they_lie(state, over, stages)


def _make(stock: dict[str, int], stage: Stage, n: int) -> None:
    for taken in stage.takes:
        stock[taken.pile] -= n * taken.count
    stock[stage.makes.pile] += n * stage.makes.count


def _as_they_lie(state: State, over: dict[str, int], stages: list[Stage]) -> tuple[Pieces, ...]:
    """Say what is over in the pieces a person would hold.

    A pair that nobody has laid yet is two squares, and a four-patch that nobody has
    pressed yet is a four-patch; only sewing and cutting make another thing of it.
    """
    for stage in reversed(stages):
        made = stage.makes
        not_yet = max(0, over.get(made.pile, 0) - state.piles[made.pile])
        if stage.station in (Station.TABLE, Station.IRON) and made.count == 1 and not_yet:
            over[made.pile] -= not_yet
            for taken in stage.takes:
                over[taken.pile] += not_yet * taken.count
    return tuple(Pieces(pile, n) for pile, n in over.items() if n)


def _line(state: State, stage: RouteStage, to_do: int, beyond: int) -> StageLine:
    done = state.done[stage.id]
    needed = stage.steps if isinstance(stage, TopStage) else max(0, done - beyond) + to_do
    if not isinstance(stage, TopStage) and not stage.takes:
        return StageLine(stage, needed, done, to_do, to_do, to_do, stage.counts)
    waiting, noun = _waiting(state, stage)
    begun = 0.0
    if stage.id == SEW_ROWS and state.begun:
        across = units_across(state.route, state.quilt.method.unit)
        begun = part_sewn(state.begun, across, to_do)
    return StageLine(stage, needed, done, to_do, ready(state, stage), waiting, noun, begun)


def _waiting(state: State, stage: RouteStage) -> tuple[int, Noun]:
    if stage.id == JOIN_ROWS:
        return pieces_to_join(state)
    if not stage.takes:
        return ready(state, stage), stage.counts
    pile = scarcest(state, stage)
    assert pile is not None, "what takes nothing waits for nothing"
    return state.piles[pile], state.route.piles[pile].noun


def scarcest(state: State, stage: RouteStage) -> str | None:
    """Of the piles a stage takes from the one that holds the fewest counts; None for none."""
    fewest = min(
        stage.takes, key=lambda taken: state.piles[taken.pile] // taken.count, default=None
    )
    return fewest.pile if fewest else None


def _shortfall(state: State, possible: int, missing: Mapping[str, int]) -> Shortfall | None:
    wanted = state.units_wanted
    if possible >= wanted:
        return None
    more = tuple(Pieces(pile, n) for pile, n in missing.items())
    stock = dict(state.piles)
    for pieces in more:
        stock[pieces.pile] += pieces.count
    after = _possible(replace(state, piles=stock))
    web = state.quilt.is_web and state.piles[WEB_ROW.id] > 0
    rows = state.piles.get(ROW.id, 0)
    layouts = layouts_within(
        possible,
        state.target,
        setting=state.quilt.setting,
        columns=state.target.columns if rows else None,
        least_rows=rows,
        rows=state.target.rows if web else None,
    )
    can_be = tuple(layout for layout in layouts if can_be_wanted(state, layout))
    return Shortfall(wanted - possible, more, after - wanted, can_be)


def can_be_wanted(state: State, layout: Target) -> bool:
    """Whether a layout would be taken as the target: what is offered must not be refused."""
    try:
        must_be_within_reach(state, layout.rows, layout.columns)
    except Refused:
        return False
    return True


def _suggest(state: State, lines: tuple[StageLine, ...], possible: int) -> Suggestion | None:
    """Go on while the pile lasts; else the furthest-along stage that can and must be done.

    Never one that would leave fewer units possible than there are now. What is cut from cloth
    comes when nothing waits in a pile: it has to fit what is sewn.
    """
    if state.standing is not Standing.IN_PROGRESS:
        return None
    for line in lines:
        if line.stage.id == state.chosen and _worth_doing(state, line, possible):
            return Suggestion(line.stage.id, _go_on(line))
    for line in reversed(lines):
        if not line.from_cloth and _worth_doing(state, line, possible):
            return Suggestion(
                line.stage.id, f"the furthest along with enough waiting: {_waits(line)}"
            )
    for line in lines:
        if line.from_cloth and line.to_do:
            return Suggestion(line.stage.id, f"nothing goes on without them: {_waits(line)} to cut")
    return None


def _go_on(line: StageLine) -> str:
    return (
        f"{_waits(line)} still to cut" if line.from_cloth else f"its pile still has {_waits(line)}"
    )


def _worth_doing(state: State, line: StageLine, possible: int) -> bool:
    if not line.to_do or not line.ready:
        return False
    stage = line.stage
    if isinstance(stage, TopStage):
        return True
    # Only a pile that two stages take from can be used up by the first and fail the second.
    others = [taken.pile for one in state.route.of_pieces if one != stage for taken in one.takes]
    if not any(taken.pile in others for taken in stage.takes):
        return True
    stock = dict(state.piles)
    _make(stock, stage, 1)
    return _possible(replace(state, piles=stock)) >= possible


def _waits(line: StageLine) -> str:
    return line.waiting_noun.count(line.waiting)


def _work_done(lines: tuple[StageLine, ...]) -> float:
    needed = sum(line.needed * line.stage.minutes for line in lines)
    done = sum((line.needed - line.to_do + line.begun) * line.stage.minutes for line in lines)
    return done / needed if needed else 1.0


def over_in_words(state: State, now: Plan) -> str:
    """What cannot make a whole one: "1 four-patch, 2 squares"; empty when nothing is over."""
    piles = state.route.piles
    return ", ".join(piles[one.pile].noun.count(one.count) for one in now.over)


def out_of(done: int, wanted: int, what: str) -> str:
    """ "7 of 21 done"; "21 of 21 done, 3 more" where more was made than is wanted."""
    if done and not wanted:
        return f"{done} {what}, none wanted"
    more = f", {done - wanted} more" if done > wanted else ""
    return f"{min(done, wanted)} of {wanted} {what}{more}"


def spare_in_words(now: Plan) -> str:
    """Units over what is wanted, or how many there will be too few: "3 units spare"."""
    if now.shortfall is not None:
        n = now.shortfall.units
        return f"{n} {'unit' if n == 1 else 'units'} short"
    n = now.units.spare
    return f"{n or 'no'} {'unit' if n == 1 else 'units'} spare"
