"""Where the record lies: the platform's data folder, or SEWALONG_HOME."""

from __future__ import annotations

import os
from pathlib import Path

FILE_NAME = "quilts.db"


def data_folder() -> Path:
    """The folder that holds the owner's quilts. It may not exist yet."""
    chosen = os.environ.get("SEWALONG_HOME")
    if chosen:
        return Path(chosen).expanduser()
    from platformdirs import user_data_path

    return user_data_path("sewalong", appauthor=False)


def record_path() -> Path:
    """The database with the owner's quilts."""
    return data_folder() / FILE_NAME


def demo_record_path() -> Path:
    """The database with the demo quilts: never the owner's."""
    return data_folder() / "demo" / FILE_NAME
