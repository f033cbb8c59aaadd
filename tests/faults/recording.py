"""What a process asked of the disk, call by call in its order, as `strace` saw it.

`strace` (https://strace.io) stands between a process and the system and writes down each call. So
what is recorded is what SQLite in Python's own build and our own code really do, not what they are
thought to do.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from msgspec import Struct

from tests.store.shelf import ROOT

CALLS = """
open openat close write pwrite64 lseek sendfile ftruncate fsync fdatasync
rename renameat renameat2 link linkat unlink unlinkat mkdir mkdirat
"""

_LINE = re.compile(r"\d+ +(?P<name>\w+)\((?P<arguments>.*)\) += (?P<result>-?\d+)")
_TEXT = re.compile(r'"((?:\\x[0-9a-f]{2})*)"')


class Call(Struct, frozen=True):
    """One call to the system that was carried out, and what it gave back.

    `texts` are the paths or the data in it, `rest` the other arguments as strace writes them.
    """

    name: str
    texts: tuple[bytes, ...]
    rest: tuple[str, ...]
    result: int


def recorded(script: str, *arguments: object, folder: Path) -> tuple[Call, ...]:
    """Run `script` (arguments in `sys.argv[1:]`) and write down what it asks of the system.

    Skips the test where strace is not installed or may not look at a process.
    """
    strace, log = shutil.which("strace"), folder / "strace.txt"
    if strace is None:
        pytest.skip("strace is not installed, so no order of writes can be recorded")
    # A question mark: a processor that has no such call of its own is no fault.
    wanted = ",".join(f"?{name}" for name in CALLS.split())
    watched = [strace, "-f", "-xx", "-s", "100000000", "-o", str(log), "-e", f"trace={wanted}"]
    done = subprocess.run(
        [*watched, sys.executable, "-W", "error", "-c", script, *map(str, arguments)],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        timeout=120,
    )
    if done.returncode and "ptrace" in done.stderr.lower():
        pytest.skip("strace may not look at other processes here")
    assert done.returncode == 0, done.stderr
    lines = log.read_text().splitlines()
    return tuple(_call(found) for line in lines if (found := _LINE.match(line)))


def _call(found: re.Match[str]) -> Call:
    arguments = found["arguments"]
    texts = tuple(bytes.fromhex(text.replace("\\x", "")) for text in _TEXT.findall(arguments))
    rest = tuple(part for part in _TEXT.sub('"', arguments).split(", ") if part != '"')
    return Call(found["name"], texts, rest, int(found["result"]))
