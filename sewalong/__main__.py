"""The entry: `sewalong`, or `python -m sewalong`."""

from __future__ import annotations

import os

try:
    import gc
    import sys

    from sewalong.cli.frame.run import INTERRUPTED, run
except KeyboardInterrupt:  # nothing was done yet, and nobody wants to read where
    os._exit(130)

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
    try:
        _hold_the_standard_places()
        status = main()
        for stream in (sys.stdout, sys.stderr):
            if stream is not None:
                stream.flush()
    except KeyboardInterrupt:
        status = INTERRUPTED
    except OSError:
        pass  # what could not be printed has been said, where it could be
    os._exit(status)


def _hold_the_standard_places() -> None:
    """Where a standard stream is closed, have nothing in its place.

    Else the next file opened would stand there, and what is meant for the stream be written to it.
    """
    for place in range(3):
        try:
            os.fstat(place)
        except OSError:
            os.open(os.devnull, os.O_RDWR)


if __name__ == "__main__":
    command_line()
