"""The picture before the cut: the units of a set in their own fabrics, and the top of all sets."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from sewalong.progress.record.sets.laid import LaidSet
from sewalong.progress.record.state import State

if TYPE_CHECKING:
    from sewalong.fabrics.colours import Colour
    from sewalong.piecing.method import Stage
    from sewalong.wall.keys import Key
    from sewalong.wall.picture import Picture
    from sewalong.wall.set_picture import Squares
    from sewalong.wall.stage_picture import StagePicture


def work_in_fabrics(state: State, stage: Stage, across: int, down: int) -> StagePicture | None:
    """The work of a stage on the set in hand, in at most `across` x `down` cells: where its squares
    are taken, the units it will give; then its own pieces. None where no set is in hand."""
    from sewalong.progress.record.squares_left import shape_of_sets
    from sewalong.progress.sets.in_hand import set_in_hand
    from sewalong.wall.set_picture import in_her_fabrics
    from sewalong.wall.stage_picture import Shows, StagePicture, stage_picture

    found = set_in_hand(state, stage.id)
    if found is None:
        return None
    if any(taken.pile == state.quilt.starts[0].pile for taken in stage.takes):
        units = set_pictured(state, known(found.laid), across, down)
        return None if units is None else StagePicture(units, Shows.UNITS)
    drawn = stage_picture(state.quilt, stage, across, down, found.count - 1)
    if drawn is None:
        return None
    places = shape_of_sets(state.quilt).places
    return replace(drawn, picture=in_her_fabrics(drawn.picture, places, known(found.laid)))


def set_pictured(state: State, squares: Squares, across: int, down: int) -> Picture | None:
    """The units that come of these squares, in at most `across` x `down` cells; None where the
    pieces are too small for their seams."""
    from sewalong.wall.set_picture import picture_of_set

    return picture_of_set(state.quilt, squares, across, down)


def top_pictured_of(
    state: State, sets: Sequence[Squares], across: int, down: int
) -> Picture | None:
    """The top as it would look with all these sets, their units row by row."""
    from sewalong.wall.top_of_sets import top_of_sets

    return top_of_sets(state.quilt, state.target, tuple(sets), across, down)


def cloth_coloured(state: State) -> Mapping[Key, Colour]:
    """The colours of all that shows in these pictures."""
    from sewalong.wall.cloth_colours import cloth_colours
    from sewalong.wall.of_quilt import own_colours

    return {**own_colours(state.quilt), **cloth_colours(state.quilt.fabrics)}


def known(laid: LaidSet) -> Squares:
    """The squares of a set, None for those of which the fabric is not known any more."""
    return tuple(letter or None for letter in laid.known)
