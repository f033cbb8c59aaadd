"""How long a quilt will take that nobody has sewn at yet: a range, and all of it a guess."""

from __future__ import annotations

from datetime import datetime

from sewalong.progress.pace.forecast import forecast_from
from sewalong.progress.pace.hours_ahead import Hours
from sewalong.progress.pace.paces import paces
from sewalong.progress.record.fold import fold
from sewalong.quilt.quilt import Quilt


def hours_before_sewing(quilt: Quilt, now: datetime) -> Hours | None:
    """Hours of the whole quilt to its last stage; None where nothing is to be done."""
    state = fold(quilt, ())
    return forecast_from(state, paces(state, (), now), (), now).in_all
