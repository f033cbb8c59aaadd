"""The assignment against another library's, and what another column costs against trying it."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linear_sum_assignment  # type: ignore[import-untyped]

from sewalong.fabrics.floor.assignment import assigned, margins
from sewalong.fabrics.photo.tones import Numbers


def least(costs: Numbers) -> float:
    rows, columns = linear_sum_assignment(costs)
    return float(costs[rows, columns].sum())


def drawn(seed: int, whole: bool) -> Numbers:
    rng = np.random.default_rng(seed)
    rows = int(rng.integers(1, 9))
    columns = rows + int(rng.integers(0, 5))
    costs: Numbers = rng.uniform(0, 20, (rows, columns))
    if rng.random() < 0.3:
        # Columns that are alike, as for places where nothing lies.
        costs = np.hstack([costs, np.full((rows, rows), 6.0)])
    return np.floor(costs / 4) if whole else costs


@settings(max_examples=200)
@given(st.integers(0, 100_000), st.booleans())
def test_it_costs_least_and_so_does_each_other_choice(seed: int, whole: bool) -> None:
    costs = drawn(seed, whole)
    found = assigned(costs)
    rows, columns = costs.shape
    assert len(set(found.column_of.tolist())) == rows
    total = costs[np.arange(rows), found.column_of].sum()
    assert total == pytest.approx(least(costs))
    for row in range(rows):
        more = margins(found, row)
        for column in range(columns):
            rest = np.delete(np.delete(costs, row, axis=0), column, axis=1)
            tried = costs[row, column] + least(rest)
            assert more[column] == pytest.approx(tried - total, abs=1e-6)


def test_of_many_it_costs_least_too() -> None:
    costs = np.random.default_rng(3).uniform(0, 50, (81, 165))
    found = assigned(costs)
    assert costs[np.arange(81), found.column_of].sum() == pytest.approx(least(costs))


def test_more_rows_than_columns_cannot_be() -> None:
    with pytest.raises(ValueError, match="more rows"):
        assigned(np.zeros((3, 2)))
