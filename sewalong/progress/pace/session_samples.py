"""What was done of one stage in one session: the piece of evidence the pace is learned from."""

from __future__ import annotations

from collections.abc import Iterable
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
