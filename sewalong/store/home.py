"""Where the record lies: the platform's data folder, or SEWALONG_HOME."""

from __future__ import annotations

import os
from pathlib import Path

from sewalong.store.faults import StoreFault

FILE_NAME = "quilts.db"


def data_folder() -> Path:
    """The folder that holds the owner's quilts. It may not exist yet.

    Raises StoreFault when SEWALONG_HOME begins with the home of nobody known.
    """
    chosen = os.environ.get("SEWALONG_HOME")
    if chosen:
        try:
            return Path(chosen).expanduser()
        except RuntimeError as error:
            raise StoreFault(
                f"SEWALONG_HOME is {chosen!r}, and there is no such home folder. "
                "Set it to a whole path."
            ) from error
    from platformdirs import user_data_path

    return user_data_path("sewalong", appauthor=False)


def record_path() -> Path:
    """The database with the owner's quilts."""
    return data_folder() / FILE_NAME


def demo_record_path() -> Path:
    """The database with the demo quilts: never the owner's."""
    return data_folder() / "demo" / FILE_NAME
