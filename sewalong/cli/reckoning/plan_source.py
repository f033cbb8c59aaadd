"""The quilt whose numbers are wanted: a quilt file, or a quilt in the record as it stands now."""

from __future__ import annotations

import argparse
import os
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import changed, read_or_none, read_size

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sewalong.lengths import Unit
    from sewalong.progress.record.state import State
    from sewalong.quilt.quilt import Quilt, Target


class Meant(Struct, frozen=True):
    """`target` is the one now wanted; `have` the units there are or will be by the record, and
    `short` the starting pieces missing for the target by pile (None when only the plan is
    known). `state` is the quilt as the record has it, None of a quilt file."""

    quilt: Quilt
    target: Target
    have: int | None
    short: Mapping[str, int] | None = None
    state: State | None = None


def meant(args: argparse.Namespace, context: Context) -> Meant:
    """The quilt asked for, with the settings and the layout given on the line in place of its own.

    Raises CommandError with every fault of a quilt file, and as every command does for a quilt in
    the record.
    """
    state = None if _is_file(args) else _state(args, context)
    found = _from_file(args.name) if state is None else _from_record(state)
    quilt = _with_settings(found.quilt, args)
    if quilt.seam != found.quilt.seam:
        _refuse_seam(quilt)
    if (quilt.trim, quilt.seam) != (found.quilt.trim, found.quilt.seam):
        _refuse_trim(quilt)
    rows, columns = getattr(args, "rows", None), getattr(args, "columns", None)
    target = found.target
    if rows is not None or columns is not None:
        target = _target(
            target.rows if rows is None else rows, target.columns if columns is None else columns
        )
    short = None if state is None else _short(state, target)
    return Meant(quilt, target, found.have, short, state)


def _is_file(args: argparse.Namespace) -> bool:
    """A name that ends in .toml, or "-", or a file that is there; not with --quilt or --demo."""
    if args.name is None or args.quilt is not None or args.demo:
        return False
    if args.name == "-" or args.name.endswith(".toml"):
        return True
    return os.path.isfile(args.name)


def _from_file(file: str) -> Meant:
    from sewalong.cli.frame.input_files import read_bytes
    from sewalong.cli.frame.method_beside import beside
    from sewalong.quilt.file.faults import QuiltFileFaults
    from sewalong.quilt.file.reader import read_quilt_bytes
    from sewalong.quilt.file.toml_errors import LONGEST_FILE

    try:
        quilt = read_quilt_bytes(read_bytes(file, LONGEST_FILE), beside(file))
    except QuiltFileFaults as faults:
        raise CommandError(str(faults)) from faults
    return Meant(quilt, quilt.target, None)


def _state(args: argparse.Namespace, context: Context) -> State:
    from sewalong.cli.frame.selection import chosen_quilt

    with chosen_quilt(args, context) as open_quilt:
        return open_quilt.state


def _short(state: State, target: Target) -> dict[str, int]:
    """The starting pieces missing for `target`, by pile."""
    from sewalong.progress.plan.plan import plan

    short = plan(replace(state, target=target)).shortfall
    return {} if short is None else {one.pile: one.count for one in short.pieces}


def _from_record(state: State) -> Meant:
    from sewalong.progress.plan.plan import plan

    return Meant(state.quilt, state.target, plan(state).units.possible)


def _with_settings(quilt: Quilt, args: argparse.Namespace) -> Quilt:
    from sewalong.lengths import Unit

    if args.unit is None:
        # A bare number on the line is in the quilt's own unit.
        args.unit = quilt.unit.value
    else:
        quilt = _printed_in(quilt, Unit(args.unit))
    seam = read_or_none(args, "seam")
    if seam is not None:
        quilt = replace(quilt, seam=seam)
    if args.trim_to is not None:
        quilt = replace(quilt, trim=read_size(args, "trim-to"))
    return replace(quilt, choices=changed(quilt.choices, args))


def _printed_in(quilt: Quilt, unit: Unit) -> Quilt:
    """The same quilt in another unit: its units stay trimmed on the marks of the owner's own."""
    from sewalong.piecing.faults import SizeRefused
    from sewalong.quilt.derived import derived
    from sewalong.quilt.unit_size import decided_unit, is_trimmed

    trim = quilt.trim
    if trim is None and unit is not quilt.unit and is_trimmed(quilt):
        try:
            trim = decided_unit(quilt, derived(quilt))
        except SizeRefused:
            # That no unit comes of it is told where sizes are worked out.
            trim = None
    return replace(quilt, unit=unit, trim=trim)


def _refuse_seam(quilt: Quilt) -> None:
    from sewalong.quilt.plan_faults import why_borders_fail

    if sentence := why_borders_fail(quilt):
        raise CommandError(sentence)


def _refuse_trim(quilt: Quilt) -> None:
    from sewalong.quilt.file.size_check import why_sizes_fail, why_trim_fails

    # Sizes that make no unit are told where they are worked out.
    if not why_sizes_fail(quilt) and (sentence := why_trim_fails(quilt)):
        raise CommandError(sentence)


def _target(rows: int, columns: int) -> Target:
    from sewalong.quilt.quilt import Target
    from sewalong.quilt.rules import MOST_ROWS

    for name, count in (("--rows", rows), ("--columns", columns)):
        if not 1 <= count <= MOST_ROWS:
            raise CommandError(f"{name} takes a whole number from 1 to {MOST_ROWS}.")
    return Target(rows, columns)
