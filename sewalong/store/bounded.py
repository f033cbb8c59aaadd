"""A file somebody named, or that lies in the record's folder, read whole and never more than that."""

from __future__ import annotations

import os

from sewalong.store.faults import StoreFault


class TooLong(StoreFault):
    """A file with more bytes than there can be."""


def read_at_most(path: str | os.PathLike[str], most: int) -> bytes:
    """The bytes of the file at `path`. Raises StoreFault where it cannot be read, is no file, or
    (TooLong) has more than `most` bytes; no more than that is read, whatever stands there."""
    try:
        if os.path.exists(path) and not os.path.isfile(path):
            raise StoreFault(f"{path} is not a file. Name the file itself.")
        with open(path, "rb") as stream:
            data = stream.read(most + 1)
    except FileNotFoundError:
        raise StoreFault(f"There is no file {path}. Look at its name and its folder.") from None
    except (OSError, ValueError) as error:
        why = error.strerror if isinstance(error, OSError) else "its name"
        raise StoreFault(f"{path} cannot be read ({why}).") from error
    if len(data) > most:
        raise TooLong(f"{path} has more than {most:,} bytes. Is this the right file?")
    return data
