"""What `plan` of a demo costs, against starting Python and importing three libraries.

Prints ratios measured in one run (`pytest -s`); it asserts no times.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

DEMOS = Path(__file__).parents[2] / "demo_projects"
FLOOR = [sys.executable, "-c", "import pydantic, argparse, sqlite3"]
ROUNDS = 4


def _environment(home: Path) -> dict[str, str]:
    """With bytecode kept, as it is for a program that is installed, but not beside the source."""
    kept = {**os.environ, "SEWALONG_HOME": str(home), "PYTHONPYCACHEPREFIX": f"{home}-bytecode"}
    kept.pop("PYTHONDONTWRITEBYTECODE", None)
    return kept


def _seconds(argv: list[str], home: Path) -> float:
    begun = time.perf_counter()
    done = subprocess.run(
        argv,
        env=_environment(home),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    taken = time.perf_counter() - begun
    assert done.returncode == 0, done.stderr
    return taken


def test_print_the_time_of_plan_against_importing(tmp_path: Path) -> None:
    commands = {"floor: python, pydantic, argparse, sqlite3": FLOOR}
    for file in sorted(DEMOS.glob("*.toml")):
        commands[f"plan {file.name}"] = [sys.executable, "-m", "sewalong", "plan", str(file)]
        name = file.stem.replace("-", " ")
        commands[f"plan --demo {name}"] = [
            sys.executable, "-m", "sewalong", "plan", "--demo", "--quilt", name,
        ]  # fmt: skip
    taken = dict.fromkeys(commands, float("inf"))
    for _ in range(ROUNDS):
        # Turn by turn, so that a busy moment of the machine falls on all alike.
        for name, argv in commands.items():
            taken[name] = min(taken[name], _seconds(argv, tmp_path / "home"))
    floor = next(iter(taken.values()))
    print()
    for name, seconds in taken.items():
        print(f"{name:44}{seconds * 1000:8.0f} ms{seconds / floor:7.2f}")
