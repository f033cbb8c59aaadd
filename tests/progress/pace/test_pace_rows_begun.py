"""What is sewn of rows begun is not still ahead."""

from __future__ import annotations

import pytest

from sewalong.progress.pace.forecast import Forecast
from tests.progress import every_act as c
from tests.progress.building import a_quilt, all_units, play
from tests.progress.pace.evenings import forecast_of

PLAIN = a_quilt("plain-squares", 36, rows=4, columns=9)


def forecast(*acts: c.Act) -> Forecast:
    state, record = play(PLAIN, *all_units(PLAIN), *acts)
    return forecast_of(state, record, record[-1].event.at)


def test_half_of_the_seams_of_all_rows_sewn_leaves_half_the_time_for_them() -> None:
    """16 pairs: 16 of 32 seams."""

    def rows(found: Forecast) -> float:
        return next(one.hours.middle for one in found.stages if one.pace.stage.id == "sew-rows")

    assert rows(forecast(c.BeginRows(((16, 2),)))) == pytest.approx(rows(forecast()) / 2, rel=0.02)
