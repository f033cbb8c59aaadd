"""What is thought of several unknowns at once, and what one of them tells of the others.

A normal belief: a mean for each unknown, and how they err together. Told a weighted sum of
unknowns with an error of its own, it is drawn towards it by the usual rule of conditioning
one normal on another (the step of a Kalman filter; a textbook result that the tests hold
to an independent implementation).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import log

from msgspec import Struct

Row = Mapping[int, float]
"""A weighted sum of unknowns: the weight by the unknown's place."""


class Belief(Struct):
    """`mean` and `covariance` of the unknowns. `fit` is, but for a constant, the logarithm of
    how likely everything was that it was told."""

    mean: list[float]
    covariance: list[list[float]]
    fit: float = 0.0

    def told(self, row: Row, value: float, variance: float) -> None:
        """Take in that the sum `row` was seen to be `value`, give or take `variance`, above 0."""
        ties = [sum(w * line[i] for i, w in row.items()) for line in self.covariance]
        spread = sum(w * ties[i] for i, w in row.items()) + variance
        off = value - self.of(row)
        self.fit -= (log(spread) + off * off / spread) / 2
        for i, tie in enumerate(ties):
            pull = tie / spread
            self.mean[i] += pull * off
            line = self.covariance[i]
            self.covariance[i] = [c - pull * t for c, t in zip(line, ties, strict=True)]

    def of(self, row: Row) -> float:
        """The mean of a sum."""
        return sum(w * self.mean[i] for i, w in row.items())

    def tie(self, row: Row, other: Row) -> float:
        """How two sums vary together; a sum with itself: its variance."""
        return sum(w * v * self.covariance[i][j] for i, w in row.items() for j, v in other.items())

    def drawn_anew(self, i: int, variance: float) -> None:
        """Forget unknown `i`: it is a new one, with mean 0, that has to do with no other."""
        self.mean[i] = 0.0
        for line in self.covariance:
            line[i] = 0.0
        self.covariance[i] = [0.0] * len(self.mean)
        self.covariance[i][i] = variance

    def less_sure(self, unknowns: Iterable[int], variance: float) -> None:
        """Each of `unknowns` may have changed by so much, each on its own."""
        for i in unknowns:
            self.covariance[i][i] += variance
