"""`backup`, `examine`, `restore`: the record as a whole."""

from __future__ import annotations

import argparse
import os
from shlex import quote

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.facts import each
from sewalong.cli.frame.report import Report, events_said
from sewalong.cli.frame.run import REFUSED
from sewalong.cli.frame.selection import NO_QUILT
from sewalong.store.backups import Backup, back_up_record, backups_of
from sewalong.store.begun import is_there
from sewalong.store.examination import Examined
from sewalong.store.examination import examine as looked_through
from sewalong.store.home import record_path
from sewalong.store.own_folder import refuse_own_folder
from sewalong.store.restoring import Restored, begin_empty, put_back

_PUT_BACK = "Put a backup back with: sewalong restore"
_NO_BACKUP = (
    "Backups: none.",
    "One is made before the first write of a day.",
    "Make one now with: sewalong backup",
)


def backup(args: argparse.Namespace, context: Context) -> Report:
    """`backup [FOLDER]`"""
    if not is_there(record_path()):
        raise CommandError(NO_QUILT)
    if args.folder is not None:
        refuse_own_folder(args.folder)
    file = back_up_record(record_path(), context.clock(), args.folder)
    found = looked_through(file)
    lines: tuple[str, ...] = (f"Backed up: {_holds(found)}", f"In: {file}")
    again = f"Put it back with: sewalong restore {quote(file)}" if args.folder else _PUT_BACK
    lines += (f"Read back: {_state(found)}", again)
    return Report(lines, {"file": file, **_data(found)}, recorded=True)


def examine(args: argparse.Namespace, context: Context) -> Report:
    """`examine`"""
    path = record_path()
    record = looked_through(path)
    backups = [(one, looked_through(one.path)) for one in backups_of(path)]
    if not record.there:
        return Report(tuple(NO_QUILT.splitlines()), {"record": None, "backups": []})
    bad = sum(not found.sound for _, found in backups)
    lines = [_verdict(record, bad), *_record_lines(record)]
    lines += [_backup_line(one, found) for one, found in backups] or [*_NO_BACKUP]
    if not record.sound:
        lines.append(_PUT_BACK)
    data = {
        "record": {**_data(record), "path": path, "bytes": record.size},
        "backups": [{"file": one.path, "made": one.made, **_data(found)} for one, found in backups],
    }
    sound = record.sound and not bad
    return Report(tuple(lines), data, exit_status=0 if sound else REFUSED)


def _verdict(record: Examined, bad: int) -> str:
    if not record.sound:
        return "The record is damaged."
    backups = "backup is" if bad == 1 else "backups are"
    return f"The record is sound, but {bad} {backups} not." if bad else "The record is sound."


def _record_lines(record: Examined) -> list[str]:
    lines = [f"Record: {record.path}", f"Size: {record.size:,} bytes"]
    if record.wrong:
        said = [f"SQLite says: {record.detail}"] if record.detail else []
        return [*lines, f"Wrong: {record.wrong}", *said]
    lines += [
        "SQLite finds the file whole.",
        f"Quilts: {len(record.quilts)}",
        f"Events: {record.events}",
    ]
    for quilt in record.quilts:
        found = (f"damaged: {quilt.wrong}",) if quilt.wrong else _SOUND
        lines += each(quilt.name, (events_said(quilt.events), *found))
    return lines


_SOUND = (
    "numbered without a gap",
    "each event as it was written",
    "all readable",
    "the counts add up",
)


def _backup_line(backup: Backup, found: Examined) -> str:
    return f"Backup of {backup.made}, {backup.why}: {_state(found)}"


def _state(found: Examined) -> str:
    if found.sound:
        return f"sound, {_holds(found)}"
    wrong = found.wrong or next(quilt.wrong for quilt in found.quilts if quilt.wrong)
    return f"not sound: {wrong}"


def _holds(found: Examined) -> str:
    n = len(found.quilts)
    return f"{n} quilt{'' if n == 1 else 's'} with {events_said(found.events)}"


def _data(found: Examined) -> dict[str, object]:
    return {
        "sound": found.sound,
        "wrong": found.wrong or None,
        "quilts": [
            {"number": q.number, "name": q.name, "events": q.events, "wrong": q.wrong or None}
            for q in found.quilts
        ],
    }


def restore(args: argparse.Namespace, context: Context) -> Report:
    """`restore [N | FILE | --empty]`"""
    path = record_path()
    if args.empty:
        if args.which is not None:
            raise CommandError("Name a backup, or --empty; not both.")
        done = begin_empty(path, context.clock())
        line = "The record is empty now. Begin a quilt with: sewalong new"
        lines = (line, *_kept_lines(done))
        return Report(lines, _restored_data(None, done), recorded=True)
    backups = backups_of(path)
    if args.which is None:
        return _listed(path, backups)
    file = _meant(args.which, backups)
    done = put_back(path, file, context.clock())
    found = looked_through(path)
    damaged = [f"Damaged in it: {q.name}, {q.wrong}" for q in found.quilts if q.wrong]
    lines = (f"Put back: {_holds(found)}", f"From: {file}", *damaged, *_kept_lines(done))
    return Report(lines, _restored_data(file, done), recorded=True)


def _listed(path: str, backups: tuple[Backup, ...]) -> Report:
    record = looked_through(path)
    now = f"The record now: {_state(record)}" if record.there else "The record now: none"
    looked = [(one, looked_through(one.path)) for one in backups]
    lines = [now]
    for n, (one, found) in enumerate(looked, start=1):
        lines.append(f"{n}. {one.made}, {one.why}: {_state(found)}")
    if backups:
        lines.append("Put one back with its number, such as: sewalong restore 1")
    else:
        lines += _NO_BACKUP if record.sound else ("Backups: none.",)
        lines.append("Put a backup from elsewhere back with: sewalong restore FILE")
    if not record.sound:
        lines.append("Or begin with an empty record: sewalong restore --empty")
    data = {
        "record": _data(record) if record.there else None,
        "backups": [
            {"number": n, "file": one.path, "made": one.made, **_data(found)}
            for n, (one, found) in enumerate(looked, start=1)
        ],
    }
    return Report(tuple(lines), data)


def _meant(which: str, backups: tuple[Backup, ...]) -> str:
    if which.isascii() and which.isdigit() and len(which) < 6:
        if 1 <= int(which) <= len(backups):
            return backups[int(which) - 1].path
        raise CommandError(f"There is no backup number {which}. sewalong restore lists them.")
    if not os.path.isfile(which):
        raise CommandError(f"There is no file {which[:200]}. sewalong restore lists the backups.")
    return which


def _kept_lines(done: Restored) -> list[str]:
    lines = []
    if done.before:
        lines.append(f"Kept: the record as it was before, as {done.before}")
    if done.aside:
        lines.append(f"Kept aside: what lay there before, as {done.aside}")
    if done.unsaved:
        lines.append(f"What it still has could not be saved in files of its own: {done.unsaved}")
    for one in done.rescued:
        if one.quilt is None:
            lines.append(f"Saved: {events_said(one.events)} more that can be read, in {one.file}")
            lines.append("Read them, and count again what is missing.")
        else:
            lines.append(f"Saved: “{one.quilt}” with {events_said(one.events)} more, in {one.file}")
            lines.append(
                f"Take that in as a quilt of its own: sewalong import {quote(one.file)} "
                f"--name {quote(f'{one.quilt}, rescued')}"
            )
    return lines


def _restored_data(file: str | None, done: Restored) -> dict[str, object]:
    return {
        "restored": file,
        "before": done.before,
        "aside": done.aside,
        "rescued": [
            {"file": one.file, "events": one.events, "quilt": one.quilt} for one in done.rescued
        ],
    }
