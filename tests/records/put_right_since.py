"""What version 1 said and was not true, or not plain, each with what is said in its place.

`PUT_RIGHT` holds single lines. `times_said_since.json` holds all that is said about time of those
records where any of it differs: version 1 added guesses for counts without a time to the hours
it had measured, so that one session was 0 minutes long in one place and 7 1/2 hours in another;
it forecast hours measured and hours guessed as one range; and it did not mark a guess as one. The
lengths of sessions, the hours measured and the forecasts from them are other numbers since,
for every record in which anything was counted.

Version 1 packed several facts into one line, and used words that were not understood: `PLAINER`
has the words, `_one_fact_a_line` takes the lines apart.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path

from sewalong.cli.frame.facts import sentences
from sewalong.cli.sewing.at_risk import SEEN_TO
from sewalong.progress.joining.orientation_checks import which_way_up
from sewalong.progress.measuring.at_risk import GET_RID
from sewalong.progress.plan.plan import out_of
from sewalong.progress.record.route import JOIN_ROWS
from tests.records.coming_back_since import FIRST_STAGE, HEAD, coming_back, places_as_written

HER_OWN = (
    "",
    "You wrote",
    "Laid aside",
    "Note",
    "First note",
    "Last note",
    "Spoiled",
    "Put away",
    "Machine",
    "Tested by",
    "Press",
)
"""Labels of lines that hold what the owner wrote, told as she wrote it. What to pick up has none: it
names the place in her words."""

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

CAME_TO: Mapping[str, list[str]] = json.loads(
    (Path(__file__).parent / "done_said_since.json").read_text(encoding="utf-8")
)
"""By command line of `status`: what a quilt of which every stage is done came to, said since before
its stages."""


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
        said = _what_it_came_to(coming_back(said), CAME_TO.get(line, []))
    said = _where_it_was(said, archives)
    said = _how_it_goes_away(_which_end_is_up(_nothing_waits_in_one_piece(said)))
    for old, new in {**PLAINER, **(NO_TAPE if line.startswith("join") else {})}.items():
        said = said.replace(old, new)
    return said if "--json" in line else _one_fact_a_line(line.split()[0], said)


PLAINER: Mapping[str, str] = {
    # Words that only the program's makers used.
    "rows' worth": "rows",
    "row's worth": "row",
    "made, whereabouts unknown": "made, but not found",
    ", whereabouts unknown": ", but not found",
    "made but not found": "made, but not found",
    ", proved by ": ", tested by ",
    "Proved by: ": "Tested by: ",
    "Not proved as it is now": "Not tested as it is now",
    "The seam: not proved yet.": "The seam is not tested yet.",
    "The seam: proved.": "The seam is tested.",
    "The seam: proved, but changed since.": "The seam was tested, but something was changed since.",
    "The seam: measured wrong.": "The seam measured wrong.",
    "To prove it, measure": "To test it, measure",
    "so nothing is at risk": "so nothing else can be wrong",
}
"""Words said otherwise since, in every command, and why."""

NO_TAPE: Mapping[str, str] = {
    # No stage said to put tape on; every row has a tag.
    "even rows away from the edge with the tape. Mark the edge where the rows begin with tape.": (
        "even rows away from there. A row begins at the unit its tag is pinned on."
    ),
    "towards the edge with the tape": "towards where the row begins",
    "away from the edge with the tape": "away from where the row begins",
    "Do both tags lie at the edge with the tape?": (
        "Do both tags lie at the same edge, where the rows begin?"
    ),
}
"""Of `join`; what the owner wrote of tape is hers."""


def _one_fact_a_line(command: str, said: str) -> str:
    """What stood in one line stands in several since: a screen reader reads one after the other."""
    lines = []
    for line in said.splitlines():
        lines += _facts(command, line)
    return "".join(f"{line}\n" for line in lines)


def _facts(command: str, line: str) -> list[str]:
    if command == "list":
        return _of_the_list(line)
    if command not in ("status", "join", "proof"):
        return [line]
    label, _, text = line.partition(": ")
    if line.startswith("At risk"):
        return _in_doubt(line)
    if line.startswith("The machine was changed in between"):
        return _batches(line)
    if label in (*HER_OWN, "About") and not STAGE.fullmatch(line):
        return [line]
    if label == "Last time":
        when, *did = re.split(": |, (?!for )", text.removesuffix("."))
        return [f"Last time: {one}." for one in (when, *did)]
    if label == "Target":
        target, _, wanted = text.partition(", ")
        return [f"Target: {target}", f"Wanted: {wanted}"]
    if command == "status" and (stage := STAGE.fullmatch(line)):
        return _of_a_stage(stage)
    if command == "join":
        return _of_joining(line)
    return sentences(line)


def _in_doubt(line: str) -> list[str]:
    """Where it is a fact of coming back, all of it stands in one line under a label."""
    facts: list[str] = []
    for one in re.split(
        r" (?=At risk since |The |What |Where |Measure )", line.removeprefix("At risk: ")
    ):
        if found := DOUBT.fullmatch(one):
            facts.append(f"These may be wrong: {found['these']}, sewn since {found['since']}.")
            if found["units"]:
                facts.append(f"They are for {found['units']}.")
            facts += [f"Sewn on {day}." for day in found["days"].split(", ")]
        elif one.startswith("The machine was changed"):
            facts += _batches(one)
        else:
            facts += sentences(one)
    if line.startswith("At risk: "):
        facts[0] = facts[0].replace("These may be wrong", "May be wrong")
    return facts


DOUBT = re.compile(
    r"At risk since (?P<since>[^:]+): (?P<these>\d+ .* from [^,(]+?)(?:, (?P<units>\d+ units?))? "
    r"\((?P<days>[^)]*)\)\."
)


def _batches(line: str) -> list[str]:
    first, _, begun = line.partition("each. ")
    since = begun.removesuffix(".").split("; ")
    return [f"{first}each.", *(f"One sewn {one}." for one in since)]


STAGE = re.compile(
    r"(?P<label>[^:]+): (?P<done>\d+)(?: of (?P<needed>\d+) done| done, (?P<only>\d+) needed)"
    r"(?:, \d+ to do)?(?:, (?P<waiting>[^,]+) waiting| ?(?P<cloth>, from cloth)|, nothing waiting yet)?\."
)


def _of_a_stage(found: re.Match[str]) -> list[str]:
    done, needed = int(found["done"]), int(found["needed"] or found["only"])
    facts = [f"{found['label']}: {out_of(done, needed, 'done')}."]
    if found["cloth"]:
        facts.append(f"{found['label']}: From cloth.")
    elif found["waiting"] and found["waiting"] != "nothing":
        verb = "waits" if found["waiting"].startswith("1 ") else "wait"
        facts.append(f"{found['label']}: {found['waiting']} {verb}.")
    return facts


def _of_the_list(line: str) -> list[str]:
    found = LISTED.fullmatch(line)
    assert found is not None, line
    facts = [f"{found['name']}: {found['standing']}."]
    if found["next"]:
        facts.append(f"Next: {found['next']}.")
    return [*facts, f"Work done: {found['done']}.", f"Last touched: {found['last']}."]


LISTED = re.compile(
    r"(?P<name>.*): (?P<standing>[a-z ]+), (?P<done>\d+%) of the work done, "
    r"last touched (?P<last>[^(]*\([^)]*\))(?:, next (?P<next>.*))?\."
)


def _of_joining(line: str) -> list[str]:
    for label in ("Before each seam", "Tags"):
        if line.startswith(f"{label}: "):
            return [f"{label}: {one}" for one in sentences(line.removeprefix(f"{label}: "))]
    seams, stop, more = SEAMS.sub(r"\1", line).partition(" to go. ")
    return [f"{seams} to go.", more] if stop else sentences(seams)


SEAMS = re.compile(r"(\d+ seams? to go) of \d+(?:, in pairs: \d+ joins? for any one row)?")
"""Not understood by whoever read it; what it was for stands below the joins."""


def _what_it_came_to(said: str, came_to: list[str]) -> str:
    lines = said.splitlines()
    at = next(n for n, line in enumerate(lines) if n >= HEAD and FIRST_STAGE.search(line))
    return "".join(f"{line}\n" for line in (*lines[:at], *came_to, *lines[at:]))


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
    said = re.sub(r"^(At risk: .*)$", rf"\1 {' '.join(GET_RID)}", said, flags=re.MULTILINE)
    old = "\nWhen they are measured and seen to: sewalong proof --seen-to"
    return said.replace(old, f"\n{' '.join(GET_RID)}\n{SEEN_TO}")


def _nothing_waits_in_one_piece(said: str) -> str:
    """Rows that are all joined don't wait to be joined: they are one piece."""
    said = re.sub(
        r"^(Join rows: (\d+) of \2 done), \d+ rows waiting\.$", r"\1.", said, flags=re.MULTILINE
    )
    all_joined = r'("id": "join-rows",[^}]*"to_do": 0,[^}]*"waiting": )\d+'
    return re.sub(all_joined, r"\g<1>0", said)
