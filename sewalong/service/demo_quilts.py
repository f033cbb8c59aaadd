"""The demo quilts: invented, kept in a record of their own, seeded on first use.

Each is a quilt file in `demo_projects`, with or without an exported history beside it.
A history's times are moved so that its last event lies as long ago as `AGES` says.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from datetime import datetime, timedelta
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

import sewalong
from sewalong.progress.record.events.every_kind import Event, SessionClosed
from sewalong.quilt.quilt import Quilt
from sewalong.service.listing import summary
from sewalong.store.backups import backups_of
from sewalong.store.begun import marker_of
from sewalong.store.faults import Damaged, Lost, NotOurs, StoreFault
from sewalong.store.library import Library

AGES = {
    "pebble-path": timedelta(0),
    "lantern-walk": timedelta(days=24),
    "cornflower-field": timedelta(days=3),
    "russet-rows": timedelta(days=51),
    "ferry-steps": timedelta(days=9),
    "pantry-window": timedelta(days=1),
    "weathercock": timedelta(days=2),
    "orchard-gate": timedelta(days=16),
    "signal-garden": timedelta(days=31),
}
"""How long ago the last event of each was, on the day it is seeded."""

USUAL_AGE = timedelta(days=7)


class DemoQuilt(Struct, frozen=True):
    """One demo quilt ready for the shelf."""

    key: str
    quilt: Quilt
    started: datetime
    events: tuple[Event, ...]


def demo_folder() -> Path:
    """Where the demo files lie: in the installed package, or beside it in a checkout."""
    package = Path(sewalong.__file__).parent
    for folder in (package / "demo_projects", package.parent / "demo_projects"):
        if folder.is_dir():
            return folder
    raise StoreFault("The demo quilts are not installed. Install sewalong again to have them.")


def demo_names() -> tuple[str, ...]:
    """The names of the demo files, in alphabetical order."""
    return tuple(sorted(path.stem for path in demo_folder().glob("*.toml")))


def demo_key(name: str) -> str:
    """The key of a demo quilt anywhere."""
    return f"demo-{name}"


def read_demo(name: str, now: datetime) -> DemoQuilt:
    """The demo quilt in the file `name`, with its history moved to before `now`."""
    # Loaded here, since the demo quilts are read once and looked at often.
    from sewalong.quilt.file.reader import read_quilt_bytes
    from sewalong.store.archive import from_text

    folder = demo_folder()
    quilt = read_quilt_bytes((folder / f"{name}.toml").read_bytes())
    history = folder / f"{name}.history.json"
    ends = now - AGES.get(name, USUAL_AGE)
    if not history.exists():
        return DemoQuilt(demo_key(name), quilt, ends, ())
    archive = from_text(history.read_text(encoding="utf-8"))
    events = tuple(recorded.event for recorded in archive.record)
    shift = ends - events[-1].at
    return DemoQuilt(demo_key(name), quilt, archive.started + shift, shifted(events, shift))


def shifted(events: Sequence[Event], shift: timedelta) -> tuple[Event, ...]:
    """`events` with all their times moved by `shift`."""
    return tuple(_shifted(event, shift) for event in events)


def _shifted(event: Event, shift: timedelta) -> Event:
    moved = replace(event, at=event.at + shift)
    if isinstance(moved, SessionClosed):
        return replace(moved, ended=moved.ended + shift)
    return moved


def seed(path: str | os.PathLike[str], now: datetime) -> None:
    """Put every demo quilt that is missing in the record at `path`; those there stay.

    Raises StoreFault; of a record that is damaged or lost it says how to begin it anew.
    """
    try:
        library = Library(path, now)
    except (Damaged, Lost, NotOurs) as fault:
        raise StoreFault(
            "The record of the demo quilts is damaged or gone. Nothing of yours is in it. Begin "
            "them again with: sewalong demo --afresh"
        ) from fault
    try:
        there = {entry.key for entry in library.entries()}
        for name in demo_names():
            if demo_key(name) not in there:
                demo = read_demo(name, now)
                entry = library.add(
                    demo.quilt,
                    now,
                    key=demo.key,
                    events=demo.events,
                    started=demo.started,
                    touched=False,
                )
                summary(library, entry)
    finally:
        library.close()


def begin_afresh(path: str) -> None:
    """Take the demo record away, so that it is seeded anew: it, what says that it was begun, and
    its backups, and nothing else."""
    for file in (marker_of(path), path, f"{path}-journal", *(one.path for one in backups_of(path))):
        if os.path.exists(file):
            os.unlink(file)
