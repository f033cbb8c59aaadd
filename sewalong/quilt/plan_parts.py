"""Two plans of one quilt held against each other: the parts that differ, as they are stored.

A part is a key of the stored plan (`stored_plan`) with what stands under it; None where one of
the plans says nothing there.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sewalong.quilt.json_codec import quilt_from_dict, quilt_to_dict
from sewalong.quilt.quilt import Quilt

Parts = dict[str, Any]

NEVER_CHANGES = frozenset({"method", "method_text"})
"""What a quilt under way keeps: every count in its record is of a stage of its method."""


def parts_that_differ(was: Quilt, now: Quilt) -> tuple[Parts, Parts]:
    """The parts of `was`, and those of `now`, that are not the same in both."""
    before, after = quilt_to_dict(was), quilt_to_dict(now)
    keys = [key for key in before | after if before.get(key) != after.get(key)]
    return {key: before.get(key) for key in keys}, {key: after.get(key) for key in keys}


def with_parts(quilt: Quilt, parts: Mapping[str, Any], *, checked: bool = True) -> Quilt:
    """`quilt` with `parts` in place of its own; raises ValueError as `quilt_from_dict` does.

    Parts of two times need not hold together: to tell of them, they are not `checked`.
    """
    plain = quilt_to_dict(quilt) | dict(parts)
    kept = {key: part for key, part in plain.items() if part is not None}
    return quilt_from_dict(kept, checked=checked)
