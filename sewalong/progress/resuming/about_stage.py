"""All there is to know at a stage of this quilt, on request: one label and one text a line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from sewalong.piecing.method import Hazard, Stage, Station
from sewalong.progress.joining.cut_span import ruler_words
from sewalong.progress.joining.easing import ease_words
from sewalong.progress.joining.either_way import both_right
from sewalong.progress.joining.exchanged_rows import KEEPS
from sewalong.progress.joining.orientation_checks import which_way_up
from sewalong.progress.joining.press_directions import BEGINS, press_rule
from sewalong.progress.joining.stage_words import what_is_left_of_the_point, what_to_do
from sewalong.progress.joining.unit_press import pressed_last, unit_press_words
from sewalong.progress.joining.web import web_words
from sewalong.progress.record.events.event import Recorded
from sewalong.progress.record.route import (
    ADD_SASHES,
    JOIN_ROWS,
    SEW_ROWS,
    RouteStage,
    TopStage,
)
from sewalong.progress.record.rows_sewn import rows_of
from sewalong.progress.record.state import State
from sewalong.quilt.web import SEW_WEB, START_WEB

Facts = Iterator[tuple[str, str]]


def about_stage(
    state: State, record: Sequence[Recorded], stage: RouteStage
) -> tuple[tuple[str, str], ...]:
    """What to do and what to check, and whatever else matters at this stage of this quilt."""
    is_web = state.quilt.is_web
    looks = (("Look", look) for look in which_way_up(stage.id, is_web=is_web))
    ruler = ruler_words(state.quilt, stage.id)
    return (
        ("Do", what_to_do(state.quilt, stage)),
        ("Check", stage.check),
        *((("Ruler", ruler),) if ruler else ()),
        *looks,
        *_point(state, stage),
        *(("Press", text) for text in press_plan(state, stage)),
        *(("Either way", text) for text in both_right(stage.either)),
        *_web(state, stage),
        *_crossings(state, stage),
        *_nesting(state, stage),
        *_ease(state, stage),
        *_bobbin(state, record, stage),
    )


def press_plan(state: State, stage: RouteStage) -> tuple[str, ...]:
    """Which way seams are pressed at a stage so that they nest, one rule each; empty where none is
    planned."""
    quilt, target = state.quilt, state.target
    if stage.id in (SEW_ROWS, START_WEB, SEW_WEB):
        rule = press_rule(sashed=quilt.sashing is not None)
        keeps = f" {BEGINS} {KEEPS}" if quilt.setting is None else ""
        if quilt.is_on_point:
            keeps = f" {BEGINS}"
        rows = f"{rule[:1].upper()}{rule[1:]}.{keeps}"
        units = unit_press_words(quilt, target)
        return (rows, f"Units: {units}") if units else (rows,)
    if isinstance(stage, Stage) and stage.id == pressed_last(quilt)[0]:
        return (unit_press_words(quilt, target),)
    return ()


def _point(state: State, stage: RouteStage) -> Facts:
    """Where the pieces come in that are cut too small, and where the point is trimmed."""
    later = state.route.starts[1:]
    if not later or not isinstance(stage, Stage):
        return
    trims = Hazard.CUTTER in stage.hazards and stage.id == state.quilt.written_method.trim_stage
    if trims or any(taken.pile in later for taken in stage.takes):
        words = what_is_left_of_the_point(state.quilt)
        if words:
            yield "Point", words


def _web(state: State, stage: RouteStage) -> Facts:
    """With sashes, and on point, there is more between units than a web holds together."""
    words = web_words(state.target) if stage.id == SEW_ROWS and state.quilt.setting is None else ""
    if words:
        yield "Another way", words


def _crossings(state: State, stage: RouteStage) -> Facts:
    """Where seams of two rows meet; along a long sash none do."""
    quilt, target = state.quilt, state.target
    if stage.id not in (JOIN_ROWS, ADD_SASHES):
        return
    if quilt.is_on_point:
        at = [(one.units + other.units) // 2 for one, other in pairwise(rows_of(state))]
        yield "Crossings", f"{sum(at)}: up to {max(at)} at each of {len(at)} seams."
        return
    joins, each = target.rows - 1, target.columns - 1
    if quilt.sashing is not None:
        if quilt.sashing.cornerstones is None:
            return
        each += quilt.sashing.among(target.columns)
        joins = stage.steps if isinstance(stage, TopStage) else joins
    if each:
        yield "Crossings", f"{joins * each}: {each} at each of {joins} seams."


def _nesting(state: State, stage: RouteStage) -> Facts:
    """Rows that changed places on the wall after they were pressed."""
    if stage.id == JOIN_ROWS and state.wall.is_laid:
        from sewalong.progress.joining.nesting import nesting_facts  # only where something is laid

        yield from (("Press", fact) for fact in nesting_facts(state))


def _ease(state: State, stage: RouteStage) -> Facts:
    if stage.id in (SEW_ROWS, START_WEB, SEW_WEB, JOIN_ROWS):
        words = ease_words(state.quilt, along_the_rows=stage.id == JOIN_ROWS)
        if words:
            yield "Ease", words


def _bobbin(state: State, record: Sequence[Recorded], stage: RouteStage) -> Facts:
    if stage.station is Station.MACHINE:
        from sewalong.progress.pace.supplies.bobbin import (
            lasts_in_words,  # looks through the whole record
        )

        words = lasts_in_words(state, record, stage)
        if words:
            yield "Bobbin", words
