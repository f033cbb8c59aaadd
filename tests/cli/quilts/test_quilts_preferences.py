"""`preferences`: where they lie, what holds, what is wrong; and a faulty file keeps nobody out."""

from __future__ import annotations

from datetime import timedelta

import pytest

from tests.cli.conftest import Desk


def test_without_a_file_all_is_as_usual_and_one_can_be_written(desk: Desk) -> None:
    assert desk.ok("preferences").lines[0] == "File: none"
    desk.ok("preferences", "--write")
    assert "Key of count: space" in desk.ok("preferences").lines
    desk.refused("preferences", "--write")


def test_a_faulty_file_is_told_and_all_is_as_usual(begun: Desk) -> None:
    home = begun.folder / "home"
    (home / "preferences.toml").write_text('[keys]\ncount = "5"\n', encoding="utf-8")
    said = begun.run("preferences")
    assert said.status == 2
    assert said.lines[0].startswith("line 2, keys.count: Digits type a number")
    counted = begun.ok("count", "pair", "--caution-read")
    assert "problem with their file (1 fault in it)" in counted.err


@pytest.mark.parametrize(
    ("session", "hours", "blade", "stop", "said"),
    [
        ("1", "1", "1", "1", ("1 minute", "after 1 hour", "after 1 in cut", "after 1 minute")),
        ("90", "0.5", "900", "45", ("90 minutes", "after 0.5 hours", "after 900 in cut", "after 45 minutes")),
        ("2", "0", "1/4", "0", ("2 minutes", "never", "after 1/4 in cut", "never")),
    ],
)  # fmt: skip
def test_numbers_are_told_as_they_were_written(
    desk: Desk, session: str, hours: str, blade: str, stop: str, said: tuple[str, ...]
) -> None:
    home = desk.folder / "home"
    home.mkdir(exist_ok=True)
    wear = f'[wear]\nneedle_hours = {hours}\nblade = "{blade}"\nstop_minutes = {stop}\n'
    (home / "preferences.toml").write_text(f"session = {session}\n{wear}", encoding="utf-8")
    told = dict(line.split(": ", 1) for line in desk.ok("preferences").lines)
    assert tuple(told[one] for one in ("Session", "Needle", "Blade", "Stop")) == said


def test_her_own_words_of_caution_come_with_the_plain_command_too(begun: Desk) -> None:
    home = begun.folder / "home"
    (home / "preferences.toml").write_text('[cautions]\nneedle = "glasses on"\n', encoding="utf-8")
    begun.ok("count", "pair", "8", "--caution-read")
    assert "glasses on" in begun.refused("count", "sew").err


def test_a_stop_comes_when_she_wants_it(begun: Desk) -> None:
    home = begun.folder / "home"
    (home / "preferences.toml").write_text("[wear]\nstop_minutes = 10\n", encoding="utf-8")
    begun.ok("count", "pair", "4", "--caution-read")
    begun.now += timedelta(minutes=12)
    assert "stand up, look far away" in begun.ok("count", "pair", "4").out


def test_only_plain_signs_where_she_wants_no_others(begun: Desk) -> None:
    assert "Target: 5 × 6" in begun.ok("status").lines
    (begun.folder / "home" / "preferences.toml").write_text("ascii = true\n", encoding="utf-8")
    assert "Target: 5 x 6" in begun.ok("status").lines
    assert begun.ok("status").out.isascii()
