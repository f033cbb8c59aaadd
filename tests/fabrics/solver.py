"""Sets by an exact solver, CP-SAT: the judge of what the program proposes."""

from __future__ import annotations

from math import inf

from ortools.sat.python import cp_model

from sewalong.fabrics.sets.wanted import Wanted

FINE = 1000
"""Whole numbers are what the solver knows: values to a thousandth of an L*."""


class Solver:
    """Sets of `wanted` in which no print is more often than it may be."""

    def __init__(self, wanted: Wanted) -> None:
        self.wanted = wanted
        self.model = model = cp_model.CpModel()
        self.prints = range(len(wanted.counts))
        places = range(wanted.places)
        self.lies = {
            (number, place, print): model.new_bool_var("")
            for number in range(wanted.sets)
            for place in places
            for print in self.prints
        }
        most = wanted.most or (1,) * len(wanted.counts)
        for number in range(wanted.sets):
            for place in places:
                model.add_exactly_one(self.lies[number, place, print] for print in self.prints)
            for print in self.prints:
                model.add(sum(self.lies[number, place, print] for place in places) <= most[print])
        for print, n in enumerate(wanted.counts):
            lying = [one for (_, _, of), one in self.lies.items() if of == print]
            model.add(sum(lying) <= n)

    def can_reach(self, least: float, seconds: float) -> bool | None:
        """Whether all contacts can be so strong; None if it was not settled in the time."""
        for number in range(self.wanted.sets):
            for a, b in self.wanted.meeting:
                for one, row in enumerate(self.wanted.strength):
                    weak = [other for other, strength in enumerate(row) if strength < least]
                    beside = sum(self.lies[number, b, other] for other in weak)
                    self.model.add(beside == 0).only_enforce_if(self.lies[number, a, one])
        found = self._solve(seconds)
        return {cp_model.OPTIMAL: True, cp_model.FEASIBLE: True, cp_model.INFEASIBLE: False}.get(
            found.response_proto.status
        )

    def strongest_by_value(self, values: list[float], seconds: float) -> float:
        """The strongest weakest contact by value that it finds in the time, to a thousandth;
        below nothing if it finds no sets."""
        model, highest = self.model, round(FINE * 100)
        weakest = model.new_int_var(0, highest, "")
        for number in range(self.wanted.sets):
            at = [
                sum(
                    round(FINE * values[print]) * self.lies[number, place, print]
                    for print in self.prints
                )
                for place in range(self.wanted.places)
            ]
            for a, b in self.wanted.meeting:
                first_lighter = model.new_bool_var("")
                model.add(at[a] - at[b] >= weakest).only_enforce_if(first_lighter)
                model.add(at[b] - at[a] >= weakest).only_enforce_if(~first_lighter)
        model.maximize(weakest)
        found = self._solve(seconds)
        if found.response_proto.status in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return found.value(weakest) / FINE
        return -inf

    def _solve(self, seconds: float) -> cp_model.CpSolver:
        solver = cp_model.CpSolver()
        solver.parameters.max_time_in_seconds = seconds
        solver.parameters.num_workers = 2
        solver.solve(self.model)
        return solver
