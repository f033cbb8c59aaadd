"""The methods the program knows, each with its counts worked out from its operations."""

from __future__ import annotations

from fractions import Fraction
from functools import cache, lru_cache

from sewalong.piecing.definition import FINAL_PILE, Definition, definition, definition_ids
from sewalong.piecing.faults import UnknownMethod
from sewalong.piecing.flow import check_flow
from sewalong.piecing.method import Method, Pieces, Stage
from sewalong.piecing.start_sizes import EIGHTH, run_sizes, starts_from

__all__ = ["UnknownMethod", "method", "method_ids", "method_of", "written_method"]


def method_ids() -> tuple[str, ...]:
    """The ids of all methods, in alphabetical order."""
    return definition_ids()


def written_method(method: str | Method | Definition) -> Definition:
    """The method file behind an id, a method or itself, its flow checked.

    Raises UnknownMethod, naming the nearest one, for an id that there is none of.
    """
    if isinstance(method, Definition):
        check_flow(method)
        return method
    return _known(method if isinstance(method, str) else method.id)


@cache
def _known(id: str) -> Definition:
    try:
        written = definition(id)
    except KeyError:
        # Imported here: only a mistyped name needs it.
        import difflib

        near = difflib.get_close_matches(id, definition_ids(), n=1, cutoff=0.0)
        raise UnknownMethod(f"No method is called {id!r}. The nearest is {near[0]!r}.") from None
    check_flow(written)
    return written


def method(
    id: str,
    *,
    start: Fraction | None = None,
    strip_length: Fraction = Fraction(40),
    seam: Fraction = Fraction(1, 4),
) -> Method:
    """The method called `id`, its counts worked out.

    Only methods from strips depend on the rest: `start` is the strip's cut width (2 1/2 in
    if not given) and `strip_length` its usable length, in inches. Raises UnknownMethod,
    naming the nearest one, and SizeRefused for strips that give no segment.
    """
    return method_of(written_method(id), start=start, strip_length=strip_length, seam=seam)


@lru_cache(maxsize=64)
def method_of(
    written: Definition,
    *,
    start: Fraction | None = None,
    strip_length: Fraction = Fraction(40),
    seam: Fraction = Fraction(1, 4),
) -> Method:
    """As `method`, for a method file already read."""
    # Counts of methods from squares are the same at any size; this one is ample.
    ample = Fraction(5, 2) if written.starts[0].strip else 40 * seam
    main = ample if start is None or not written.starts[0].strip else start
    sizes = {
        pile: float(entry.cutting)
        for pile, entry in starts_from(written, main, seam, EIGHTH).items()
    }
    batch = run_sizes(written, sizes, seam, strip_length=float(strip_length), whole=False)
    stages = tuple(
        Stage(
            id=stage.id,
            label=stage.label,
            station=stage.station,
            takes=tuple(Pieces(pile, count) for pile, count in batch.runs[stage.id].takes.items()),
            makes=Pieces(stage.makes, batch.runs[stage.id].makes),
            counts=written.noun(stage.counts),
            hazards=stage.hazards,
            do=stage.do,
            check=stage.check,
            minutes=stage.minutes,
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
