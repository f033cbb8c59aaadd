"""The fabrics of a plan changed, each by a change of the plan that undo takes back."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.fabrics.counted import NO_SETS
from sewalong.progress.acts.sets import AcceptSets
from sewalong.progress.acts.steering import ChangeTarget
from sewalong.progress.acts.undoing import Undo
from sewalong.progress.record.refused import Refused
from sewalong.quilt.choices import Fabric
from sewalong.quilt.refusal import NumbersFault
from sewalong.service.acting import do
from sewalong.service.fabric_changes import keep_photographed, say_anew, say_fabrics, take_out
from sewalong.service.fabric_looks import NONE_YET, fabrics_now, of_plan
from tests.fabrics.photo.test_photo_mending import photo
from tests.progress.building import a_quilt
from tests.progress.sets.fabrics import sets_of, with_fabrics
from tests.service.opened_quilt import a_window

PILES = "lights 60, mediums 70, darks 38"


def letters(fabrics: tuple[Fabric, ...]) -> str:
    return "".join(fabric.letter for fabric in fabrics)


def test_said_changed_taken_out_and_taken_back(tmp_path: Path) -> None:
    with a_window(tmp_path) as window:
        quilt = window.quilt
        assert fabrics_now(quilt).verdict == NONE_YET
        do(quilt, say_fabrics(quilt, PILES))
        assert fabrics_now(quilt).verdict.startswith("168 squares of 3 fabrics")
        do(quilt, say_anew(quilt, "B", "mediums 66"))
        assert [fabric.squares for fabric in quilt.state.quilt.fabrics] == [60, 66, 38]
        do(quilt, take_out(quilt, "A"))
        assert letters(quilt.state.quilt.fabrics) == "BC"
        do(quilt, Undo())
        assert letters(quilt.state.quilt.fabrics) == "ABC"


def test_what_is_not_there_is_refused_in_a_sentence(tmp_path: Path) -> None:
    with a_window(tmp_path) as window:
        quilt = window.quilt
        with pytest.raises(NumbersFault, match="not there any more"):
            take_out(quilt, "A")
        with pytest.raises(NumbersFault, match="not there any more"):
            say_anew(quilt, "A", "x 4")
        with pytest.raises(NumbersFault, match="no number"):
            say_fabrics(quilt, "lights")


def test_a_photograph_is_kept_beside_or_instead(tmp_path: Path) -> None:
    with a_window(tmp_path) as window:
        quilt = window.quilt
        do(quilt, say_fabrics(quilt, PILES))
        do(quilt, keep_photographed(quilt, photo()))
        assert letters(quilt.state.quilt.fabrics) == "ABCDEF"
        do(quilt, keep_photographed(quilt, photo(), instead=True))
        assert letters(quilt.state.quilt.fabrics) == "ABC"
        assert [row.value for row in fabrics_now(quilt).rows][-1] == "dark"


def test_a_fabric_in_sets_stays_so_that_its_letter_means_no_other(tmp_path: Path) -> None:
    with a_window(tmp_path, quilt=with_fabrics()) as window:
        quilt = window.quilt
        do(quilt, AcceptSets(sets_of(8, 3)))
        with pytest.raises(
            Refused, match=r"^L cocoa stays in the plan, for .* in sets 2, 3\. Choose"
        ):
            do(quilt, take_out(quilt, "L"))
        with pytest.raises(Refused, match=r"in sets 1, 2\. Choose"):
            do(quilt, take_out(quilt, "A"))
        with pytest.raises(NumbersFault, match="Keep them beside"):
            keep_photographed(quilt, photo(), instead=True)
        # Said otherwise it may be, and taken out once no set takes it.
        do(quilt, say_anew(quilt, "L", "bark 9"))
        do(quilt, AcceptSets(sets_of(8, 1)))
        do(quilt, take_out(quilt, "L"))
        assert letters(quilt.state.quilt.fabrics) == "ABCDEFGHIJK"


def test_what_is_possible_follows_the_layout_that_is_wanted(tmp_path: Path) -> None:
    with a_window(tmp_path) as window:
        quilt = window.quilt
        do(quilt, say_fabrics(quilt, "lights 24, darks 24"))
        # 4 x 5 units, four of a set.
        assert "48 squares: enough for 5 sets of 8 squares, 8 over." in fabrics_now(quilt).facts
        do(quilt, ChangeTarget(4, 6))
        assert "48 squares: enough for 6 sets of 8 squares, 0 over." in fabrics_now(quilt).facts


def test_a_method_without_sets_is_said_to_have_none() -> None:
    plan = replace(a_quilt("plain-squares"), fabrics=(Fabric("A", "moss", "#6a6f2c", 9),))
    assert of_plan(plan).facts == (NO_SETS,)
