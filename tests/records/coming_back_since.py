"""What version 1 said on coming back, with the same facts as they are said now.

It began with what was wrong, the oldest first, put what to pick up behind that, and left to the
reader which pile that is and where it lies; it put "in" before a place, whatever she had written;
and it told what was not asked as a story, not as a thing to see to.
"""

from __future__ import annotations

import re

ORDER = (
    "Laid aside", "Done", "", "Next", "Begun", "First", "At risk", "Short", "Seam", "Missing",
    "On the bias", "Count first", "You wrote", "Last time", "Still to do", "Put away", "Also there",
    "Machine", "Proved by", "Press", "Note", "Spoiled",
)  # fmt: skip
HEAD = 3
"""Lines before the facts: the quilt, its method, its target."""

FIRST_STAGE = re.compile(r": \d+( of \d+)? done")
NEXT = re.compile(
    r"Next: (?P<do>[^(]+) \(at the [a-z ]+\): (?:(?P<what>.*) waits?; )?\d+ .* to go\."
)
SAFE = {
    "iron": "the iron is off",
    "blade": "the blade is closed",
    "machine": "the machine is off",
    "pins": "the pins are counted",
}


def places_as_written(said: str) -> str:
    """Her own words behind a colon, without an "in" before them."""
    said = re.sub(r"\bPut ((?:the|\d+) [a-z -]+) in: ", r"Put \1 away: ", said)
    said = re.sub(r"\bRecounted the ([a-z -]+) in: ", r"Recounted the \1 – ", said)
    said = re.sub(r"\bThe ([a-z -]+) among them are in: ", r"Where the \1 among them lie: ", said)
    return re.sub(r"^(Put away: [^:]+) in: (.*)\.$", r"\1: \2", said, flags=re.MULTILINE)


def coming_back(said: str) -> str:
    """The lines of `status` as they are now."""
    lines = said.splitlines()
    end = next(n for n, line in enumerate(lines) if n >= HEAD and FIRST_STAGE.search(line))
    facts = [_see_to(line) for line in lines[HEAD:end]]
    facts += [_pick_up(line, facts) for line in facts if NEXT.fullmatch(line)]
    facts.sort(key=lambda line: ORDER.index(_label(line)))
    return "".join(f"{line}\n" for line in (*lines[:HEAD], *facts, *lines[end:]))


def _label(line: str) -> str:
    label, colon, _ = line.partition(": ")
    return label if colon and label in ORDER else ""


def _see_to(line: str) -> str:
    """What nobody was asked about, or was not answered with yes, as a thing to see to."""
    if line == "Look first: Asked about the pins at the end, you said: you did not look.":
        return "First: Count the pins: nobody looked last time."
    if not line.startswith("Not asked: "):
        return line
    *others, last = [safe for thing, safe in SAFE.items() if f"the {thing}" in line]
    safe = f"{', '.join(others)} and {last}" if others else last
    return f"First: See that {safe}: that session was never closed, so nobody asked."


def _pick_up(line: str, facts: list[str]) -> str:
    """What waits, with the place that stands among the facts, and what to do with it."""
    found = NEXT.fullmatch(line)
    assert found
    do, what = found["do"].lower(), found["what"] or "top"
    what = "rows" if "rows in all" in what else what
    of_the_top = {"top": r"\d+ rows", "rows": r"\d+ rows"}.get(what, re.escape(what))
    place = next(
        (m[1] for one in facts if (m := re.fullmatch(f"Put away: {of_the_top}: (.*)", one))), ""
    )
    what = re.sub(r"^1 ", "", what)
    return f"Pick up the {what} – {place} – and {do}." if place else f"Pick up the {what} and {do}."
