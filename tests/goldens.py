"""Text files of what was accepted: compared exactly, written anew only when that is asked for."""

from __future__ import annotations

import os
from difflib import unified_diff
from pathlib import Path

import pytest

ACCEPT = "SEWALONG_ACCEPT_GOLDENS"


def compare(golden: Path, drawn: str) -> None:
    """Fail with every difference; with ACCEPT set write what was drawn, and fail on purpose."""
    if os.environ.get(ACCEPT):
        golden.parent.mkdir(exist_ok=True)
        golden.write_text(drawn, encoding="utf-8")
        pytest.fail(f"Written as drawn now: {golden.name}. Read it, run again without.")
    accepted = golden.read_text(encoding="utf-8") if golden.exists() else ""
    if accepted != drawn:
        lines = unified_diff(
            accepted.splitlines(), drawn.splitlines(), "accepted", "drawn", lineterm=""
        )
        pytest.fail(
            "\n".join(lines)
            + f"\n\nIf it is meant to look so: {ACCEPT}=1 python -m pytest {golden.parent.parent}, "
            "then read the files."
        )
