"""Several files written into a folder that a person names."""

from __future__ import annotations

import os
from collections.abc import Mapping

from sewalong.store.faults import StoreFault
from sewalong.store.own_folder import refuse_own_folder
from sewalong.store.writing import make_folder, write_whole


def write_into(folder: str, files: Mapping[str, bytes], *, replace: bool = False) -> None:
    """Write `files`, by their names, into a folder, which is made if it is not there; each whole.

    Raises StoreFault, and then writes none of them, in the folder of the record, and, without
    `replace`, where one of them lies with something else in it. Where the disk refuses, those
    before it are written.
    """
    refuse_own_folder(folder)
    if os.path.lexists(folder) and not os.path.isdir(folder):
        raise StoreFault(f"{folder} is not a folder. Name a folder to write in.")
    paths = {os.path.join(folder, name): data for name, data in files.items()}
    for path, data in paths.items():
        refuse_own_folder(path)
        if os.path.exists(path) and not os.path.isfile(path):
            raise StoreFault(f"{path} is not a file. Name another folder.")
        if not replace and os.path.lexists(path) and not _holds(path, data):
            raise StoreFault(
                f"{path} is there already, with something else in it. Name another folder, or add "
                "--replace"
            )
    try:
        make_folder(folder)
    except OSError as error:
        raise StoreFault(
            f"The folder {folder} cannot be made ({error.strerror}). Name another."
        ) from error
    for path, data in paths.items():
        write_whole(path, data)


def _holds(path: str, data: bytes) -> bool:
    try:
        if os.path.getsize(path) != len(data):
            return False
        with open(path, "rb") as file:
            return file.read() == data
    except OSError:
        return False
