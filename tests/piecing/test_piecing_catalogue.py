"""Every method file: valid, its ids stable, its words fit to read, its counts worked out."""

from __future__ import annotations

import re
import tomllib
from fractions import Fraction as F
from importlib import resources
from math import ceil

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import UnknownMethod, method, method_ids
from sewalong.piecing.derive import derive
from sewalong.piecing.method import Hazard, Method, Pieces, Station
from sewalong.piecing.method_rules import LATER_LABELS, LATER_PILES, LATER_STAGES, MEASURED
from sewalong.progress.record.measurable import measurable
from sewalong.progress.record.route import (
    ADD_BORDERS,
    ADD_CORNERS,
    ADD_SASHES,
    JOIN_ROWS,
    ROW,
    SEW_ROWS,
    route_for,
)
from sewalong.progress.record.stages.on_point import ADD_SIDES
from sewalong.progress.record.stages.sashes import SEW_SASH_ROWS, cutting_stage
from sewalong.quilt.setting import (
    CORNER,
    CORNERSTONE,
    LONG,
    LYING,
    SASH_ROW,
    SET_SIDE,
    SET_UNIT,
    SIDE,
    STANDING,
)
from tests.progress.building import a_quilt
from tests.progress.wandering import ON_POINT, SETTINGS

METHODS = [method(id) for id in method_ids()]

STABLE = {
    "flipped-corners": (
        "large-square small-square > mark lay sew trim-corners press-open > "
        "marked-square laid-square sewn-square trimmed-square unit"
    ),
    "flying-geese-four": (
        "large-square small-square > pair sew-both-sides cut-once press-open add-corner "
        "sew-again cut-again press-again trim > pair sewn-pair cut-half heart laid-heart "
        "sewn-heart cut-unit open-unit unit"
    ),
    "four-patch": (
        "square > pair sew-pairs press-pairs join press > "
        "pair two-patch pressed-two-patch four-patch unit"
    ),
    "four-patch-strips": (
        "dark-strip light-strip > sew-strips press-sets cut-segments join press > "
        "strip-set pressed-set segment four-patch unit"
    ),
    "half-square-eight": (
        "square > pair mark sew-both-sides cut-eight press-open trim > "
        "pair marked-pair sewn-pair cut-unit open-unit unit"
    ),
    "half-square-two": (
        "square > pair mark sew-both-sides cut-once press-open trim > "
        "pair marked-pair sewn-pair cut-unit open-unit unit"
    ),
    "hourglass": (
        "square > pair mark sew-both-sides cut-once press-open match sew-across cut-across "
        "press-across trim > pair marked-pair sewn-pair cut-half half-square matched-pair "
        "sewn-matched-pair cut-unit open-unit unit"
    ),
    "nine-patch": (
        "square > sew-threes press-threes join-threes press > three pressed-three nine-patch unit"
    ),
    "nine-patch-quartered": (
        "square > sew-threes press-threes join-threes press quarter > "
        "three pressed-three nine-patch pressed-nine-patch unit"
    ),
    "nine-patch-strips": (
        "dark-strip light-strip > sew-outer-sets sew-middle-sets press-outer-sets "
        "press-middle-sets cut-outer-segments cut-middle-segments join-threes press > "
        "outer-set middle-set pressed-outer-set pressed-middle-set outer-segment "
        "middle-segment nine-patch unit"
    ),
    "paired-squares": (
        "square > pair sew-around cut-twice press-open > pair sewn-pair cut-unit unit"
    ),
    "plain-squares": "square > square-up > unit",
    "rail-fence": (
        "dark-strip medium-strip light-strip > sew-strips press-sets cut-squares > "
        "strip-set pressed-set unit"
    ),
    "stacked-four-patch": (
        "square > pair sew press stack sew-around cut-twice press-open > "
        "pair four-patch pressed-four-patch stack sewn-stack cut-unit unit"
    ),
}
"""Start piles, stage ids and the pile each makes. Quilts on disk name them: never change one."""


@pytest.mark.parametrize("known", METHODS, ids=lambda m: m.id)
def test_ids_stay_as_they_were_released(known: Method) -> None:
    starts, stages, piles = (part.split() for part in STABLE[known.id].split(" > "))
    assert list(known.starts) == starts
    assert [stage.id for stage in known.stages] == stages
    assert [stage.makes.pile for stage in known.stages] == piles
    assert [pile.id for pile in known.piles] == [*starts, *piles]


def test_no_method_is_missing_and_none_has_gone() -> None:
    assert list(method_ids()) == sorted(STABLE)


@pytest.mark.parametrize("known", METHODS, ids=lambda m: m.id)
def test_the_words_fit_the_screen_and_the_trade(known: Method) -> None:
    assert len(known.name) <= 40
    assert len(known.about) <= 110
    for stage in known.stages:
        assert len(stage.label) <= 20
        assert len(stage.do) <= 110
        assert len(stage.check) <= 80
        assert stage.do.endswith(".")
        assert not stage.check.endswith(".")
        # Hands differ: nothing is said by left or right; "right sides" is cloth.
        words = " ".join((stage.label, stage.do, stage.check)).lower()
        words = words.replace("right sides together", "")
        assert not re.search(r"\b(left|right|clockwise|anticlockwise)\b", words)


@pytest.mark.parametrize("known", METHODS, ids=lambda m: m.id)
def test_cloth_laid_face_to_face_says_which_faces_meet(known: Method) -> None:
    for stage in known.stages:
        if stage.station is Station.TABLE and re.search(r"\b[Ll]a(y|id)\b", stage.do):
            assert "right sides together" in stage.do


@pytest.mark.parametrize("known", METHODS, ids=lambda m: m.id)
def test_every_station_carries_its_hazard(known: Method) -> None:
    needed = {
        Station.IRON: Hazard.IRON,
        Station.MAT: Hazard.CUTTER,
        Station.MACHINE: Hazard.NEEDLE,
    }
    for stage in known.stages:
        if stage.station in needed:
            assert needed[stage.station] in stage.hazards
        if "both ways" in stage.do and stage.station is Station.MAT:
            assert Hazard.CROSS_CUT in stage.hazards
        if re.search(r"\bpin\.", stage.do):
            assert Hazard.PINS in stage.hazards


@pytest.mark.parametrize("id", method_ids())
def test_counts_are_not_typed_in_the_file(id: str) -> None:
    text = (resources.files("sewalong.piecing") / "methods" / f"{id}.toml").read_text("utf-8")
    for stage in tomllib.loads(text)["stages"]:
        assert not {"takes", "count", "makes_count"} & set(stage)
        assert isinstance(stage["makes"], str)
        assert [key for key, value in stage.items() if isinstance(value, int | float)] == [
            "minutes"
        ]


@pytest.mark.parametrize("known", METHODS, ids=lambda m: m.id)
def test_the_catalogue_and_the_engine_count_alike(known: Method) -> None:
    strips = known.starts[0].endswith("strip")
    derived = derive(known.id, F(5, 2) if strips else F(9))
    for stage in known.stages:
        assert derived.stage(stage.id).takes == stage.takes
        assert derived.stage(stage.id).makes == stage.makes


def test_168_squares_become_84_pairs_42_four_patches_21_stacks_and_84_units() -> None:
    stacked = method("stacked-four-patch")
    piles = {"square": 168}
    counts: dict[str, int] = {}
    for stage in stacked.stages:
        counts[stage.id] = min(piles[taken.pile] // taken.count for taken in stage.takes)
        for taken in stage.takes:
            piles[taken.pile] -= counts[stage.id] * taken.count
        piles[stage.makes.pile] = counts[stage.id] * stage.makes.count
    assert counts == {
        "pair": 84,
        "sew": 42,
        "press": 42,
        "stack": 21,
        "sew-around": 21,
        "cut-twice": 21,
        "press-open": 84,
    }
    assert piles.pop("unit") == 84
    assert set(piles.values()) == {0}


def test_cutting_twice_is_counted_in_stacks() -> None:
    cut = method("stacked-four-patch").stage("cut-twice")
    assert cut.takes == (Pieces("sewn-stack", 1),)
    assert cut.makes == Pieces("cut-unit", 4)
    assert cut.counts.count(21) == "21 stacks"


def test_labels_of_the_stacked_four_patch() -> None:
    assert [stage.label for stage in method("stacked-four-patch").stages] == [
        "pair",
        "sew",
        "press",
        "stack",
        "sew around",
        "cut twice",
        "press open",
    ]


def test_an_unknown_method_names_the_nearest() -> None:
    with pytest.raises(UnknownMethod, match="The nearest is 'stacked-four-patch'"):
        method("stacked-fourpatch")


@pytest.mark.parametrize("known", METHODS, ids=lambda m: m.id)
def test_sew_around_stages_warn_of_bias_where_there_is_bias(known: Method) -> None:
    derived = derive(known.id, F(5, 2) if known.starts[0].endswith("strip") else F(9))
    warned = any("bias" in stage.do for stage in known.stages)
    assert warned == derived.has_bias_edges


def test_350_units_eight_a_pair_take_44_pairs() -> None:
    # A maker of 350 units from eight at a time: 44 pairs, two units spare.
    made = method("half-square-eight").stage("cut-eight").makes.count
    assert ceil(350 / made) == 44
    assert 44 * made - 350 == 2


def test_ids_kept_for_rows_borders_and_finishing_are_those_of_the_road() -> None:
    # `progress.route` names the stages that follow the units.
    source = (resources.files("sewalong.progress.record") / "route.py").read_text("utf-8")
    named = set(re.findall(r'\bid="([a-z-]+)"', source)) | {
        JOIN_ROWS,
        SEW_ROWS,
        ADD_SASHES,
        ADD_BORDERS,
    }
    from_cloth = (STANDING, LYING, LONG, CORNERSTONE, SIDE, CORNER)
    elsewhere = {SEW_SASH_ROWS, ADD_SIDES, ADD_CORNERS}
    assert named | elsewhere | set(map(cutting_stage, from_cloth)) == LATER_STAGES
    for setting in (*SETTINGS, ON_POINT):
        quilt = replace(a_quilt(borders=1, finishing=("layer", "quilt", "bind")), setting=setting)
        stages = route_for(quilt, quilt.target).stages[len(quilt.method.stages) :]
        assert {stage.id for stage in stages} <= LATER_STAGES
        assert {stage.label for stage in stages} <= LATER_LABELS
    sewn = (ROW, SASH_ROW, SET_UNIT, SET_SIDE)
    assert {pile.id for pile in (*sewn, *from_cloth)} == LATER_PILES


def test_no_pile_has_the_name_of_what_can_be_measured_in_every_quilt() -> None:
    quilt = a_quilt(borders=1)
    piles = {pile.id for pile in quilt.method.piles}
    heads = {one.id.partition(":")[0] for one in measurable(quilt, quilt.target)}
    # A column is measured by its number of rows, so it stands in no list.
    assert (heads - piles - {ROW.id}) | {"column"} == MEASURED


@pytest.mark.parametrize("known", METHODS, ids=lambda m: m.id)
def test_labels_of_stages_differ_within_a_method(known: Method) -> None:
    labels = [stage.label for stage in known.stages]
    assert len(set(labels)) == len(labels)
    assert not {"sew rows", "join rows"} & set(labels)
