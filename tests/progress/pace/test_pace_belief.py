"""The belief about several unknowns, held to numpy's and scipy's own reckoning."""

from __future__ import annotations

from random import Random

import numpy as np
import pytest
from scipy import stats  # type: ignore[import-untyped]

from sewalong.progress.pace.belief import Belief
from sewalong.progress.pace.hours_ahead import Hours, LogNormal, quantile, range_of

N = 5


def a_belief(seed: int) -> Belief:
    rng = Random(seed)
    root = np.array([[rng.gauss(0, 1) for _ in range(N)] for _ in range(N)])
    covariance = (root @ root.T + 0.1 * np.eye(N)).tolist()
    return Belief([rng.gauss(0, 1) for _ in range(N)], covariance)


@pytest.mark.parametrize("seed", range(5))
def test_told_one_by_one_it_comes_to_what_conditioning_on_all_at_once_does(seed: int) -> None:
    rng = Random(seed)
    belief = a_belief(seed)
    mean, covariance = np.array(belief.mean), np.array(belief.covariance)
    rows = [{i: rng.gauss(0, 1) for i in rng.sample(range(N), 3)} for _ in range(4)]
    values = [rng.gauss(0, 1) for _ in rows]
    noise = [rng.uniform(0.1, 1) for _ in rows]
    for row, value, variance in zip(rows, values, noise, strict=True):
        belief.told(row, value, variance)
    a = np.array([[row.get(i, 0.0) for i in range(N)] for row in rows])
    seen = a @ covariance @ a.T + np.diag(noise)
    gain = covariance @ a.T @ np.linalg.inv(seen)
    assert belief.mean == pytest.approx(mean + gain @ (np.array(values) - a @ mean))
    expected = covariance - gain @ a @ covariance
    assert np.array(belief.covariance) == pytest.approx(expected)
    likely = stats.multivariate_normal(a @ mean, seen).logpdf(values)
    assert belief.fit - len(rows) / 2 * np.log(2 * np.pi) == pytest.approx(likely)


def test_the_mean_and_the_ties_of_sums() -> None:
    belief = a_belief(7)
    row, other = {0: 2.0, 3: -1.0}, {1: 0.5, 3: 4.0}
    a, b = (np.array([one.get(i, 0.0) for i in range(N)]) for one in (row, other))
    assert belief.of(row) == pytest.approx(a @ np.array(belief.mean))
    assert belief.tie(row, other) == pytest.approx(a @ np.array(belief.covariance) @ b)


def test_an_unknown_drawn_anew_has_to_do_with_no_other() -> None:
    belief = a_belief(3)
    others = [line[:2] + line[3:] for i, line in enumerate(belief.covariance) if i != 2]
    belief.drawn_anew(2, 0.3)
    assert belief.mean[2] == 0
    assert belief.covariance[2] == [0, 0, 0.3, 0, 0]
    assert [line[2] for line in belief.covariance] == [0, 0, 0.3, 0, 0]
    assert [line[:2] + line[3:] for i, line in enumerate(belief.covariance) if i != 2] == others


def test_less_sure_widens_those_named_each_on_its_own() -> None:
    belief = a_belief(4)
    before = np.array(belief.covariance)
    belief.less_sure({0, 3}, 0.25)
    assert np.array(belief.covariance) - before == pytest.approx(np.diag([0.25, 0, 0, 0.25, 0]))


@pytest.mark.parametrize("p", [0.1, 0.5, 0.9])
def test_a_quantile_of_several_answers_is_that_of_their_mixture(p: float) -> None:
    likely = (LogNormal(0.5, 1.0, 0.2), LogNormal(0.3, 1.2, 0.6), LogNormal(0.2, 0.4, 0.1))
    found = quantile(likely, p)
    within = sum(one.chance * stats.lognorm(one.spread, scale=np.exp(one.mean)).cdf(found)
                 for one in likely)  # fmt: skip
    assert within == pytest.approx(p, abs=1e-9)


def test_a_range_of_one_answer_is_the_log_normals_own() -> None:
    of = stats.lognorm(0.3, scale=np.exp(2.0))
    expected = Hours(*(float(of.ppf(p)) for p in (0.1, 0.5, 0.9)))
    found = range_of([LogNormal(1.0, 2.0, 0.3)])
    assert (found.low, found.middle, found.high) == pytest.approx(
        (expected.low, expected.middle, expected.high)
    )
