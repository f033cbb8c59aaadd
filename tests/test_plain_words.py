"""Words of a workshop or of this program's makers are not said to a quilter.

Every text in the program is looked through, whether a test happens to bring it up or not; what
stands in docstrings and remarks is for its makers.
"""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

import sewalong

ROOT = Path(sewalong.__file__).parent

NOT_SAID = re.compile(
    r"change of station|\bhandling\b|\bthis lot\b|\bthe lots\b|\b(?:un)?proved\b|\bprove (?:it|the)\b"
    r"|\bat risk\b|\bremakes?\b|whereabouts|rows?'s? worth|edge with the tape|for any one row"
    r"|stitch type",
    re.IGNORECASE,
)

READ_BY_SCRIPTS: Mapping[str, frozenset[str]] = {
    "progress/measuring/proof.py": frozenset(
        ("not proved yet", "proved", "proved, but changed since")
    ),
    "progress/measuring/verdict.py": frozenset(("remake",)),
    "progress/resuming/notice.py": frozenset(("at risk",)),
    "cli/sewing/outcome.py": frozenset(("at risk",)),
    "cli/sewing/measuring.py": frozenset(("at risk",)),
    "screens/carrying_out.py": frozenset(("at risk",)),
}
"""Values of `--json` that scripts hold, and where they are asked for; what is said is another word."""

REASONS_OF_THE_THREAD = "quilt/worksheet/thread_lines.py"
"""Where the standard is named that the thread is reckoned by."""


def texts(file: Path) -> Iterator[str]:
    """Every text of a file of the program that is no docstring."""
    tree = ast.parse(file.read_text(encoding="utf-8"))
    remarks = {
        id(node.value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    }
    for node in ast.walk(tree):
        if not isinstance(node, ast.Constant) or id(node) in remarks:
            continue
        if isinstance(node.value, str):
            yield node.value


@pytest.mark.parametrize("file", sorted(ROOT.rglob("*.py")), ids=lambda f: f.stem)
def test_no_text_says_what_was_not_understood(file: Path) -> None:
    name = file.relative_to(ROOT).as_posix()
    allowed = READ_BY_SCRIPTS.get(name, frozenset())
    said = [text for text in texts(file) if NOT_SAID.search(text) and text not in allowed]
    if name == REASONS_OF_THE_THREAD:
        said = [text for text in said if "ISO 4915" not in text]
    assert said == []


def test_no_method_says_it_either() -> None:
    for file in (ROOT / "piecing" / "methods").glob("*.toml"):
        assert not NOT_SAID.search(str(tomllib.loads(file.read_text(encoding="utf-8")))), file.name


def test_the_rule_bites_and_what_it_lets_pass_is_there() -> None:
    for text in ("8 seams, 4 joins for any one row", "made, whereabouts unknown", "2 rows' worth"):
        assert NOT_SAID.search(text)
    for name, values in READ_BY_SCRIPTS.items():
        assert values <= set(texts(ROOT / name)), name
