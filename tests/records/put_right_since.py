"""Lines of version 1 that were not true, each with what is said in its place.

Units are joined at the size they are trimmed to, and version 1 reckoned with the size before that.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from sewalong.progress.joining.orientation_checks import which_way_up
from sewalong.progress.record.route import JOIN_ROWS

PUT_RIGHT: Mapping[str, Mapping[str, str]] = {
    # Half-square triangles of 11.44 cm trimmed to 11: rows, seams and borders are shorter.
    "forecast --quilt Cornflower Field (demo)": {
        "About 7 to 17 hours, 16 to 36 sessions like yours.": (
            "About 7 to 17 hours, 16 to 35 sessions like yours."
        ),
        "Sew rows: 12 rows, 1 1/2 to 6 1/2 hours (a guess from 92 cm of seam and handling: about "
        "13 minutes each; by your pace so far about 18 minutes)": (
            "Sew rows: 12 rows, 1 1/2 to 6 1/2 hours (a guess from 88 cm of seam and handling: "
            "about 13 minutes each; by your pace so far about 18 minutes)"
        ),
        "Join rows: 11 seams, 1 to 4 hours (a guess from 91 cm of seam and handling: about 8 1/2 "
        "minutes each; by your pace so far about 12 minutes)": (
            "Join rows: 11 seams, 1 to 4 hours (a guess from 87 cm of seam and handling: about "
            "8 1/2 minutes each; by your pace so far about 12 minutes)"
        ),
        "Add borders: 4 sides, 1 to 4 hours (a guess from 113 cm of seam and handling: about 20 "
        "minutes each; by your pace so far about 29 minutes)": (
            "Add borders: 4 sides, 1 to 4 hours (a guess from 109 cm of seam and handling: about "
            "20 minutes each; by your pace so far about 28 minutes)"
        ),
    },
    # The owner's pace is her time over what was guessed, and the guess has shorter rows now.
    "forecast --quilt Invented half-square-two": {
        "Quilt: 2 rows' worth, 1/2 to 3 hours (a guess from handling and size: about 22 minutes "
        "each; by your pace so far about 40 minutes)": (
            "Quilt: 2 rows' worth, 1/2 to 3 hours (a guess from handling and size: about 22 "
            "minutes each; by your pace so far about 39 minutes)"
        ),
    },
    "forecast --quilt Invented hourglass": {
        "Sew rows: 2 rows, 1 1/2 to 4 1/2 hours (about 77 minutes each, from 1 row in 1 session)": (
            "Sew rows: 2 rows, 1 1/2 to 4 1/2 hours (about 76 minutes each, from 1 row in 1 "
            "session)"
        ),
    },
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


def put_right(line: str, said: str) -> str:
    """What version 1 said, with the lines that were not true put right."""
    for old, new in PUT_RIGHT.get(line, {}).items():
        assert f"\n{said}".count(f"\n{old}\n") == 1, old
        said = said.replace(old, new) if new else said.replace(f"{old}\n", "")
    return _which_end_is_up(_nothing_waits_in_one_piece(said))


def _which_end_is_up(said: str) -> str:
    """Asked before a row is joined since; version 1 asked only for edges."""
    asked = "Before each seam: "
    return said.replace(f"{asked}Do both", f"{asked}{which_way_up(JOIN_ROWS)[0]} Do both")


def _nothing_waits_in_one_piece(said: str) -> str:
    """Rows that are all joined don't wait to be joined: they are one piece."""
    said = re.sub(
        r"^(Join rows: (\d+) of \2 done), \d+ rows waiting\.$", r"\1.", said, flags=re.MULTILINE
    )
    all_joined = r'("id": "join-rows",[^}]*"to_do": 0,[^}]*"waiting": )\d+'
    return re.sub(all_joined, r"\g<1>0", said)
