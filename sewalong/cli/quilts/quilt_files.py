"""Quilts in and out: begun from a quilt file, checked, exported, imported."""

from __future__ import annotations

import argparse
import os
from collections.abc import Sequence

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.faults_report import faults_report
from sewalong.cli.frame.input_files import STDIN, read_bytes, read_text
from sewalong.cli.frame.method_beside import beside
from sewalong.cli.frame.report import Report, events_said
from sewalong.cli.frame.run import REFUSED
from sewalong.cli.frame.sanitize import safe_json
from sewalong.cli.frame.selection import NO_QUILT, any_library, opened, shelf
from sewalong.progress.joining.stage_words import what_is_left_of_the_point
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.fold import fold
from sewalong.progress.resuming.resume_facts import shortfall_in_words
from sewalong.quilt.file.faults import how_many
from sewalong.quilt.file.reader import QuiltFileFaults, read_quilt_bytes
from sewalong.quilt.file.toml_errors import LONGEST_FILE
from sewalong.quilt.json_codec import quilt_to_dict
from sewalong.quilt.quilt import Quilt
from sewalong.service.begin import begin
from sewalong.service.listing import summary
from sewalong.store.archive import from_text, take_in, to_text
from sewalong.store.faults import StoreFault
from sewalong.store.home import record_path
from sewalong.store.library import Shelved
from sewalong.store.own_folder import refuse_own_folder
from sewalong.store.writing import file_stem, make_folder, write_whole

LONGEST_ARCHIVE = 64_000_000
"""Bytes in an exported quilt. An event has some 150; a long quilt some thousands of events."""


def start(args: argparse.Namespace, context: Context) -> Report:
    """`start FILE`: all faults at once, and then nothing is begun."""
    quilt = _read(args.file)
    with opened(record_path(), context) as library:
        entry = begin(library, quilt, context.clock())
    lines = (
        f"Begun: {quilt.name}",
        *_plan_lines(quilt),
        "Open it with: sewalong",
    )
    data = {"quilt": quilt.name, "key": entry.key, "number": entry.id}
    return Report(lines, data, recorded=True)


def check(args: argparse.Namespace, context: Context) -> Report:
    """`check FILE`: the faults are what it has to tell, so they are printed as its answer."""
    try:
        quilt = read_quilt_bytes(read_bytes(args.file, LONGEST_FILE), beside(args.file))
    except QuiltFileFaults as error:
        return faults_report(args.file, error.faults, quilt=None)
    lines = (f"No faults: {quilt.name}", *_plan_lines(quilt))
    return Report(lines, {"file": args.file, "faults": [], "quilt": quilt_to_dict(quilt)})


def _read(file: str) -> Quilt:
    try:
        return read_quilt_bytes(read_bytes(file, LONGEST_FILE), beside(file))
    except QuiltFileFaults as error:
        nothing = f"{how_many(error.faults)} in {file}. Nothing was begun."
        raise CommandError("\n".join([*(str(fault) for fault in error.faults), nothing])) from error


def _plan_lines(quilt: Quilt) -> list[str]:
    """What there is, what it makes, what is wanted; a shortfall shows before the first cut."""
    state = fold(quilt, ())
    now = plan(state)
    unit = state.route.piles[quilt.method.unit].noun
    there = " and ".join(
        state.route.piles[start.pile].noun.count(start.count) for start in quilt.starts
    )
    lines = [
        f"Method: {quilt.method.name}",
        f"There are: {there}, enough for {unit.count(now.units.possible)}.",
        f"Target: {quilt.target}, {unit.count(quilt.units_for(quilt.target))} in all.",
        *(("To be put together as a web.",) if quilt.is_web else ()),
    ]
    if quilt.setting is not None:
        lines.append(f"Set: {quilt.setting.words}.")
    if now.units.spare:
        lines.append(f"Spare: {unit.count(now.units.spare)}.")
    short = shortfall_in_words(state, now)
    if short:
        lines.append(f"Short: {short}")
    point = what_is_left_of_the_point(quilt)
    if point:
        lines.append(f"Point: {point}")
    return lines


def export(args: argparse.Namespace, context: Context) -> Report:
    """`export [QUILT] FILE`: a file that is there is not written over unasked."""
    if args.all:
        return _export_all(args, context)
    with shelf(args, context) as (library, entry):
        loaded = library.load(entry)
    text = to_text(loaded)
    data: dict[str, object] = {
        "quilt": entry.name,
        "file": args.file,
        "events": len(loaded.record),
        "damaged": loaded.damage or None,
    }
    aside = (loaded.damage,) if loaded.damage else ()
    status = REFUSED if loaded.damage else 0
    if args.file == STDIN:
        return Report(data=data, whole=safe_json(text), aside=aside, exit_status=status)
    if os.path.isdir(args.file):
        raise CommandError(f"{args.file} is a folder. Name a file in it.")
    _refuse_to_write(args.file, replace=args.replace)
    write_whole(args.file, text)
    line = f"Exported: {entry.name}, {events_said(len(loaded.record))}, to {args.file}"
    return Report((line,), data, aside, exit_status=status, recorded=True)


def _refuse_to_write(file: str, *, replace: bool) -> None:
    refuse_own_folder(file)
    if os.path.lexists(file) and not replace:
        raise CommandError(f"{file} is there already. Name another file, or add --replace")


def _export_all(args: argparse.Namespace, context: Context) -> Report:
    """`export --all FOLDER`: a file for each quilt; one that cannot be read hides no other."""
    if args.name is not None or args.quilt is not None:
        raise CommandError("Name a quilt, or --all; not both.")
    with any_library(args, context) as library:
        entries = library.entries() if library else ()
        if library is None or not entries:
            raise CommandError(NO_QUILT)
        files = _files_for(args.file, entries)
        for file in files.values():
            _refuse_to_write(file, replace=args.replace)
        try:
            make_folder(args.file)
        except OSError as error:
            raise CommandError(
                f"The folder {args.file} cannot be made ({error.strerror}). Name another."
            ) from error
        lines, faults, data = [], [], []
        for entry in entries:
            file, events = files[entry.key], 0
            try:
                loaded = library.load(entry)
                fault, events = loaded.damage, len(loaded.record)
                write_whole(file, to_text(loaded))
                lines.append(f"Exported: {entry.name}, {events_said(events)}, to {file}")
            except StoreFault as error:
                fault = str(error)
                lines.append(f"Not exported: {entry.name}")
            faults += [fault] if fault else []
            data.append({"quilt": entry.name, "file": file, "events": events, "fault": fault})
        if gone := library.missing():
            faults.append(gone)
    return Report(
        tuple(lines),
        {"quilts": data},
        tuple(faults),
        exit_status=REFUSED if faults else 0,
        recorded=True,
    )


def _files_for(folder: str, entries: Sequence[Shelved]) -> dict[str, str]:
    """A file for each quilt by its key, named after it; where two would be alike, numbered."""
    files: dict[str, str] = {}
    for entry in entries:
        stem = file_stem(entry.name)
        taken = {os.path.basename(file).casefold() for file in files.values()}
        name = f"{stem}.json"
        if name.casefold() in taken:
            name = f"{stem}-{entry.id}.json"
        files[entry.key] = os.path.join(folder, name)
    return files


def import_quilt(args: argparse.Namespace, context: Context) -> Report:
    """`import FILE [--name NAME]`"""
    archive = from_text(read_text(args.file, LONGEST_ARCHIVE))
    with opened(record_path(), context) as library:
        entry = take_in(library, archive, context.clock(), name=args.name)
        summary(library, entry)
    line = f"Imported: {entry.name}, {events_said(len(archive.record))}."
    data = {
        "quilt": entry.name,
        "key": entry.key,
        "number": entry.id,
        "events": len(archive.record),
    }
    return Report((line,), data, recorded=True)
