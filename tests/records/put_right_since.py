"""What version 1 said and was not true, or not plain, each with what is said in its place.

`PUT_RIGHT` holds single lines. `times_said_since.json` holds all that is said about time of those
records where any of it differs: version 1 added guesses for counts without a time to the hours
it had measured, so that one session was 0 minutes long in one place and 7 1/2 hours in another;
it forecast hours measured and hours guessed as one range; and it did not mark a guess as one. The
lengths of sessions, the hours measured and the forecasts from them are other numbers since,
for every record in which anything was counted.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path

PUT_RIGHT: Mapping[str, Mapping[str, str]] = {
    # A quilt laid aside cannot be counted before it is picked up again: it was offered, and refused.
    "status --quilt Russet Rows (demo)": {
        "Count first: It has been long: count the units before you go on.": "",
    },
}
"""By command line: the line as version 1 printed it, to the line that is true; empty for none."""

TIMES: Mapping[str, list[str]] = json.loads(
    (Path(__file__).parent / "times_said_since.json").read_text(encoding="utf-8")
)
"""By command line of `forecast`, `pace` or `tonight`: all its lines as they are now."""


def put_right(line: str, said: str) -> str:
    """What version 1 said, with the lines that were not true put right."""
    if line in TIMES:
        return "".join(f"{one}\n" for one in TIMES[line])
    for old, new in PUT_RIGHT.get(line, {}).items():
        assert said.splitlines().count(old) == 1, old
        said = said.replace(old, new) if new else said.replace(f"{old}\n", "")
    return said
