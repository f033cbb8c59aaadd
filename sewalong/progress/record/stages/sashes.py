"""The stages of pieces that sashes bring: cut from cloth, sewn into rows and into sash rows.

What is cut from cloth takes no pile: how much cloth there is is not counted. The minutes are
common practice, first guesses only.
"""

from __future__ import annotations

from sewalong.piecing.method import Hazard, Pieces, Pile, Stage, Station
from sewalong.quilt.quilt import Target
from sewalong.quilt.setting import CORNERSTONE, LONG, LYING, SASH_ROW, STANDING, Sashing

SEW_SASH_ROWS = "sew-sash-rows"


def sash_piles(sashing: Sashing) -> tuple[Pile, ...]:
    """The piles of what lies between the units, whatever the layout."""
    if sashing.cornerstones is None:
        return (STANDING, LONG)
    return (STANDING, LYING, CORNERSTONE, SASH_ROW)


def between_rows(sashing: Sashing) -> Pile:
    """What is sewn along a row: a sash row, or one long sash."""
    return LONG if sashing.cornerstones is None else SASH_ROW


def standing_sashes(sashing: Sashing, target: Target) -> tuple[Pieces, ...]:
    """The sashes that go into one row."""
    beside = sashing.among(target.columns)
    return (Pieces(STANDING.id, beside),) if beside else ()


def cut_sashes(sashing: Sashing, target: Target) -> tuple[Stage, ...]:
    """What is cut for the rows and for between them."""
    found = []
    if sashing.among(target.columns):
        found.append(
            _cut(
                STANDING,
                "Measure some units down; cut the sashes as long as the usual one.",
                "Two laid on each other match; each as long as a unit is high.",
            )
        )
    if not sashing.among(target.rows):
        return tuple(found)
    if sashing.cornerstones is None:
        found.append(
            _cut(
                LONG,
                "Measure some rows through the middle; cut the sashes as long as the usual one.",
                "All as long as each other; joins pressed and not near an end.",
                minutes=3.0,
            )
        )
        return tuple(found)
    return (
        *found,
        _cut(
            LYING,
            "Measure some units across; cut the sashes as long as the usual one.",
            "Two laid on each other match; each as long as a unit is wide.",
        ),
        _cut(
            CORNERSTONE,
            "Cut a strip as wide as the sashes, then squares off it.",
            "Square, and as wide as a sash.",
        ),
    )


def sew_sash_rows(sashing: Sashing, target: Target) -> tuple[Stage, ...]:
    """Lying sashes and cornerstones into sash rows; none where the sashes are long."""
    beside = sashing.among(target.columns)
    if sashing.cornerstones is None or not beside or not sashing.among(target.rows):
        return ()
    first = "a cornerstone" if sashing.frame else "a sash"
    return (
        Stage(
            id=SEW_SASH_ROWS,
            label="sew sash rows",
            station=Station.MACHINE,
            takes=(Pieces(LYING.id, target.columns), Pieces(CORNERSTONE.id, beside)),
            makes=Pieces(SASH_ROW.id, 1),
            counts=SASH_ROW.noun,
            hazards=(Hazard.NEEDLE, Hazard.PINS, Hazard.IRON),
            do=f"Sew sashes and cornerstones in turn, {first} at both ends; press towards the sashes.",
            check="As long as a row: lay it beside one.",
            minutes=0.7 * (target.columns + beside),
        ),
    )


def cutting_stage(pile: Pile) -> str:
    """The id of the stage that cuts a pile from cloth."""
    return f"cut-{pile.noun.many.replace(' ', '-')}"


def _cut(pile: Pile, do: str, check: str, *, minutes: float = 0.4) -> Stage:
    return Stage(
        id=cutting_stage(pile),
        label=f"cut {pile.noun.many}",
        station=Station.MAT,
        takes=(),
        makes=Pieces(pile.id, 1),
        counts=pile.noun,
        hazards=(Hazard.CUTTER,),
        do=do,
        check=check,
        minutes=minutes,
    )
