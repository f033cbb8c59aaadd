"""Which fabrics share a seam: against shapely on labelled cloth, and against graphs written out."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from fractions import Fraction as F
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.cloth import Flat, Patch
from sewalong.piecing.contacts import Contact, contacts
from sewalong.piecing.derive import derive

IDS = method_ids()
SEAMS = st.fractions(F(1, 8), F(1, 2), max_denominator=64)
SIZES = st.fractions(F(3), F(14), max_denominator=16)

FRONT = ["AB", "BC", "CD", "AD"]
BACK = ["EF", "FG", "GH", "EH"]
OPENED = ["AF", "BE", "CH", "DG"]


def found(id: str, size: F = F(5), seam: F = F(1, 4)) -> tuple[Contact, ...]:
    return contacts(derive(id, size, seam).units, float(seam))


def fabrics_met(meeting: Sequence[Contact]) -> set[str]:
    return {"".join(contact.letters) for contact in meeting}


@settings(max_examples=80, deadline=None)
@given(id=st.sampled_from(IDS), size=SIZES, seam=SEAMS)
def test_contacts_are_what_shapely_finds_of_the_finished_patches(id: str, size: F, seam: F) -> None:
    units = derive(id, size + 8 * seam, seam, strip_length=F(120)).units
    ours = {(c.unit, *c.patches): c.length for c in contacts(units, float(seam))}
    theirs = {}
    for number, unit in enumerate(units):
        shapes = [Polygon(patch.points) for patch in unit.finished(float(seam))]
        for (i, a), (j, b) in combinations(enumerate(shapes), 2):
            # Where patches part by float noise the edge is found within a thread's breadth.
            length = a.buffer(1e-5, join_style="mitre").intersection(b.boundary).length
            if length > 1e-3:
                theirs[(number, i, j)] = length
    assert ours.keys() == theirs.keys()
    for at, length in ours.items():
        assert length == pytest.approx(theirs[at], abs=1e-3)


def test_the_squares_of_a_stack_meet_as_the_corners_of_a_cube() -> None:
    # The cube written out: twelve contacts. Where front and back are opened the seam is the
    # diagonal of the unit, and each two squares have half of it in two units; within a four-patch
    # each unit has half of a half.
    meeting = found("stacked-four-patch")
    assert fabrics_met(meeting) == {*FRONT, *BACK, *OPENED}
    width, _ = derive("stacked-four-patch", F(5)).unit.finishes
    total: dict[str, float] = {}
    for contact in meeting:
        pair = "".join(contact.letters)
        total[pair] = total.get(pair, 0.0) + contact.length
    for pair, length in total.items():
        share = 1.0 if pair in OPENED else 0.5
        assert length == pytest.approx(width * math.sqrt(2) * share)
    assert Counter(letter for pair in fabrics_met(meeting) for letter in pair) == dict.fromkeys(
        "ABCDEFGH", 3
    )


@pytest.mark.parametrize(
    ("lights", "alike"),
    [("ACEG", set()), ("ABEF", {"AB", "EF", "CD", "GH", "AF", "BE", "CH", "DG"})],
    ids=["light laid on dark", "pairs of like value"],
)
def test_where_lights_and_darks_lie_decides_which_contacts_are_lost(
    lights: str, alike: set[str]
) -> None:
    met = fabrics_met(found("stacked-four-patch"))
    assert {pair for pair in met if (pair[0] in lights) == (pair[1] in lights)} == alike


@pytest.mark.parametrize("lights", range(9))
def test_too_few_lights_leave_three_contacts_alike_for_each_that_is_missing(lights: int) -> None:
    # The bound 3 * |4 - k|, reached: every choice of k of the eight tried.
    met = fabrics_met(found("stacked-four-patch"))
    least = min(
        sum((pair[0] in light) == (pair[1] in light) for pair in met)
        for light in combinations("ABCDEFGH", lights)
    )
    assert least == 3 * abs(4 - lights)


def test_only_opposite_units_of_a_stack_share_no_fabric() -> None:
    shown = [
        {patch.letter for patch in unit.finished(0.25)}
        for unit in derive("stacked-four-patch", F(5)).units
    ]
    assert [len(shown[i] & shown[j]) for i, j in combinations(range(4), 2)] == [2, 0, 2, 2, 0, 2]


def test_a_nine_patch_meets_as_a_grid_of_three_by_three() -> None:
    assert fabrics_met(found("nine-patch")) == {
        "AB", "BC", "DE", "EF", "GH", "HI", "AD", "BE", "CF", "DG", "EH", "FI",
    }  # fmt: skip


def test_a_plain_square_meets_nothing() -> None:
    assert found("plain-squares") == ()


def patch(letter: str, *points: tuple[float, float]) -> Patch:
    return Patch(points, letter, (0.0, -1.0))


def test_patches_that_touch_at_a_corner_share_no_seam() -> None:
    unit = Flat(
        (
            patch("A", (0, 0), (2, 0), (2, 2), (0, 2)),
            patch("B", (2, 0), (4, 0), (4, 2), (2, 2)),
            patch("C", (2, 2), (4, 2), (4, 4), (2, 4)),
            patch("D", (0, 2), (2, 2), (2, 4), (0, 4)),
        )
    )
    assert fabrics_met(contacts([unit], 0.5)) == {"AB", "BC", "CD", "AD"}
    assert {c.length for c in contacts([unit], 0.5)} == {1.5}


def test_a_fabric_can_meet_itself_and_one_seam_can_have_two_on_its_other_side() -> None:
    unit = Flat(
        (
            patch("A", (0, 0), (4, 0), (4, 2), (0, 2)),
            patch("A", (0, 2), (1, 2), (1, 4), (0, 4)),
            patch("B", (1, 2), (4, 2), (4, 4), (1, 4)),
        )
    )
    assert [(c.patches, "".join(c.letters), c.length) for c in contacts([unit], 0.0)] == [
        ((0, 1), "AA", 1.0), ((0, 2), "AB", 3.0), ((1, 2), "AB", 2.0),
    ]  # fmt: skip
