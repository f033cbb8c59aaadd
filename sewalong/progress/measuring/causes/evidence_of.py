"""What is known of a measured piece of a quilt: its size, its pieces, what it could be taken for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sewalong.lengths import Length
from sewalong.progress.measuring.causes.evidence import Evidence, Other, OtherWay
from sewalong.progress.measuring.seams_sewn import side_by_side
from sewalong.progress.record.measurable import (
    ALLOWANCE,
    DOWN,
    Measured,
    Unmeasurable,
    decided,
    made_of,
    measurable,
    other_way_of,
    read_piece,
    untrimmed,
)
from sewalong.quilt.cloth.to_cut import to_cut
from sewalong.quilt.quilt import Quilt, Target


def evidence_of(
    quilt: Quilt,
    target: Target,
    piece: Measured,
    readings: Sequence[Length],
    *,
    other_way: Sequence[Length] = (),
    seam_read: Length | None = None,
) -> Evidence:
    """The evidence of `readings`; `other_way` are readings of the same piece the other way, and
    `seam_read` what an allowance measures at the back, where they were taken."""
    turned = other_way_of(piece.id)
    across = read_piece(quilt, target, turned) if turned else None
    return Evidence(
        expected=piece.expected,
        allowances=piece.allowances,
        seam=quilt.seam,
        readings=tuple(readings),
        of=side_by_side(quilt, target, piece) if piece.is_long else piece.of,
        adds=_adds(quilt, piece),
        counted=piece.of > 1 and piece.is_long,
        largest=_largest(quilt, piece),
        others=tuple(_others(quilt, target, piece)),
        bias=not (piece.is_test or piece.is_border) and made_of(quilt).has_bias_edges,
        slip=_slip(quilt, piece),
        other_way=None if across is None
        else OtherWay(across.expected, across.allowances, tuple(other_way)),
        seam_read=None if piece.id == ALLOWANCE else seam_read,
        is_one=piece.kind in ("centre", "top"),
        unit=quilt.unit,
    )  # fmt: skip


def _adds(quilt: Quilt, piece: Measured) -> tuple[Length, ...]:
    """What a piece too few or too many comes to: of a sashed line a unit, a sash, or both."""
    sashing = quilt.sashing
    if sashing is None or not piece.is_long or piece.is_border:
        return () if piece.each is None else (piece.each,)
    size = decided(quilt)
    down = piece.kind == "column" or piece.id.endswith(DOWN)
    unit = (size.length if down else size.width) - 2 * quilt.seam
    sash = to_cut(sashing.cut, quilt.unit).length - 2 * quilt.seam
    return (unit, sash, unit + sash)


def _largest(quilt: Quilt, piece: Measured) -> Length:
    """No one mis-cut takes more than this."""
    if piece.is_border:
        return piece.expected
    if piece.is_long:
        return piece.each or max(decided(quilt).width, decided(quilt).length)
    return max(start.size for start in quilt.starts)


def _slip(quilt: Quilt, piece: Measured) -> Length | None:
    """What is read between the wrong edges: a size as it finishes, or a middle strip with its
    allowances."""
    both = 2 * quilt.seam
    slip = piece.expected + both if piece.kind == "middle" else piece.expected - both
    return slip if piece.allowances else None


def _others(quilt: Quilt, target: Target, piece: Measured) -> Iterator[Other]:
    """The kinds that `piece` can be mixed up with, each size once."""
    piles = {pile.id for pile in quilt.method.piles}
    seen: set[Length] = set()
    if piece.is_border:
        found = _borders(quilt, target, piece)
    elif piece.kind in ("row", "column"):
        found = _in_a_row(quilt, piece)
    elif piece.kind in piles:
        found = _of_piles(quilt, target, piece)
    else:
        return
    for other in found:
        if other.reading not in seen:
            seen.add(other.reading)
            yield other


def _of_piles(quilt: Quilt, target: Target, piece: Measured) -> Iterator[Other]:
    """The same piece lying the other way, then the pieces of the other piles."""
    way = piece.id.removeprefix(piece.kind)
    turned = read_piece(quilt, target, other_way_of(piece.id))
    yield Other(f"{piece.noun} lying the other way", turned.expected, piece.expected)
    for pile in quilt.method.piles:
        if pile.id == piece.kind:
            continue
        try:
            other = read_piece(quilt, target, pile.id + way)
            turned = read_piece(quilt, target, other_way_of(other.id))
        except Unmeasurable:
            continue
        yield Other(pile.noun.one, other.expected, turned.expected)
        yield Other(f"{pile.noun.one} lying the other way", turned.expected, other.expected)


def _borders(quilt: Quilt, target: Target, piece: Measured) -> Iterator[Other]:
    """The strips for the other sides and borders."""
    for one in measurable(quilt, target):
        if one.is_border and one.id != piece.id:
            yield Other(one.words, one.expected)


def _in_a_row(quilt: Quilt, row: Measured) -> Iterator[Other]:
    """One unit of the row that lies the other way, or was not trimmed."""
    unit, noun = decided(quilt), quilt.method.pile(quilt.method.unit).noun.one
    across, down = (unit.length, unit.width) if row.kind == "column" else (
        unit.width, unit.length)  # fmt: skip
    if abs(down - across) > 0:
        yield Other(f"row with one {noun} lying the other way", row.expected + down - across)
    raw = untrimmed(quilt, DOWN if row.kind == "column" else "across").expected
    yield Other(f"row with one untrimmed {noun}", row.expected + raw - across)
