"""Whatever quilt it is, numbers come or a sentence says why not; nothing is raised."""

from __future__ import annotations

from fractions import Fraction as F

from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.quilt.choices import CORNERS, JOINS, Choices, Fabric
from sewalong.quilt.layouts.yield_of_method import pieces_for, units_from
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target
from sewalong.quilt.worksheet.worksheet import worksheet

EIGHTHS = st.integers(1, 8 * 60).map(lambda n: F(n, 8))
SIDES = st.integers(4, 100).map(lambda n: F(n, 8))
SEAMS = st.sampled_from([F(1, 8), F(1, 4), F(3, 8), F(75, 254)])


@st.composite
def quilts(draw: st.DrawFn) -> Quilt:
    id = draw(st.sampled_from(method_ids()))
    written = written_method(id)
    length = draw(EIGHTHS) if written.starts[0].strip else None
    starts = tuple(
        StartPile(start.pile, draw(SIDES), draw(st.integers(1, 9999)), None, length)
        for start in written.starts
    )
    choices = Choices(
        usable=draw(EIGHTHS),
        margin=draw(st.just(F(0)) | EIGHTHS),
        binding=draw(SIDES),
        binding_ends=draw(st.just(F(0)) | EIGHTHS),
        joins=draw(st.sampled_from(JOINS)),
        corners=draw(st.sampled_from(CORNERS)),
        spool_metres=draw(st.none() | st.integers(1, 20_000)),
        bobbin_metres=draw(st.none() | st.integers(1, 20_000)),
        own_seam=draw(st.none() | SIDES | SEAMS),
    )
    return Quilt(
        name="Any",
        method_id=id,
        unit=draw(st.sampled_from(Unit)),
        seam=draw(SEAMS),
        starts=starts,
        target=Target(draw(st.integers(1, 40)), draw(st.integers(1, 40))),
        borders=tuple(draw(st.lists(st.builds(Border, SIDES, st.just("sand")), max_size=3))),
        fabrics=draw(st.sampled_from([(), (Fabric("A", "sand"),)])),
        choices=choices,
    )


@settings(max_examples=15, deadline=None)
@given(quilts(), st.none() | st.integers(0, 2000))
def test_numbers_never_raise(quilt: Quilt, have: int | None) -> None:
    found = worksheet(quilt, have=have)
    if found.refusal:
        assert found.refusal.endswith(".")
    for section in found.sections:
        for line in section.lines:
            assert line.text
            assert "\n" not in str(line)
            assert "-0 " not in line.text


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(method_ids()), st.integers(1, 3000))
def test_pieces_for_so_many_units_give_them_and_one_piece_less_does_not(
    id: str, units: int
) -> None:
    from sewalong.piecing.catalogue import method

    made = method(id)
    need = pieces_for(made, units)
    assert units_from(made, need) >= units
    for pile, count in need.items():
        assert units_from(made, {**need, pile: count - 1}) < units
