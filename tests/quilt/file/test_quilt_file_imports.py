"""Only the reading of a quilt file loads pydantic's core; what the store and screens import stays
light."""

import subprocess
import sys

import pytest


def loaded(module: str) -> set[str]:
    """What of pydantic is there once `module` is imported."""
    program = (
        f"import {module}, sys; print(*[n for n in ('pydantic', 'pydantic_core') "
        "if n in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    return set(done.stdout.split())


@pytest.mark.parametrize(
    "name",
    [
        "quilt",
        "json_codec",
        "rules",
        "file.faults",
        "file.models",
        "file.toml_lines",
        "file.starting_piles",
        "worksheet.worksheet",
    ],
)
def test_the_rest_of_the_quilt_does_without_pydantic(name: str) -> None:
    assert loaded(f"sewalong.quilt.{name}") == set()


def test_the_quilt_file_is_validated_by_its_core_alone() -> None:
    assert loaded("sewalong.quilt.file.reader") == {"pydantic_core"}
