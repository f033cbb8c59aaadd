"""The lowest layer stands alone: standard library only, and quick to import."""

import subprocess
import sys


def test_importing_it_brings_in_only_what_its_few_modules_bring_in() -> None:
    script = (
        "import sys, fractions, re, enum, math; before = set(sys.modules); "
        "import sewalong.lengths; print(*sorted(set(sys.modules) - before))"
    )
    run = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True, timeout=60
    )
    brought_in = run.stdout.split()
    assert "sewalong.lengths" in brought_in
    assert [
        name
        for name in brought_in
        if name != "sewalong" and not name.startswith("sewalong.lengths")
    ] == []
