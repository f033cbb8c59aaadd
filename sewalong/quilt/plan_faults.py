"""Whether a quilt can be made as it is planned: sizes that go together, borders wider than seams."""

from __future__ import annotations

from sewalong.quilt.file.size_check import (
    why_border_fails,
    why_setting_fails,
    why_sizes_fail,
    why_trim_fails,
    why_web_fails,
)
from sewalong.quilt.quilt import Quilt


def why_not_a_plan(quilt: Quilt) -> str:
    """What is wrong with the plan first, in plain sentences; empty when it can be made."""
    return (
        " ".join(why_sizes_fail(quilt).values())
        or why_setting_fails(quilt)
        or why_web_fails(quilt)
        or why_borders_fail(quilt)
        or why_trim_fails(quilt)
    )


def why_borders_fail(quilt: Quilt) -> str:
    """Which border its two seams would use up, in a sentence; empty when none."""
    sentences = (why_border_fails(one.cut, quilt.seam, quilt.unit) for one in quilt.borders)
    return next(filter(None, sentences), "")
