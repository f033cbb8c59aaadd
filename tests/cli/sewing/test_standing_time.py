"""`forecast`, `tonight`, `pace`: time by plain commands."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk
from tests.cli.sewing.conftest import Sewn


def test_before_the_first_stitch_it_is_a_guess_and_says_so(begun: Desk) -> None:
    said = begun.ok("forecast")
    assert said.lines[0].startswith("About ")
    assert "sessions of an hour" in said.lines[0]
    assert said.lines[-1] == "Not begun."
    data = begun.ok("forecast", "--json").data
    assert data["hours"]["low"] < data["hours"]["middle"] < data["hours"]["high"]
    assert not data["sessions_like_yours"]
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


def test_a_day_wanted_gives_hours_a_week_or_says_that_it_cannot_be(begun: Desk) -> None:
    said = begun.ok("forecast", "--by", "2027-01-04", "--json").data["by"]
    assert said["days"] == 63
    assert said["hours_a_week"][0] < said["hours_a_week"][1]
    today = begun.ok("forecast", "--by", "2026-11-02")
    assert today.lines[-1].startswith("That cannot be done: the day is today")
    assert "2026-12-24" in begun.refused("forecast", "--by", "Christmas").err


def test_a_session_of_her_own_length_so_many_times_a_week(begun: Desk) -> None:
    # Q158, old.quiltube.com: "30 min a day … 7*30/60 = 3.5 h a week".
    said = begun.ok("forecast", "--session", "30", "--times", "7", "--json").data
    assert said["hours_a_week"] == 3.5
    assert said["session_hours"] == 0.5
    assert said["weeks"][0] <= said["weeks"][1]
    begun.refused("forecast", "--times", "7")
    begun.refused("forecast", "--session", "0")
    begun.refused("forecast", "--session", "30", "--times", "0")


def test_tonight_fits_the_time_and_names_the_stop(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    said = desk.ok("tonight", "45", "--json").data
    assert 0 < said["used"] <= 45
    assert said["steps"]
    assert said["ending"]
    lines = desk.ok("tonight", "45").lines
    assert lines[0].startswith("1. ")
    assert any(line.startswith("In all about ") for line in lines)
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
    assert sum(line.startswith("Session ") for line in said.lines) == 2
    assert any(line.startswith("Sew: ") for line in said.lines)
    data = desk.ok("pace", "--json").data
    assert [one["number"] for one in data["sessions"]] == [1, 2]
    assert data["sessions"][1]["open"]
    assert data["sessions"][0]["counts"] == {"pair": 20, "sew": 10}
    assert sum(one["share"] for one in data["stages"]) == pytest.approx(1, abs=0.001)


def test_without_a_count_there_is_no_pace(begun: Desk) -> None:
    assert "Nothing has been counted yet" in begun.ok("pace").out
