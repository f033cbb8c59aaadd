"""Closing the session: what is asked, what is kept, what is never claimed."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.cli.conftest import Desk


@pytest.fixture
def pressed(begun: Desk) -> Desk:
    """A session in which a machine and an iron were used."""
    begun.ok("count", "pair", "8")
    begun.ok("count", "sew", "2", "--caution-read")
    begun.ok("count", "press", "2", "--caution-read")
    begun.wait(minutes=50)
    return begun


def test_without_the_answers_the_session_stays_open(pressed: Desk) -> None:
    said = pressed.refused("close")
    assert "Is the iron off and unplugged? Add --answer iron=yes" in said.err
    assert "Add --answer machine=yes" in said.err
    assert pressed.status()["last_session"]["open"] is True


def test_the_answers_and_the_next_step_are_kept(pressed: Desk) -> None:
    said = pressed.ok(
        "close", "--answer", "iron=yes", "--answer", "machine=did-not-look", "--next", "stack them"
    )
    assert "Session 1: 50 minutes." in said.lines
    assert "Sew: 2 four-patches this session." in said.lines
    assert any(line.startswith("You said did not look: Is the machine off") for line in said.lines)
    last = pressed.status()["last_session"]
    assert last["answers"] == {"iron": "yes", "machine": "did not look"}
    assert last["next_step"] == "stack them"
    assert last["open"] is False


def test_on_a_terminal_each_thing_is_asked_until_it_is_answered(pressed: Desk) -> None:
    said = pressed.ok("close", typed="what?\nyes\nn\n\ntop drawer\n\npress the rest\n")
    assert said.err.count("Is the iron off and unplugged?") == 2
    last = pressed.status()["last_session"]
    assert last["answers"] == {"iron": "yes", "machine": "no"}
    assert last["next_step"] == "press the rest"
    assert pressed.status()["places"] == {"pair": "top drawer"}


def test_enter_takes_the_next_step_that_is_offered(pressed: Desk) -> None:
    said = pressed.ok("close", typed="yes\nyes\n\n\n\n\n")
    next_step = pressed.status()["last_session"]["next_step"]
    assert next_step.endswith(".")
    assert f"next time? (Enter for: {next_step.rstrip('.')})" in said.err


def test_a_terminal_that_closes_meanwhile_records_nothing(pressed: Desk) -> None:
    pressed.refused("close", typed="yes\n")


def test_answers_to_what_was_not_asked_are_refused(pressed: Desk) -> None:
    assert "Asked about: iron, machine." in pressed.refused("close", "--answer", "blade=yes").err
    assert "Write it like iron=yes" in pressed.refused("close", "--answer", "iron").err
    assert "Answer yes, no or" in pressed.refused("close", "--answer", "iron=off").err


def test_with_no_session_open_there_is_none_to_close(begun: Desk) -> None:
    begun.refused("close")


def test_a_session_left_open_is_closed_as_forgotten_by_the_next(pressed: Desk) -> None:
    pressed.wait(days=24)
    said = pressed.ok("count", "pair", "1")
    assert said.lines[1].startswith("Session 1 was never closed; last heard from ")
    assert said.lines[2] == "Session 2 opened."
