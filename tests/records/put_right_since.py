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
import re
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path

from sewalong.cli.sewing.at_risk import SEEN_TO
from sewalong.progress.joining.orientation_checks import which_way_up
from sewalong.progress.measuring.at_risk import GET_RID
from sewalong.progress.record.route import JOIN_ROWS
from tests.records.coming_back_since import coming_back, places_as_written

PUT_RIGHT: Mapping[str, Mapping[str, str]] = {
    # After five joins, counted without numbers, nine rows are four pieces. A quilt laid aside cannot
    # be counted before it is picked up again: it was offered, and refused.
    "status --quilt Russet Rows (demo)": {
        "Join rows: 5 of 9 done, 4 to do, 9 rows waiting.": (
            "Join rows: 5 of 9 done, 4 to do, 4 pieces (9 rows in all) waiting."
        ),
        "Count first: It has been long: count the units before you go on.": "",
    },
    "status --json --quilt Russet Rows (demo)": {
        '   "waiting": 9,\n   "waiting_pieces": "rows"': (
            '   "waiting": 4,\n   "waiting_pieces": "pieces (9 rows in all)"'
        ),
    },
}
"""By command line: the line as version 1 printed it, to the line that is true; empty for none."""

TIMES: Mapping[str, list[str]] = json.loads(
    (Path(__file__).parent / "times_said_since.json").read_text(encoding="utf-8")
)
"""By command line of `forecast`, `pace` or `tonight`: all its lines as they are now."""


def put_right(line: str, said: str, archives: str) -> str:
    """What version 1 said, with the lines that were not true put right.

    `archives` are the quilts it was asked about, as it exported them: their times with offsets.
    """
    if line in TIMES:
        return "".join(f"{one}\n" for one in TIMES[line])
    for old, new in PUT_RIGHT.get(line, {}).items():
        assert f"\n{said}".count(f"\n{old}\n") == 1, old
        said = said.replace(old, new) if new else said.replace(f"{old}\n", "")
    said = places_as_written(said)
    if line.startswith("status --quilt"):
        said = coming_back(said)
    said = _where_it_was(said, archives)
    return _how_it_goes_away(_which_end_is_up(_nothing_waits_in_one_piece(said)))


def _where_it_was(said: str, archives: str) -> str:
    """Days and times are those of the place where it was sewn, by the offset kept with each;
    version 1 told them by the clock of the machine it was asked on, here UTC."""
    here: dict[str, str] = {}
    for text in re.findall(r'"(?:at|ended)":\s*"([^"]+)"', archives):
        at = datetime.fromisoformat(text)
        here[_said(at.astimezone(UTC))] = _said(at)
    return re.sub(
        r"\d+ [A-Z][a-z]{2} \d{4}, \d\d:\d\d", lambda found: here.get(found[0], found[0]), said
    )


def _said(at: datetime) -> str:
    return f"{at.day} {at:%b %Y, %H:%M}"


def _which_end_is_up(said: str) -> str:
    """Asked before a row is joined since; version 1 asked only for edges."""
    asked = "Before each seam: "
    return said.replace(f"{asked}Do both", f"{asked}{which_way_up(JOIN_ROWS)[0]} Do both")


def _how_it_goes_away(said: str) -> str:
    """Of pieces that may be wrong it is said since how that goes away."""
    said = re.sub(r"^(At risk: .*)$", rf"\1 {GET_RID}", said, flags=re.MULTILINE)
    old = "\nWhen they are measured and seen to: sewalong proof --seen-to"
    return said.replace(old, f"\n{GET_RID}\n{SEEN_TO}")


def _nothing_waits_in_one_piece(said: str) -> str:
    """Rows that are all joined don't wait to be joined: they are one piece."""
    said = re.sub(
        r"^(Join rows: (\d+) of \2 done), \d+ rows waiting\.$", r"\1.", said, flags=re.MULTILINE
    )
    all_joined = r'("id": "join-rows",[^}]*"to_do": 0,[^}]*"waiting": )\d+'
    return re.sub(all_joined, r"\g<1>0", said)
