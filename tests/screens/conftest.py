"""The tests of the screens, on a terminal that shows every colour unless a test says otherwise."""

from __future__ import annotations

import pytest


@pytest.fixture(autouse=True)
def every_colour(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever terminal the tests are run from."""
    monkeypatch.setenv("COLORTERM", "truecolor")
