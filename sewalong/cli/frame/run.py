"""Carrying out one command: read the line, do it, print what it has to tell.

What a line does not need is not imported for it: `--version` costs hardly more than the
interpreter, and a mistyped word little more.
"""

from __future__ import annotations

import codecs
import importlib
import os
import sys

from sewalong import __version__
from sewalong.cli.frame.choosing import chosen
from sewalong.cli.frame.complaining import complain
from sewalong.cli.frame.errors import sentence_of
from sewalong.cli.frame.sanitize import as_json, shown
from sewalong.cli.registry.light import load_msgspec

TYPE_CHECKING = False  # as typing has it, which takes longer to import than this file
if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable, Sequence
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
    try:
        _be_lenient_with_encodings()
        return _run(argv, context)
    except KeyboardInterrupt:
        complain("\nInterrupted. What was recorded before is on disk; look with: sewalong log")
        return INTERRUPTED
    except Exception as error:
        sentence = sentence_of(error)
        if sentence is not None:
            complain(sentence)
            return REFUSED
        if os.environ.get(TRACE):
            raise
        complain(
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
    except SystemExit:  # after --help
        return _write("")
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


PLAINLY = "sewalong-plainly"
"""The name by which streams know how to write what their encoding has not."""


def _tell(report: Report, *, json: bool = False) -> int:
    """Print what there is to tell. What was recorded is recorded, whether it can be told or not."""
    complain("\n".join(report.aside))
    text = as_json(dict(report.data)) if json else report.whole or _readable(report.lines)
    why = _why_not_printed(text)
    if why is None:
        return report.exit_status
    if not report.recorded:
        complain(f"The answer could not be printed ({why}).")
        return REFUSED
    complain(f"This was done and is on disk, but could not be printed ({why}).")
    return report.exit_status


def _readable(lines: Sequence[str]) -> str:
    """The lines as they can be read where she reads them."""
    text = "".join(f"{shown(line)}\n" for line in lines)
    if text.isascii():
        return text
    from sewalong.service.preferences import own_preferences

    if not own_preferences()[0].ascii:
        return text
    from sewalong.owner.ascii_only import ascii_only

    return ascii_only(text)


def _write(text: str) -> int:
    why = _why_not_printed(text)
    if why is None:
        return 0
    complain(f"The answer could not be printed ({why}).")
    return REFUSED


def _why_not_printed(text: str) -> str | None:
    """Print `text`; None when that went well, or when whoever reads it has seen enough."""
    if sys.stdout is None:
        return "standard output is closed" if text else None
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        _close_quietly()
    except OSError as error:
        _close_quietly()
        return error.strerror or str(error)
    return None


def _be_lenient_with_encodings() -> None:
    """A terminal that cannot show a character gets a plain one in its place, not a traceback."""
    codecs.register_error(PLAINLY, _plainly)
    for stream in (sys.stdout, sys.stderr):
        if getattr(stream, "errors", "") in ("strict", "surrogateescape"):
            stream.reconfigure(errors=PLAINLY)  # type: ignore[union-attr]


def _plainly(error: UnicodeError) -> tuple[str, int]:
    from sewalong.owner.ascii_only import ascii_only

    assert isinstance(error, UnicodeEncodeError)
    plain = (
        ascii_only(sign) if sign.isprintable() else "?"
        for sign in error.object[error.start : error.end]
    )
    return "".join(plain), error.end


def _close_quietly() -> None:
    """Send what is still buffered nowhere, so that leaving does not complain about it."""
    try:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)
    except (OSError, ValueError):
        pass
