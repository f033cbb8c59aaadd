"""The faults of a file somebody wrote, as the answer of the command that was asked for them."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.cli.frame.report import Report
from sewalong.cli.frame.run import REFUSED
from sewalong.quilt.file.faults import Fault, how_many


def faults_report(file: str, faults: Sequence[Fault], then: str = "", **more: object) -> Report:
    """A line for each fault, and how many there are; `then` follows that, `more` is further data."""
    count = f"{how_many(faults)} in {file}. {then}".rstrip()
    data = [{"line": one.line, "key": one.key, "sentence": one.sentence} for one in faults]
    return Report(
        (*map(str, faults), count), {"file": file, "faults": data, **more}, exit_status=REFUSED
    )
