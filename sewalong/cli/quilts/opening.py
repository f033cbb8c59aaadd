"""Opening a quilt in the app. The only file of the plain commands that imports the screens."""

from __future__ import annotations

import argparse
import os

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import NO_QUILT, opened, wanted_name
from sewalong.store.begun import is_there
from sewalong.store.home import demo_record_path, record_path

NO_TERMINAL = "The app needs a terminal to open in; here is the quilt in plain words instead."
DUMB = "dumb"
"""What TERM is, by common practice, where text can be written and nothing drawn."""


def open_quilt(args: argparse.Namespace, context: Context) -> Report:
    """`open [QUILT]`"""
    if args.demo:
        from sewalong.service.demo_quilts import seed

        seed(demo_record_path(), context.clock())
    path = demo_record_path() if args.demo else record_path()
    return _open(path, wanted_name(args), args.demo, context)


def open_the_last(context: Context) -> Report:
    """`sewalong` alone: the quilt last touched, or how to begin."""
    return _open(record_path(), None, False, context)


def demo(args: argparse.Namespace, context: Context) -> Report:
    """`demo [NAME]`"""
    from sewalong.cli.quilts.listing import list_quilts
    from sewalong.service.demo_quilts import begin_afresh, seed

    path = demo_record_path()
    begun_again: tuple[str, ...] = ()
    if args.afresh:
        begin_afresh(path)
        begun_again = ("The demo quilts were begun again as they were.",)
    seed(path, context.clock())
    if args.list or args.json:
        listed = list_quilts(_looking_at(None, demo=True), context)
        return Report((*begun_again, *listed.lines), listed.data)
    return _open(path, args.name, True, context)


def _open(path: str, name: str | None, demo: bool, context: Context) -> Report:
    app = context.interactive and os.environ.get("TERM") != DUMB
    if not is_there(path):
        if name is not None:
            raise CommandError(NO_QUILT)
        return in_the_app(path, None, demo) if app else Report(tuple(NO_QUILT.splitlines()))
    with opened(path, context) as library:
        entries = library.entries()
        if name is None and (gone := library.missing()):
            raise CommandError(gone)
        if not entries:
            library.refuse_damage()
            return in_the_app(path, None, demo) if app else Report(tuple(NO_QUILT.splitlines()))
        wanted = library.find(name) if name is not None else None
    if not app:
        from sewalong.cli.quilts.listing import status

        told = status(_looking_at((wanted or entries[0]).name, demo=demo), context)
        return Report(told.lines, aside=(NO_TERMINAL, *told.aside), exit_status=told.exit_status)
    if wanted is None and not demo:
        wanted = entries[0]
    return in_the_app(path, wanted.key if wanted else None, demo)


def in_the_app(path: str, key: str | None, demo: bool, *, new: bool = False) -> Report:
    """The app, until it is left; see `run_app`."""
    import signal

    # Until the app can be left in good order, Ctrl+C ends it at once; nothing was done yet, and
    # an interrupt in the middle of loading can be lost or come out as a traceback.
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    from sewalong.screens.background import asking_this_terminal
    from sewalong.store.look import read_look

    asked = None
    if read_look(os.path.dirname(path)) is None:
        # While the terminal thinks about its colours, the screens are loaded.
        with asking_this_terminal() as asked:
            from sewalong.screens.app import run_app
    else:
        from sewalong.screens.app import run_app
    return Report(exit_status=run_app(path, key, demo, asked, new=new))


def _looking_at(name: str | None, *, demo: bool) -> argparse.Namespace:
    return argparse.Namespace(quilt=name, demo=demo)
