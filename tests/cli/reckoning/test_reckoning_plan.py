"""`plan`, `layouts` and `methods`: of a quilt file, of a quilt in the record, and of a method."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sewalong.piecing.catalogue import method_ids

if TYPE_CHECKING:
    from tests.cli.reckoning.conftest import Ask

# Common practice: 168 five-inch squares, stacked four-patches, nine by nine, two borders.
COMMON = """\
name = "Harbour lights"
method = "stacked-four-patch"
squares = {size = 5, packs = 4, in_a_pack = 42}
layout = {rows = 9, columns = 9}
[[border]]
cut = "2 1/2"
cloth = "cream linen"
[[border]]
cut = "5"
cloth = "indigo print"
"""


@pytest.fixture
def file(tmp_path: Path) -> str:
    path = tmp_path / "harbour.toml"
    path.write_text(COMMON, encoding="utf-8")
    return str(path)


def lines_of(data: dict[str, Any], section: str) -> dict[str, dict[str, Any]]:
    return {line["label"]: line for line in data[section]}


def test_the_plan_of_a_file_one_fact_a_line(ask: Ask, file: str) -> None:
    said = ask("plan", file).out.splitlines()
    assert said[0] == "Quilt: Harbour lights"
    assert said[2:5] == ["Target: 9 rows of 9", "Units wanted: 81", "Units there will be: 84"]
    assert any(
        line.startswith("unit finishes at: 5 7/8 in across") and "5.864" in line for line in said
    )
    assert any(line.startswith("top finishes at: 65 3/4 in across") for line in said)
    assert any(line.startswith("cream linen: buy 1/2 yd") for line in said)
    assert "Cut list, in cutting order:" in said
    assert not any("\t" in line or "\x1b" in line for line in said)


def test_what_suffices_in_common_practice(ask: Ask, file: str) -> None:
    # Common practice: 1/2 yd for the inner border, 1 1/4 yd for the outer, 4 1/2 yd for the back.
    data = ask("plan", file, "--json").data
    shop = lines_of(data, "shopping")
    assert shop["cream linen"]["inches"] == 18
    assert shop["indigo print"]["inches"] <= 45
    assert shop["backing"]["inches"] <= 162
    top = lines_of(data, "sizes")["top finishes at"]
    assert 65.5 < top["inches"] == top["inches_down"] < 66


def test_as_json_every_length_is_a_number_of_inches_and_a_printed_text(ask: Ask, file: str) -> None:
    data = ask("plan", file, "--json").data
    assert (data["quilt"], data["units"], data["unit"]) == ("Harbour lights", 84, "inch")
    assert data["target"] == {"rows": 9, "columns": 9}
    for section in ("sizes", "cloth", "cut-list", "shopping", "thread", "layouts"):
        assert data[section], section
        for line in data[section]:
            assert isinstance(line["text"], str)
            assert line["inches"] is None or isinstance(line["inches"], float | int)
    row = lines_of(data, "sizes")["row of 9"]
    assert row["inches"] == pytest.approx(53.2756, abs=1e-3)


def test_one_section_alone(ask: Ask, file: str) -> None:
    said = ask("plan", file, "--only", "rows").out.splitlines()
    assert len(said) == 9
    assert said[0].startswith("after row 1: 6 3/8 in")
    assert list(ask("plan", file, "--only", "thread", "--json").data)[-1] == "thread"


def test_settings_on_the_line_are_tried_and_not_kept(ask: Ask, file: str) -> None:
    narrow = ask("plan", file, "--usable", "36", "--only", "cut-list").out
    assert "border 1, cream linen: 7 strips of 2 1/2 in" in narrow
    usual = ask("plan", file, "--only", "cut-list").out
    assert "border 1, cream linen: 6 strips of 2 1/2 in" in usual
    wide = ask("plan", file, "--seam", "3/8", "--only", "sizes").out
    # (2 * 5 - 4 * 3/8) / root 2 = 6.010
    assert "unit unfinished: 6 in across × 6 in down (rounded down from 6.010 × 6.010 in)" in wide
    own = ask("plan", file, "--own-seam", "5/16", "--only", "sizes").out
    assert "unit with your own seam of 5/16 in" in own
    metric = ask("plan", file, "--unit", "cm", "--usable", "100", "--only", "cloth").out
    assert "100 cm of usable width" in metric
    assert "corners mitred" in ask("plan", file, "--corners", "mitred", "--only", "cloth").out
    margin = ask("plan", file, "--margin", "0", "--only", "cloth").out
    assert "back: 66 1/4 in across" in margin


def test_another_layout_on_the_line(ask: Ask, file: str) -> None:
    said = ask("plan", file, "--rows", "7", "--columns", "12").out
    assert "Target: 7 rows of 12\nUnits wanted: 84\n" in said
    assert ask("plan", file, "--rows", "0").status == 2


def test_a_quilt_in_the_record_is_taken_as_it_stands(ask: Ask, file: str) -> None:
    assert ask("start", file).status == 0
    assert ask("spoil", "square", "8", "--reason", "scorched").status == 0
    assert ask("target", "10", "8").status == 0
    data = ask("plan", "--json").data
    assert data["target"] == {"rows": 10, "columns": 8}
    assert data["units"] == 80
    assert ask("plan", "Harbour lights", "--json").data == data
    first = data["layouts"][0]
    assert "the one now wanted" in first["text"]


def test_demo_quilts_have_plans_too(ask: Ask) -> None:
    data = ask("plan", "--demo", "--quilt", "pebble path", "--json").data
    assert data["method"] == "paired-squares"
    assert lines_of(data, "sizes")["squares"]["text"] == "4 1/2 in"


def test_a_file_with_faults_is_refused_with_all_of_them(ask: Ask, tmp_path: Path) -> None:
    path = tmp_path / "bad.toml"
    path.write_text(COMMON.replace("cream linen", "").replace('"5"', '"x"'), encoding="utf-8")
    answer = ask("plan", str(path))
    assert answer.status == 2
    assert "border[1].cloth" in answer.err
    assert "border[2].cut" in answer.err


def test_a_seam_that_eats_a_border_is_refused(ask: Ask, file: str) -> None:
    answer = ask("plan", file, "--seam", "1 1/4")
    assert answer.status == 2
    assert "used up by its seam allowances" in answer.err


# Layouts


def test_layouts_of_a_file_begin_with_the_one_wanted(ask: Ask, file: str) -> None:
    said = ask("layouts", file).out.splitlines()
    assert said[0] == "now wanted: 9 rows of 9"
    assert said[1].startswith("now wanted: 65 3/4 in across × 65 3/4 in down")
    assert said[2] == "now wanted: 3 spare"
    assert "12 rows of 7: takes every unit" in said
    assert "a step away, 10 rows of 9: 6 short" in said


def test_layouts_near_a_size_come_in_the_order_of_nearness(ask: Ask, file: str) -> None:
    data = ask("layouts", file, "--near", "60 x 80", "--json").data
    listed = [one for one in data["layouts"] if "rows of" in one["label"] and "step" not in
              one["label"]]  # fmt: skip
    off = [round(abs(one["inches"] - 60) + abs(one["inches_down"] - 80), 6) for one in listed]
    assert off == sorted(off)
    covering = next(one for one in data["layouts"] if one["label"] == "smallest that covers it")
    assert covering["inches"] >= 60
    assert covering["inches_down"] >= 80


def test_layouts_for_a_bed_with_a_drop(ask: Ask, file: str) -> None:
    said = ask("layouts", file, "--bed", "twin", "--drop", "10").out
    # A twin of 38 × 75 in with 10 in on both sides and at the foot.
    assert "nearest to: 58 in across × 85 in down" in said


def test_alternating_units_that_are_alike_in_all_corners(ask: Ask) -> None:
    # Two alternating blocks match in all corners only when both counts are odd.
    # https://francesquilts.com/2024/07/20/which-size-is-best/
    data = ask("layouts --units 60 --finishes 7 --alike --json").data
    assert data["layouts"]
    assert all(one["rows"] % 2 == one["columns"] % 2 == 1 for one in data["layouts"])


# Methods


def test_every_method_is_listed_with_what_it_is(ask: Ask) -> None:
    said = ask("methods").out.splitlines()
    assert [line.partition(":")[0] for line in said] == list(method_ids())
    assert all(line.endswith(".") for line in said)


@pytest.mark.parametrize("id", method_ids())
def test_a_method_is_shown_with_all_its_stages(ask: Ask, id: str) -> None:
    data = ask("methods", "show", id, "--json").data
    stages = [line for line in data["lines"] if line["label"].startswith("stage ")]
    assert len(stages) == len(data["stages"])
    for line, stage in zip(stages, data["stages"], strict=True):
        (made,) = stage["makes"].values()
        assert f"makes {made} " in line["text"]
        assert all(str(count) in line["text"] for count in stage["takes"].values())
    assert {"unit finishes at", "unit's outer edges", "handedness"} <= {
        line["label"] for line in data["lines"]
    }


def test_what_a_method_makes_is_worked_out_for_her_sizes(ask: Ask) -> None:
    said = ask("methods show half-square-two --square 4 --seam 3/8").out
    # 4 - 3/8 * root 2 = 3.470
    assert "3.470" in said
    assert "shows A on 50%, B on 50%" in said


def test_lengths_typed_in_centimetres_are_answered_in_them(ask: Ask) -> None:
    assert " cm" in ask("size --method four-patch --square 10cm").out
    assert " cm" not in ask("size --method four-patch --square 10").out
    assert "10.0 cm" not in ask("size --method four-patch --square 10cm --unit inch").out


def test_the_kinds_take_json_before_and_behind(ask: Ask) -> None:
    before = ask("reckon --json squares --size 5 --count 168")
    behind = ask("reckon squares --size 5 --count 168 --json")
    assert json.loads(before.out) == json.loads(behind.out)
    assert behind.data["lines"][1]["text"] == "3 yd"


@pytest.mark.parametrize(
    "argv",
    [
        ["size", "--method", "four-patch", "--square", "5"],
        ["reckon", "packs", "--need", "140", "--in-a-pack", "42"],
        ["reckon", "backing", "--top", "60 x 80"],
        ["methods"],
    ],
    ids=" ".join,
)
def test_what_needs_no_quilt_loads_nothing_for_one(argv: list[str], tmp_path: Path) -> None:
    code = (
        "import io, json, sys\n"
        "from contextlib import redirect_stdout\n"
        "from sewalong.__main__ import main\n"
        "with redirect_stdout(io.StringIO()):\n    status = main(sys.argv[1:])\n"
        "heavy = ('textual', 'rich', 'pydantic', 'sqlite3')\n"
        "print(json.dumps([status, [name for name in heavy if name in sys.modules]]))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *argv],
        env={**os.environ, "SEWALONG_HOME": str(tmp_path)},
        capture_output=True, text=True, timeout=60, check=True,
    )  # fmt: skip
    assert json.loads(done.stdout) == [0, []]
