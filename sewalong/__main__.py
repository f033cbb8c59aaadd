"""The entry: `sewalong`, or `python -m sewalong`."""

from __future__ import annotations

import sys

from sewalong.cli.frame.run import run


def main(argv: list[str] | None = None) -> int:
    """Carry out one command line (the process's own when None); the exit status.

    0: done; 2: refused, with plain sentences on stderr, and nothing changed;
    130: interrupted.
    """
    return run(sys.argv[1:] if argv is None else argv)


if __name__ == "__main__":
    sys.exit(main())
