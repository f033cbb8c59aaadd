"""What a quilt's own pieces come to by its method."""

from __future__ import annotations

from sewalong.piecing.derive import STRIP_LENGTH, Derivation, derive
from sewalong.piecing.faults import MethodFault, SizeRefused
from sewalong.quilt.quilt import Quilt


def derived(quilt: Quilt) -> Derivation:
    """What the quilt's method comes to at its sizes. Raises UnknownMethod or SizeRefused."""
    length = quilt.starts[0].length
    written = quilt.written_method
    try:
        return derive(
            written,
            {start.pile: quilt.cut_at(start) for start in quilt.starts},
            quilt.seam,
            strip_length=STRIP_LENGTH if length is None else length,
            fineness=quilt.unit.step,
            unit=quilt.unit,
        )
    except MethodFault as fault:
        # Its operations were tried before the quilt began, so it is the sizes that will not do.
        raise SizeRefused(
            f"Cut at these sizes, no unit comes of the pieces: {fault.bare}"
        ) from fault


def derived_if_any(quilt: Quilt) -> Derivation | None:
    """The same; None where no unit comes of its sizes."""
    try:
        return derived(quilt)
    except SizeRefused:
        return None
