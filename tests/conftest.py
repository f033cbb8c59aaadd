"""What holds for every test: no test fails by the clock, however busy the machine is."""

from __future__ import annotations

import gc

from hypothesis import settings

settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")


def pytest_collection_finish() -> None:
    """What was collected stays to the end: eleven thousand tests need not be looked through again
    each time garbage is."""
    gc.collect()
    gc.freeze()
