"""What a quilt's own pieces come to by its method."""

from __future__ import annotations

from sewalong.piecing.derive import STRIP_LENGTH, Derivation, derive
from sewalong.quilt.quilt import Quilt


def derived(quilt: Quilt) -> Derivation:
    """What the quilt's method comes to at its sizes. Raises UnknownMethod or SizeRefused."""
    length = quilt.starts[0].length
    return derive(
        quilt.method_id,
        {start.pile: start.size for start in quilt.starts},
        quilt.seam,
        strip_length=STRIP_LENGTH if length is None else length,
        fineness=quilt.unit.step,
        unit=quilt.unit,
    )
