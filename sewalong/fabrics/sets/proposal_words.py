"""What is said of proposed sets: plain sentences, one fact each."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf

from sewalong.fabrics.sets.rules import Rule
from sewalong.fabrics.sets.tasks import Task
from sewalong.fabrics.sets.wanted import Dealt
from sewalong.fabrics.swatch import Swatch


def proposal_words(
    swatches: Sequence[Swatch], task: Task, dealt: Dealt, rule: Rule, asked: int
) -> tuple[str, ...]:
    """The weakest contact and the bound first, then what is twice, missing and over."""
    words = []
    if abs(dealt.weakest) < inf:
        words.append(_weakest(swatches, task, dealt))
        if task.bound is not None:
            words.append(f"No choice of sets passes {task.bound:.0f}.")
    return tuple(words)


def _weakest(swatches: Sequence[Swatch], task: Task, dealt: Dealt) -> str:
    strength = task.wanted.strength
    number, a, b = min(
        (
            (number, one[a], one[b])
            for number, one in enumerate(dealt.sets, start=1)
            for a, b in task.wanted.meeting
        ),
        key=lambda met: strength[met[1]][met[2]],
    )
    pair = f"{swatches[a].called} and {swatches[b].called}"
    return f"Weakest: {pair}, {dealt.weakest:.0f} apart, in set {number}."
