"""Help: what is used weekly on one screen, and everything on request."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from sewalong import __version__
from sewalong.cli.registry import index

if TYPE_CHECKING:
    from tests.cli.conftest import Desk


def test_help_fits_a_screen_with_the_prompt_below_it(desk: Desk) -> None:
    lines = desk.ok("--help").lines
    assert len(lines) < 24
    assert max(map(len, lines)) <= 80


def test_help_names_what_is_used_weekly_and_where_the_rest_is(desk: Desk) -> None:
    said = desk.ok("--help")
    listed = [line.split()[0] for line in said.lines if line.startswith("  ")]
    assert listed == list(index.WEEKLY)
    assert "sewalong help all" in said.out
    assert "the\nmakers' instructions, local rules and qualified help come first" in said.out


def test_help_can_be_asked_for_in_several_ways(desk: Desk) -> None:
    out = desk.ok("--help").out
    for argv in (["-h"], ["help"], ["help", "help"], ["--help", "count"]):
        assert desk.ok(*argv).out == out


def test_help_all_lists_every_command_in_its_group(desk: Desk) -> None:
    said = desk.ok("help", "all")
    group = ""
    found: list[tuple[str, str]] = []
    for line in said.lines:
        if line.endswith(":") and not line.startswith(" "):
            group = line[:-1]
        elif line.startswith("  "):
            found.append((group, " ".join(line.split())))
    entries = (*index.commands(), *index.reckoners())
    assert found == [(one.group, f"{one.name} {one.help}") for one in entries]
    assert max(map(len, said.lines)) <= 80
    assert "makers' instructions" in said.out


def test_a_group_stands_together(desk: Desk) -> None:
    groups = [one.group for one in (*index.commands(), *index.reckoners())]
    changes = [a for a, b in pairwise(groups) if a != b]
    assert len(changes) + 1 == len(set(groups))


def test_the_version_is_printed(desk: Desk) -> None:
    assert desk.ok("--version").out == f"sewalong {__version__}\n"
