"""After how long something is said of needle, blade and a stop: hers, else what is usual."""

from __future__ import annotations

from msgspec import Struct

from sewalong.owner.preferences import Preferences
from sewalong.progress.pace.break_points import STOP_MINUTES

NEEDLE_HOURS = 8.0
"""Common practice: sewing shops and books say 6 to 12 hours, most of them 8."""


class WearChoices(Struct, frozen=True):
    """The owner's intervals. A blade's, in inches cut, is learned when None; 0 says nothing."""

    needle_hours: float = NEEDLE_HOURS
    blade_inches: float | None = None
    stop_minutes: int = STOP_MINUTES


def chosen_by(preferences: Preferences) -> WearChoices:
    """What she prefers, and the usual where she says nothing."""
    hours, minutes, blade = (
        preferences.needle_hours,
        preferences.stop_minutes,
        preferences.blade_inches,
    )
    return WearChoices(
        NEEDLE_HOURS if hours is None else hours,
        None if blade is None else float(blade),
        STOP_MINUTES if minutes is None else minutes,
    )
