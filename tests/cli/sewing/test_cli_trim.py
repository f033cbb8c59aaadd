"""`trim`: the size decided anew, by a plain command, and everything that follows it."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Desk

HALVES = """\
name = "Halves"
method = "half-square-two"
unit = "cm"
seam = "0.75"

[squares]
size = "12.5"
count = 108

[layout]
rows = 12
columns = 9

[[border]]
cut = "9"
cloth = "plain"
"""

pytestmark = pytest.mark.usefixtures("utc")


@pytest.fixture
def halves(desk: Desk) -> Desk:
    desk.ok("start", desk.file("halves.toml", HALVES))
    return desk


def test_plan_and_measure_agree_on_the_centre(halves: Desk) -> None:
    sizes = halves.ok("plan", "--only", "sizes").lines
    assert "centre: 87 cm across × 115.5 cm down (12 rows of 9, raw edge to raw edge)" in sizes
    assert "top finishes at: 100.5 cm across × 129 cm down (once it is bound)" in sizes
    measured = halves.ok("measure", "centre", "87")
    assert measured.lines == ["Go on.", "Centre across should be 87 cm: right."]
    over = halves.ok("measure", "centre", "91").lines
    assert over[1] == "Centre across should be 87 cm, reads 91 cm, 4 cm over."
    now = halves.ok("layouts").lines
    assert now[0] == "now wanted: 12 rows of 9"
    assert now[1].startswith("now wanted: 100.5 cm across × 129 cm down")


def test_a_size_decided_anew_is_followed_by_plan_and_measure(halves: Desk) -> None:
    halves.ok("measure", "unit", "11")
    said = halves.ok("trim", "10.5")
    assert said.lines[0] == "Units are trimmed to 10.5 cm from now on, instead of 11 cm."
    # Nine of 9 cm finished, and twelve; 1.5 cm of allowances, and a border of 7.5 cm each side.
    assert (
        "centre: 82.5 cm across × 109.5 cm down (12 rows of 9, raw edge to raw edge)" in said.lines
    )
    assert "top finishes at: 96 cm across × 123 cm down (once it is bound)" in said.lines
    assert set(said.lines[1:5]) <= set(halves.ok("plan", "--only", "sizes").lines)
    assert halves.ok("measure", "centre", "82.5", "--look").lines[1].endswith("82.5 cm: right.")
    assert halves.ok("trim").lines[-1] == said.lines[4]
    assert said.lines[0] in halves.ok("log").out


def test_undo_takes_it_back(halves: Desk) -> None:
    before = halves.ok("plan").out
    halves.ok("trim", "10.5")
    assert halves.ok("plan").out != before
    halves.ok("undo")
    assert halves.ok("plan").out == before


def test_usual_gives_the_size_up_again(halves: Desk) -> None:
    before = halves.ok("trim").out
    halves.ok("trim", "10.5")
    said = halves.ok("trim", "--usual")
    assert said.lines[0] == (
        "Units are 11 cm, as the method gives them, from now on, instead of 10.5 cm."
    )
    assert halves.ok("trim").out == before
    assert "not both" in halves.refused("trim", "10", "--usual").err


def test_alone_it_says_what_is_decided_and_records_nothing(halves: Desk) -> None:
    before = halves.record()
    said = halves.ok("trim")
    assert said.lines == [
        "unit unfinished: 11.4 cm across × 11.4 cm down (rounded down from 11.44 × 11.44 cm) "
        "(before it is trimmed)",
        "trim units to: 11 cm across × 11 cm down (the largest whole half centimetre)",
        "unit finishes at: 9.5 cm across × 9.5 cm down",
        "centre: 87 cm across × 115.5 cm down (12 rows of 9, raw edge to raw edge)",
        "top finishes at: 100.5 cm across × 129 cm down (once it is bound)",
    ]
    assert halves.record() == before
    data = halves.ok("trim", "--json").data
    assert data["trimmed"] is True
    assert data["unit"] == pytest.approx([11 / 2.54] * 2)
    assert data["finishes_at"] == pytest.approx([100.5 / 2.54, 129 / 2.54])


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        (("12",), "come to 11.44 cm × 11.44 cm, 0.56 cm short of 12 cm"),
        (("11",), "Units are 11 cm already. Nothing was changed."),
        (("10", "x", "9"), "is not square, and these units are"),
        (("10", "x", "9", "x", "8"), "more than two lengths"),
        (("small",), "No number was found"),
    ],
)
def test_a_size_that_cannot_be_changes_nothing(
    halves: Desk, typed: tuple[str, ...], sentence: str
) -> None:
    assert sentence in halves.refused("trim", *typed).err


def test_an_exported_quilt_comes_back_with_it(halves: Desk) -> None:
    halves.ok("trim", "10.5")
    plan = halves.ok("plan").out
    text = halves.ok("export", "-").out
    halves.monkeypatch.setenv("SEWALONG_HOME", str(halves.folder / "another"))
    halves.ok("import", halves.file("halves.json", text))
    assert halves.ok("plan").out == plan
    assert halves.ok("export", "-").out == text


def test_a_trim_in_the_quilt_file_goes_into_the_record_and_out_again(desk: Desk) -> None:
    text = HALVES.replace('seam = "0.75"', 'seam = "0.75"\ntrim = "10.5"')
    file = desk.file("halves.toml", text)
    from_file = desk.ok("plan", file, "--only", "sizes").lines
    assert "top finishes at: 96 cm across × 123 cm down (once it is bound)" in from_file
    desk.ok("start", file)
    assert desk.ok("plan", "--only", "sizes").lines == from_file
    assert '"trim":' in desk.ok("export", "-").out
