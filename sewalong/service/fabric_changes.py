"""The fabrics of a plan changed: said, said anew, taken out, or kept out of a photograph.

Each is a change of the plan, to be carried out like any other, and taken back like any other.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from sewalong.progress.acts.replanning import ChangePlan
from sewalong.progress.record.events.replanning import planned
from sewalong.quilt.choices import Fabric
from sewalong.quilt.fabrics_said import fabrics_said
from sewalong.quilt.refusal import NumbersFault
from sewalong.service.open_quilt import OpenQuilt

if TYPE_CHECKING:
    from sewalong.fabrics.photo.result import ReadPhoto


def say_fabrics(quilt: OpenQuilt, text: str) -> ChangePlan:
    """The change by which the fabrics that `text` says are there too, as `fabrics_said` has it.
    Raises NumbersFault for what is not clear."""
    return _with(quilt, fabrics_said(text, quilt.state.quilt.fabrics))


def say_anew(quilt: OpenQuilt, letter: str, text: str) -> ChangePlan:
    """The change by which the fabric of this letter is as `text` says. Raises NumbersFault for what
    is not clear, and where the fabric is not there any more."""
    _must_be_there(quilt, letter)
    return say_fabrics(quilt, f"{letter} {text}")


def take_out(quilt: OpenQuilt, letter: str) -> ChangePlan:
    """The change by which the fabric of this letter is no more. Raises NumbersFault where it is
    not there."""
    _must_be_there(quilt, letter)
    fabrics = quilt.state.quilt.fabrics
    return _with(quilt, [fabric for fabric in fabrics if fabric.letter != letter])


def keep_photographed(quilt: OpenQuilt, photo: ReadPhoto, *, instead: bool = False) -> ChangePlan:
    """The change by which the fabrics of a photograph are there too, or `instead` of those counted
    before. Raises NumbersFault for a name or a number that no quilt can have, and for `instead`
    where sets are of those: their letters must not come to mean others."""
    if instead and quilt.state.sets.sets:
        raise NumbersFault(
            "Sets are accepted of the fabrics there are, so these cannot take their place. Keep them "
            "beside those."
        )
    from sewalong.fabrics.photo.taken_in import taken_in

    return _with(quilt, taken_in(photo, quilt.state.quilt.fabrics, instead=instead))


def _with(quilt: OpenQuilt, fabrics: Sequence[Fabric]) -> ChangePlan:
    was = planned(quilt.state)
    return ChangePlan(was, replace(was, fabrics=tuple(fabrics)))


def _must_be_there(quilt: OpenQuilt, letter: str) -> None:
    if letter not in [fabric.letter for fabric in quilt.state.quilt.counted_fabrics]:
        raise NumbersFault(
            f"Fabric {letter} is not there any more: the plan was changed in another window."
        )
