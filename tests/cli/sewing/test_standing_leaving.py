"""Closing a session: is it a good place to stop, where does everything lie, what is next."""

from __future__ import annotations

from tests.cli.sewing.conftest import Sewn


def test_a_chain_half_sewn_is_offered_to_be_ended_first(sewn: Sewn) -> None:
    desk = sewn(pair=20, sew=6)
    said = desk.refused("close", typed="n\n")
    assert "Go on to the end of the chain: 4 four-patches" in said.err
    assert desk.status()["last_session"]["open"]
    said = desk.ok("close", typed="\nyes\n\n\n\n\n")
    assert any(line.startswith("Stopping here: 4 four-patches") for line in said.lines)


def test_before_the_cuts_on_the_bias_is_a_good_place(sewn: Sewn) -> None:
    desk = sewn(pair=32, sew=16, press=16, stack=8, sew_around=8)
    answers = [f"--answer={thing}=yes" for thing in ("iron", "machine", "pins")]
    said = desk.ok("close", *answers, "--json").data
    assert said["good_place_to_stop"]
    assert "nothing is cut on the bias yet" in said["stopping_here"]
    assert said["next_thing"].startswith("Cut twice")


def test_after_them_it_is_not_and_the_stretching_is_said(sewn: Sewn) -> None:
    desk = sewn(pair=32, sew=16, press=16, stack=8, sew_around=8, cut_twice=8, press_open=4)
    answers = [f"--answer={thing}=yes" for thing in ("iron", "blade", "machine", "pins")]
    said = desk.ok("close", *answers, "--json").data
    assert not said["good_place_to_stop"]
    assert "they stretch" in said["stopping_here"]


def test_places_may_be_given_with_the_command(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    desk.ok("close", "--put", "pair=clipped on the hook", "--put", "squares=top drawer")
    assert desk.status()["places"] == {"square": "top drawer", "pair": "clipped on the hook"}


def test_a_place_wants_a_pile_and_words_and_else_nothing_is_recorded(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    assert "Write it like" in desk.refused("close", "--put", "pair").err
    assert "Write it like" in desk.refused("close", "--put", "pair= ").err
    assert "no pile" in desk.refused("close", "--put", "pears=bowl").err
    desk.refused("close", "--put", "pair=bowl", "--answer", "moon=yes")


def test_the_place_said_last_time_is_offered_and_enter_keeps_it(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    desk.ok("put-away", "pair", "on the hook")
    said = desk.ok("close", typed="\n\n\n")
    assert "Where did you put the 20 pairs? (Enter for: on the hook)" in said.err
    assert desk.status()["places"] == {"pair": "on the hook"}
    assert not [line for line in said.lines if line.startswith("Put the pairs")]


def test_nothing_typed_is_kept_when_the_terminal_closes_half_way(sewn: Sewn) -> None:
    desk = sewn(pair=20)
    desk.refused("close", typed="\ntop drawer\n")
