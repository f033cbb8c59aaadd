"""How a quilt stands, in short: what the list of quilts shows of it, kept beside its record.

Derived, never trusted over the record: it is stamped with the number of the last event, and
worked out anew whenever that or the program's version differs.
"""

from __future__ import annotations

import msgspec

from sewalong.store.library import Library, Shelved


class Summary(msgspec.Struct, frozen=True):
    """`standing` is a `Standing`; `work_done` is from 0 to 1; `next_stage` and its `label` are
    None where none can be done.

    `pick_up` is the next thing to pick up in one sentence, or how the quilt stands.
    """

    standing: str
    work_done: float
    next_stage: str | None
    label: str | None
    pick_up: str


def summary(library: Library, entry: Shelved) -> Summary:
    """How a quilt stands: as kept, or worked out from its record and kept from now on.

    Raises StoreFault where the record cannot be read.
    """
    if entry.summary:
        try:
            return msgspec.json.decode(entry.summary, type=Summary)
        except msgspec.MsgspecError:
            pass  # what was kept is of no use, so it is worked out as if there were none
    from sewalong.service.summing_up import worked_out

    found, seq = worked_out(library, entry)
    library.keep_summary(entry, seq, to_json(found))
    return found


def to_json(found: Summary) -> str:
    """The summary as it is kept."""
    return msgspec.json.encode(found).decode()
