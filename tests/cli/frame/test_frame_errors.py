"""What can go wrong around a command: always a plain sentence, never a traceback."""

from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from sewalong.__main__ import main

if TYPE_CHECKING:
    from tests.cli.conftest import Desk

ESCAPE = "\x1b[2J\x07"


def program(*argv: str, home: Path, **more: str) -> subprocess.CompletedProcess[str]:
    """The program in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "sewalong", *argv],
        env={**os.environ, "SEWALONG_HOME": str(home), **more},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )


def test_a_command_that_is_none_is_refused_and_the_nearest_named(desk: Desk) -> None:
    assert "Did you mean count?" in desk.refused("cuont").err
    assert "sewalong --help" in desk.refused("zzz").err
    assert "sewalong list --help" in desk.refused("list", "--wrong").err
    assert "“--wrong” is not understood here" in desk.refused("--wrong").err
    assert "in quotes" in desk.refused("count", "sew", "around", "3").err


def test_main_reads_the_process_arguments(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.argv", ["sewalong", "list"])
    assert main() == 0
    assert "There is no quilt yet" in desk.capsys.readouterr().out


def test_text_that_could_drive_the_terminal_is_shown_harmlessly(begun: Desk) -> None:
    begun.ok("note", f"red {ESCAPE} [red]bold[/]")
    begun.ok("put-away", "square", ESCAPE)
    begun.ok("spoil", "square", "1", "--reason", ESCAPE)
    for argv in (["status"], ["log"], ["list"], ["log", "--json"], ["status", "--json"]):
        said = begun.ok(*argv)
        assert "\x1b" not in said.out + said.err
        assert "\x07" not in said.out + said.err
    assert "[2J" in begun.ok("status").out, "what is harmless of it is there as typed"
    assert "[red]bold[/]" in begun.ok("status").out
    for argv in ([ESCAPE], ["status", ESCAPE], ["count", ESCAPE], ["check", ESCAPE]):
        assert "\x1b" not in begun.refused(*argv).err


def test_a_quilt_name_written_into_the_record_by_force_is_shown_harmlessly(begun: Desk) -> None:
    record = sqlite3.connect(begun.folder / "home" / "quilts.db")
    record.execute(
        "INSERT INTO quilt (key, name, plan, started) VALUES ('k', ?, '{}', ?)",
        (f"[red]{ESCAPE}", "2026-11-03T20:00:00+00:00"),
    )
    record.commit()
    record.close()
    said = begun.run("list")
    assert said.status == 2
    assert "[red]␛[2J␇: " in said.lines[4], "it cannot be read, which is said"
    assert "Gate Post" in said.lines[0], "and it hides no other"
    assert "\x1b" not in begun.refused("status", "--quilt", "2").err


def test_a_name_in_square_brackets_is_printed_as_typed(desk: Desk) -> None:
    file = desk.file("red.toml", 'name = "[red]"\n' + _REST)
    assert desk.ok("start", file).lines[0] == "Begun: [red]"
    assert desk.ok("status").lines[0] == "This quilt: [red]"


_REST = """\
method = "paired-squares"
[squares]
size = "5"
count = 20
[layout]
rows = 5
columns = 8
"""


def test_arguments_that_are_no_text_are_refused(begun: Desk) -> None:
    assert "no readable text" in begun.refused("note", "\udcff").err
    begun.refused("status", "\udcff")
    begun.refused("check", "\udcff")


def test_a_record_that_is_none_is_left_untouched(desk: Desk) -> None:
    home = desk.folder / "home"
    home.mkdir()
    (home / "quilts.db").write_bytes(b"not a record at all, but something of the owner's")
    assert "not a sewalong record" in desk.refused("list").err
    desk.refused("count", "pair")


def test_a_home_that_is_a_file_is_refused(desk: Desk) -> None:
    (desk.folder / "home").write_text("a file", "utf-8")
    assert "SEWALONG_HOME" in desk.run("start", desk.file("gate-post.toml")).err
    assert "and is a file" in desk.refused("list").err


def test_a_fault_of_the_program_itself_says_so(
    begun: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError("oh")

    monkeypatch.setattr("sewalong.cli.quilts.status_report.status_lines", broken)
    monkeypatch.delenv("SEWALONG_TRACE", raising=False)
    said = begun.run("status")
    assert said.status == 1
    assert "This is a fault in sewalong itself (ZeroDivisionError: oh)" in said.err
    monkeypatch.setenv("SEWALONG_TRACE", "1")
    with pytest.raises(ZeroDivisionError):
        begun.run("status")


def test_an_interrupt_leaves_quietly(begun: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("sewalong.cli.quilts.status_report.status_lines", interrupted)
    assert begun.run("status").status == 130


def test_whoever_stops_reading_is_no_reason_to_complain(begun: Desk) -> None:
    for _ in range(3):
        begun.ok("note", "x" * 2000)
    read, write = os.pipe()
    os.close(read)
    process = subprocess.run(
        [sys.executable, "-m", "sewalong", "log"],
        env={**os.environ, "SEWALONG_HOME": str(begun.folder / "home")},
        stdin=subprocess.DEVNULL,
        stdout=write,
        stderr=subprocess.PIPE,
        timeout=60,
        check=False,
    )
    os.close(write)
    assert process.returncode == 0
    assert process.stderr == b""


def test_a_terminal_that_knows_only_ascii_gets_no_traceback(begun: Desk) -> None:
    said = program("status", home=begun.folder / "home", PYTHONIOENCODING="ascii")
    assert said.returncode == 0
    assert "Target: 5 x 6" in said.stdout


def test_the_program_refuses_in_a_process_of_its_own(tmp_path: Path) -> None:
    said = program("count", "pair", home=tmp_path / "home")
    assert said.returncode == 2
    assert said.stdout == ""
    assert said.stderr.startswith("There is no quilt yet.")


@pytest.mark.parametrize(
    "line", ["count", "changed", "changed x", "target 1", "settings --foot", "reckon backing"]
)
def test_errors_of_the_command_line_are_sentences(line: str, desk: Desk) -> None:
    said = desk.refused(*line.split()).err
    assert said[0].isupper() or said.startswith("-")
    assert "See: sewalong" in said
