"""Pieces in doubt after a check that failed, as lines and as data."""

from __future__ import annotations

from sewalong.progress.measuring.at_risk import AtRisk

SEEN_TO = "To say so: sewalong proof --seen-to"
ALL_RIGHT = "If they are all right, or put right: sewalong proof --seen-to"


def at_risk_lines(found: AtRisk | None) -> tuple[str, ...]:
    """What is at risk and what to say when it is seen to."""
    if found is None:
        return ()
    return found.lines if found.none else (*found.lines, SEEN_TO)


def at_risk_data(found: AtRisk | None) -> dict[str, object] | None:
    """By stage how many and in which sessions; the places of their piles; None for nothing."""
    if found is None:
        return None
    return {
        "seen_to": found.seen_to,
        "failed_check": found.failed.seq,
        "last_passed": found.proved.seq if found.proved else None,
        "stages": [
            {
                "stage": one.stage,
                "n": one.n,
                "sewn": [{"session": then.session, "n": then.n} for then in one.sewn],
            }
            for one in found.stages
        ],
        "places": dict(found.places),
    }
