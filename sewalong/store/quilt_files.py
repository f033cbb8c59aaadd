"""Quilt files written where a person names a place for them."""

from __future__ import annotations

import os

from sewalong.store.faults import StoreFault
from sewalong.store.own_folder import refuse_own_folder
from sewalong.store.writing import write_whole


def write_quilt_file(path: str, text: str) -> None:
    """Write a quilt file whole, where nothing lies yet. Raises StoreFault."""
    if os.path.lexists(path):
        raise StoreFault(f"{path} is there already. Name another file.")
    refuse_own_folder(path)
    write_whole(path, text)
