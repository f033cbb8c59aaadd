"""`--trim-to` of `size` and `plan`: one size is said, and all that follows from it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.cli.sewing.test_cli_trim import HALVES

if TYPE_CHECKING:
    from tests.cli.reckoning.conftest import Ask

STACKED = """\
name = "Stacked"
method = "stacked-four-patch"
[squares]
size = "5"
count = 40
[layout]
rows = 4
columns = 5
"""


@pytest.fixture
def halves(tmp_path: Path) -> str:
    path = tmp_path / "halves.toml"
    path.write_text(HALVES, encoding="utf-8")
    return str(path)


@pytest.fixture
def stacked(tmp_path: Path) -> str:
    path = tmp_path / "stacked.toml"
    path.write_text(STACKED, encoding="utf-8")
    return str(path)


def labels(out: str) -> list[str]:
    told = [line.partition(":")[0] for line in out.splitlines()]
    return [label for label in told if label != "why"]


@pytest.mark.parametrize(
    ("method", "squares", "trim"),
    [
        ("paired-squares", "--square 4 1/4", "2 1/2"),
        ("half-square-two", "--square 5", "4 1/2"),
        ("half-square-two", "--finishes 4", "4 1/2"),
        ("flying-geese-four", "--square 5 1/4", "4 1/4 x 2 3/8"),
    ],
)
def test_trim_to_says_each_size_once(ask: Ask, method: str, squares: str, trim: str) -> None:
    out = ask(f"size --method {method} {squares} --trim-to {trim}").out
    said = labels(out)
    assert len(set(said)) == len(said)
    assert [label for label in said if "trim" in label] == ["trim units to", "to trim off"]
    assert [label for label in said if "finishes" in label] == ["unit finishes at"]


def test_trimmed_to_2_1_2_it_finishes_at_2(ask: Ask) -> None:
    out = ask("size --method paired-squares --square 4 1/4 --trim-to 2 1/2").out.splitlines()
    assert "trim units to: 2 1/2 in across × 2 1/2 in down (0.152 in to trim off)" in out
    assert "unit finishes at: 2 in across × 2 in down (trimmed)" in out


def test_what_the_method_trims_finishes_at_the_trimmed_size(ask: Ask) -> None:
    out = ask("size --method half-square-two --finishes 4").out
    assert "cut squares at: 4 7/8 in" in out
    assert "unit finishes at: 4 in across × 4 in down (trimmed)" in out


def test_what_is_left_untrimmed_is_told_both_ways(ask: Ask) -> None:
    out = ask("size --method paired-squares --square 4 1/4").out
    assert "2.152 in) (untrimmed)" in out
    assert "trimmed it finishes at: 2 1/8 in across" in out


def test_a_sixteenth_is_told_as_it_was_typed(ask: Ask) -> None:
    out = ask("size --method paired-squares --square 4 1/4 --trim-to 2 9/16").out
    assert "trim units to: 2 9/16 in across × 2 9/16 in down" in out


def test_geese_are_told_two_to_one(ask: Ask) -> None:
    out = ask("size --method flying-geese-four --square 8 1/8").out
    assert "trim units to: 7 1/4 in across × 3 7/8 in down (0.168 in to trim off)" in out
    assert "unit finishes at: 6 3/4 in across × 3 3/8 in down (trimmed)" in out
    wrong = ask("size --method flying-geese-four --square 8 1/8 --trim-to 7 3/8 x 4")
    assert wrong.status == 2
    assert "does not finish 2 to 1" in wrong.err
    assert "such as 7 1/4 in across × 3 7/8 in down" in wrong.err


def test_methods_show_tells_the_unit_as_it_is_joined(ask: Ask) -> None:
    geese = ask("methods show flying-geese-four --square 8 1/8").out
    assert "one untrimmed unit: 7 3/8 in across × 4 in down" in geese
    assert "one unit: 7 1/4 in across × 3 7/8 in down (unfinished, trimmed)" in geese
    assert "unit finishes at: 6 3/4 in across × 3 3/8 in down\n" in geese
    stacked = ask("methods show stacked-four-patch --square 5").out
    assert "one unit: 6 3/8 in across × 6 3/8 in down (rounded up from 6.364 × 6.364 in)" in stacked


def test_plan_tries_a_size_and_the_top_follows(ask: Ask, stacked: str) -> None:
    sizes = ask("plan", stacked, "--only", "sizes", "--trim-to", "6 1/4").out.splitlines()
    assert "trim units to: 6 1/4 in across × 6 1/4 in down (as decided)" in sizes
    # Five of 5 3/4 in, and four.
    assert "top finishes at: 28 3/4 in across × 23 in down (once it is bound)" in sizes
    layouts = ask("layouts", stacked, "--trim-to", "6 1/4").out
    assert "now wanted: 4 rows of 5\nnow wanted: 28 3/4 in across × 23 in down" in layouts


def test_plan_refuses_a_size_the_units_do_not_reach(ask: Ask, stacked: str) -> None:
    answer = ask("plan", stacked, "--trim-to", "6 1/2")
    assert answer.status == 2
    assert "come to 6.364 in × 6.364 in" in answer.err
    wide = ask("plan", stacked, "--trim-to", "6 1/4", "--seam", "3/8")
    assert wide.status == 2
    assert "come to 6.010 in" in wide.err


def test_another_unit_to_print_in_changes_no_size_of_a_unit(ask: Ask, halves: str) -> None:
    """Borders are cut on the ruler of the unit printed in; what units are trimmed to stays."""

    def sizes(*unit: str) -> dict[str, float]:
        answer = ask("plan", halves, "--only", "sizes", "--json", *unit)
        return {line["label"]: line["inches"] for line in answer.data["sizes"] if "inches" in line}

    own, printed = sizes(), sizes("--unit", "inch")
    for label in ("trim units to", "unit finishes at", "centre"):
        assert own[label] == printed[label]


def test_her_own_seam_makes_the_top_smaller_only_when_the_size_is_out_of_reach(
    ask: Ask, halves: str
) -> None:
    def told(seam: str) -> str:
        out = ask("plan", halves, "--only", "sizes", "--own-seam", seam).out
        (line,) = (line for line in out.splitlines() if line.startswith("unit with your own seam"))
        return line

    # 12.5 cm less 0.9 root 2 is 11.23 cm; less 1.1 root 2 it is 10.94, and 10.9 on the ruler.
    assert told("0.9").endswith("(unfinished, trimmed to 11 cm)")
    assert told("1.1").endswith("(unfinished, trimmed to 10.9 cm)")
