"""Carrying out one command: read the line, do it, print what it has to tell."""

from __future__ import annotations

import argparse
import os
import sys

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import sentence_of
from sewalong.cli.frame.parser import parse
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.sanitize import as_json, shown
from sewalong.cli.registry.commands import command

REFUSED = 2
INTERRUPTED = 130
OUR_FAULT = 1
TRACE = "SEWALONG_TRACE"
"""Set this in the environment to see the traceback of a fault in the program itself."""


def run(argv: list[str], context: Context) -> int:
    """Carry out one command line; the exit status. Nothing is raised but SEWALONG_TRACE's."""
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


def _run(argv: list[str], context: Context) -> int:
    try:
        args = parse(argv)
    except SystemExit as leaving:  # after --help or --version
        return int(leaving.code or 0)
    chosen = command(args.command) if args.command else None
    if chosen is None:
        from sewalong.cli.quilts.opening import open_the_last

        report = open_the_last(context)
    else:
        report = chosen.load()(args, context)
    _print(args, report)
    return report.exit_status


def _print(args: argparse.Namespace, report: Report) -> None:
    for line in report.aside:
        print(shown(line), file=sys.stderr)
    if getattr(args, "json", False):
        sys.stdout.write(as_json(dict(report.data)))
    elif report.whole:
        sys.stdout.write(report.whole)
    else:
        for line in report.lines:
            print(shown(line))


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
