"""What is sewn already and would not go with another plan: what has to be unpicked first.

A changed plan is refused only for this. What units come to is loaded only when it is asked for:
it takes the geometry of the method.
"""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.lengths import as_given
from sewalong.piecing.derive import Derivation
from sewalong.piecing.method import Station
from sewalong.progress.record.layouts_in_reach import must_be_within_reach
from sewalong.progress.record.limits import are
from sewalong.progress.record.on_the_top import last_on_the_top, unpick_rows_first
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.route import (
    ADD_BORDERS,
    FINISHING,
    ROW,
    SIDES_OF_A_BORDER,
)
from sewalong.progress.record.rows_sewn import rows_pile
from sewalong.progress.record.set_already import set_otherwise
from sewalong.progress.record.state import State
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import decided_unit, is_trimmed, raw_unit, unit_text
from sewalong.quilt.web import WEB_ROW, WEB_UNIT


def refuse_what_is_sewn_otherwise(state: State, wanted: Quilt, *, as_sewn: bool) -> None:
    """Raise Refused where `wanted` contradicts what the record says is sewn.

    `as_sewn`: the pieces made so far are as `wanted` has them; the plan had it wrong.
    """
    if wanted.target != state.target:
        target = wanted.target
        must_be_within_reach(state, target.rows, target.columns, as_web=wanted.is_web)
    for reason in _reasons(state, wanted, as_sewn):
        raise Refused(reason)


def _reasons(state: State, wanted: Quilt, as_sewn: bool) -> Iterator[str]:
    yield from _pieces_gone(state, wanted)
    if not as_sewn:
        yield from _other_units(state, wanted)
    yield from set_otherwise(state, wanted)
    yield from _put_together(state, wanted)
    yield from _borders(state, wanted)
    yield from _after_the_top(state, wanted)


def _pieces_gone(state: State, wanted: Quilt) -> Iterator[str]:
    """Fewer pieces to begin with than were used already."""
    for was, now in zip(state.quilt.starts, wanted.starts, strict=True):
        pile, more = now.pile, now.count - was.count
        if state.piles[pile] + more < 0:
            noun = state.route.piles[pile].noun
            there = noun.count(state.piles[pile])
            yield (
                f"{noun.count(-more)} fewer cannot be: of the {noun.many} only {there} "
                f"{are(state.piles[pile])} left, the others are sewn. If fewer lie there, recount "
                "that pile instead."
            )


def _other_units(state: State, wanted: Quilt) -> Iterator[str]:
    """Rows hold units of the size they were sewn at, and pieces half way become such units."""
    made, anew = derived(state.quilt), derived(wanted)
    was, now = decided_unit(state.quilt, made), decided_unit(wanted, anew)
    if now != was:
        yield from sewn_of_units(state, was)
    come_to = raw_unit(made.unit)
    if come_to == raw_unit(anew.unit):
        return
    if is_trimmed(wanted) and come_to.covers(now):
        return
    waiting = list(_half_way(state, made, sewn_only=_same_cuts(state.quilt, wanted)))
    if not waiting:
        return
    lie = ", ".join(state.route.piles[pile].noun.count(n) for pile, n in waiting)
    smaller = Size(min(come_to.width, now.width), min(come_to.length, now.length))
    unit = wanted.unit
    apart = "What is cut cannot be taken apart again: "
    if _can_be_taken_apart(state, [pile for pile, _ in waiting]):
        apart = "Take them apart first and count that as unpicked, or "
    yield (
        f"{lie} {are(sum(n for _, n in waiting))} made already, for units of "
        f"{unit_text(come_to, state.quilt.unit)} unfinished; by the new plan they would be "
        f"{unit_text(raw_unit(anew.unit), unit)}. {apart}have all trimmed to "
        f"{unit_text(smaller, unit)} or less in the same change, or say that they were made by the "
        "new plan from the first."
    )


def _can_be_taken_apart(state: State, piles: list[str]) -> bool:
    """Whether no cutter came between these pieces and those they began as."""
    cut: set[str] = set()
    for stage in state.quilt.method.stages:
        if stage.station is Station.MAT or any(taken.pile in cut for taken in stage.takes):
            cut.add(stage.makes.pile)
    return cut.isdisjoint(piles)


def sewn_of_units(state: State, size: Size) -> Iterator[str]:
    """Why rows sewn of units of that size have to be unpicked before units can be another."""
    pile = rows_pile(state.quilt)
    rows = state.piles[pile.id]
    units = unit_text(size, state.quilt.unit)
    if rows or last_on_the_top(state) is not None:
        sewn = f"{pile.noun.count(rows)} {are(rows)} sewn already with units of {units}."
        yield f"{sewn} {unpick_rows_first(state, 'that size')}"
    elif state.begun:
        yield f"A row is begun with units of {units}. Take it apart first, or keep that size."


def _same_cuts(was: Quilt, now: Quilt) -> bool:
    return [start.size for start in was.starts] == [start.size for start in now.starts]


def _half_way(state: State, made: Derivation, *, sewn_only: bool) -> Iterator[tuple[str, int]]:
    """The piles between the starting pieces and the rows, and how many lie in each.

    `sewn_only`: those no seam has touched yet can still be sewn with another.
    """
    sewn: set[str] = set()
    for stage in state.quilt.method.stages:
        if made.stage(stage.id).sewn or any(taken.pile in sewn for taken in stage.takes):
            sewn.add(stage.makes.pile)
        pile = stage.makes.pile
        if state.piles[pile] and (pile in sewn or not sewn_only):
            yield pile, state.piles[pile]


def _put_together(state: State, wanted: Quilt) -> Iterator[str]:
    """Rows sewn, or a web begun, where `wanted` has it the other way."""
    if wanted.is_web == state.quilt.is_web:
        return
    if state.quilt.is_web:
        if seams := state.piles[WEB_ROW.id] + state.piles[WEB_UNIT.id]:
            yield (
                f"{seams} seam{'' if seams == 1 else 's'} of the web {are(seams)} sewn already. Count "
                f"{'it' if seams == 1 else 'them'} as unpicked first, and what is sewn as rows begun "
                "after the change; or keep the web."
            )
        return
    rows = state.piles.get(ROW.id, 0)
    if rows:
        yield (
            f"{ROW.noun.count(rows)} {are(rows)} sewn already, one after another. "
            f"{unpick_rows_first(state, 'to rows')}"
        )
    elif state.begun:
        yield (
            "A row is begun. Write down that nothing is begun first, and count what is sewn as seams "
            "of the web after the change; or keep to rows."
        )


def _borders(state: State, wanted: Quilt) -> Iterator[str]:
    """A border with a side on the top already."""
    quilt, sides = state.quilt, state.done.get(ADD_BORDERS, 0)
    begun = -(-sides // SIDES_OF_A_BORDER)
    for number, border in enumerate(quilt.borders[:begun], start=1):
        of_it = min(SIDES_OF_A_BORDER, sides - SIDES_OF_A_BORDER * (number - 1))
        on = f"Border {number} is on the top already, {of_it} of its {SIDES_OF_A_BORDER} sides."
        unpick = sides - SIDES_OF_A_BORDER * (number - 1)
        first = f"Unpick {'that side' if unpick == 1 else f'the last {unpick} sides'} first"
        if number > len(wanted.borders):
            yield f"{on} {first}, or keep it."
        elif wanted.borders[number - 1].cut != border.cut:
            width = as_given(border.cut, quilt.unit)
            yield f"{on} {first}, or keep it at {width}."
    if sides and wanted.choices.corners != quilt.choices.corners:
        turned = f"Borders are sewn on already with the corners “{quilt.choices.corners}”."
        yield f"{turned} Unpick their {sides} sides first, or keep that."
    last = last_on_the_top(state)
    if len(wanted.borders) > len(quilt.borders) and last is not None and last.id in FINISHING:
        yield (
            f"The top has been through {last.label} already, and a border is sewn on before that. "
            "Unpick that first, or keep the borders."
        )


def _after_the_top(state: State, wanted: Quilt) -> Iterator[str]:
    for id in state.quilt.finishing:
        stage = state.route.stage(id)
        if id not in wanted.finishing and stage is not None and state.done[id]:
            done = stage.counts.count(state.done[id])
            yield f"{done} at {stage.label} is counted already. Unpick that first, or keep the stage."
    bound = state.done.get("bind", 0)
    if bound and wanted.choices.binding != state.quilt.choices.binding:
        yield (
            f"{bound} of {SIDES_OF_A_BORDER} sides are bound already with the strips as they were. "
            "Unpick them first, or keep that width."
        )
