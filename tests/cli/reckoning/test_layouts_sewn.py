"""`layouts` of a quilt under way says which of them would contradict what is sewn."""

from __future__ import annotations

from tests.cli.conftest import Desk


def test_layouts_of_other_columns_are_marked_once_a_row_is_sewn(begun: Desk) -> None:
    before = begun.ok("layouts")
    assert "not as it is sewn now" not in before.out
    for stage, n in (
        ("pair", 32), ("sew", 16), ("press", 16), ("stack", 8), ("sew-around", 8),
        ("cut-twice", 8), ("press-open", 32), ("sew-rows", 1),
    ):  # fmt: skip
        begun.ok("count", stage, str(n), "--caution-read")
    told: dict[str, list[str]] = {}
    for line in begun.ok("layouts").lines:
        label, _, fact = line.partition(": ")
        told.setdefault(label, []).append(fact)
    for label, facts in told.items():
        assert ("rows of 6" in label or label == "now wanted") != ("not as it is sewn now" in facts)
