"""Shell completion names every command and option, and a real bash completes by it."""

from __future__ import annotations

import shutil
import subprocess
import sys

import pytest

from sewalong.cli.registry.index import commands, reckoners
from tests.cli.conftest import Desk


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_the_script_names_every_command_and_option(shell: str, desk: Desk) -> None:
    script = desk.ok("completion", shell).out
    for command in (*commands(), *reckoners()):
        assert command.name.removeprefix("reckon ") in script
        for argument in command.arguments:
            if argument.name.startswith("--"):
                assert argument.name.removeprefix("--") in script


def completed(desk: Desk, *words: str) -> set[str]:
    """What bash offers for the last of `words`."""
    script = desk.file("completion.bash", desk.ok("completion", "bash").out)
    typed = " ".join(f"'{word}'" for word in ("sewalong", *words))
    asked = (
        f"source {script}; COMP_WORDS=({typed}); COMP_CWORD={len(words)}; "
        "_shtab_sewalong; printf '%s\\n' \"${COMPREPLY[@]}\""
    )
    bash = shutil.which("bash")
    assert bash is not None
    done = subprocess.run([bash, "-c", asked], capture_output=True, text=True, check=True)
    return set(done.stdout.split())


@pytest.mark.skipif(shutil.which("bash") is None, reason="there is no bash here")
def test_a_real_bash_completes_commands_and_options(desk: Desk) -> None:
    assert completed(desk, "un") == {"undo", "unpick"}
    assert completed(desk, "reckon", "bat") == {"batting"}
    assert "--caution-read" in completed(desk, "count", "--c")


def test_without_the_library_it_says_how_to_have_it(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "shtab", None)
    assert "pip install 'sewalong[completion]'" in desk.refused("completion", "bash").err
