"""Which unit an answer is in: metric users see no inch, and one seam in mm turns nothing over."""

from __future__ import annotations

import re
import shlex

import pytest

from sewalong.cli.registry.index import reckoners
from tests.cli.conftest import Desk

METRIC_QUILT = """\
name = "Salt marsh"
method = "stacked-four-patch"
unit = "cm"
seam = "0.7"
[squares]
size = "12.5"
count = 168
[layout]
rows = 9
columns = 9
[[border]]
cut = "6"
cloth = "oat"
[finishing]
stages = ["layer", "quilt", "bind"]
"""

AN_INCH = re.compile(r"\d ?in\b(?! 100)|\binch(?:es)?\b|\byards?\b|\byd\b|\d[\"″]")

SEWN = (
    *(f"count {stage} {n} --caution-read" for stage, n in (
        ("pair", 84), ("sew", 42), ("press", 42), ("stack", 21), ("sew-around", 21),
        ("cut-twice", 21), ("press-open", 84), ("sew-rows", 9),
    )),
)  # fmt: skip

SAID_OF_A_QUILT = (
    "plan", "layouts", "status", "log", "forecast", "pace", "tonight 90", "proof", "join", "trim",
    "stage cut-twice", "stage sew-around", "stage join-rows", "stage add-borders",
    "measure four-patch 23.6", "measure unit 15.6", "measure row 140", "measure centre 140 139",
    "measure middle-strip 2.5", "measure strip-test 9 --of 3 --cut 4", "trim 14",
    "alter --border 1 --cut 5 --look", "alter --seam 0.8 --look",
)  # fmt: skip


def test_a_metric_quilt_is_told_without_an_inch(desk: Desk) -> None:
    desk.ok("start", desk.file("salt-marsh.toml", METRIC_QUILT))
    for line in (*SEWN, *SAID_OF_A_QUILT):
        said = desk.run(*shlex.split(line))
        assert not AN_INCH.search(said.out + said.err), line


@pytest.mark.parametrize("command", reckoners(), ids=lambda command: command.name)
def test_what_is_reckoned_in_cm_is_told_without_an_inch(command: object, desk: Desk) -> None:
    words = shlex.split(command.example)[1:]  # type: ignore[attr-defined]
    if not any(one.name == "--unit" for one in command.arguments):  # type: ignore[attr-defined]
        pytest.skip("its answer has no unit")
    said = desk.ok(*("cm" if word == "in" else word for word in words), "--unit", "cm")
    assert not AN_INCH.search(said.out)


def unit_said(desk: Desk, *words: str) -> str:
    out = desk.ok("size", "--method", "stacked-four-patch", *words).out
    return "cm" if " cm" in out else "inch"


TYPED = (
    ("--square 5", "inch"),
    ("--square 5 --seam 6 mm", "inch"),
    ("--square 5 in --seam 0.6 cm", "inch"),
    ("--square 12.5 cm", "cm"),
    ("--square 12.5 cm --seam 6 mm", "cm"),
    ("--square 12.5 cm --seam 0.7", "cm"),
    ("--square 125 mm", "cm"),
    ("--square 125 mm --seam 6 mm", "cm"),
    ('--square 5" --seam 6 mm', "inch"),
    ("--square 5 --seam 6 mm --unit cm", "cm"),
)


@pytest.mark.parametrize(("line", "unit"), TYPED)
def test_the_unit_is_that_of_what_was_typed(line: str, unit: str, desk: Desk) -> None:
    assert unit_said(desk, *line.split()) == unit


def test_the_unit_she_prefers_is_that_of_what_says_none(desk: Desk) -> None:
    (desk.folder / "home").mkdir()
    (desk.folder / "home" / "preferences.toml").write_text('unit = "cm"\n', encoding="utf-8")
    assert unit_said(desk, "--square", "12.5") == "cm"
    assert unit_said(desk, "--square", "5", "in") == "inch"
