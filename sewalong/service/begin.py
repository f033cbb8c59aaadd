"""A new quilt put on the shelf, by whatever way it was planned."""

from __future__ import annotations

from datetime import datetime

from sewalong.quilt.quilt import Quilt
from sewalong.service.listing import summary
from sewalong.store.library import Library
from sewalong.store.shelved import Shelved


def begin(library: Library, quilt: Quilt, now: datetime) -> Shelved:
    """Begin a quilt. Raises StoreFault, also where one is called so already."""
    entry = library.add(quilt, now)
    summary(library, entry)
    return entry
