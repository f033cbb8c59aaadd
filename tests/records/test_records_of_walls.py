"""Walls as they were first written read for ever, and come to what they came to.

`wall_as_first_written.json` is the export of an invented quilt with every kind of event that the
first version with a wall had of it; `wall_as_first_read.json` what that version made of it. Neither
is ever made anew.
"""

from __future__ import annotations

import json
from pathlib import Path

import msgspec

from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.fold import fold
from sewalong.store.archive import from_text

HERE = Path(__file__).parent


def test_what_was_written_of_a_wall_is_read_as_it_was() -> None:
    archive = from_text((HERE / "wall_as_first_written.json").read_text(encoding="utf-8"))
    kinds = {one.event.kind for one in archive.record}
    assert {"wall laid", "units moved", "places locked", "rows reordered"} <= kinds
    assert audit(archive.quilt, archive.record) is None
    found = json.loads(msgspec.json.encode(fold(archive.quilt, archive.record).wall))
    found["locked"].sort()
    assert found == json.loads((HERE / "wall_as_first_read.json").read_text(encoding="utf-8"))
