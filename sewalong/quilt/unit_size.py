"""The one size of a quilt's units, to the raw edges: everything after the units follows it.

It is what the owner says they are trimmed to; else, where a stage of the method trims them, the
largest size on the marks they are trimmed to; else what geometry gives.
"""

from __future__ import annotations

from fractions import Fraction
from math import sqrt

from msgspec.structs import replace

from sewalong.lengths import CENTIMETRE, Length, Unit, show
from sewalong.piecing.derive import Derivation, UnitSize
from sewalong.piecing.faults import SizeRefused
from sewalong.quilt.as_fraction import as_fraction, exactly
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.size import Size

NO_SEAM = 1e-6
"""Inches lost for an inch of allowance: below it, no seam decides the size."""

UNSEEN = {Unit.INCH: Fraction(1, 32), Unit.CM: CENTIMETRE / 20}
"""Half of the finest mark that is worked with, a sixteenth or a millimetre, in inches: so far
off, a shape is still meant as the method's."""

NEAR = Fraction(1, 10**6)
"""Computed sizes are no nearer than this, in inches."""


def raw_unit(made: UnitSize) -> Size:
    """The unit as it comes from its seams, before any trimming."""
    return Size(as_fraction(made.width), as_fraction(made.height))


def unit_sewn_with(made: UnitSize, seam: Length) -> Size:
    """The unit before any trimming, had it been sewn with `seam`."""
    wider = float(seam - made.seam)
    return Size(
        as_fraction(made.width - wider * made.width_per_seam),
        as_fraction(made.height - wider * made.height_per_seam),
    )


def off_its_corner(raw: Size, trim: Size) -> float:
    """How far a seam that runs to the corners lies off one where two sides alone are trimmed.

    In inches. On such a seam's diagonal both sides move by what is trimmed, the seam by that
    over the square root of two.
    """
    return float(max(raw.width - trim.width, raw.length - trim.length)) / sqrt(2)


def is_trimmed(quilt: Quilt) -> bool:
    """Whether the quilt's units are trimmed to a size."""
    return quilt.trim is not None or quilt.written_method.trim_stage is not None


def decided_unit(quilt: Quilt, made: Derivation) -> Size:
    """The size of the quilt's units as they are joined; `made` is its derivation."""
    return usual_unit(made, quilt.unit) if quilt.trim is None else quilt.trim


def usual_unit(made: Derivation, owner: Unit) -> Size:
    """The size of units where their owner says none, trimmed on the marks of her unit."""
    unit = made.unit
    # Squares that no seam made are squared up to the size they were cut at.
    seams_decide = max(unit.width_per_seam, unit.height_per_seam) > NO_SEAM
    if made.trim_stage is not None and seams_decide:
        return _on_the_marks(unit, owner.trim_step)
    return raw_unit(unit)


def joined_from(quilt: Quilt, made: Derivation, raw: Size) -> Size:
    """What units that come from their seams at `raw` are joined as.

    Where they are trimmed, that is the size decided; out of reach, the largest on the ruler.
    """
    if not is_trimmed(quilt):
        return raw
    decided = decided_unit(quilt, made)
    if _reaches(raw, decided):
        return decided
    unit = replace(made.unit, width=float(raw.width), height=float(raw.length))
    return _on_the_marks(unit, quilt.unit.step)


def _on_the_marks(unit: UnitSize, step: Length) -> Size:
    try:
        return Size(*unit.trim_to(step))
    except SizeRefused:
        # Units so small that only seams would be left stay as they are.
        return raw_unit(unit)


def why_not_trimmed_to(made: UnitSize, trim: Size, unit: Unit) -> str:
    """Why units made so cannot be trimmed to `trim`, in a plain sentence; empty when they can."""
    raw = raw_unit(made)
    lost = 2 * made.seam
    if min(trim.width, trim.length) <= lost:
        return (
            f"Trimmed to {trim_text(trim, unit)}, nothing but seam would be left of a unit. "
            f"Trim to more than {finely(lost, unit)}."
        )
    off_shape = trim.length - made.height_for(trim.width)
    if made.shape is not None and abs(off_shape) > UNSEEN[unit]:
        try:
            right = Size(*made.trim_to(unit.trim_step))
            such = f", such as {trim_text(right, unit)}"
        except SizeRefused:
            such = ""
        across, down = made.shape.denominator, made.shape.numerator
        return (
            f"{trim_text(trim, unit)} does not finish {across} to {down}, and the point would "
            f"lose its seam allowance. Give across x down that do{such}."
        )
    if made.shape is None and raw.width == raw.length and trim.width != trim.length:
        return (
            f"{trim_text(trim, unit)} is not square, and these units are: seams would miss their "
            "corners. Give one length."
        )
    if not _reaches(raw, trim):
        return _out_of_reach(made, trim, unit)
    return ""


def _out_of_reach(made: UnitSize, trim: Size, unit: Unit) -> str:
    """The sentence for a size larger than the unit, and the seam it would take."""
    raw = raw_unit(made)
    short = max(trim.width - raw.width, trim.length - raw.length)
    said = (
        f"Such units come to {exactly(raw.width, unit)} × {exactly(raw.length, unit)}, "
        f"{exactly(short, unit)} short of {trim_text(trim, unit)}."
    )
    room = made.seam_room_for((trim.width, trim.length))
    if room is None or float(made.seam) + room <= 0:
        return f"{said} No seam is narrow enough for that. Cut larger pieces."
    narrow = exactly(float(made.seam) + room, unit)
    return f"{said} It would take seams of {narrow} at most. Cut larger pieces."


def _reaches(raw: Size, trim: Size) -> bool:
    return raw.width + NEAR >= trim.width and raw.length + NEAR >= trim.length


def finely(length: Length, unit: Unit) -> str:
    """A size to trim to as it was typed, to what no ruler shows any more."""
    return show(length, unit, fineness=unit.finest)


def trim_text(size: Size, unit: Unit) -> str:
    """`6 5/16 in`, or `7 1/4 in across × 3 7/8 in down` where the sides differ."""
    if size.width == size.length:
        return finely(size.width, unit)
    return f"{finely(size.width, unit)} across × {finely(size.length, unit)} down"


def unit_text(size: Size, unit: Unit) -> str:
    """A unit's size as it was typed where a ruler shows it, else as it is shown everywhere."""
    fine = Fraction(1, 16) if unit is Unit.INCH else Fraction(1, 10)
    if any(side % (fine * unit.length) for side in (size.width, size.length)):
        fine = unit.step / unit.length
    width, length = (show(side, unit, fineness=fine) for side in (size.width, size.length))
    return width if size.width == size.length else f"{width} across × {length} down"
