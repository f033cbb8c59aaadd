"""The gamma–Poisson belief, held to scipy's distributions."""

from __future__ import annotations

from math import inf

import pytest
from scipy import special, stats  # type: ignore[import-untyped]

from sewalong.progress.pace.gamma_poisson import Rate, incomplete_beta

BELIEFS = [(2.5, 3.0), (5.5, 9.0), (30.0, 61.0), (400.0, 90.0)]
AHEAD = [1.0, 4.0, 9.7, 120.0, 900.0]


@pytest.mark.parametrize("a", [0.5, 1.0, 3.0, 40.0, 700.0])
@pytest.mark.parametrize("b", [0.7, 2.0, 25.0, 900.0])
def test_the_incomplete_beta_function(a: float, b: float) -> None:
    for x in (0.001, 0.1, 0.35, 0.5, 0.8, 0.999):
        assert incomplete_beta(a, b, x) == pytest.approx(float(special.betainc(a, b, x)), abs=1e-11)
    assert (incomplete_beta(a, b, 0.0), incomplete_beta(a, b, 1.0)) == (0.0, 1.0)


@pytest.mark.parametrize(("pieces", "minutes"), BELIEFS)
@pytest.mark.parametrize("k", AHEAD)
def test_quantiles_and_moments_of_the_time_ahead(pieces: float, minutes: float, k: float) -> None:
    """The time is `minutes` times a beta prime of k and `pieces` (a gamma of unknown rate)."""
    rate = Rate(pieces, minutes)
    ours = stats.betaprime(k, pieces, scale=minutes)
    for p in (0.01, 0.1, 0.5, 0.9, 0.99):
        assert rate.quantile(k, p) == pytest.approx(float(ours.ppf(p)), rel=1e-6)
        assert rate.within(k, rate.quantile(k, p)) == pytest.approx(p, abs=1e-7)
    assert rate.mean(k) == pytest.approx(float(ours.mean()))
    assert rate.variance(k) == pytest.approx(float(ours.var()), rel=1e-6)


@pytest.mark.parametrize("k", [1, 4, 60])
def test_k_pieces_within_t_is_at_least_k_pieces_in_t(k: int) -> None:
    """The number made in a time is negative binomial: the two sides of one belief."""
    rate = Rate(12.0, 30.0)
    for t in (1.0, 20.0, 150.0):
        number = stats.nbinom(rate.pieces, rate.minutes / (rate.minutes + t))
        assert rate.within(k, t) == pytest.approx(float(number.sf(k - 1)), abs=1e-10)


def test_telling_adds_and_makes_the_range_narrower() -> None:
    before = Rate(5.0, 10.0)
    after = before.told(40.0, 80.0)
    assert (after.pieces, after.minutes) == (45.0, 90.0)
    assert after.quantile(20, 0.9) / after.quantile(20, 0.1) < before.quantile(
        20, 0.9
    ) / before.quantile(20, 0.1)


def test_a_belief_worth_next_to_nothing_has_no_mean_and_no_chance_beyond_one() -> None:
    assert Rate(1.0, 5.0).mean(3) == inf
    assert Rate(2.0, 5.0).variance(3) == inf
    assert Rate(3.0, 5.0).within(3, 0.0) == 0.0
    with pytest.raises(ValueError, match="chance"):
        Rate(3.0, 5.0).quantile(3, 1.0)


def test_the_normal_multiplier_of_an_80_percent_range() -> None:
    """ "80%: 1.28", the multiplier the log-normal total uses. Source: Hyndman & Athanasopoulos,
    Forecasting: Principles and Practice, sec. 3.5 (an early 2nd-ed. text).
    """
    from statistics import NormalDist

    from sewalong.progress.pace.forecast import HELD

    assert HELD == 0.80
    assert NormalDist().inv_cdf(0.5 + HELD / 2) == pytest.approx(1.28, abs=0.005)
