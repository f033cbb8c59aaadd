"""Pictures of one quilt: what a stage makes, and the top."""

from __future__ import annotations

from collections.abc import Mapping

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.piecing.derive import Derivation, derive
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.unit_size import decided_unit
from sewalong.wall.keys import Key, border_key
from sewalong.wall.picture import Picture
from sewalong.wall.pieces import piece_picture
from sewalong.wall.tops import top_picture


def derivation_of(quilt: Quilt) -> Derivation:
    """What the engine makes of the quilt's own pieces and seam; the same quilt costs nothing more.

    Raises SizeRefused when the pieces are too small for their seams.
    """
    sizes = {start.pile: start.size for start in quilt.starts}
    length = quilt.starts[0].length
    if length is None:
        return derive(quilt.method_id, sizes, quilt.seam, unit=quilt.unit)
    return derive(quilt.method_id, sizes, quilt.seam, strip_length=length, unit=quilt.unit)


def picture_made(
    quilt: Quilt, target: Target, pile: str | None, across: int, down: int, number: int = 0
) -> Picture:
    """The piece a stage puts in `pile`, in at most `across` x `down` cells.

    Without a pile of the method's (a row, a stage of the top) it is the top with its borders.
    `number` picks among pieces that differ.
    """
    derivation = derivation_of(quilt)
    if pile is not None and pile in derivation.piles:
        return piece_picture(derivation, pile, across, down, number)
    return picture_of_top(quilt, target, across, down)


def picture_of_top(quilt: Quilt, target: Target, across: int, down: int) -> Picture:
    """The top with its borders to scale, the units of one batch placed by turns."""
    derivation = derivation_of(quilt)
    finished = decided_unit(quilt, derivation).grown(-quilt.seam)
    widths = [float(border.cut - 2 * quilt.seam) for border in quilt.borders]
    return top_picture(
        derivation,
        target.rows,
        target.columns,
        unit=(float(finished.width), float(finished.length)),
        across=across,
        down=down,
        borders=widths,
    )


def own_colours(quilt: Quilt) -> Mapping[Key, Colour]:
    """The colours the owner gave her fabrics and borders; the others have the palette's."""
    written = {fabric.letter: fabric.colour for fabric in quilt.fabrics}
    written |= {
        border_key(number): border.colour for number, border in enumerate(quilt.borders, start=1)
    }
    return {key: parse_colour(colour) for key, colour in written.items() if colour}
