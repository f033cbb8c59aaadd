"""Fuzzing by coverage, where `atheris` is installed: `python -m tests.fuzz quilt-file -runs=100000`.

Behind the name of what is fuzzed stand the options of libFuzzer, such as -max_total_time=60. It ends
with a traceback and the input for whatever is neither taken nor refused in a sentence. Without
`atheris` the tests drawn by hypothesis stand for it: `*_hostile.py`, `*_never_breaks.py`.
"""

from __future__ import annotations

import importlib
import sys
from collections.abc import Callable
from contextlib import suppress
from typing import Any

atheris: Any = importlib.import_module("atheris")

with atheris.instrument_imports(include=["sewalong", "tomllib"]):
    from sewalong.quilt.fabrics_said import fabrics_said
    from sewalong.quilt.file.reader import QuiltFileFaults, read_quilt_bytes
    from sewalong.quilt.refusal import NumbersFault
    from sewalong.screens.key_reading import ForgivingParser, _forgiving_decoder
    from sewalong.store.archive import from_text
    from sewalong.store.faults import StoreFault
    from tests.quilt.file.test_quilt_file_never_breaks import SAMPLE
    from tests.store.test_store_archive_hostile import GOOD


def quilt_file(data: bytes) -> None:
    """A whole quilt, or faults in sentences."""
    with suppress(QuiltFileFaults):
        read_quilt_bytes(data)


def archive(data: bytes) -> None:
    """A whole archive, or a refusal."""
    with suppress(StoreFault, UnicodeDecodeError):
        from_text(data.decode())


def keys(data: bytes) -> None:
    """Whatever a terminal sends."""
    parser = ForgivingParser()
    for _ in parser.feed(_forgiving_decoder("utf-8")().decode(data) or "a"):
        pass


def fabrics(data: bytes) -> None:
    """Fabrics said in a few words, or a refusal."""
    with suppress(NumbersFault):
        fabrics_said(data.decode(errors="replace"))


TARGETS: dict[str, tuple[Callable[[bytes], None], bytes]] = {
    "quilt-file": (quilt_file, SAMPLE.encode()),
    "archive": (archive, GOOD.encode()),
    "fabrics": (fabrics, b"lights 60, rust dots 4 #a0522d with 30% white small print; C 0"),
    "keys": (keys, b"\x1b[32;1u caf\xe9\x1b[<0;1;1M\x1b[200~a\x1b[201~"),
}
"""What is fuzzed, and what it begins with."""


def main(name: str, *options: str) -> None:
    """Fuzz one of TARGETS until it is ended or something breaks."""
    target, sample = TARGETS[name]
    target(sample)

    def cut_and_joined(data: bytes) -> None:
        """Half of the sample, changed by what was drawn: most inputs then get past the first line."""
        draws = atheris.FuzzedDataProvider(data)
        at, length = draws.ConsumeIntInRange(0, len(sample)), draws.ConsumeIntInRange(0, 40)
        target(sample[:at] + draws.ConsumeBytes(200) + sample[at + length :])

    atheris.Setup([sys.argv[0], *options], cut_and_joined)
    atheris.Fuzz()


if __name__ == "__main__":
    main(*sys.argv[1:])
