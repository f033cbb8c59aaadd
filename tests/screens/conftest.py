"""The tests of the screens, on a terminal that shows every colour unless a test says otherwise,
in a folder of their own."""

from __future__ import annotations

from pathlib import Path

import pytest


@pytest.fixture(autouse=True)
def every_colour(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever terminal the tests are run from."""
    monkeypatch.setenv("COLORTERM", "truecolor")


@pytest.fixture(autouse=True)
def in_a_folder_of_its_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What is typed for the name of a file is no file among ours."""
    monkeypatch.chdir(tmp_path)
