"""What the record measured, and apart from it the counts that have no time of their own."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

from msgspec import Struct

from sewalong.progress.pace.count_times import Stretch, stretches
from sewalong.progress.pace.guesses import guesses
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.progress.record.state import State


class Measured(Struct, frozen=True, dict=True):
    """All counts of a record in order, with their times; `guesses` gives minutes by stage."""

    stretches: tuple[Stretch, ...]
    guesses: Mapping[str, float]

    @cached_property
    def each(self) -> Mapping[str, float]:
        """Minutes for one count, by stage with a time."""
        counts: dict[str, int] = {}
        minutes: dict[str, float] = {}
        for one in self.stretches:
            if one.minutes is not None:
                counts[one.stage] = counts.get(one.stage, 0) + one.n
                minutes[one.stage] = minutes.get(one.stage, 0.0) + one.minutes
        return {stage: minutes[stage] / n for stage, n in counts.items() if n > 0}

    def guess(self, stretch: Stretch) -> float:
        """What a stretch without a time may have taken, in minutes: never to be added to what
        was measured without saying so. 0 for one that has a time."""
        if stretch.minutes is not None:
            return 0.0
        return max(0, stretch.n) * self.each.get(stretch.stage, self.guesses[stretch.stage])


def measured(state: State, record: Sequence[Recorded]) -> Measured:
    """The times in a record; `state` is its fold."""
    guessed = {stage: one.minutes for stage, one in guesses(state.quilt, state.target).items()}
    return Measured(stretches(record, guessed), guessed)
