"""`plan`: everything a quilt comes to in numbers."""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.line_report import facts_of, section_data, section_lines
from sewalong.cli.frame.report import Report
from sewalong.cli.reckoning.plan_source import Meant, meant


def plan(args: argparse.Namespace, context: Context) -> Report:
    """`plan [FILE|QUILT]`: sizes, cloth, cut list, shopping list, thread, layouts that fit."""
    found = meant(args, context)
    if args.told:
        return _told(found)
    from sewalong.quilt.worksheet.worksheet import worksheet

    all_of_it = worksheet(found.quilt, found.target, have=found.have, short=found.short)
    if all_of_it.refusal:
        raise CommandError(all_of_it.refusal)
    sections = [
        one
        for one in all_of_it.sections
        if (not args.only and one.id != "rows") or one.id == args.only
    ]
    data = {
        "quilt": found.quilt.name,
        "method": found.quilt.method_id,
        "unit": found.quilt.unit.value,
        "target": {"rows": found.target.rows, "columns": found.target.columns},
        "units": all_of_it.units,
        **section_data(sections),
    }
    if args.only:
        return Report(facts_of(sections[0].lines), data)
    first = [
        f"Quilt: {found.quilt.name}",
        f"Method: {found.quilt.method.name}",
        f"Target: {found.target.rows} rows of {found.target.columns}",
        f"Units wanted: {found.quilt.units_for(found.target):,}",
        f"Units there will be: {all_of_it.units:,}",
    ]
    if found.quilt.setting is not None:
        first.append(f"Set: {found.quilt.setting.words}")
    return Report((*first, *section_lines(sections)), data)


def _told(found: Meant) -> Report:
    """`plan --told`: what the pictures show, in words."""
    from sewalong.wall.told import top_told, unit_told

    unit, top = unit_told(found.quilt), top_told(found.quilt, found.target)
    data = {"quilt": found.quilt.name, "unit": list(unit), "top": list(top)}
    return Report((f"Quilt: {found.quilt.name}", *top, *unit), data)
