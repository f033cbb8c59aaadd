"""Where a command runs: the time, and whether somebody is there to be asked."""

from __future__ import annotations

import sys
from collections.abc import Callable
from datetime import datetime

from msgspec import Struct

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.sanitize import shown


class Context(Struct, frozen=True):
    """`interactive`: a person reads stderr and types at stdin. `clock` has its offset."""

    clock: Callable[[], datetime]
    interactive: bool

    def ask(self, *lines: str) -> str:
        """Put a question on stderr and wait for a line; raises CommandError when none comes."""
        for line in lines[:-1]:
            print(shown(line), file=sys.stderr)
        print(shown(lines[-1]), end=" ", file=sys.stderr, flush=True)
        answer = sys.stdin.readline()
        if not answer.endswith("\n"):
            print(file=sys.stderr)
            raise CommandError("No answer was given. Nothing was recorded; ask again when ready.")
        return answer.strip()


def local_now() -> datetime:
    """The wall clock with its offset; it goes on while a laptop sleeps."""
    return datetime.now().astimezone()


def surroundings() -> Context:
    """The real ones."""
    interactive = _is_terminal(sys.stdin) and _is_terminal(sys.stderr)
    return Context(clock=local_now, interactive=interactive)


def _is_terminal(stream: object) -> bool:
    isatty = getattr(stream, "isatty", None)
    try:
        return bool(isatty and isatty())
    except ValueError:  # the stream was closed
        return False
