"""How a quilt stands, in short: what the list of quilts shows of it, kept beside its record.

Derived, never trusted over the record: it is stamped with the number of the last event, and
worked out anew whenever that or the program's version differs.
"""

from __future__ import annotations

import msgspec


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


def to_json(found: Summary) -> str:
    """The summary as it is kept."""
    return msgspec.json.encode(found).decode()


def from_json(text: str) -> Summary | None:
    """A summary as it was kept; None where it is of no use and has to be worked out anew."""
    try:
        return msgspec.json.decode(text, type=Summary)
    except msgspec.MsgspecError:
        return None
