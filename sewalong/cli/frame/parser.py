"""The words behind a command: argparse for that one command, with plain sentences for its errors."""

from __future__ import annotations

import argparse
from contextlib import suppress
from typing import Any, NoReturn

from sewalong.cli.frame.arguments import whole_number, words
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.registry.argument import Argument
from sewalong.cli.registry.command import Command

_READERS: dict[str, Any] = {"text": words, "whole": whole_number, "path": str}


WIDTH = 78
"""Columns of help. Asking the terminal costs a start, and longer lines read worse anyway."""


class _Help(argparse.HelpFormatter):
    """Help of one width."""

    def __init__(self, prog: str) -> None:
        super().__init__(prog, width=WIDTH)


class PlainParser(argparse.ArgumentParser):
    """Raises CommandError where argparse would print its usage and leave."""

    def _print_message(self, message: str, file: Any = None) -> None:
        """Print help. Whether it could be printed is found out and told by `run`, whichever Python
        this is: those before 3.11.5 raise here, later ones pass over it."""
        with suppress(OSError):
            super()._print_message(message, file)

    def error(self, message: str) -> NoReturn:
        sentence = message.removeprefix("argument ").rstrip(".")
        raise CommandError(f"{sentence[:1].upper()}{sentence[1:]}. See: {self.prog} --help")


def parse(command: Command, typed: list[str]) -> argparse.Namespace:
    """The arguments typed behind the name of `command`, which is kept among them as `command`.

    Raises CommandError for what cannot be read, and SystemExit after --help.
    """
    args, extra = parser_of(command).parse_known_args(typed)
    if extra:
        raise CommandError(
            f"“{extra[0][:40]}” is not understood here. Put a name of several words in quotes. "
            f"See: sewalong {command.name} --help"
        )
    args.command = command.name
    return args


def parser_of(command: Command) -> PlainParser:
    """The parser for `command` alone."""
    parser = PlainParser(prog=f"sewalong {command.name}", **_told(command))
    _add_all(parser, command)
    return parser


def add_to(commands: Any, command: Command, name: str) -> PlainParser:
    """The same as one of the `commands` of a parser, under `name`."""
    parser: PlainParser = commands.add_parser(name, help=command.help, **_told(command))
    _add_all(parser, command)
    return parser


def _told(command: Command) -> dict[str, Any]:
    return {
        "description": f"{command.help[0].upper()}{command.help[1:]}. {command.about}".rstrip(),
        "epilog": f"Example: {command.example}",
        "formatter_class": _Help,
        "allow_abbrev": False,
    }


def _add_all(parser: argparse.ArgumentParser, command: Command) -> None:
    for argument in command.arguments:
        _add(parser, argument)
    if command.json:
        parser.add_argument("--json", action="store_true", help="tell it as JSON")


def _add(parser: argparse.ArgumentParser, argument: Argument) -> None:
    if argument.kind == "flag":
        parser.add_argument(argument.name, action="store_true", help=argument.help)
        return
    more: dict[str, Any] = {}
    if argument.required:
        more["required"] = True
    if argument.dest is not None:
        more["dest"] = argument.dest
    parser.add_argument(
        argument.name,
        action="append" if argument.repeated else "store",
        type=_READERS[argument.kind],
        nargs=argument.nargs,
        default=[] if argument.repeated else argument.default,
        choices=argument.choices,
        metavar=argument.metavar,
        help=argument.help,
        **more,
    )
