"""The method files that come with the program: which there are, and what stands in one."""

from __future__ import annotations

import re
from functools import cache

from sewalong import piecing

LONGEST_METHOD = 50_000
"""Characters in a method file: twelve times the longest of the program's own."""

ID = r"[a-z0-9]+(?:-[a-z0-9]+)*"
"""What an id looks like."""


@cache
def method_ids() -> tuple[str, ...]:
    """The ids of all methods, in alphabetical order."""
    # Loaded here: it takes longer to load than a method does to read, and few need the list.
    from importlib import resources

    folder = resources.files(piecing) / "methods"
    names = [entry.name for entry in folder.iterdir() if entry.name.endswith(".toml")]
    return tuple(sorted(name.removesuffix(".toml") for name in names))


def read_method_file(id: str) -> bytes | None:
    """What stands in the file of the method called `id`, or None if there is no such method.

    An id comes out of a quilt's plan, so nothing that isn't an id gets to be part of a path.
    """
    return read_beside(f"methods/{id}.toml") if re.fullmatch(ID, id) else None


def text_of(id: str) -> str | None:
    """The same as text."""
    data = read_method_file(id)
    return None if data is None else data.decode("utf-8").replace("\r\n", "\n")


def read_beside(path: str) -> bytes | None:
    """What stands in a file of this room, `path` written from here, or None if it isn't there."""
    # The room's own loader, since `pkgutil` and `importlib.resources` cost a start more than
    # all the rest that is done with a method.
    loader = piecing.__spec__.loader
    try:
        data: bytes = loader.get_data(f"{piecing.__path__[0]}/{path}")  # type: ignore[union-attr]
    except OSError:
        return None
    return data
