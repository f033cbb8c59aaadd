"""Units as numbers: what each shows at its sides and corners, and what any two of these share."""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from math import inf

from sewalong.wall.laying.edges import (
    Span,
    Spans,
    TouchRule,
    corners,
    meeting,
    turned_sides,
    turns_allowed,
)
from sewalong.wall.laying.laying import Rules
from sewalong.wall.laying.units import WallUnit

NOTHING = 0
"""The number of a facet that shows nothing: that of an empty place."""

Face = tuple[int, ...]
"""The numbers of what a unit shows at its four sides and four corners, as it is turned."""

BARE: Face = (NOTHING,) * 8

_STACK = "\0stack "
"""Units of one stack share a mark, as if it were a fabric all round them."""


class Faces:
    """What every unit shows in each of its turns, and how many touches two facets make.

    `of[unit][turns]` is a face, in each turn in which the unit fits its place, and `turns[unit]` are
    those of the turns it may lie in that differ in what they show.
    `shared[a][b]` is the number of touches where facets a and b meet: worked out when first asked
    for, since of the pairs there could be few are ever met.
    """

    def __init__(self, units: Sequence[WallUnit], rules: Rules) -> None:
        self._rules = rules
        self._numbers: dict[Hashable, int] = {(): NOTHING}
        self._shown: list[Spans | frozenset[str]] = [()]
        self.shared: list[_Shared] = []
        known: dict[WallUnit, dict[int, Face]] = {}
        self.of: list[dict[int, Face]] = []
        for unit in units:
            # Their value and family do not show: plain squares of one fabric are all one.
            alike = WallUnit(unit.sides, unit.turns, unit.stack if rules.stacks else None)
            if alike not in known:
                fitting = {*alike.turns, *turns_allowed(alike.sides)}
                known[alike] = {turns: self._face(alike, turns) for turns in sorted(fitting)}
            self.of.append(known[alike])
        self.turns = [
            _different(faces, unit.turns) for faces, unit in zip(self.of, units, strict=True)
        ]
        self.rim = self._ground(rules.rim)
        self.sash = self._ground(rules.sash)
        self.shared += [_Shared(self, number) for number in range(len(self._shown))]

    def _face(self, unit: WallUnit, turns: int) -> Face:
        sides = turned_sides(unit.sides, turns)
        mark: Spans = ()
        if self._rules.stacks and unit.stack is not None:
            mark = (Span(0.0, inf, f"{_STACK}{unit.stack}"),)
        shown = [self._number((*side, *mark)) for side in sides]
        if self._rules.touch is TouchRule.CORNER:
            marks = frozenset(span.fabric for span in mark)
            shown += [self._number(corner | marks) for corner in corners(sides)]
        return tuple(shown)

    def _ground(self, fabric: str | None) -> Face:
        return BARE if fabric is None else (self._number((Span(0.0, inf, fabric),)),) * 8

    def _number(self, shown: Spans | frozenset[str]) -> int:
        if not isinstance(shown, frozenset) and self._rules.touch is TouchRule.EDGE:
            # What only touches with a point plays no part then, and fewer sides differ.
            shown = tuple(span for span in shown if span.end > span.start)
        if shown not in self._numbers:
            self._numbers[shown] = len(self._shown)
            self._shown.append(shown)
        return self._numbers[shown]

    def count(self, a: int, b: int) -> int:
        """Touches where two facets meet."""
        one, other = self._shown[a], self._shown[b]
        if isinstance(one, frozenset) or isinstance(other, frozenset):
            return len(frozenset(one) & frozenset(other))
        return len(meeting(one, other, self._rules.touch))


class _Shared(dict[int, int]):
    """Touches of one facet with each other, as they are asked for."""

    def __init__(self, faces: Faces, mine: int) -> None:
        super().__init__()
        self._faces, self._mine = faces, mine

    def __missing__(self, other: int) -> int:
        found = self[other] = self._faces.count(self._mine, other)
        return found


def _different(faces: Mapping[int, Face], allowed: Sequence[int]) -> tuple[int, ...]:
    """The turns of those allowed that show something else each, the least turned first."""
    first: dict[Face, int] = {}
    for turns in sorted(allowed):
        first.setdefault(faces[turns], turns)
    return tuple(first.values())
