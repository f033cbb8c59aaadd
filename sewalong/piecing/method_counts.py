"""A method with its counts: what each stage takes and makes, worked out from its operations."""

from __future__ import annotations

from fractions import Fraction

from sewalong.piecing.definition import Definition
from sewalong.piecing.method import FINAL_PILE, Method, MethodKey, Pieces, Stage
from sewalong.piecing.start_sizes import EIGHTH, run_sizes, starts_from

USUAL_STRIP = Fraction(5, 2)
"""The width strips are taken to be cut at, in inches, until somebody says another."""


def count_out(written: Definition, key: MethodKey) -> Method:
    """The method in the file `written`, its counts worked out for the sizes in `key`.

    Raises MethodFault for operations that don't fit together and SizeRefused for strips that
    give no segment.
    """
    # Counts of methods from squares are the same at any size; this one is ample.
    ample = USUAL_STRIP if written.starts[0].strip else 40 * key.seam
    main = ample if key.start is None or not written.starts[0].strip else key.start
    sizes = {
        pile: float(entry.cutting)
        for pile, entry in starts_from(written, main, key.seam, EIGHTH).items()
    }
    length = float(key.strip_length)
    batch = run_sizes(written, sizes, key.seam, strip_length=length, whole=False)
    stages = tuple(
        Stage(
            id=stage.id,
            label=stage.label,
            station=stage.station,
            takes=tuple(Pieces(pile, count) for pile, count in batch.runs[stage.id].takes.items()),
            makes=Pieces(stage.makes, batch.runs[stage.id].makes),
            counts=written.noun(stage.counts or stage.makes),
            hazards=stage.hazards,
            do=stage.do,
            check=stage.check,
            minutes=stage.minutes,
            either=stage.either,
        )
        for stage in written.stages
    )
    return Method(
        id=written.id,
        name=written.name,
        about=written.about,
        piles=written.piles,
        starts=tuple(entry.pile for entry in written.starts),
        unit=FINAL_PILE,
        stages=stages,
    )
