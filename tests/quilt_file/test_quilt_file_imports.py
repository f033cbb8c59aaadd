"""Only the reading of a quilt file loads pydantic; what the store and screens import stays light."""

import subprocess
import sys

import pytest


def loads_pydantic(module: str) -> bool:
    program = f"import {module}, sys; print('pydantic' in sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    return done.stdout.strip() == "True"


@pytest.mark.parametrize("name", ["quilt", "plain", "rules", "faults", "lines", "starts"])
def test_the_rest_of_the_quilt_does_without_pydantic(name: str) -> None:
    assert not loads_pydantic(f"sewalong.quilt.{name}")


def test_the_quilt_file_is_validated_by_it() -> None:
    assert loads_pydantic("sewalong.quilt.file")
