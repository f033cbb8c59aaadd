"""Numbers as a report: one fact a line, and as data with lengths in inches and as printed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from sewalong.cli.frame.facts import each
from sewalong.cli.frame.report import Report
from sewalong.quilt.worksheet.one_fact import apart

if TYPE_CHECKING:
    from sewalong.quilt.worksheet.line import Line, Section


def told(lines: Iterable[Line], **data: object) -> Report:
    """The lines as they stand."""
    kept = tuple(lines)
    return Report(facts_of(kept), {**data, "lines": [line_data(one) for one in kept]})


def facts_of(lines: Iterable[Line]) -> tuple[str, ...]:
    """All lines, one fact each."""
    return tuple(fact for line in lines for fact in line.facts)


def all_facts(line: Line) -> tuple[str, ...]:
    """A line whose reason is no reason but more of what it tells: its facts, each under its label."""
    told = [*apart(line.text), *apart(line.reason.replace(", ", "; "))]
    return tuple(each(line.label, told))


def line_data(line: Line) -> dict[str, object]:
    """One line: `text` as printed, `inches` (and `inches_down` of a size) as a number or null."""
    data: dict[str, object] = {
        "label": line.label,
        "text": line.text,
        "reason": line.reason,
        "inches": line.inches,
    }
    if line.inches_down is not None:
        data["inches_down"] = line.inches_down
    return data


def section_lines(sections: Iterable[Section]) -> tuple[str, ...]:
    """Each section's title on a line of its own before its lines."""
    return tuple(
        text for one in sections for text in (f"{one.title}:", *facts_of(one.lines)) if one.lines
    )


def section_data(sections: Iterable[Section]) -> dict[str, object]:
    """Sections by their id."""
    return {one.id: [line_data(line) for line in one.lines] for one in sections}
