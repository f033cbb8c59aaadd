"""Reads the published values in `data`: every row carries its source."""

from __future__ import annotations

import csv
from pathlib import Path

_DATA = Path(__file__).parent / "data"


def rows(name: str) -> list[dict[str, str]]:
    """All rows of `data/NAME.csv`; every one must name its source."""
    with (_DATA / f"{name}.csv").open(newline="", encoding="utf-8") as file:
        read = list(csv.DictReader(file))
    assert read
    assert all(row["source"].strip() for row in read)
    return read
