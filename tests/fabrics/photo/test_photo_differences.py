"""CIEDE2000 of many pairs at once, against published values and another library."""

from __future__ import annotations

import coloraide
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.fabrics.photo.differences import differences
from tests.fabrics.test_fabrics_sight import ROWS

LAB = st.tuples(st.floats(0, 100), st.floats(-110, 110), st.floats(-110, 110))


def test_the_published_pairs_come_out_either_way_round() -> None:
    # Sharma, Wu, Dalal 2005, table 1, as in the tests of `sight`.
    table = np.array(ROWS)
    one, other, said = table[:, :3], table[:, 3:6], table[:, 6]
    assert differences(one, other) == pytest.approx(said, abs=5e-5)
    assert differences(other, one) == pytest.approx(said, abs=5e-5)


@given(LAB, LAB)
def test_any_pair_comes_out_as_in_another_library(
    one: tuple[float, float, float], other: tuple[float, float, float]
) -> None:
    ours = float(differences(np.array(one), np.array(other)))
    theirs = coloraide.Color("lab-d65", one).delta_e(
        coloraide.Color("lab-d65", other), method="2000"
    )
    assert ours == pytest.approx(theirs, abs=1e-4)


def test_every_pair_of_two_lists_is_reckoned_at_once() -> None:
    one, other = np.random.default_rng(1).uniform(0, 60, (2, 5, 3))
    table = differences(one[:, None], other[None])
    assert table.shape == (5, 5)
    assert table[2, 3] == pytest.approx(float(differences(one[2], other[3])))
