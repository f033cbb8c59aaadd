"""A method of the program's, written to a file, is the same method."""

from __future__ import annotations

import tempfile
from fractions import Fraction as F
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.piecing.derive import derive
from sewalong.piecing.method_files import text_of
from tests.cli.reckoning.conftest import Ask

EIGHTHS = st.integers(8, 96)
SEAMS = st.sampled_from(["1/4", "3/8", "7 mm"])


@given(st.sampled_from(method_ids()), EIGHTHS, SEAMS, st.booleans())
@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
def test_it_has_the_same_sizes_yields_edges_and_picture(
    ask: Ask, id: str, eighths: int, seam: str, metric: bool
) -> None:
    text = text_of(id) or ""
    first = "--strip" if "strip = true" in text else "--square"
    sizes = [first, f"{eighths}/8", "--seam", seam, "--unit", "cm" if metric else "inch", "--json"]
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder, "mine.toml")
        file.write_text(text, "utf-8")
        shown, checked = (
            ask("methods", "show", id, *sizes),
            ask("methods", "check", str(file), *sizes),
        )
    assert shown.status == checked.status
    if shown.status == 0:
        theirs, mine = shown.data, checked.data
        assert (mine.pop("file"), mine.pop("faults")) == (str(file), [])
        assert mine == theirs
        assert theirs["picture"]


@pytest.mark.parametrize("id", method_ids())
def test_a_quilt_by_it_has_the_same_numbers(ask: Ask, id: str, tmp_path: Path) -> None:
    text = text_of(id) or ""
    (tmp_path / "mine.toml").write_text(text, "utf-8")
    said = []
    for method in (f'method = "{id}"', 'method_file = "mine.toml"'):
        (tmp_path / "quilt.toml").write_text(_quilt(method, id), "utf-8")
        answer = ask("plan", str(tmp_path / "quilt.toml"), "--json")
        assert answer.status == 0, answer.err
        said.append(answer.data)
    assert said[0] == said[1]


@pytest.mark.parametrize("id", method_ids())
def test_a_quilt_under_way_by_it_is_told_the_same_of(ask: Ask, id: str, tmp_path: Path) -> None:
    """Under an id that the program has no method of: whatever went by it would fail."""
    text = (text_of(id) or "").replace(f'id = "{id}"', 'id = "of-ones-own"', 1)
    (tmp_path / "mine.toml").write_text(text, "utf-8")
    said = []
    for name, method in (("Theirs", f'method = "{id}"'), ("Mine", 'method_file = "mine.toml"')):
        file = tmp_path / "quilt.toml"
        file.write_text(_quilt(method, id).replace("Same", name), "utf-8")
        assert ask("start", str(file)).status == 0
        first = ask("status", "--quilt", name, "--json").data["stages"][0]["id"]
        assert ask("count", first, "2", "--quilt", name, "--caution-read").status == 0
        told = [
            ask(*command, "--quilt", name)
            for command in (
                ("status",),
                ("measure", "unit", "3"),
                ("proof",),
                ("forecast",),
                ("tonight", "60"),
                ("plan",),
                ("layouts",),
                ("press",),
                ("log",),
            )
        ]
        said.append([(one.status, one.out.replace(name, ""), one.err) for one in told])
    assert said[0] == said[1]
    assert sum(status == 0 for status, _, _ in said[0]) >= 6


def _quilt(method: str, id: str) -> str:
    """A quilt file by a method, its piles cut to suit the first."""
    written = written_method(id)
    strips = written.starts[0].strip
    made = derive(id, F(5, 2) if strips else F(65, 8))
    head = f'name = "Same"\n{method}\nlayout = {{rows = 3, columns = 4}}\n'
    key, length = ("width", "length = 40\n") if strips else ("size", "")
    first, *others = (
        f"{key} = {float(made.starts[start.pile].cutting)}\ncount = 240\n"
        for start in written.starts
    )
    piles = [start.pile for start in written.starts[1:]]
    more = (f'[[more]]\npile = "{p}"\n{rest}' for p, rest in zip(piles, others, strict=True))
    return f"{head}[{'strips' if strips else 'squares'}]\n{length}{first}{''.join(more)}"
