"""`forecast`, `tonight`, `pace`: time by plain commands."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk
from tests.cli.sewing.conftest import Sewn


def test_before_the_first_stitch_it_is_a_guess_and_says_so(begun: Desk) -> None:
    said = begun.ok("forecast")
    assert said.lines[0].endswith(" hours, a guess until you have sewn.")
    assert said.lines[1].endswith(" sessions of an hour, all of it a guess.")
    assert said.lines[-1] == "Not begun."
    data = begun.ok("forecast", "--json").data
    assert data["hours"]["low"] < data["hours"]["middle"] < data["hours"]["high"]
    assert not data["sessions_like_yours"]
    assert data["measured"] is None
    assert data["guessed"] == data["hours"]
    assert not any(one["measured"] for one in data["stages"])
    assert {"sew rows", "join rows"} <= set(data["not_begun"])


def test_what_was_sewn_makes_it_less_and_sessions_her_own(sewn: Sewn) -> None:
    desk = sewn(pair=20, sew=10)
    before = desk.ok("forecast", "--json").data
    desk.ok("close", "--answer", "machine=yes")
    desk.wait(days=1)
    desk.ok("count", "press", "8", "--caution-read")
    after = desk.ok("forecast", "--json").data
    assert after["sessions_like_yours"]
    to_do = {one["stage"]: one["to_do"] for one in after["stages"]}
    was = {one["stage"]: one["to_do"] for one in before["stages"]}
    assert was["press"] - to_do["press"] == 8
    assert after["spent"] >= before["spent"]


def test_what_was_measured_and_what_is_guessed_are_two_lines(sewn: Sewn) -> None:
    desk = sewn(pair=20, sew=6)
    desk.wait(minutes=8)
    desk.ok("count", "sew", "4", "--caution-read")
    measured, guessed, sessions = desk.ok("forecast").lines[:3]
    assert " left at the stages you have worked at, most likely " in measured
    assert "guess" not in measured
    assert guessed.endswith(" more at stages never timed: a guess, drawn in by your pace so far.")
    assert sessions.endswith(", partly a guess.")
    data = desk.ok("forecast", "--json").data
    assert {one["stage"] for one in data["stages"] if one["measured"]} == {"sew"}
    assert data["measured"]["high"] < data["hours"]["high"]


def test_a_day_wanted_gives_hours_a_week_and_on_the_first_evening_no_verdict(begun: Desk) -> None:
    said = begun.ok("forecast", "--by", "2027-01-04", "--json").data["by"]
    assert said["days"] == 63
    assert said["hours_a_week"][0] < said["hours_a_week"][1]
    assert said["verdict"] == "too early to say"
    begun.ok("count", "pair", "8")
    begun.wait(minutes=20)
    begun.ok("count", "pair", "8")
    for day in ("2026-11-02", "2026-11-03", "2026-11-30"):
        soon = begun.ok("forecast", "--by", day).out
        assert "cannot be done" not in soon
        assert "a guess" in soon
    today = begun.ok("forecast", "--by", "2026-11-02")
    assert any(line.startswith("The day is today, and ") for line in today.lines)
    assert "2026-12-24" in begun.refused("forecast", "--by", "Christmas").err


def test_once_a_habit_shows_the_days_it_may_be_done_between_are_said(begun: Desk) -> None:
    for _ in range(3):
        begun.ok("count", "pair", "4")
        begun.wait(minutes=20)
        begun.ok("count", "pair", "4")
        begun.ok("close")
        begun.wait(minutes=8 * 24 * 60)
    said = begun.ok("forecast", "--by", "2027-06-01")
    assert any(" a week, as so far, it is done between " in line for line in said.lines)
    early, late = begun.ok("forecast", "--by", "2027-06-01", "--json").data["by"]["done_between"]
    assert "2026-11-26" < early < late


def test_a_session_of_her_own_length_so_many_times_a_week(begun: Desk) -> None:
    # Q158, old.quiltube.com: "30 min a day … 7*30/60 = 3.5 h a week".
    said = begun.ok("forecast", "--session", "30", "--times", "7", "--json").data
    assert said["hours_a_week"] == 3.5
    assert said["session_hours"] == 0.5
    assert said["weeks"][0] <= said["weeks"][1]
    by = begun.ok("forecast", "--session", "30", "--times", "7", "--by", "2026-12-21").lines
    assert any("With the habit given the rest may take 24 hours and no more" in one for one in by)
    begun.refused("forecast", "--times", "7")
    begun.refused("forecast", "--session", "0")
    begun.refused("forecast", "--session", "30", "--times", "0")


def test_the_length_she_prefers_is_half_of_a_habit(begun: Desk) -> None:
    (begun.folder / "home" / "preferences.toml").write_text("session = 30\n", encoding="utf-8")
    said = begun.ok("forecast", "--times", "7", "--json").data
    assert (said["session_hours"], said["hours_a_week"]) == (0.5, 3.5)
    assert (
        begun.ok("forecast", "--times", "7", "--session", "60", "--json").data["hours_a_week"]
        == 7.0
    )


def test_tonight_fits_the_time_and_names_the_stop(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    said = desk.ok("tonight", "45", "--json").data
    assert 0 < said["used"] <= 45
    assert said["steps"]
    assert said["ending"]
    lines = desk.ok("tonight", "45").lines
    assert lines[0].startswith("1. ")
    assert any(line.startswith("In all about ") and "a guess" in line for line in lines)
    takes = [line for line in lines if line.startswith("It takes ")]
    for step, line in zip(said["steps"], takes, strict=True):
        assert line.endswith(", a guess.") != step["measured"]
    before = desk.record()
    desk.ok("tonight", "45")
    assert desk.record() == before


@pytest.mark.parametrize(
    ("word", "station"), [("cutting", "cutting mat"), ("ironing", "iron"), ("machine", "machine")]
)
def test_what_hands_cannot_do_today_is_left_out_and_waits(
    sewn: Sewn, word: str, station: str
) -> None:
    # Q157, quiltingboard.com: "Let the user pick a stage that today's hands can do; keep
    # other stages waiting without penalty."
    desk = sewn(pair=20, sew=8, press=8, stack=4, sew_around=2)
    before = desk.status()["piles"]
    said = desk.ok("tonight", "60", "--without", word, "--json").data
    assert said["steps"]
    assert station not in [step["station"] for step in said["steps"]]
    assert said["left_out"]
    assert desk.status()["piles"] == before


def test_several_words_leave_several_out(sewn: Sewn) -> None:
    # Q166, gardenweb.com: numb fingers and blurred sight: "Offer the stage of simple pairs."
    desk = sewn(pair=8)
    said = desk.ok(
        "tonight", "20", "--without", "cutting, ironing", "--without", "machine", "--json"
    ).data
    assert [step["stage"] for step in said["steps"]] == ["pair"]
    assert "Leave out one of" in desk.refused("tonight", "45", "--without", "hoovering").err
    desk.refused("tonight", "0")
    desk.refused("tonight", "soon")


def test_the_pace_has_a_line_for_each_session_and_stage(sewn: Sewn) -> None:
    desk = sewn(pair=20, sew=10)
    desk.ok("close", "--answer", "machine=yes")
    desk.wait(days=2)
    desk.ok("count", "pair", "4")
    desk.wait(minutes=4)
    desk.ok("count", "pair", "8")
    said = desk.ok("pace")
    assert sum(line.startswith(("Session 1, ", "Session 2, ")) for line in said.lines) == 2
    assert any(line.startswith("Sew: ") for line in said.lines)
    data = desk.ok("pace", "--json").data
    assert [one["number"] for one in data["sessions"]] == [1, 2]
    assert data["sessions"][1]["open"]
    assert data["sessions"][0]["counts"] == {"pair": 20, "sew": 10}
    assert sum(one["share"] for one in data["stages"]) == pytest.approx(1, abs=0.001)


def test_without_a_count_there_is_no_pace(begun: Desk) -> None:
    assert "Nothing has been counted yet" in begun.ok("pace").out
