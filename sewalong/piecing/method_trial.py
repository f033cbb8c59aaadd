"""A method that nobody has sewn yet, tried out: do its operations make a unit?"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from sewalong.piecing.definition import Definition
from sewalong.piecing.derive import SEAM, derive
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.piecing.flow import Draw
from sewalong.piecing.method_tables import Wrong
from sewalong.piecing.start_sizes import piece_sizes, run_sizes, starts_from

AMPLE = 400 * SEAM
"""Inches of a main piece that is large against its seams, so that only the method is at fault.
What it will do for pieces of some size is asked when a size is given."""

LONG = 24 * AMPLE
FINE = Fraction(1, 10**6)

MOST_DIFFERENT_UNITS = 64
"""Units of one batch that differ; the program's own methods have 8 at most."""


def tried_out(written: Definition) -> list[Wrong]:
    """What is wrong with the operations of a method whose tables are right.

    Every stage is tried that those before it leave something to do for; then the whole.
    """
    return list(dict.fromkeys(_stages(written))) or list(_whole(written))


def _stages(written: Definition) -> Iterator[Wrong]:
    sizes = {start.pile: float(AMPLE) for start in written.starts}
    # Near what the geometry will ask for: further off, pieces would lap or leave gaps.
    for start in written.starts:
        part = start.shape if start.share is None else start.share
        if part is not None:
            sizes[start.pile] = float(AMPLE * part + SEAM)
    for stage in written.stages:
        draw = Draw(written, piece_sizes(written, sizes), SEAM)
        try:
            draw.pull(stage.makes)
        except MethodFault as fault:
            yield fault.path, fault.bare
        except SizeRefused as refusal:
            yield draw.fault("", draw.at).path, _at_any_size(refusal)


def _whole(written: Definition) -> Iterator[Wrong]:
    last = ("stages", len(written.stages) - 1, "operations")
    try:
        starts = starts_from(written, float(AMPLE), SEAM, FINE)
        exact = {pile: start.exact for pile, start in starts.items()}
        units = run_sizes(written, exact, SEAM).different_units()
        if not all(unit.is_rectangle for unit in units):
            yield (
                last,
                "the unit does not fill its rectangle: there is a gap in it, or pieces lap over "
                "each other. Look at what is joined to what, and how it is turned before.",
            )
        elif len(units) > MOST_DIFFERENT_UNITS:
            yield (), f"one batch gives {len(units)} different units; give piles a letter."
        else:
            derive(written, AMPLE, strip_length=LONG, fineness=FINE)
    except MethodFault as fault:
        yield fault.path, fault.bare
    except SizeRefused as refusal:
        yield last, _at_any_size(refusal)


def _at_any_size(refusal: SizeRefused) -> str:
    return f"at any size this would be refused: {refusal}"
