"""Files and folders the person names to write to."""

from __future__ import annotations

from sewalong.cli.frame.errors import CommandError
from sewalong.store.home import data_folder, holds_the_record


def refuse_own_folder(path: str) -> None:
    """Raise CommandError where `path` is the record or lies in its folder, through links too."""
    if holds_the_record(path):
        raise CommandError(
            f"{path} is in the folder of your record ({data_folder()}), where nothing else is "
            "written. Nothing was changed; name a place elsewhere."
        )
