"""The command line: argparse with plain sentences for its errors."""

from __future__ import annotations

import argparse
from difflib import get_close_matches
from typing import NoReturn

from sewalong import __version__
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.registry.commands import COMMANDS, GROUPS

_NOTICE = (
    "Cautions about iron, cutter and needle are general safety information only: the makers'\n"
    "instructions, local rules and qualified help come first."
)


class PlainParser(argparse.ArgumentParser):
    """Raises CommandError where argparse would print its usage and leave."""

    def error(self, message: str) -> NoReturn:
        sentence = message.removeprefix("argument ").rstrip(".")
        raise CommandError(f"{sentence[:1].upper()}{sentence[1:]}. See: {self.prog} --help")


def parse(argv: list[str]) -> argparse.Namespace:
    """The arguments; `command` is None when no command was named.

    Raises CommandError for what cannot be read, and SystemExit after --help and --version.
    """
    named = next((word for word in argv if not word.startswith("-")), None)
    known = [command.name for command in COMMANDS]
    if named is not None and named not in known:
        near = get_close_matches(named, known, n=1)
        hint = f"Did you mean {near[0]}?" if near else "See: sewalong --help"
        raise CommandError(f"There is no command “{named[:40]}”. {hint}")
    args, extra = build(named).parse_known_args(argv)
    if extra:
        about = f"sewalong {args.command}" if args.command else "sewalong"
        raise CommandError(
            f"“{extra[0][:40]}” is not understood here. Put a name of several words in quotes. "
            f"See: {about} --help"
        )
    return args


def build(only: str | None = None) -> PlainParser:
    """The parser for all commands, or only for the one called `only`, which is sooner built."""
    parser = PlainParser(
        prog="sewalong",
        usage="sewalong [COMMAND] …",
        description="A companion for piecing a patchwork top in batches, over many sessions.\n"
        "Alone it opens the quilt last touched.",
        epilog=f"{_commands()}\n\n{_NOTICE}",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"sewalong {__version__}")
    below = parser.add_subparsers(
        dest="command", prog="sewalong", help=argparse.SUPPRESS, metavar="COMMAND"
    )
    for command in COMMANDS:
        if only is not None and command.name != only:
            continue
        one = below.add_parser(
            command.name,
            description=f"{command.help[0].upper()}{command.help[1:]}. {command.about}".rstrip(),
            epilog=f"Example: {command.example}",
            allow_abbrev=False,
        )
        command.arguments(one)
        if command.json:
            one.add_argument("--json", action="store_true", help="tell it as JSON")
    return parser


def _commands() -> str:
    width = max(len(command.name) for command in COMMANDS)
    lines = []
    for group in GROUPS:
        lines.append(f"{group}:")
        lines += [f"  {v.name:<{width}}  {v.help}" for v in COMMANDS if v.group == group]
    return "\n".join(lines)
