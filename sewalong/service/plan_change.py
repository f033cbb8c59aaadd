"""Another plan for a quilt under way: what would change by it, before it is done."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.acts.replanning import ChangePlan
from sewalong.quilt.plan_words import differences
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.what_follows import what_follows
from sewalong.service.acting import why_refused
from sewalong.service.open_quilt import OpenQuilt


class WouldChange(Struct, frozen=True):
    """`changes` are what is different in the new plan, none where nothing is; `refused` is why it
    would not be done, empty when it would; `follows` the sizes that are others by it."""

    changes: tuple[str, ...]
    refused: str
    follows: tuple[str, ...]

    @property
    def lines(self) -> tuple[str, ...]:
        """The same in words, one fact a line."""
        if not self.changes:
            return ("Nothing would change.",)
        refused = (f"It would be refused: {self.refused}",) if self.refused else ()
        return (*(f"Would change: {one}" for one in self.changes), *refused, *self.follows)


def would_change(quilt: OpenQuilt, act: ChangePlan) -> WouldChange:
    """What the act would change; nothing is recorded."""
    changes = differences(act.was, act.now)
    refused = why_refused(quilt, act) if changes else ""
    follows = () if refused else follows_from(act.was, act.now)
    return WouldChange(changes, refused, follows)


def follows_from(was: Quilt, now: Quilt) -> tuple[str, ...]:
    """The sizes that are others by a change of plan."""
    return tuple(what_follows(basis(was), basis(now)))
