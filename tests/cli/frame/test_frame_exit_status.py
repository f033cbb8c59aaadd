"""The exit status tells the truth: 0 once it is on disk, whether it could be told or not."""

from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.cli.conftest import Desk

FULL = Path("/dev/full")
DONE = "This was done and is on disk, but could not be printed"

pytestmark = pytest.mark.skipif(not FULL.exists(), reason="there is no /dev/full here")


def sewalong(
    begun: Desk,
    *argv: str,
    stdout: int | None = subprocess.PIPE,
    stderr: int | None = subprocess.PIPE,
    first: Callable[[], None] | None = None,
    code: str = "",
) -> subprocess.CompletedProcess[bytes]:
    """The program in a process of its own; `code` runs before it, `first` before Python."""
    start = ["-c", f"{code}\nfrom sewalong.__main__ import command_line\ncommand_line()"]
    return subprocess.run(
        [sys.executable, *(start if code else ["-m", "sewalong"]), *argv],
        env={**os.environ, "SEWALONG_HOME": str(begun.folder / "home")},
        stdin=subprocess.DEVNULL,
        stdout=stdout,
        stderr=stderr,
        preexec_fn=first,
        timeout=60,
        check=False,
    )


def pairs(begun: Desk) -> int:
    record = sqlite3.connect(begun.folder / "home" / "quilts.db")
    try:
        assert record.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        rows = record.execute("SELECT body FROM event WHERE kind = 'counted'").fetchall()
    finally:
        record.close()
    return len(rows)


@pytest.fixture
def full() -> int:
    return os.open(FULL, os.O_WRONLY)


def test_a_count_that_cannot_be_printed_is_a_count(begun: Desk, full: int) -> None:
    for more in ([], ["--json"]):
        said = sewalong(begun, "count", "pair", "2", *more, stdout=full)
        assert said.returncode == 0
        assert said.stderr.decode() == f"{DONE} (No space left on device).\n"
    assert pairs(begun) == 2
    os.close(full)


def closed(*places: int) -> Callable[[], None]:
    def close() -> None:
        for place in places:
            os.close(place)

    return close


@pytest.mark.parametrize(
    ("places", "told"),
    [
        ((1,), f"{DONE} (standard output is closed)."),
        ((2,), ""),
        ((0, 1), DONE),
        ((1, 2), ""),
        ((0, 1, 2), ""),
    ],
    ids=str,
)
def test_with_standard_streams_closed_a_count_is_a_count(
    begun: Desk, places: tuple[int, ...], told: str
) -> None:
    said = sewalong(begun, "count", "pair", "2", first=closed(*places))
    assert said.returncode == 0
    assert said.stderr.decode().startswith(told)
    assert b"Traceback" not in said.stderr
    assert pairs(begun) == 1
    assert sewalong(begun, "status", first=closed(*places)).returncode == (2 if 1 in places else 0)
    assert sewalong(begun, "count", "dye", first=closed(*places)).returncode == 2


def test_a_count_nobody_reads_of_is_a_count(begun: Desk) -> None:
    read, write = os.pipe()
    os.close(read)
    said = sewalong(begun, "count", "pair", "2", stdout=write)
    os.close(write)
    assert (said.returncode, said.stderr) == (0, b"")
    assert pairs(begun) == 1


def test_with_all_output_full_the_status_still_tells(begun: Desk, full: int) -> None:
    assert sewalong(begun, "count", "pair", stdout=full, stderr=full).returncode == 0
    assert sewalong(begun, "count", "dye", stdout=full, stderr=full).returncode == 2
    assert sewalong(begun, "status", stdout=full, stderr=full).returncode == 2
    assert pairs(begun) == 1
    os.close(full)


@pytest.mark.parametrize(
    "line",
    ["status", "log", "status --json", "--version", "--help", "help all", "count --help",
     "export -", "reckon backing --top 60", "list"],
)  # fmt: skip
def test_what_was_only_asked_for_and_cannot_be_printed_is_refused(
    begun: Desk, full: int, line: str
) -> None:
    said = sewalong(begun, *line.split(), stdout=full)
    assert said.returncode == 2
    assert said.stderr.decode() == "The answer could not be printed (No space left on device).\n"
    os.close(full)


def test_what_is_written_to_files_is_done_too(begun: Desk, full: int) -> None:
    out = begun.folder / "out.json"
    assert sewalong(begun, "export", str(out), stdout=full).returncode == 0
    assert out.exists()
    assert sewalong(begun, "import", str(out), "--name", "Again", stdout=full).returncode == 0
    assert sewalong(begun, "undo", "--quilt", "Again", stdout=full).returncode == 2
    os.close(full)


INTERRUPTED = """
import sys

class Interrupts:
    def find_spec(self, name, *_):
        if name == {module!r}:
            raise KeyboardInterrupt

sys.meta_path.insert(0, Interrupts())
"""


@pytest.mark.parametrize(
    "module",
    ["gc", "sewalong.cli.frame.run", "sewalong.cli.registry.index", "msgspec", "sqlite3",
     "sewalong.cli.frame.parser", "sewalong.store.library", "sewalong.service.summary"],
)  # fmt: skip
def test_ctrl_c_while_starting_prints_no_traceback(begun: Desk, module: str) -> None:
    """Wherever in the loading of it the interrupt comes."""
    code = INTERRUPTED.format(module=module)
    if module == "gc":
        code += "sys.modules.pop('gc', None)\n"
    said = sewalong(begun, "count", "pair", code=code)
    assert said.returncode == 130
    assert b"Traceback" not in said.stderr
    assert pairs(begun) == 0
