"""Running a program as an owner would, and the programs that are the floors."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

PYTHON = sys.executable
SEWALONG = str(Path(PYTHON).with_name("sewalong"))
"""The installed command, beside the Python that runs this."""

_PLAIN = "import argparse, sqlite3; sqlite3.connect(':memory:').execute('select 1')"
PLAIN = (PYTHON, "-c", _PLAIN)
"""What a plain command cannot do without."""

WITH_PYDANTIC = (PYTHON, "-c", f"import pydantic; {_PLAIN}")
"""The same for a command that reads a quilt file."""


def hello(home: Path) -> tuple[str, ...]:
    """The barest app in a terminal, with its own record in `home`."""
    return (PYTHON, "-P", str(Path(__file__).with_name("hello.py")), str(home / "hello.db"))


def environment(home: Path) -> dict[str, str]:
    """Quilts in `home`, the terminal always the same, and bytecode kept as for any installed
    program."""
    kept = {**os.environ, "SEWALONG_HOME": str(home), "TERM": "xterm-256color"}
    kept["COLORTERM"] = "truecolor"
    kept.pop("PYTHONDONTWRITEBYTECODE", None)
    return kept


def run(argv: tuple[str, ...], home: Path) -> float:
    """Run a command to its end; the seconds it took.

    Raises AssertionError with what it said unless it went well.
    """
    begun = time.perf_counter()
    done = subprocess.run(
        argv,
        env=environment(home),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        text=True,
        timeout=300,
        check=False,
    )
    taken = time.perf_counter() - begun
    assert done.returncode == 0, f"{' '.join(argv)}: {done.stderr}"
    return taken
