"""Pictures written where a person names a place for them."""

from __future__ import annotations

import os

from sewalong.store.faults import StoreFault
from sewalong.store.own_folder import refuse_own_folder
from sewalong.store.writing import write_whole


def refuse_picture(path: str, *, replace: bool = False) -> None:
    """Raise StoreFault where no picture can be written: in the folder of the record, or, without
    `replace`, where something lies."""
    if os.path.lexists(path) and not replace:
        raise StoreFault(f"{path} is there already. Name another file, or add --replace")
    refuse_own_folder(path)


def write_picture(path: str, picture: bytes, *, replace: bool = False) -> None:
    """Write a picture whole; raises StoreFault as `refuse_picture`, and where the disk refuses."""
    refuse_picture(path, replace=replace)
    write_whole(path, picture)
