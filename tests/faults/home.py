"""A home with two quilts and a backup, and the program run on it as a process of its own."""

from __future__ import annotations

import json
import os
import random
import shutil
import subprocess
import sys
from datetime import timedelta
from pathlib import Path
from typing import Any

from msgspec import Struct

from tests.progress import every_act as c
from tests.store.shelf import EVENING, ROOT, a_quilt, begin, opened, ticking

QUILTS = ("Hedgerow", "Second")


class Said(Struct, frozen=True):
    """What a process printed, and its exit status."""

    status: int
    out: str
    err: str

    def is_plain(self) -> bool:
        """Done, or refused in words that blame nobody and name the way out."""
        if self.status == 0:
            return True
        bad = ("Traceback", "fault in sewalong itself", "newer sewalong")
        said = self.out + self.err
        ways = ("sewalong restore", "sewalong examine", "move it elsewhere", "try again")
        return (
            self.status == 2
            and not any(word in said for word in bad)
            and any(way in said for way in ways)
        )


class Home(Struct, frozen=True):
    """A data folder. `truth` is the log of each quilt, `kept` what the last backup had of it."""

    folder: Path
    truth: dict[str, Any]
    kept: dict[str, Any]

    @property
    def record(self) -> Path:
        return self.folder / "quilts.db"

    def run(self, *argv: str) -> Said:
        """Carry out one command line in a process of its own."""
        done = subprocess.run(
            [sys.executable, "-W", "error", "-m", "sewalong", *argv],
            cwd=ROOT,
            env={**os.environ, "PYTHONPATH": str(ROOT), "SEWALONG_HOME": str(self.folder)},
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            timeout=60,
        )
        return Said(done.returncode, done.stdout, done.stderr)

    def events(self, quilt: str) -> tuple[Said, Any]:
        """What `log` says, and the events it lists; None where it lists none."""
        said = self.run("log", "--json", "--quilt", quilt)
        return said, json.loads(said.out)["events"] if said.out else None

    def copy(self, folder: Path) -> Home:
        """The same home elsewhere, to be spoilt."""
        shutil.copytree(self.folder, folder)
        return Home(folder, self.truth, self.kept)


def a_home(folder: Path) -> Home:
    """Two quilts, two evenings; the backup of the second has the first evening in it."""
    path = folder / "quilts.db"
    for name in QUILTS:
        begin(path, a_quilt(name, notes="x" * 900))
    home = Home(folder, {}, {})
    for evening in range(2):
        for name in QUILTS:
            if evening:
                home.kept[name] = home.events(name)[1]
            with opened(path, name, ticking(EVENING + timedelta(days=evening))) as quilt:
                for n in range(1, 11):
                    quilt.do(c.Count("pair", n))
                    quilt.do(c.WriteNote(f"row {n} of the evening lies on the table " + "x" * 150))
    for name in QUILTS:
        said, home.truth[name] = home.events(name)
        assert said.status == 0, said.err
    # The second quilt was begun on again after the backup of the day was made.
    home.kept["Second"] = home.truth["Second"][: len(home.kept["Second"])]
    return home


def spoil(data: bytes, seed: int) -> bytes:
    """`data` with something done to it: a bit, a byte, a run of bytes, zeros, two pages swapped."""
    chance = random.Random(seed)
    spoilt = bytearray(data)
    at = chance.randrange(len(data))
    match chance.randrange(5):
        case 0:
            spoilt[at] ^= 1 << chance.randrange(8)
        case 1:
            spoilt[at] = chance.randrange(256)
        case 2:
            run = chance.randbytes(chance.randrange(1, 64))
            spoilt[at : at + len(run)] = run[: len(data) - at]
        case 3:
            spoilt[at : at + 512] = bytes(min(512, len(data) - at))
        case _:
            one, other = (4096 * chance.randrange(len(data) // 4096) for _ in range(2))
            spoilt[one : one + 4096] = data[other : other + 4096]
            spoilt[other : other + 4096] = data[one : one + 4096]
    return bytes(spoilt)
