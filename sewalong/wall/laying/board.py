"""A laying that is being changed: what each swap and turn would cost, at once."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.wall.laying.faces import BARE, Face, Faces
from sewalong.wall.laying.grid import OUTER, At
from sewalong.wall.laying.laying import Laying, Put, Rules
from sewalong.wall.laying.units import WallUnit


class Board:
    """Slots: the places of the layout by the numbers of its grid, and behind them the spares, which
    have no neighbours. `units` are those that can be laid, more than there are places or fewer.

    `lies[slot]` is what lies there, None for nothing, and `face[slot]` what that shows.
    """

    def __init__(self, laying: Laying, units: Sequence[WallUnit], rules: Rules) -> None:
        self.laying = laying
        self.units = units
        self.rules = rules
        self.grid = laying.grid
        self.faces = Faces(units, rules)
        self.lies: list[Put | None] = list(laying.in_order)
        placed = {put.unit for put in self.lies if put is not None}
        self.lies += [Put(number) for number in range(len(units)) if number not in placed]
        spares = len(self.lies) - len(self.grid.places)
        # What lies round the places stands behind all slots, in the order of a list's end.
        self.face = [self._face(put) for put in self.lies]
        ground = {OUTER: len(self.lies)}
        self.links = [
            tuple(
                (
                    link.other if link.other >= 0 else ground.get(link.other, len(self.lies) + 1),
                    link.mine,
                    link.theirs,
                )
                for link in links
                if rules.counts(link)
            )
            for links in self.grid.links
        ]
        self.links += [()] * spares
        self.face += [self.faces.rim, self.faces.sash]
        self.beside = [frozenset(other for other, _, _ in links) for links in self.links]

    @property
    def places(self) -> int:
        """How many of the slots are places."""
        return len(self.grid.places)

    def _face(self, put: Put | None) -> Face:
        return BARE if put is None else self.faces.of[put.unit][put.turns]

    def around(self, slot: int) -> int:
        """Touches of what lies at a slot."""
        face, shared, mine = self.face, self.faces.shared, self.face[slot]
        return sum([shared[mine[f]][face[other][g]] for other, f, g in self.links[slot]])

    def _between(self, one: int, other: int) -> int:
        face, shared = self.face, self.faces.shared
        return sum(
            shared[face[one][f]][face[other][g]] for at, f, g in self.links[one] if at == other
        )

    def touches(self) -> int:
        """All touches of the laying."""
        shared, face = self.faces.shared, self.face
        return sum(
            shared[face[slot][f]][face[other][g]]
            for slot, links in enumerate(self.links)
            for other, f, g in links
            if other > slot
        )

    def put(self, slot: int, put: Put | None) -> None:
        """Lay this there, whatever lay there before."""
        self.lies[slot] = put
        self.face[slot] = self._face(put)

    def change(self, one: int, put: Put | None, other: int, other_put: Put | None) -> int:
        """Lay both, and say how many touches more there are now, below 0 for fewer. One slot
        named twice gets `put`."""
        if one == other:
            before = self.around(one)
            self.put(one, put)
            return self.around(one) - before
        meets = other in self.beside[one]
        before = self.around(one) + self.around(other) - (self._between(one, other) if meets else 0)
        self.put(one, put)
        self.put(other, other_put)
        after = self.around(one) + self.around(other) - (self._between(one, other) if meets else 0)
        return after - before

    def pairs(self) -> list[tuple[int, int]]:
        """Slots that touch, two by two; what lies round the places is numbered behind all slots."""
        shared, face = self.faces.shared, self.face
        return [
            (slot, other)
            for slot, links in enumerate(self.links)
            for other, f, g in links
            if other > slot and shared[face[slot][f]][face[other][g]]
        ]

    def touching(self) -> list[int]:
        """Slots where something touches, in order."""
        return [slot for slot in range(self.places) if self.around(slot)]

    def as_laying(self) -> Laying:
        """What lies on the wall now."""
        return self.laying.with_places(self.lies[: self.places])

    def slot(self, at: At) -> int:
        """The slot of a place; raises KeyError if there is none."""
        return self.grid.number(at)
