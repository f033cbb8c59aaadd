"""Writing a file whole or not at all."""

from __future__ import annotations

import os
from contextlib import suppress

from sewalong.store.faults import StoreFault


def write_whole(path: str | os.PathLike[str], text: str | bytes) -> None:
    """Put `text`, or the bytes of a picture, at `path`: to a temporary file in the same folder,
    synced, then renamed.

    Raises StoreFault, and leaves what was at `path`, when the disk does not allow it or
    something other than a file is there.
    """
    import tempfile  # loaded only where a file is written

    folder = os.path.dirname(path) or "."
    try:
        data = text.encode() if isinstance(text, str) else text
        # A rename would put a plain file in the place of a device such as /dev/null.
        if os.path.exists(path) and not os.path.isfile(path):
            what = "a folder" if os.path.isdir(path) else "not a file"
            raise StoreFault(f"{path} is {what}. Give the name of a file to write.")
        handle, name = tempfile.mkstemp(dir=folder, prefix=".sewalong-")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
            os.chmod(name, _mode_for(path))
            os.replace(name, path)
        except BaseException:
            if os.path.exists(name):
                os.unlink(name)
            raise
        sync_folder(folder)
    except UnicodeEncodeError as error:
        raise StoreFault(f"{path} cannot be written: there is half a character in it.") from error
    except OSError as error:
        raise StoreFault(
            f"{path} cannot be written ({error.strerror}). Choose another place for it."
        ) from error


def _mode_for(path: str | os.PathLike[str]) -> int:
    """For its owner alone; what the owner may not do with the file that is there stays so."""
    try:
        return os.stat(path).st_mode & 0o600
    except OSError:
        return 0o600


def file_stem(name: str) -> str:
    """A name for a file after that of a quilt: its letters and digits, whatever else is in it."""
    import re

    return re.sub(r"[^\w]+", "-", name).strip("-_")[:60] or "quilt"


def free_name(begins: str, ends: str) -> str:
    """A path that nothing lies at: `begins` and `ends`, with a number between where that is taken."""
    path, n = f"{begins}{ends}", 1
    while os.path.lexists(path):
        n += 1
        path = f"{begins}-{n}{ends}"
    return path


def sync_file(file: str) -> None:
    """Make what was written to `file` last through a power cut; raises OSError."""
    handle = os.open(file, os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def sync_folder(folder: str | os.PathLike[str]) -> None:
    """Make a rename in `folder` last through a power cut, where the system can do that.

    Some network folders cannot; the file itself is whole and in its place all the same.
    """
    if not hasattr(os, "O_DIRECTORY"):
        return
    with suppress(OSError):
        handle = os.open(folder, os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def make_folder(folder: str) -> None:
    """Make a folder, and those above it, where they are not there; for its owner alone.

    Its name lasts through a power cut, as what is written in it will.
    """
    if os.path.isdir(folder):
        return
    above = os.path.dirname(folder)
    if above and above != folder:
        make_folder(above)
    with suppress(FileExistsError):  # another window was faster
        os.mkdir(folder, mode=0o700)
    sync_folder(above or ".")
