"""Looking at some of a chain while it is sewn, so that a mistake costs ten and not sixty."""

from __future__ import annotations

from sewalong.piecing.method import Stage, Station
from sewalong.progress.record.route import RouteStage

EVERY = 10
"""Open the first, then every tenth: working practice reported by makers
(litandlaundry.blogspot.com, The dark side of chain piecing)."""


def most_to_unpick(chain: int) -> int:
    """The most that are wrong when one opened is: those since the one opened before."""
    return min(chain, EVERY)


def sampling_line(stage: RouteStage, chain: int) -> str:
    """One line at the beginning of a chain; empty where nothing is chained or it is short."""
    if not isinstance(stage, Stage) or stage.station is not Station.MACHINE or chain <= EVERY:
        return ""
    return (
        f"Open the first and look, then every tenth: at most {most_to_unpick(chain)} to unpick, "
        f"not {chain}."
    )
