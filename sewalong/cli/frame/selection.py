"""Which record, which quilt, which stage and pile the person means."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import TYPE_CHECKING

from sewalong.cli.frame.complaining import complain
from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.store.begun import is_there
from sewalong.store.home import demo_record_path, record_path
from sewalong.store.library import Library, Shelved

if TYPE_CHECKING:
    from sewalong.progress.record.route import Route
    from sewalong.service.open_quilt import OpenQuilt

NO_QUILT = (
    "There is no quilt yet. Begin one by a few questions: sewalong new\n"
    "To look around first: sewalong demo"
)
"""Two lines of what to do."""


def where(args: argparse.Namespace, context: Context) -> str:
    """The record meant: the owner's, or that of the demo quilts, which is seeded if need be."""
    if not getattr(args, "demo", False):
        return record_path()
    from sewalong.service.demo_quilts import seed

    seed(demo_record_path(), context.clock())
    return demo_record_path()


@contextmanager
def opened(path: str, context: Context) -> Iterator[Library]:
    """The library at `path`; it is made if it is not there."""
    library = Library(path, context.clock())
    try:
        yield library
    finally:
        library.close()


@contextmanager
def any_library(args: argparse.Namespace, context: Context) -> Iterator[Library | None]:
    """The library meant, or None where nothing was ever begun; looking makes no record."""
    path = where(args, context)
    if not is_there(path):
        yield None
        return
    with opened(path, context) as library:
        yield library


@contextmanager
def shelf(args: argparse.Namespace, context: Context) -> Iterator[tuple[Library, Shelved]]:
    """The library and the quilt meant in it; raises CommandError or StoreFault when there is none."""
    with any_library(args, context) as library:
        entries = library.entries() if library else ()
        wanted = wanted_name(args)
        if library and wanted is None and (gone := library.missing()):
            raise CommandError(gone)
        if library is None or not entries:
            if library:
                library.refuse_damage()
            raise CommandError(NO_QUILT)
        yield library, entries[0] if wanted is None else library.find(wanted)


@contextmanager
def chosen_quilt(args: argparse.Namespace, context: Context) -> Iterator[OpenQuilt]:
    """The quilt meant, open."""
    from sewalong.service.open_quilt import OpenQuilt
    from sewalong.service.preferences import own_preferences

    preferences, trouble = own_preferences()
    complain(trouble)
    with shelf(args, context) as (library, entry):
        named = wanted_name(args) is not None
        yield OpenQuilt(library, entry, context.clock, named=named, preferences=preferences)


def wanted_name(args: argparse.Namespace) -> str | None:
    """The quilt as it was named, in its place or with --quilt; None when it was not."""
    placed: str | None = getattr(args, "name", None)
    option: str | None = args.quilt
    if placed is not None and option is not None:
        raise CommandError(f"Two quilts are named, “{placed}” and “{option}”. Name one.")
    return placed if placed is not None else option


def stage_id(route: Route, typed: str) -> str:
    """The stage meant by its id or its label; what fits none is handed on to be refused."""
    return _meant(typed, {stage.id: (stage.label,) for stage in route.stages})


def pile_id(route: Route, typed: str) -> str:
    """The pile meant by its id or the word for its pieces; what fits none is handed on."""
    return _meant(typed, {p.id: (p.noun.one, p.noun.many) for p in route.piles.values()})


def _meant(typed: str, known: Mapping[str, tuple[str, ...]]) -> str:
    """The id in `known` that is `typed` or has it among its words; raises CommandError for several."""
    wanted = _plain(typed)
    if wanted in known:
        return wanted
    fitting = [id for id, words in known.items() if wanted in map(_plain, words)]
    if len(fitting) > 1:
        raise CommandError(f"“{typed[:40]}” may be {' or '.join(fitting)}. Give one of these.")
    return fitting[0] if fitting else typed


def _plain(text: str) -> str:
    return "-".join(text.casefold().split())
