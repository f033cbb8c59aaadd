"""Where the record lies: the platform's data folder, or SEWALONG_HOME."""

from __future__ import annotations

import os

FILE_NAME = "quilts.db"
PREFERENCES = "preferences.toml"
DRAFTS = "drafts"
"""The folder beside the record for quilts that are not begun yet."""
DRAFT = ".json"
"""What the name of each of their files ends with."""


def data_folder() -> str:
    """The folder that holds the owner's quilts. It may not exist yet.

    Raises StoreFault when SEWALONG_HOME begins with the home of nobody known.
    """
    chosen = os.environ.get("SEWALONG_HOME")
    if chosen:
        folder = os.path.expanduser(chosen)
        if folder.startswith("~"):
            # Where the record lies is also asked by what opens none, and loads no database.
            from sewalong.store.faults import StoreFault

            raise StoreFault(
                f"SEWALONG_HOME is {chosen!r}, and there is no such home folder. "
                "Set it to a whole path."
            )
        return folder
    from platformdirs import user_data_dir

    return user_data_dir("sewalong", appauthor=False)


def preferences_path() -> str:
    """The file of the owner's preferences, which need not be there: beside the quilts where
    SEWALONG_HOME says where those are, else in the platform's folder for such files."""
    if os.environ.get("SEWALONG_HOME"):
        return os.path.join(data_folder(), PREFERENCES)
    from platformdirs import user_config_dir

    return os.path.join(user_config_dir("sewalong", appauthor=False), PREFERENCES)


def record_path() -> str:
    """The database with the owner's quilts."""
    return os.path.join(data_folder(), FILE_NAME)


def demo_record_path() -> str:
    """The database with the demo quilts: never the owner's."""
    return os.path.join(data_folder(), "demo", FILE_NAME)
