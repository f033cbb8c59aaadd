"""Pictures know nothing of the terminal, the disk or the quilt file's reader."""

import subprocess
import sys


def test_importing_the_pictures_brings_in_no_terminal_and_no_database() -> None:
    script = (
        "import sys, sewalong.wall.on_point, sewalong.wall.textures, sewalong.wall.runs, "
        "sewalong.wall.palette; print(*sorted(sys.modules))"
    )
    run = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True, timeout=60
    )
    brought_in = run.stdout.split()
    assert "sewalong.wall.picture" in brought_in
    unwanted = {"textual", "rich", "sqlite3", "pydantic", "platformdirs"}
    assert unwanted.isdisjoint(brought_in)
