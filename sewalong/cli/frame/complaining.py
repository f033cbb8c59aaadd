"""What is said beside the answer, on standard error, as far as there is one."""

from __future__ import annotations

import sys

from sewalong.cli.frame.sanitize import shown


def complain(sentences: str) -> None:
    """Say sentences on standard error, a line each, with nothing in them that steers a terminal."""
    if sys.stderr is None:
        return
    try:
        for line in sentences.splitlines():
            print(shown(line), file=sys.stderr)
    except OSError:
        pass  # nobody is there to read it; the exit status still says it
