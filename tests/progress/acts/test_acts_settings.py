"""Settings given one by one: the others stand, and a test proves only what it was made with."""

from __future__ import annotations

from sewalong.progress.acts.seam import settings_after
from sewalong.progress.record.settings import Settings

PROVED = Settings(machine="old one", foot="1/4 in", proof="three strips at 3 1/2 in")


def test_the_first_settings_stand_as_given_and_no_test_is_lost() -> None:
    assert settings_after(None, {"foot": "wide"}) == (Settings(foot="wide"), False)


def test_another_foot_keeps_the_machine_and_loses_the_test() -> None:
    after, lost = settings_after(PROVED, {"foot": "wide"})
    assert (after, lost) == (Settings(machine="old one", foot="wide"), True)


def test_no_test_is_lost_where_there_was_none() -> None:
    after, lost = settings_after(Settings(foot="1/4 in"), {"foot": "wide"})
    assert (after, lost) == (Settings(foot="wide"), False)


def test_the_same_setting_again_keeps_the_test() -> None:
    assert settings_after(PROVED, {"foot": "1/4 in"}) == (PROVED, False)


def test_a_test_given_with_new_settings_is_the_one_that_stands() -> None:
    after, lost = settings_after(PROVED, {"foot": "wide", "proof": "two strips"})
    assert (after, lost) == (Settings(machine="old one", foot="wide", proof="two strips"), False)
