"""Carrying out one command: read the line, do it, print what it has to tell.

What a line does not need is not imported for it: `--version` costs hardly more than the
interpreter, and a mistyped word little more.
"""

from __future__ import annotations

import importlib
import os
import sys

from sewalong import __version__
from sewalong.cli.frame.choosing import chosen
from sewalong.cli.frame.errors import sentence_of
from sewalong.cli.frame.sanitize import as_json, shown
from sewalong.cli.registry.light import load_msgspec

TYPE_CHECKING = False  # as typing has it, which takes longer to import than this file
if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable
    from typing import Any

    from sewalong.cli.frame.context import Context
    from sewalong.cli.frame.report import Report
    from sewalong.cli.registry.command import Command

    Runner = Callable[[argparse.Namespace, Context], Report]

OPEN_THE_LAST = "sewalong.cli.quilts.opening:open_the_last"
"""What `sewalong` alone does."""

REFUSED = 2
INTERRUPTED = 130
OUR_FAULT = 1
TRACE = "SEWALONG_TRACE"
"""Set this in the environment to see the traceback of a fault in the program itself."""


def run(argv: list[str], context: Context | None = None) -> int:
    """Carry out one command line, in the surroundings the process has when `context` is None.

    The exit status. Nothing is raised but SEWALONG_TRACE's.
    """
    _be_lenient_with_encodings()
    try:
        status = _run(argv, context)
        sys.stdout.flush()
        return status
    except BrokenPipeError:
        # Whoever read the output has seen enough. What was asked for has been done.
        _close_quietly()
        return 0
    except KeyboardInterrupt:
        print(file=sys.stderr)
        return INTERRUPTED
    except Exception as error:
        sentence = sentence_of(error)
        if sentence is not None:
            _complain(sentence)
            return REFUSED
        if os.environ.get(TRACE):
            raise
        _complain(
            f"This is a fault in sewalong itself ({type(error).__name__}: {error}). "
            f"What was recorded before is on disk. Set {TRACE}=1 to see where it happened."
        )
        return OUR_FAULT


def _run(argv: list[str], context: Context | None) -> int:
    match argv:
        case []:
            load_msgspec()
            open_the_last = _loaded(OPEN_THE_LAST)
            return _tell(open_the_last(context or _surroundings()))
        case ["--version", *_]:
            return _write(f"sewalong {__version__}\n")
        case ["--help" | "-h", *_] | ["help"] | ["help", "help" | "--help" | "-h"]:
            from sewalong.cli.frame.help import weekly

            return _write(weekly())
        case ["help", "all"]:
            from sewalong.cli.frame.help import everything

            return _write(everything())
        case ["help", *about]:
            argv = [*about, "--help"]
    command, typed = chosen(argv)
    from sewalong.cli.frame.parser import parse

    try:
        args = parse(command, typed)
    except SystemExit as leaving:  # after --help
        return int(leaving.code or 0)
    report = function_of(command)(args, context or _surroundings())
    return _tell(report, json=getattr(args, "json", False))


def function_of(command: Command) -> Runner:
    """The function that carries `command` out, its module imported."""
    function: Runner = _loaded(command.run)
    return function


def _loaded(where: str) -> Any:
    """What "module:name" names, its module imported."""
    module, _, name = where.partition(":")
    return getattr(importlib.import_module(module), name)


def _surroundings() -> Context:
    from sewalong.cli.frame.context import surroundings

    return surroundings()


def _tell(report: Report, *, json: bool = False) -> int:
    for line in report.aside:
        print(shown(line), file=sys.stderr)
    if json:
        sys.stdout.write(as_json(dict(report.data)))
    elif report.whole:
        sys.stdout.write(report.whole)
    else:
        for line in report.lines:
            print(shown(line))
    return report.exit_status


def _write(text: str) -> int:
    sys.stdout.write(text)
    return 0


def _complain(sentences: str) -> None:
    try:
        for line in sentences.splitlines():
            print(shown(line), file=sys.stderr)
    except OSError:
        pass  # nobody is there to read it; the exit status still says it


def _be_lenient_with_encodings() -> None:
    """A terminal that cannot show a character gets another in its place, not a traceback."""
    for stream in (sys.stdout, sys.stderr):
        if getattr(stream, "errors", "") in ("strict", "surrogateescape"):
            stream.reconfigure(errors="replace")  # type: ignore[union-attr]


def _close_quietly() -> None:
    """Send what is still buffered nowhere, so that leaving does not complain about it."""
    try:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)
    except (OSError, ValueError):
        pass
