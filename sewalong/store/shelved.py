"""A quilt on the shelf: its entry, and what is kept of it in short."""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct

from sewalong.store.database import Database
from sewalong.store.faults import WAY_OUT, Damaged, StoreFault

TOUCHED = """
    INSERT OR REPLACE INTO touched (quilt, turn)
    VALUES (?, (SELECT COALESCE(MAX(turn), 0) + 1 FROM touched))
"""

SUMMARY = "INSERT OR REPLACE INTO summary (quilt, seq, version, body) VALUES (?, ?, ?, ?)"

CALLED = "INSERT OR REPLACE INTO called (quilt, name) VALUES (?, ?)"


class Shelved(Struct, frozen=True):
    """A quilt's entry: `id` on this machine, `key` anywhere, when it was last touched.

    `summary` is what was kept beside the record of how it stands, by this version of the
    program and after the last event; empty when there is none such.
    """

    id: int
    key: str
    name: str
    started: datetime
    last_at: datetime
    summary: str = ""


def folded(name: str) -> str:
    """Names that read alike are alike, however their letters are put together."""
    if name.isascii():
        return name.strip().casefold()
    import unicodedata  # loaded only for letters that can be put together in several ways

    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name.strip()).casefold())


def damaged_quilt(entry: Shelved, what: str) -> Damaged:
    """A quilt in which `what` is wrong."""
    return Damaged(
        f"The record of “{entry.name}” is damaged: {what}. What comes before is whole, and nothing "
        f"was changed. {WAY_OUT}"
    )


def keep(db: Database, sql: str, *values: str | int) -> None:
    """Keep something derived; a record that cannot be written does without."""
    if not db.has_derived:
        return
    try:
        with db.writing() as connection:
            connection.execute(sql, values)
    except StoreFault:
        return
