"""Looks at an open quilt, for both faces: as it stands now, by the clock it was opened with.

What a look takes is loaded when it is first taken.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from msgspec import Struct

from sewalong.progress.plan.plan import plan
from sewalong.service.open_quilt import OpenQuilt

if TYPE_CHECKING:
    from sewalong.fabrics.colours import Colour
    from sewalong.progress.joining.current_stage import InHand
    from sewalong.progress.pace.forecast import Forecast
    from sewalong.progress.pace.paces import Paces
    from sewalong.progress.pace.sessions import SessionFacts, StageTime
    from sewalong.progress.pace.tonight import Tonight
    from sewalong.progress.plan.plan import Plan
    from sewalong.progress.record.recount_rules import ToCount
    from sewalong.progress.record.route import RouteStage
    from sewalong.progress.resuming.coming_back import ComingBack
    from sewalong.progress.resuming.pause_note import PauseNote
    from sewalong.wall.keys import Key
    from sewalong.wall.stage_picture import StagePicture


class Going(Struct, frozen=True):
    """How it is going: the pace of every stage, the sessions so far, what took the time, and
    what is left."""

    pace: Paces
    sessions: tuple[SessionFacts, ...]
    spent: tuple[StageTime, ...]
    left: Forecast


def how_it_goes(quilt: OpenQuilt, session_minutes: int | None = None) -> Going:
    """Pace, sessions and forecast; `session_minutes` is how long a session will be, where that is
    said otherwise than in her preferences."""
    from sewalong.progress.pace.forecast import forecast_from
    from sewalong.progress.pace.paces import paces
    from sewalong.progress.pace.sessions import session_facts, what_took_the_time

    state, now = quilt.state, quilt.now()
    pace = paces(state, quilt.record, now)
    sessions = session_facts(state, pace.measured, now)
    minutes = session_minutes or quilt.preferences.session_minutes
    left = forecast_from(state, pace, sessions, now, minutes)
    return Going(pace, sessions, what_took_the_time(state.route, pace.measured), left)


def tonight(quilt: OpenQuilt, minutes: int, without: Sequence[str]) -> Tonight:
    """What fits into so many minutes; `without` names what is left out, a word each.

    Raises Refused for a word that names nothing that can be.
    """
    from sewalong.progress.pace.exclusions import leave_out
    from sewalong.progress.pace.tonight import tonight as evening

    return evening(quilt.state, quilt.record, quilt.now(), minutes, leave_out(without))


def where_was_i(quilt: OpenQuilt) -> ComingBack:
    """What a person coming back needs."""
    from sewalong.progress.resuming.coming_back import coming_back

    return coming_back(quilt.state, quilt.record, quilt.now())


def places(quilt: OpenQuilt) -> tuple[str, ...]:
    """What lies at each place and the next thing to do there; none where all lies in one."""
    from sewalong.progress.resuming.by_place import places_in_words

    return places_in_words(quilt.state, plan(quilt.state))


def time_left(quilt: OpenQuilt) -> tuple[str, ...]:
    """Hours and sessions left, each as a range; none when nothing is left."""
    from sewalong.progress.pace.duration_words import hours_between
    from sewalong.progress.pace.forecast_words import sessions_left

    left = how_it_goes(quilt).left
    return (hours_between(left.in_all), sessions_left(left)) if left.in_all else ()


def about_stage(quilt: OpenQuilt, stage: RouteStage) -> tuple[tuple[str, str], ...]:
    """All there is to know at a stage, a label and a text each."""
    from sewalong.progress.resuming.about_stage import about_stage as about

    return about(quilt.state, quilt.record, stage)


def bobbin_lasts(quilt: OpenQuilt, stage: RouteStage) -> str:
    """How many of a stage one bobbin sews, in words; empty where none can be said."""
    from sewalong.progress.pace.supplies.bobbin import lasts_in_words

    return lasts_in_words(quilt.state, quilt.record, stage)


def where_it_ran_out(quilt: OpenQuilt, stage: RouteStage) -> str:
    """From which piece of the last lot on nothing was sewn, likely; empty where nothing can tell."""
    from sewalong.progress.pace.supplies.bobbin import likely_unsewn

    return likely_unsewn(quilt.state, quilt.record, stage)


def worth_counting(quilt: OpenQuilt) -> tuple[ToCount, ...]:
    """The few piles to count first on coming back."""
    from sewalong.progress.resuming.recount_advice import worth_counting as few

    return few(quilt.state, quilt.now(), plan(quilt.state))


def pause(quilt: OpenQuilt) -> PauseNote:
    """What to keep on putting away: the next step, and where each pile lies."""
    from sewalong.progress.resuming.pause_note import pause_note

    return pause_note(quilt.state, quilt.now(), plan(quilt.state))


def work_pictured(quilt: OpenQuilt, hand: InHand, across: int, down: int) -> StagePicture | None:
    """The work of the stage in hand in at most `across` x `down` cells; None where the pieces are too
    small for their seams."""
    from sewalong.piecing.method import Stage
    from sewalong.progress.joining.sewn_top import in_hand_of_the_top, sewn_top
    from sewalong.wall.stage_picture import stage_picture
    from sewalong.wall.top_in_hand import top_in_hand

    state, stage = quilt.state, hand.line.stage
    if isinstance(stage, Stage):
        found = None
        if state.sets.sets:
            from sewalong.service.set_pictures import work_in_fabrics

            found = work_in_fabrics(state, stage, across, down)
        found = found or stage_picture(state.quilt, stage, across, down)
        if found is not None:
            return found
    lit = in_hand_of_the_top(state, hand.line)
    return top_in_hand(state.quilt, state.target, sewn_top(state), across, down, lit)


def coloured(quilt: OpenQuilt) -> Mapping[Key, Colour]:
    """The colours of what is pictured, as far as they are her own."""
    from sewalong.wall.of_quilt import own_colours

    if not quilt.state.sets.sets:
        return own_colours(quilt.state.quilt)
    from sewalong.service.set_pictures import cloth_coloured

    return cloth_coloured(quilt.state)


def top_pictured(quilt: OpenQuilt, across: int, down: int) -> StagePicture | None:
    """The top as it stands, as `work_pictured`."""
    from sewalong.progress.joining.sewn_top import sewn_top
    from sewalong.wall.top_in_hand import top_in_hand

    state = quilt.state
    return top_in_hand(state.quilt, state.target, sewn_top(state), across, down)


def return_pictured(quilt: OpenQuilt, across: int, down: int) -> StagePicture | None:
    """What to show a person coming back: the work of the stage in hand, or the top where none is."""
    from sewalong.progress.joining.current_stage import in_hand

    now = plan(quilt.state)
    if now.suggestion is None:
        return top_pictured(quilt, across, down)
    return work_pictured(quilt, in_hand(quilt.state, now), across, down)


def came_to(quilt: OpenQuilt, now: Plan) -> tuple[tuple[str, str], ...]:
    """What a quilt that is done came to, a label and a text each; empty until it is."""
    from sewalong.progress.resuming.done_facts import done_facts, is_done

    return done_facts(quilt.state, now, quilt.now()) if is_done(quilt.state, now) else ()
