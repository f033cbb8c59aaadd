"""Thread: the seam length of every stage, what a lockstitch takes of it, spools and bobbins."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from sewalong.lengths import METRE, YARD, Length, Unit
from sewalong.quilt.cloth.thread import SeamRun, Thread, metres, seam_run, thread, wound
from sewalong.quilt.layouts.centre_seams import centre_seams
from sewalong.quilt.layouts.joining_seams import binding_seams, border_seams
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.line import Line, Section, attempt, length_text, plural


def thread_section(basis: Basis) -> Section:
    """Each stage's seams, then the thread they take."""
    return Section("thread", "Thread", attempt("thread", lambda: _lines(basis)))


def seam_runs(basis: Basis) -> tuple[SeamRun, ...]:
    """The seams of every stage for the units of the target, and of rows, borders and binding.

    Raises NumbersFault as the borders do.
    """
    runs = []
    for stage in basis.made.stages:
        if stage.sewn > 0:
            label = basis.quilt.method.stage(stage.id).label
            runs.append(seam_run(label, stage.sewn, ceil(basis.units * stage.per_unit)))
    runs += centre_seams(basis.quilt, basis.target, basis.unit).runs
    for place, one in enumerate(basis.bordered(), start=1):
        sewn = border_seams(one)
        runs.append(SeamRun(f"border {place}", sewn.each, sewn.times))
    runs.append(binding_seams(basis.top))
    return tuple(run for run in runs if run.times)


def thread_of(basis: Basis) -> Thread:
    """The thread for all of it; raises NumbersFault as `seam_runs` does."""
    return thread(seam_runs(basis), unit=basis.shown_in)


def _lines(basis: Basis) -> Iterator[Line]:
    unit = basis.shown_in
    for run in seam_runs(basis):
        yield Line(
            run.stage,
            f"{long_text(run.length, unit)} of seam",
            f"{run.times:,} × {length_text(run.each, unit)}",
            float(run.length),
        )
    found = thread_of(basis)
    waste = f"{float(found.waste * 100):g} % waste"
    yield Line(
        "all thread",
        long_text(found.total, unit),
        f"{long_text(found.seam, unit)} of seam at {float(found.ratio):g} times for lockstitch, "
        f"stitch type 301 of ISO 4915, and {waste}; quilting takes more",
        float(found.total),
    )
    yield Line("in the needle", long_text(found.needle, unit), "half", float(found.needle))
    yield Line("in the bobbin", long_text(found.bobbin, unit), "half", float(found.bobbin))
    choices = basis.choices
    if choices.spool_metres is not None:
        count = wound(found.total, choices.spool_metres * METRE).count
        yield Line("spools", f"{plural(count, 'spool')} of {choices.spool_metres:,} m")
    if choices.bobbin_metres is not None:
        count = wound(found.bobbin, choices.bobbin_metres * METRE).count
        yield Line("bobbins", f"{plural(count, 'bobbin')} of {choices.bobbin_metres:,} m")


def long_text(inches: Length, unit: Unit) -> str:
    """In metres, as thread is sold, and for an owner who works in inches in yards before that."""
    if unit is Unit.CM:
        return f"{metres(inches):,.1f} m"
    return f"{float(inches / YARD):,.1f} yd, {metres(inches):,.1f} m"
