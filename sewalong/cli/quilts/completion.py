"""`completion SHELL`: the script by which a shell completes commands and options.

All commands stand in one parser here, for the library that writes such scripts to read.
"""

from __future__ import annotations

import argparse

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.parser import PlainParser, add_to
from sewalong.cli.frame.report import Report
from sewalong.cli.registry.index import commands, reckoners


def completion(args: argparse.Namespace, context: Context) -> Report:
    """The script, as it is."""
    try:
        import shtab
    except ImportError as missing:
        raise CommandError(
            "Completion needs one library more. Install it with: pip install 'sewalong[completion]'"
        ) from missing
    script: str = shtab.complete(every_command(), args.shell)
    return Report(data={"shell": args.shell, "script": script}, whole=script)


def every_command() -> argparse.ArgumentParser:
    """One parser for the whole program; its commands, and what `reckon` works out, below it."""
    program = PlainParser(prog="sewalong")
    named = program.add_subparsers(dest="command")
    for command in commands():
        parser = add_to(named, command, command.name)
        if command.name == "reckon":
            reckoned = parser.add_subparsers(dest="what")
            for one in reckoners():
                add_to(reckoned, one, one.name.removeprefix("reckon "))
    return program
