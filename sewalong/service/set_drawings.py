"""Sets, and the top they would give, drawn into a file to be printed or sent: SVG, or PNG.

Colours are reckoned with here, so it is loaded only where a picture is wanted.
"""

from __future__ import annotations

from collections.abc import Mapping

from sewalong.fabrics.sets.proposing import Proposal
from sewalong.progress.record.events.sets import kept_sets, numbered
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.squares_left import laid_set, shape_of_sets
from sewalong.progress.record.state import State
from sewalong.quilt.derived import derived
from sewalong.service.set_pictures import known
from sewalong.store.pictures import refuse_picture, write_picture
from sewalong.wall.drawing.drawn import Drawing, drawing_of_set, drawing_of_top
from sewalong.wall.drawing.png import CannotPaint, as_png
from sewalong.wall.drawing.svg import as_svg
from sewalong.wall.set_picture import Squares
from sewalong.wall.top_of_sets import all_units

SVG, PNG = ".svg", ".png"


def set_drawn(state: State, number: int, proposal: Proposal | None = None) -> Drawing:
    """The units that come of a set, as it is accepted or would be by a proposal. Raises Refused
    where there is none of this number."""
    found = _sets(state, proposal)
    squares = found[number] if number in found else known(laid_set(state, number))
    return drawing_of_set(state.quilt, squares, f"{state.quilt.name}: set {number}")


def top_drawn(state: State, proposal: Proposal | None = None) -> Drawing:
    """The top as it would look with the sets that are accepted, those of a proposal in place of the
    ones it would replace; their units row by row. Raises Refused where the method has no sets."""
    shape_of_sets(state.quilt)
    found = _sets(state, proposal)
    laid = tuple(found[number] for number in sorted(found) if not _is_held_back(state, number))
    units = all_units(laid, derived(state.quilt))
    return drawing_of_top(state.quilt, state.target, units, f"{state.quilt.name}: the top")


def _sets(state: State, proposal: Proposal | None) -> Mapping[int, Squares]:
    accepted: dict[int, Squares] = {n: known(one) for n, one in state.sets.sets.items()}
    if proposal is None:
        return accepted
    standing = {number: accepted[number] for number in kept_sets(state)}
    return {**standing, **dict(numbered(state, proposal.sets))}


def _is_held_back(state: State, number: int) -> bool:
    return number in state.sets.sets and state.sets.sets[number].held_back


def refuse_drawing(path: str, *, replace: bool = False) -> None:
    """Raise Refused for a name that is of no kind of picture, and StoreFault where none can lie."""
    if not path.lower().endswith((SVG, PNG)):
        raise Refused("Name a file that ends in .svg, or .png.")
    refuse_picture(path, replace=replace)


def write_drawing(path: str, drawing: Drawing, *, replace: bool = False) -> None:
    """Write a drawing as the ending of its name says. Raises Refused, and StoreFault where it
    cannot be written."""
    refuse_drawing(path, replace=replace)
    try:
        data = as_svg(drawing).encode() if path.lower().endswith(SVG) else as_png(drawing)
    except CannotPaint as refused:
        raise Refused(str(refused)) from refused
    write_picture(path, data, replace=replace)
