"""What is said of proposed sets: plain sentences, one fact each."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from math import inf

from sewalong.fabrics.pairing import least_doubles
from sewalong.fabrics.sets.asked import Asked
from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.sets.tasks import Task
from sewalong.fabrics.sets.wanted import Dealt
from sewalong.fabrics.swatch import NAMED, ROUGH, listed
from sewalong.quilt.worksheet.line import plural


def proposal_words(asked: Asked, task: Task, dealt: Dealt) -> Iterator[str]:
    """The weakest contact and the bound first, then what is twice, unknown, over and one-way."""
    yield from _strength(asked, task, dealt)
    yield from _doubles(asked, task, dealt)
    if task.wanted.sets < asked.sets:
        yield f"The free squares are enough for {plural(task.wanted.sets, 'set')}, not for {asked.sets}."
    yield from _unknown(asked)
    yield from _over(asked, dealt)
    for print, swatch in enumerate(asked.swatches):
        lies_in = [str(n) for n, one in enumerate(dealt.sets, start=1) if print in one]
        if swatch.kind == "one-way" and lies_in:
            where = f"set{'s' * (len(lies_in) > 1)} {', '.join(lies_in)}"
            yield f"{swatch.called} is a one-way print: look which way up it lies in {where}."


def _strength(asked: Asked, task: Task, dealt: Dealt) -> Iterator[str]:
    if asked.rule is Rule.SCRAPPY:
        yield "Value was not asked for."
        return
    if dealt.weakest == inf:
        yield "How strong the seams are is not known."
        return
    number, one, other = _weakest(task, dealt.sets)
    yield f"Weakest: {_met(asked, one, other, dealt.weakest)}, in set {number}."
    if task.bound is None:
        yield "How strong it could be at best is not known."
    else:
        yield f"No choice of sets passes {task.bound:.0f}."
        yield _reason(asked, task, task.bound)
    kept = _kept(asked, task)
    if kept and task.wanted.strength[kept[0]][kept[1]] < dealt.weakest:
        met = _met(asked, *kept, task.wanted.strength[kept[0]][kept[1]])
        yield f"A set that is kept is weaker: {met}."


def _weakest(task: Task, sets: Sequence[Sequence[int]]) -> tuple[int, int, int]:
    """The number of the set from 1 on, and the two prints that meet there."""
    strength = task.wanted.strength
    return min(
        (
            (number, one[a], one[b])
            for number, one in enumerate(sets, start=1)
            for a, b in task.wanted.meeting
        ),
        key=lambda met: strength[met[1]][met[2]],
    )


def _kept(asked: Asked, task: Task) -> tuple[int, int] | None:
    """The two prints of the weakest contact in the sets that stand, where they are of her fabrics."""
    prints = {swatch.letter: print for print, swatch in enumerate(asked.swatches)}
    sets = [[prints[letter] for letter in one] for one in asked.locked if prints.keys() >= set(one)]
    if not sets or not task.wanted.meeting:
        return None
    _, one, other = _weakest(task, sets)
    return (one, other) if task.wanted.strength[one][other] > -inf else None


def _met(asked: Asked, one: int, other: int, strength: float) -> str:
    """ "A rust dots and F moss, 6 apart", or how it is light on dark."""
    pair = asked.swatches[one].called, asked.swatches[other].called
    if asked.rule is Rule.BY_COLOUR:
        return f"{pair[0]} and {pair[1]}, {strength:.0f} apart by colour"
    if asked.rule is not Rule.LIGHT_ON_DARK:
        return f"{pair[0]} and {pair[1]}, {strength:.0f} apart"
    if strength < 0:
        return f"{pair[0]} lies as the light one on {pair[1]} and is {-strength:.0f} darker"
    return f"{pair[0]} on {pair[1]}, {strength:.0f} apart"


def _reason(asked: Asked, task: Task, bound: float) -> str:
    sets, pairs = plural(task.wanted.sets, "set"), plural(task.pairs, "pair")
    if asked.rule is Rule.ONE_BACKGROUND:
        squares = plural(task.pairs, "square")
        return f"In {sets} {squares} lie beside the background, and of so many one is {bound:.0f} apart or less."
    return f"In {sets} {pairs} of squares meet, however they lie, and of so many one is {bound:.0f} apart or less."


def _doubles(asked: Asked, task: Task, dealt: Dealt) -> Iterator[str]:
    piles = [swatch for swatch in asked.swatches if swatch.is_pile and swatch.squares]
    if piles:
        yield f"Squares of one print may lie together: not known of {listed(piles)}."
    if not dealt.doubles:
        if len(piles) < len(asked.swatches):
            yield f"No {'other ' if piles else ''}print is twice in a set."
        return
    lie = "lies" if dealt.doubles == 1 else "lie"
    yield f"{plural(dealt.doubles, 'square')} {lie} in a set where the same print lies already."
    if asked.rule is not Rule.ONE_BACKGROUND:
        counts = [n for swatch in asked.swatches for n in swatch.prints]
        if dealt.doubles == least_doubles(counts, task.wanted.places, task.wanted.sets):
            yield f"No choice of {task.wanted.sets} sets has fewer."


def _unknown(asked: Asked) -> Iterator[str]:
    by_colour = asked.rule is Rule.BY_COLOUR
    unknown = [
        swatch
        for swatch in asked.swatches
        if swatch.squares and (swatch.colour if by_colour else swatch.value) is None
    ]
    if unknown and asked.rule is not Rule.SCRAPPY:
        yield f"Not known: the {'colour' if by_colour else 'value'} of {listed(unknown)}."
    if (
        asked.rule is not Rule.SCRAPPY
        and not by_colour
        and any(s.is_rough and s.squares for s in asked.swatches)
    ):
        yield ROUGH


def _over(asked: Asked, dealt: Dealt) -> Iterator[str]:
    over = Counter(dealt.over)
    if not over:
        return
    if len(over) > NAMED:
        yield f"Over: {plural(len(dealt.over), 'square')} of {len(over)} fabrics."
    else:
        yield f"Over: {', '.join(f'{n} {asked.swatches[print].called}' for print, n in over.items())}."
    unused = [
        asked.swatches[print] for print, n in over.items() if n == asked.swatches[print].squares
    ]
    if unused:
        yield f"In no set: {listed(unused)}."
