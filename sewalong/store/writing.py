"""Writing a file whole or not at all."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from sewalong.store.faults import StoreFault


def write_whole(path: Path, text: str) -> None:
    """Put `text` at `path`: to a temporary file in the same folder, synced, then renamed.

    Raises StoreFault, and leaves what was at `path`, when the disk does not allow it.
    """
    try:
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        try:
            with os.fdopen(handle, "w", encoding="utf-8") as file:
                file.write(text)
                file.flush()
                os.fsync(file.fileno())
            os.chmod(name, 0o644)
            os.replace(name, path)
        except BaseException:
            Path(name).unlink(missing_ok=True)
            raise
        _sync_folder(path.parent)
    except OSError as error:
        raise StoreFault(
            f"{path} cannot be written ({error.strerror}). Choose another place for it."
        ) from error


def _sync_folder(folder: Path) -> None:
    if not hasattr(os, "O_DIRECTORY"):
        return
    handle = os.open(folder, os.O_DIRECTORY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
