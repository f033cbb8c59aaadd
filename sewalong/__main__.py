"""The entry: `sewalong`, or `python -m sewalong`."""

from __future__ import annotations

import gc
import os
import sys

from sewalong.cli.frame.run import run

TYPE_CHECKING = False  # as typing has it, which takes longer to import than this file
if TYPE_CHECKING:
    from typing import NoReturn


def main(argv: list[str] | None = None) -> int:
    """Carry out one command line (the process's own when None); the exit status.

    0: done; 2: refused, with plain sentences on stderr, and nothing changed;
    130: interrupted.
    """
    return run(sys.argv[1:] if argv is None else argv)


def command_line() -> NoReturn:
    """Carry out the process's own command line and end the process at once.

    A plain command is over before there is garbage worth collecting (the app collects again).
    By the end all is on disk and printed, and to take the interpreter down in good order would
    cost as much as a third of the command.
    """
    gc.disable()
    status = main()
    for stream in (sys.stdout, sys.stderr):
        if stream is not None:
            stream.flush()
    os._exit(status)


if __name__ == "__main__":
    command_line()
