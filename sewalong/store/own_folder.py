"""The folder of the record is for the record: nothing a person names to write to is in it."""

from __future__ import annotations

import os

from sewalong.store.faults import StoreFault
from sewalong.store.home import data_folder, record_path


def refuse_own_folder(path: str | os.PathLike[str]) -> None:
    """Raise StoreFault where `path` is the record or lies in its folder, through links too."""
    if _holds_the_record(path):
        raise StoreFault(
            f"{path} is in the folder of your record ({data_folder()}), where nothing else is "
            "written. Nothing was changed; name a place elsewhere."
        )


def _holds_the_record(path: str | os.PathLike[str]) -> bool:
    """Whether `path` is in the data folder or is the record itself, through whatever links."""
    real = os.path.realpath(path)
    places = [real]
    while (above := os.path.dirname(places[-1])) != places[-1]:
        places.append(above)
    folder = data_folder()
    return any(_same(place, folder) for place in places) or _same(real, record_path())


def _same(one: str, other: str) -> bool:
    try:
        return os.path.samefile(one, other)
    except OSError:
        return False
