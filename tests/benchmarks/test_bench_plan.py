"""What `plan` of a demo costs, against starting Python and importing three libraries.

Prints ratios measured in one run (`pytest -s`); it asserts no times.
"""

from __future__ import annotations

from pathlib import Path

from tests.benchmarks.processes import SEWALONG, WITH_PYDANTIC, run

DEMOS = Path(__file__).parents[2] / "demo_projects"
ROUNDS = 4


def test_print_the_time_of_plan_against_importing(tmp_path: Path) -> None:
    commands: dict[str, tuple[str, ...]] = {
        "floor: python, pydantic, argparse, sqlite3": WITH_PYDANTIC
    }
    for file in sorted(DEMOS.glob("*.toml")):
        commands[f"plan {file.name}"] = (SEWALONG, "plan", str(file))
        name = file.stem.replace("-", " ")
        commands[f"plan --demo {name}"] = (SEWALONG, "plan", "--demo", "--quilt", name)
    taken = dict.fromkeys(commands, float("inf"))
    for _ in range(ROUNDS):
        # Turn by turn, so that a busy moment of the machine falls on all alike.
        for name, argv in commands.items():
            taken[name] = min(taken[name], run(argv, tmp_path))
    floor = next(iter(taken.values()))
    print()
    for name, seconds in taken.items():
        print(f"{name:44}{seconds * 1000:8.0f} ms{seconds / floor:7.2f}")
