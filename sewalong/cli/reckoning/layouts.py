"""`layouts`: rows × columns that the units will fill, for a quilt or for a bare count."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from msgspec.structs import replace

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.length_arguments import read, read_size, unit_of
from sewalong.cli.frame.line_report import all_facts, line_data
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.plan_source import meant
from sewalong.cli.reckoning.wanted_size import wanted_size
from sewalong.quilt.layouts.layout import Layout, LayoutChoice, Reach, usual_reach
from sewalong.quilt.layouts.layout import layouts as within_reach
from sewalong.quilt.layouts.neighbouring_layouts import around, grow, neighbours
from sewalong.quilt.setting import SetOnPoint
from sewalong.quilt.worksheet.line import Line, size_text

if TYPE_CHECKING:
    from sewalong.progress.record.state import State


def layouts(args: argparse.Namespace, context: Context) -> Report:
    """`layouts [FILE|QUILT]`, or `layouts --units N --finishes SIZE`."""
    state: State | None = None
    if args.units is not None or args.finishes is not None:
        choice, now = _bare(args)
    else:
        choice, now, state = _of_quilt(args, context)
    found = [(_marked(line, one, state), one) for line, one in _lines(args, choice, now)]
    data: dict[str, object] = {
        "units": choice.have,
        "layouts": [
            {**line_data(line), **({} if one is None else _counts(one))} for line, one in found
        ],
    }
    return Report(tuple(fact for line, _ in found for fact in all_facts(line)), data)


def _marked(line: Line, one: Layout | None, state: State | None) -> Line:
    """The line with a word where the layout would contradict what is sewn."""
    if one is None or state is None:
        return line
    from sewalong.progress.plan.plan import can_be_wanted
    from sewalong.quilt.quilt import Target

    layout = Target(one.rows, one.columns)
    if layout == state.target or can_be_wanted(state, layout):
        return line
    return replace(line, reason=f"{line.reason}; not as it is sewn now")


def _counts(one: Layout) -> dict[str, object]:
    return {"rows": one.rows, "columns": one.columns, "spare": one.spare, "short": one.short}


Told = Iterator[tuple[Line, Layout | None]]


def _lines(args: argparse.Namespace, choice: LayoutChoice, now: tuple[int, int] | None) -> Told:
    if now is not None:
        one = choice.layout(*now)
        yield _line("now wanted", one, choice), one
    if choice.wanted is not None:
        yield Line("nearest to", size_text(choice.wanted, choice.shown_in)), None
        both = around(choice)
        yield _line("smallest that covers it", both.covering, choice), both.covering
        if both.within is not None:
            yield _line("largest that lies within it", both.within, choice), both.within
    if args.pattern is not None:
        old = _counts_of(args.pattern, "--pattern")
        new = now or (None if choice.wanted is None else _pair(around(choice).covering))
        if new is None:
            raise CommandError("--pattern needs --near, --bed, or --rows and --columns besides.")
        resized = grow(choice, old, new)
        yield Line(f"from {old[0]} rows of {old[1]}", resized.reason), None
    for one in within_reach(choice, _reach(args, choice.have), alike=args.alike):
        yield _line(_named(one), one, choice), one
    if now is not None:
        for one in neighbours(choice, *now, alike=args.alike):
            yield _line(f"a step away, {_named(one)}", one, choice), one


def _pair(one: Layout) -> tuple[int, int]:
    return one.rows, one.columns


def _reach(args: argparse.Namespace, have: int) -> Reach:
    if args.spare is not None and args.spare < 0:
        raise CommandError("--spare takes a whole number from 0.")
    return usual_reach(have) if args.spare is None else Reach(spare=args.spare)


def _named(one: Layout) -> str:
    return f"{one.rows} rows of {one.columns}"


def _line(label: str, one: Layout, choice: LayoutChoice) -> Line:
    named = "" if label.endswith(_named(one)) else f"{_named(one)}; "
    # On point the corners are alike whatever the counts, so it tells nothing.
    alike = one.corners_alike and not isinstance(choice.setting, SetOnPoint)
    corners = ", corners alike" if alike else ""
    return Line(
        label,
        f"{named}{size_text(one.size, choice.shown_in)}; {one.leaves}",
        f"{one.shape}{corners}" + (f"; {one.fit.reason}" if one.fit else ""),
        float(one.size.width),
        float(one.size.length),
    )


def _of_quilt(
    args: argparse.Namespace, context: Context
) -> tuple[LayoutChoice, tuple[int, int], State | None]:
    from sewalong.quilt.layouts.yield_of_method import units_of
    from sewalong.quilt.worksheet.basis import basis

    found = meant(args, context)
    rests_on = basis(found.quilt, found.target)
    choice = LayoutChoice(
        units_of(found.quilt) if found.have is None else found.have,
        rests_on.unit.grown(-found.quilt.seam),
        rests_on.border_in_all,
        wanted_size(args),
        found.quilt.unit,
        found.quilt.setting,
        found.quilt.seam,
    )
    return choice, (found.target.rows, found.target.columns), found.state


def _bare(args: argparse.Namespace) -> tuple[LayoutChoice, tuple[int, int] | None]:
    if args.name is not None or args.quilt is not None:
        raise CommandError("Name a quilt, or give --units and --finishes; not both.")
    if args.units is None:
        raise CommandError(
            "Give --units besides --finishes: how many units there are. From a size to the "
            "blocks it takes: sewalong reckon blocks"
        )
    if args.units < 1:
        raise CommandError("--units takes a whole number from 1.")
    unit = unit_of(args)
    size = read_size(args, "finishes")
    choice = LayoutChoice(
        args.units, size, read(args, "border", Fraction(0)), wanted_size(args), unit
    )
    if args.rows is None and args.columns is None:
        return choice, None
    if args.rows is None or args.columns is None:
        raise CommandError("Give --rows and --columns together.")
    return choice, (args.rows, args.columns)


def _counts_of(text: str, name: str) -> tuple[int, int]:
    rows, by, columns = text.lower().replace("×", "x").partition("x")
    if not by or not rows.strip().isdecimal() or not columns.strip().isdecimal():
        raise CommandError(f"{name} takes rows and columns, such as 6x5.")
    return int(rows), int(columns)
