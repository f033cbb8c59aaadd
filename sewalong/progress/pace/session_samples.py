"""What was done of one stage in one session: the piece of evidence the pace is learned from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime

from msgspec import Struct

from sewalong.progress.pace.count_times import Stretch


class Spell(Struct, frozen=True):
    """`n` counts (at least 1) that took `minutes`, after `before` earlier ones of the stage.

    Counts whose time isn't known are not in `n`, though they are in `before` of later
    spells. What was unpicked takes from `n` and its time stays: resewing is slower work.
    """

    stage: str
    session: int
    n: int
    minutes: float
    before: int
    at: datetime

    @property
    def each(self) -> float:
        """Minutes for one count."""
        return self.minutes / self.n


def spells(stretches: Iterable[Stretch]) -> tuple[Spell, ...]:
    """One spell for each stage and session with a known time, in order of the record."""
    made: dict[str, int] = {}
    groups: dict[tuple[str, int], Spell] = {}
    for one in stretches:
        before = made.get(one.stage, 0)
        made[one.stage] = max(0, before + one.n)
        if one.minutes is None:
            continue
        key = (one.stage, one.session)
        old = groups.get(key)
        if old is None:
            groups[key] = Spell(one.stage, one.session, one.n, one.minutes, before, one.at)
        else:
            groups[key] = Spell(
                one.stage, one.session, old.n + one.n, old.minutes + one.minutes, old.before, one.at
            )
    return tuple(spell for spell in groups.values() if spell.n > 0 and spell.minutes > 0)


UNEVEN = 0.12
"""Before the record knows: the variance of one count's time, as a part of its average squared.
From memory: single times spread by about 30 %, and now and then one is a mishap."""

UNEVEN_WORTH = 6
"""How many stretches it takes for the owner's own evenness to weigh as much. From memory."""


def unevenness(stretches: Iterable[Stretch], found: Sequence[Spell]) -> Mapping[str, float]:
    """By stage with a time: the variance of one count's time, as a part of its average squared.

    From how the stretches of a session lie about that session's own average, so that what
    differs from evening to evening is not in it.
    """
    averages = {(spell.stage, spell.session): spell.each for spell in found}
    squares = {spell.stage: UNEVEN_WORTH * UNEVEN for spell in found}
    worth = dict.fromkeys(squares, float(UNEVEN_WORTH))
    for spell in found:
        worth[spell.stage] -= 1  # its average is taken from the stretches themselves
    for one in stretches:
        average = averages.get((one.stage, one.session))
        if average is not None and one.minutes is not None and one.n > 0:
            squares[one.stage] += one.n * (one.minutes / one.n / average - 1) ** 2
            worth[one.stage] += 1
    return {stage: squares[stage] / worth[stage] for stage in squares}
