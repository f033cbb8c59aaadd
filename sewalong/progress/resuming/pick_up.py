"""What to pick up on coming back, from where, and what to do with it: one sentence."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from sewalong.progress.joining.web import seam_in_words
from sewalong.progress.plan.plan import Plan, StageLine
from sewalong.progress.record.route import JOIN_ROWS, ROW, TopStage
from sewalong.progress.record.state import Standing, State
from sewalong.quilt.web import SEW_WEB, START_WEB, WEB_PILES, WEB_ROW


class PickUp(Struct, frozen=True):
    """`facts` say it all, a sentence each; where there is nothing to pick up they say why.

    `label` goes before them where nothing is to be picked up. `stage` and `station` name where to go on, and `to_go` how many are to go there; all empty
    with nothing to pick up. `piles` are the ids of the piles whose places the sentence tells.
    """

    facts: tuple[str, ...]
    label: str = ""
    stage: str = ""
    station: str = ""
    to_go: str = ""
    piles: tuple[str, ...] = ()

    @property
    def sentence(self) -> str:
        """All of it, one sentence after the other."""
        return " ".join(self.facts)


def pick_up(state: State, now_plan: Plan) -> PickUp:
    """The next thing to do with the hands, as the plan has it."""
    if state.standing is Standing.LAID_ASIDE:
        reason = f": {state.aside_reason}" if state.aside_reason else "."
        return PickUp((f"This quilt is laid aside{reason}",), "Laid aside")
    if state.standing is Standing.DONE:
        return PickUp(("This quilt is marked done.",), "Done")
    if now_plan.complete:
        return PickUp(
            ("Every stage is done.", "Mark the quilt done, or change the target."), "Next"
        )
    if now_plan.suggestion is None:
        return PickUp(("Nothing can be gone on with: no stage has enough waiting.",), "Next")
    line = now_plan.line(now_plan.suggestion.stage)
    stage = line.stage
    return PickUp(
        facts=(_sentence(state, line),),
        stage=stage.label,
        station=stage.station,
        to_go=f"{stage.counts.count(line.to_do)} to go.",
        piles=tuple(pile for pile in _taken(state, line) if pile in state.where),
    )


def _sentence(state: State, line: StageLine) -> str:
    if line.from_cloth:
        return f"Get out the cloth and {line.stage.label}."
    what = " and ".join(_things(state, line))
    return f"Pick up {what} and {_do(state, line)}."


def _taken(state: State, line: StageLine) -> tuple[str, ...]:
    """The piles to go to; rows that are joined are the top, and lie where the rows were put. To a
    web that is begun, units are taken."""
    of_piles = tuple(taken.pile for taken in line.stage.takes)
    if state.quilt.is_web:
        on_it = isinstance(line.stage, TopStage) or line.stage.makes.pile in WEB_PILES
        return (WEB_ROW.id, *of_piles) if on_it and state.piles[WEB_ROW.id] else of_piles
    return (ROW.id, *of_piles) if isinstance(line.stage, TopStage) else of_piles


def _things(state: State, line: StageLine) -> Iterator[str]:
    """Each pile the stage takes with its place, in her own words, set apart by dashes."""
    for pile in _taken(state, line):
        place = state.where.get(pile) if state.piles.get(pile) else None
        what = _thing(state, line, pile)
        yield f"{what} – {place} –" if place else what


def _thing(state: State, line: StageLine, pile: str) -> str:
    if pile == ROW.id:
        return _rows(line)
    if state.quilt.is_web and pile == WEB_ROW.id:
        hangs_together = line.stage.id == JOIN_ROWS and not line.done
        in_one_web = hangs_together or not isinstance(line.stage, TopStage)
        return "the web" if in_one_web else _rows(line)
    return _pieces(state, pile)


def _rows(line: StageLine) -> str:
    if line.stage.id == JOIN_ROWS:
        return f"the {line.waiting} rows" if not line.done else "the rows"
    return "the rows" if line.stage.takes else "the top"


def _pieces(state: State, pile: str) -> str:
    noun, n = state.route.piles[pile].noun, state.piles[pile]
    return f"the {noun.one}" if n == 1 else f"the {noun.count(n)}"


def _do(state: State, line: StageLine) -> str:
    """What to do: the stage by its name; of a join, which rows."""
    if line.stage.id == JOIN_ROWS:
        # Which row comes next is looked for only where rows are joined.
        from sewalong.progress.joining.next_joins import join_in_words, joining

        if joins := joining(state).joins:
            words = join_in_words(joins[0])
            return words[:1].lower() + words[1:].rstrip(".")
    if state.quilt.is_web and line.stage.id in (START_WEB, SEW_WEB):
        words = seam_in_words(state).replace(":", ",").rstrip(".")
        return f"{line.stage.label}: {words[:1].lower()}{words[1:]}"
    return line.stage.label
