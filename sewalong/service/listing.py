"""What the list of quilts shows of each."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from sewalong.service.summary import Summary, from_json, to_json
from sewalong.store.home import DRAFT, DRAFTS
from sewalong.store.library import Library, Shelved

if TYPE_CHECKING:
    from sewalong.store.drafts import Draft


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


def drafts_in(folder: str) -> tuple[tuple[Draft, ...], str]:
    """The drafts beside the record in `folder`, the last kept first, and what to say of those that
    cannot be read; empty where all can."""
    try:
        names = os.listdir(os.path.join(folder, DRAFTS))
    except OSError:
        return (), ""
    if not any(name.endswith(DRAFT) for name in names):
        return (), ""
    from sewalong.store.drafts import Drafts  # most have none

    return Drafts(folder).all()
