"""What the list of quilts shows of each."""

from __future__ import annotations

from sewalong.service.summary import Summary, from_json, to_json
from sewalong.store.library import Library, Shelved


def summary(library: Library, entry: Shelved) -> Summary:
    """How a quilt stands: as kept, or worked out from its record and kept from now on.

    Raises StoreFault where the record cannot be read.
    """
    kept = from_json(entry.summary) if entry.summary else None
    if kept is not None:
        return kept
    from sewalong.service.summing_up import worked_out  # reads the whole record

    found, seq = worked_out(library, entry)
    library.keep_summary(entry, seq, to_json(found))
    return found
