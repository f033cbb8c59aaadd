"""A fabric of which squares are in sets stays in the plan: its letter must not come to mean another."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.quilt.quilt import Quilt


def refuse_taking_out_of_sets(state: State, wanted: Quilt) -> None:
    """Raise Refused where `wanted` no longer has a fabric that sets take, or took squares of that
    are gone."""
    there = {fabric.letter for fabric in wanted.counted_fabrics}
    named = {fabric.letter: fabric.called for fabric in state.quilt.counted_fabrics}
    for letter in state.sets.used():
        if letter not in there and letter in named:
            numbers = [n for n, one in sorted(state.sets.sets.items()) if letter in one.squares]
            where = (
                f"squares of it are in {_sets(numbers)}" if numbers else "squares of it were used"
            )
            raise Refused(
                f"{named[letter]} stays in the plan, for {where}. Choose sets anew without "
                "it first, or say how many squares of it there are."
            )


_NAMED = 4


def _sets(numbers: Sequence[int]) -> str:
    few = ", ".join(map(str, numbers[:_NAMED]))
    more = f" and {len(numbers) - _NAMED} more" if len(numbers) > _NAMED else ""
    return f"{'set' if len(numbers) == 1 else 'sets'} {few}{more}"
