"""Which unit lies where: each used at most once, all together as like what is seen as can be."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
from msgspec import Struct

from sewalong.fabrics.floor.assignment import assigned, margins
from sewalong.fabrics.floor.costs import Costs
from sewalong.fabrics.floor.known import UNKNOWN
from sewalong.fabrics.floor.result import Candidate, HowSure
from sewalong.fabrics.floor.ways import Way
from sewalong.fabrics.photo.tones import Numbers

_SURE = 7.5
"""CIEDE2000 by which one patch must fit worse with anything else: three times what passes for one
fabric (own choice). The squares of several patches add up."""

_LIKE, _UNLIKE = 5.0, 8.0
"""CIEDE2000, root mean square over the patches of a unit: above the first it is not sure that it
lies there, above the second it does not. Measured on made photographs: noise, JPEG at 60, hands
and light that falls off leave the right unit under 2."""

_MOST_ASKED = 4
"""Ways that are asked about at a place (own choice)."""


class Kind(Struct, frozen=True):
    """Units that look alike once they are turned, by their place in the sequence, and the numbers
    of the ways in which the first of them looks different."""

    units: tuple[int, ...]
    ways: tuple[int, ...]


class Matched(Struct, frozen=True):
    """What lies at one place, as in `FloorPlace`; `way` is the number of the way that is taken."""

    sure: HowSure
    candidates: tuple[Candidate, ...]
    same: tuple[int, ...] = ()
    way: int | None = None


def kinds_of(ways: Sequence[Way], but: frozenset[int] = frozenset()) -> tuple[Kind, ...]:
    """The units of these ways by their kind, those in `but` left out. Of one with a fabric that is
    not known nobody can say that it is like another."""
    of_unit: dict[int, list[int]] = {}
    for number, way in enumerate(ways):
        of_unit.setdefault(way.unit, []).append(number)
    kinds: dict[object, list[int]] = {}
    for unit, own in of_unit.items():
        known = all(fabric != UNKNOWN for _, fabric in ways[own[0]].patches)
        looks = frozenset(ways[way].patches for way in own)
        if unit not in but:
            kinds.setdefault(looks if known else unit, []).append(unit)
    return tuple(Kind(tuple(units), tuple(of_unit[units[0]])) for units in kinds.values())


def matched(
    costs: Costs, bare: Sequence[float | None], ways: Sequence[Way], but: frozenset[int]
) -> tuple[Matched, ...]:
    """What lies at each place. `costs` are those of every way there, places × ways, and `bare` those
    of nothing at all, None where the cloth beneath is not seen; units in `but` lie elsewhere."""
    places = len(costs)
    kinds = kinds_of(ways, but)
    least = [costs[:, kind.ways].min(axis=1).astype(np.float64) for kind in kinds]
    by_kind = np.array(least).reshape(-1, places)
    column_kind = [number for number, kind in enumerate(kinds) for _ in kind.units]
    # As many columns more, for places where nothing lies, or no unit that is known.
    strange = len(ways[0].patches) * _UNLIKE**2
    none = np.array([strange if one is None else min(one, strange) for one in bare])
    found = assigned(np.hstack([by_kind[column_kind].T, np.repeat(none[:, None], places, axis=1)]))
    column_kind += [_NONE] * places
    own_kinds = [column_kind[column] for column in found.column_of]
    reduced = found.reduced
    kind_of = np.array(column_kind)
    waiting = [iter(kind.units) for kind in kinds]
    every = []
    for place, own in enumerate(own_kinds):
        # What is reduced is the least by which all may fit worse; more is reckoned where it is little.
        other = kind_of != own
        more = reduced[place]
        if (more[other] < _SURE**2).any() or own == _NONE:
            more = margins(found, place)
        worse = np.full(len(kinds) + 1, np.inf)
        np.minimum.at(worse, kind_of, more)
        worse[own] = 0.0
        unit = None if own == _NONE else next(waiting[own])
        at = _Place(ways, kinds, costs[place], worse, own, unit)
        every.append(at.matched(is_bare=bare[place] is not None))
    return tuple(every)


_NONE = -1
"""In place of a kind: no unit that is known."""


class _Place(Struct, frozen=True):
    """One place while it is told: `worse` has by how much all fit worse with each kind there, the
    last for none; `own` is the kind that is best, `unit` the unit of it."""

    ways: Sequence[Way]
    kinds: Sequence[Kind]
    costs: Costs
    worse: Numbers
    own: int
    unit: int | None

    def matched(self, *, is_bare: bool) -> Matched:
        # Sorting keeps the order of what fits alike, and what was assigned comes first of it.
        options = sorted(self._options(is_bare), key=lambda option: option[0])
        if self.own == _NONE and not is_bare:
            return Matched(HowSure.CANNOT_TELL, tuple(one for _, one, _ in options[:_MOST_ASKED]))
        near = [option for option in options if option[0] < _SURE**2][:_MOST_ASKED]
        way = near[0][2]
        patches = len(self.ways[0].patches)
        unlike = way is not None and self.costs[way] > patches * _LIKE**2
        sure = HowSure.NOT_SURE if len(near) > 1 or unlike else HowSure.SURE
        same = () if self.own == _NONE else self.kinds[self.own].units
        return Matched(
            sure, tuple(one for _, one, _ in near), tuple(n for n in same if n != self.unit), way
        )

    def _options(self, is_bare: bool) -> Iterator[tuple[float, Candidate, int | None]]:
        """By how much all fit worse, what lies here, and in which way; what was assigned first."""
        near = np.flatnonzero(self.worse < _SURE**2).tolist()
        if self.own == _NONE and not is_bare:
            near = np.argsort(self.worse[:_NONE], kind="stable")[:_MOST_ASKED].tolist()
        nothing = len(self.kinds)
        first = nothing if self.own == _NONE else self.own
        for number in sorted(near, key=lambda number: number != first):
            if number == nothing:
                if is_bare:
                    worse = float(self.worse[_NONE])
                    yield worse, Candidate(None, 0, _as_one(worse)), None
                continue
            kind = self.kinds[number]
            least = self.costs[list(kind.ways)].min()
            unit = self.unit if number == self.own and self.unit is not None else kind.units[0]
            for way in kind.ways:
                worse = float(self.worse[number] + self.costs[way] - least)
                mine = self._way_of(unit, way)
                yield worse, Candidate(unit, self.ways[mine].turns[0], _as_one(worse)), mine

    def _way_of(self, unit: int, way: int) -> int:
        """The way in which this unit looks as another of its kind does in `way`."""
        if self.ways[way].unit == unit:
            return way
        return next(
            number
            for number, one in enumerate(self.ways)
            if one.unit == unit and one.patches == self.ways[way].patches
        )


def _as_one(squared: float) -> float:
    return round(float(np.sqrt(max(squared, 0))), 1)
