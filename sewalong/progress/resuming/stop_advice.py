"""Whether this is a good place to stop, and what would be a better one close by."""

from __future__ import annotations

from msgspec import Struct

from sewalong.piecing.method import Stage, Station
from sewalong.progress.joining.bias_edges import STAY, bias, pieces_wanted
from sewalong.progress.plan.plan import Plan, StageLine
from sewalong.progress.record.state import State
from sewalong.progress.record.web_rows import WebSeam, next_seam
from sewalong.quilt.web import SEW_WEB, START_WEB


class StopHere(Struct, frozen=True):
    """`good` says whether it is a good place; `why` says why or why not.

    `offer` is the better place close by, in words ("" when there is none): `n` more counts at
    `stage`, about `minutes` by a first guess.
    """

    good: bool
    why: str
    offer: str = ""
    stage: str = ""
    n: int = 0
    minutes: float = 0.0


def stop_here(state: State, now_plan: Plan) -> StopHere:
    """Whether to stop now: not with a chain half sewn, and rather before the cuts on the bias
    than after them, for cut edges on the bias stretch while they wait."""
    cut_open = _waiting_on_the_bias(state) if pieces_wanted(now_plan) else ""
    chain = _chain(state, now_plan)
    if chain is not None and chain.stage.id != bias(state.quilt).cut:
        seam = next_seam(state) if chain.stage.id in (START_WEB, SEW_WEB) else None
        if seam is not None and not cut_open:
            return _in_a_web(chain, seam)
        return _half_a_chain(chain, cut_open)
    if cut_open:
        return StopHere(False, f"{cut_open} wait with edges on the bias: they stretch. {STAY}")
    if _before_the_cut(state):
        return StopHere(
            True, "Good: nothing is cut on the bias yet. Leave that cut for when you are back."
        )
    return StopHere(True, "Good: no chain is half sewn and no edge on the bias waits.")


def _chain(state: State, now_plan: Plan) -> StageLine | None:
    """The stage in hand when its pile is not done with; None at the end of a chain."""
    for line in now_plan.lines:
        if line.stage.id == state.chosen and isinstance(line.stage, Stage):
            begun = line.stage.id in (state.session.counts if state.session else {})
            return line if begun and line.to_do and line.ready else None
    return None


def _in_a_web(chain: StageLine, seam: WebSeam) -> StopHere:
    """A pass is a good place to stop, for then all rows are as long; within one the row tells."""
    if seam.is_first:
        return StopHere(True, "Good: a pass is sewn. Leave the threads between the rows uncut.")
    left, n = seam.left_of_pass, min(seam.left_of_pass, chain.ready)
    counts, minutes = chain.stage.counts, n * chain.stage.minutes
    verb = "is" if left == 1 else "are"
    why = f"{counts.count(left)} {verb} still to sew of pass {seam.number}."
    how_far = "to the end of the pass" if n == left else "as far as there are units"
    offer = f"Go on {how_far}: {counts.count(n)}, about {_whole(minutes)} by a guess?"
    return StopHere(False, why, offer, chain.stage.id, n, minutes)


def _whole(minutes: float) -> str:
    whole = max(1, round(minutes))
    return f"{whole} minute{'' if whole == 1 else 's'}"


def _half_a_chain(chain: StageLine, cut_open: str) -> StopHere:
    stage, n = chain.stage, min(chain.to_do, chain.ready)
    minutes = n * stage.minutes
    left = stage.counts.count(n)
    about = f", about {_whole(minutes)} by a guess"
    why = f"{left} {'is' if n == 1 else 'are'} still to do at {stage.label}."
    if cut_open:
        why += f" {cut_open} wait with edges on the bias: they stretch. {STAY}"
    chained = stage.station is Station.MACHINE
    end = "end of the chain" if chained else "end of the pile"
    offer = f"Go on to the {end}: {left}{about}?"
    good = not (chained or cut_open)
    return StopHere(good, why, offer, stage.id, n, minutes)


def _waiting_on_the_bias(state: State) -> str:
    """The pieces whose outer edges are on the bias, in words; empty when none wait."""
    return " and ".join(
        state.route.piles[pile].noun.count(state.piles[pile])
        for pile in bias(state.quilt).piles
        if state.piles[pile]
    )


def _before_the_cut(state: State) -> bool:
    """Whether pieces wait for the cut on the bias."""
    cut = bias(state.quilt).cut
    stage = state.route.stage(cut) if cut else None
    return isinstance(stage, Stage) and all(state.piles[t.pile] for t in stage.takes)
