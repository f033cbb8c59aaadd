"""One home for all tests of faults; each spoils a copy of its own."""

from __future__ import annotations

import pytest

from tests.faults.home import Home, a_home


@pytest.fixture(scope="session")
def sound(tmp_path_factory: pytest.TempPathFactory) -> Home:
    """The home as it should be; not to be changed."""
    return a_home(tmp_path_factory.mktemp("faults") / "home")
