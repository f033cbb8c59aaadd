"""`preferences`: what the owner prefers for all her quilts, and the file it stands in."""

from __future__ import annotations

import argparse
import os
from collections.abc import Iterator

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.faults_report import faults_report
from sewalong.cli.frame.input_files import read_bytes
from sewalong.cli.frame.report import Report
from sewalong.lengths import as_given
from sewalong.owner.key_names import cap
from sewalong.owner.preferences import AS_USUAL, USUAL_KEYS, Preferences
from sewalong.owner.reader import read_preferences
from sewalong.owner.template import TEMPLATE
from sewalong.quilt.file.faults import QuiltFileFaults
from sewalong.quilt.file.toml_errors import LONGEST_FILE
from sewalong.store.home import preferences_path
from sewalong.store.writing import write_whole


def preferences(args: argparse.Namespace, context: Context) -> Report:
    """`preferences [--write]`: the faults are what it has to tell, so they are its answer."""
    path = preferences_path()
    there = os.path.lexists(path)
    if args.write:
        if there:
            raise CommandError(f"{path} is there already. Edit it, or move it away first.")
        os.makedirs(os.path.dirname(path), mode=0o700, exist_ok=True)
        write_whole(path, TEMPLATE)
        return Report(
            (f"Written: {path}. All in it is as usual until you change it.",),
            {"file": path},
            recorded=True,
        )
    try:
        known = read_preferences(read_bytes(path, LONGEST_FILE)) if there else AS_USUAL
    except QuiltFileFaults as error:
        return faults_report(path, error.faults, "All is as usual until put right.")
    none = ("File: none", f"It would be: {path}", "Make it with: sewalong preferences --write")
    where = (f"File: {path}",) if there else none
    data: dict[str, object] = {"file": path if there else None, "faults": [], "keys": _keys(known)}
    return Report((*where, *_lines(known)), data)


def _keys(known: Preferences) -> dict[str, list[str]]:
    return {name: list(known.keys.get(name, (usual,))) for name, usual in USUAL_KEYS.items()}


def _lines(known: Preferences) -> Iterator[str]:
    yield f"Unit: {known.unit.value if known.unit else 'inch, unless a quilt or a length says cm'}"
    minutes = known.session_minutes
    yield f"Session: {_so_many(minutes, 'minute') if minutes else 'as long as yours have been'}"
    yield f"Only plain signs: {'yes' if known.ascii else 'where the terminal shows no others'}"
    yield f"Bell: {'when a chain or a stage is done' if known.bell else 'none'}"
    yield f"Needle: {_after(known.needle_hours, 'hour', 'as is common')}"
    blade = known.blade_inches
    yield f"Blade: {f'after {as_given(blade)} cut' if blade else 'learned from your changes'}"
    yield f"Stop: {_after(known.stop_minutes, 'minute', 'as is usual')}"
    for about, words in known.cautions.items():
        for word in words:
            yield f"Caution of your own, {about}: {word}"
    for name, keys in _keys(known).items():
        yield f"Key of {name}: {', '.join(map(cap, keys))}"


def _after(number: float | None, one: str, usual: str) -> str:
    if number is None:
        return usual
    return f"after {_so_many(number, one)}" if number else "never"


def _so_many(number: float, one: str) -> str:
    return f"{number:g} {one if number == 1 else one + 's'}"
