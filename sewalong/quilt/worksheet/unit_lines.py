"""What is worth knowing of a unit besides its size: its bias edges, and how much error it stands."""

from __future__ import annotations

from fractions import Fraction

from sewalong.lengths import Rounding, Unit, show, show_stated
from sewalong.piecing.derive import Derivation
from sewalong.piecing.edges import EdgeGrain, Side, outer_edges
from sewalong.quilt.as_fraction import exactly
from sewalong.quilt.point import point_lost, point_words
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.size import Size
from sewalong.quilt.worksheet.line import Line


def edge_line(made: Derivation) -> Line:
    """Which outer edges stretch, over all the different units of a batch."""
    stretchy: dict[Side, set[EdgeGrain]] = {side: set() for side in Side}
    for unit in made.units:
        for edge in outer_edges(unit):
            stretchy[edge.side].add(edge.grain)
    sides = [side for side in Side if stretchy[side] != {EdgeGrain.STRAIGHT}]
    grains = {grain for side in sides for grain in stretchy[side]}
    if not sides:
        return Line("unit's outer edges", "all on the straight grain", "they hold their length")
    on = "on the bias" if EdgeGrain.OFF not in grains else "off the straight grain"
    part = "" if EdgeGrain.STRAIGHT not in grains else " in part"
    where = "all four" if len(sides) == 4 else ", ".join(side.value for side in sides)
    return Line("unit's outer edges", f"{where} {on}{part}", "handle without stretching")


def point_lines(quilt: Quilt, made: Derivation) -> tuple[Line, ...]:
    """What is short beyond the point of a unit that has one; none where nothing is."""
    words = point_words(quilt, made)
    return (Line("point of the unit", words, "", float(point_lost(made))),) if words else ()


def trim_line(trim: Size, unit: Unit, reason: str) -> Line:
    """The size units are trimmed to."""
    across, down = (
        show_stated(side, unit, fineness=unit.finest) for side in (trim.width, trim.length)
    )
    text = f"{across} across × {down} down"
    return Line("trim units to", text, reason, float(trim.width), float(trim.length))


def seam_room_line(made: Derivation, trim: tuple[Fraction, Fraction], unit: Unit) -> Line:
    """How much wider every seam may be before the trim size is lost."""
    label = "seam error it stands"
    room = made.unit.seam_room_for(trim)
    if room is None:
        return Line(label, "any: no seam of this method changes the unit's size")
    if room <= 0:
        return Line(label, "none: one seam too wide makes it smaller than that", inches=0.0)
    step = unit.finest
    shown = show(room, unit, fineness=step, rounding=Rounding.DOWN)
    exact = exactly(room, unit)
    rounded = "rounded down" if exact == shown else f"rounded down from {exact}"
    text = f"{shown} ({rounded})"
    if room < step * unit.length:
        text, rounded = f"less than {show(step * unit.length, unit, fineness=step)}: {exact}", ""
    return Line(
        label,
        text,
        "every allowance wider by this, and units can still be trimmed to that",
        room,
        rounded=rounded,
    )
