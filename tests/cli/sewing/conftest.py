"""The desk of the other command tests, with a quilt whose stages are sewn to where a test wants."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.cli.conftest import Desk

Sewn = Callable[..., Desk]


@pytest.fixture
def sewn(begun: Desk) -> Sewn:
    """Counts so many at each stage named, a minute for each count, cautions read."""

    def count(**stages: int) -> Desk:
        for stage, n in stages.items():
            begun.wait(minutes=n)
            begun.ok("count", stage.replace("_", "-"), str(n), "--caution-read")
        return begun

    return count
