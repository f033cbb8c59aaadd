"""The entry: `sewalong`, or `python -m sewalong`."""

from __future__ import annotations

import gc
import os
import sys

from sewalong.cli.frame.run import run


def main(argv: list[str] | None = None) -> int:
    """Carry out one command line (the process's own when None); the exit status.

    0: done; 2: refused, with plain sentences on stderr, and nothing changed;
    130: interrupted.
    """
    if argv is not None:
        return run(argv)
    # A plain command is over before there is garbage worth collecting; the app collects again.
    gc.disable()
    status = run(sys.argv[1:])
    # Everything is on disk and printed. Taking the interpreter down in good order would cost as
    # much again as a fifth of the command.
    for stream in (sys.stdout, sys.stderr):
        if stream is not None:
            stream.flush()
    os._exit(status)


if __name__ == "__main__":
    main()
