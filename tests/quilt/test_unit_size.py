"""The decided size of a unit, and that everything after the units follows it.

What units come to is worked out here anew, from plane geometry: a square on its diagonal loses
the root of two times its allowance, a straight seam twice its allowance.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction as F
from math import ceil, floor, sqrt

import pytest
from msgspec.structs import replace
from shapely.geometry import Polygon, box

from sewalong.lengths import CENTIMETRE, Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.piecing.cloth import Flat
from sewalong.piecing.definition import definition
from sewalong.piecing.derive import derive
from sewalong.progress.record.measurable import read_piece
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import decided_unit
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.worksheet import worksheet

ROOT = sqrt(2)

UNTRIMMED: dict[str, Callable[[float, float], float]] = {
    "flipped-corners": lambda a, s: a,
    "flying-geese-four": lambda a, s: a - 2 * ROOT * s,
    "four-patch": lambda a, s: 2 * a - 2 * s,
    "four-patch-strips": lambda a, s: 2 * a - 2 * s,
    "half-square-eight": lambda a, s: a / 2 - ROOT * s,
    "half-square-two": lambda a, s: a - ROOT * s,
    "hourglass": lambda a, s: a - 2 * ROOT * s,
    "nine-patch": lambda a, s: 3 * a - 4 * s,
    "nine-patch-quartered": lambda a, s: (3 * a - 4 * s) / 2,
    "nine-patch-strips": lambda a, s: 3 * a - 4 * s,
    "paired-squares": lambda a, s: (a - 2 * s) / ROOT,
    "plain-squares": lambda a, s: a,
    "rail-fence": lambda a, s: 3 * a - 4 * s,
    "stacked-four-patch": lambda a, s: (2 * a - 4 * s) / ROOT,
}
"""Width of a unit to the raw edges from the size `a` cut first, with seams of `s`."""

TRIMS = ("half-square-two", "half-square-eight", "hourglass")

INCHES = [(F(size), F(1, 4)) for size in ("5", "17/4", "71/16", "125/16", "37/5")]
CENTIMETRES = [
    (F(size) * CENTIMETRE, F(seam) * CENTIMETRE)
    for size in ("12.5", "10", "13.2", "17.7")
    for seam in ("0.75", "0.6")
]
QUARTER_INCH_IN_CM = [(F(11) * CENTIMETRE, F(1, 4)), (F("20.3") * CENTIMETRE, F(1, 4))]

CASES = [
    (method, unit, size, seam)
    for method in method_ids()
    for unit, sizes in ((Unit.INCH, INCHES), (Unit.CM, CENTIMETRES + QUARTER_INCH_IN_CM))
    for size, seam in sizes
]


def quilt_of(method: str, unit: Unit, size: F, seam: F, **more: object) -> Quilt:
    """Six rows of four; two borders. What is cut to suit is cut as the geometry asks."""
    cut = derive(method, size, seam, fineness=unit.step).starts
    starts = tuple(
        StartPile(start.pile, cut[start.pile].cutting, 400, length=F(40) if start.strip else None)
        for start in definition(method).starts
    )
    # Widths that a ruler in the unit shows, so that they are cut as they are written.
    inner, outer = (F(3), F(5)) if unit is Unit.INCH else (8 * CENTIMETRE, 13 * CENTIMETRE)
    borders = (Border(inner, "plain"), Border(outer, "print"))
    quilt = Quilt("Test", method, unit, seam, starts, Target(6, 4), borders)
    return replace(quilt, **more)


def marks(unit: Unit) -> F:
    return F(1, 8) if unit is Unit.INCH else CENTIMETRE / 2


def expected(method: str, unit: Unit, size: F, seam: F) -> tuple[float, float]:
    """Width and height the units are joined at.

    What no ruler shows, between two lines either, is cut at the next line: 7.4 in at 7 7/16.
    """
    if unit is Unit.INCH and size * 32 % 1:
        size = F(ceil(size * 16), 16)
    step = marks(unit)
    raw = UNTRIMMED[method](float(size), float(seam))
    if method in TRIMS:
        side = floor(raw / float(step) + 1e-9) * float(step)
        return side, side
    if method == "flying-geese-four":
        small = ceil((size / 2 + seam) / unit.step) * unit.step
        high = float(small) - ROOT * float(seam)
        fit = [w for n in range(1, 400) if (w := n * step) <= raw + 1e-9 and _tall(w, seam) <= high]
        on_marks = [w for w in fit if _tall(w, seam) % step == 0]
        width = max(on_marks or fit)
        return float(width), float(_tall(width, seam))
    return raw, raw


def _tall(width: F, seam: F) -> F:
    """As tall as flying geese are that finish two to one: (w - 2 s) / 2 + 2 s."""
    return width / 2 + seam


@pytest.mark.parametrize(("method", "unit", "size", "seam"), CASES)
def test_the_whole_top_follows_the_decided_unit(method: str, unit: Unit, size: F, seam: F) -> None:
    quilt = quilt_of(method, unit, size, seam)
    follows(quilt, *expected(method, unit, size, seam))


@pytest.mark.parametrize(("method", "unit", "size", "seam"), CASES[::3])
def test_it_follows_what_the_owner_says_too(method: str, unit: Unit, size: F, seam: F) -> None:
    width = floor(F(expected(method, unit, size, seam)[0]) / F(1, 16) - 1) * F(1, 16)
    height = _tall(width, seam) if method == "flying-geese-four" else width
    quilt = quilt_of(method, unit, size, seam, trim=Size(width, height))
    follows(quilt, float(width), float(height))


def follows(quilt: Quilt, width: float, height: float) -> None:
    """Everything that hangs on the unit, each worked out here."""
    seam, target = float(quilt.seam), quilt.target
    centre = (target.columns * (width - 2 * seam), target.rows * (height - 2 * seam))
    added = 2 * sum(float(border.cut) - 2 * seam for border in quilt.borders)
    top = tuple(side + added for side in centre)

    found = worksheet(quilt)
    lines = {line.label: line for line in found.sizes.lines}
    assert not found.refusal
    said = lines["top finishes at"]
    assert (said.inches, said.inches_down) == pytest.approx(top, abs=1e-4)
    said = lines["centre"]
    assert (said.inches, said.inches_down) == pytest.approx(
        tuple(side + 2 * seam for side in centre), abs=1e-4
    )
    said = lines["unit finishes at"]
    assert (said.inches, said.inches_down) == pytest.approx(
        (width - 2 * seam, height - 2 * seam), abs=1e-4
    )
    if "trim units to" in lines:
        assert (lines["trim units to"].inches, lines["trim units to"].inches_down) == (
            pytest.approx((width, height), abs=1e-4)
        )

    (now,) = (one for one in found.layouts if one.current)
    assert (float(now.size.width), float(now.size.length)) == pytest.approx(top, abs=1e-4)
    raw_top = tuple(side + 2 * seam for side in top)
    back = next(line for line in found.cloth.lines if line.label == "back")
    assert (back.inches, back.inches_down) == pytest.approx(
        tuple(side + 2 * float(quilt.choices.margin) for side in raw_top), abs=1e-4
    )
    after_last_row = found.rows.lines[-1].inches
    assert after_last_row == pytest.approx(centre[1] + 2 * seam, abs=1e-4)

    for piece, should in (
        ("row", centre[0] + 2 * seam),
        ("centre:across", centre[0] + 2 * seam),
        ("centre:down", centre[1] + 2 * seam),
        ("top:across", raw_top[0]),
        ("top:down", raw_top[1]),
        ("column:2", 2 * (height - 2 * seam) + 2 * seam),
    ):
        measured = read_piece(quilt, target, piece).expected
        assert float(measured) == pytest.approx(should, abs=1e-4), piece


def test_a_size_said_is_the_size_to_trim_to() -> None:
    quilt = quilt_of("stacked-four-patch", Unit.INCH, F(5), F(1, 4), trim=Size.square(F("6.25")))
    lines = {line.label: str(line) for line in worksheet(quilt).sizes.lines}
    assert lines["trim units to"] == "trim units to: 6 1/4 in across × 6 1/4 in down (as decided)"
    assert lines["unit unfinished"].endswith("(before it is trimmed)")
    assert not {"units can be trimmed to", "top of trimmed units finishes at"} & set(lines)


def test_a_trimmed_quilt_says_one_top_and_an_untrimmed_one_what_trimming_would_make_of_it() -> None:
    trimmed = worksheet(quilt_of("half-square-two", Unit.INCH, F(5), F(1, 4)))
    assert (
        sum("finishes at" in line.label and "top" in line.label for line in trimmed.sizes.lines)
        == 1
    )
    left = worksheet(quilt_of("stacked-four-patch", Unit.INCH, F(5), F(1, 4)))
    labels = [line.label for line in left.sizes.lines]
    assert "trim units to" not in labels
    assert "units can be trimmed to" in labels


@pytest.mark.parametrize("squares", ["71/16", "37/5", "45/16"])
def test_squares_that_no_seam_made_are_squared_up_to_the_size_they_were_cut_at(
    squares: str,
) -> None:
    for unit in Unit:
        quilt = quilt_of("plain-squares", unit, F(squares), F(1, 4))
        assert decided_unit(quilt, derive("plain-squares", F(squares))) == Size.square(F(squares))


def test_units_too_small_for_the_marks_stay_as_they_are() -> None:
    # Half of 5 cm less 0.75 root 2 is 1.439 cm, and 2 seams of 0.7 are 1.4: nothing at 1 cm.
    seam = F("0.69") * CENTIMETRE
    quilt = quilt_of("half-square-two", Unit.CM, F("2.4") * CENTIMETRE, seam)
    raw = 2.4 / 2.54 - ROOT * float(seam)
    assert float(basis(quilt).unit.width) == pytest.approx(raw, abs=1e-5)


# -- flying geese ---------------------------------------------------------------


def test_geese_of_8_1_8_in_trim_to_7_1_4_by_3_7_8_and_finish_two_to_one() -> None:
    """Untrimmed 7.418 × 4.021 in; side by side they would trim to 7 3/8 × 4, which finish at
    6 7/8 × 3 1/2: not two to one."""
    unit = basis(quilt_of("flying-geese-four", Unit.INCH, F("8.125"), F(1, 4))).unit
    assert unit == Size(F("7.25"), F("3.875"))
    assert unit.grown(-F(1, 4)) == Size(F("6.75"), F("3.375"))


GEESE = [
    (unit, size, seam)
    for unit, sizes in ((Unit.INCH, INCHES), (Unit.CM, CENTIMETRES + QUARTER_INCH_IN_CM))
    for size, seam in [*sizes, *((size + unit.step, seam) for size, seam in sizes)]
]


@pytest.mark.parametrize(("unit", "size", "seam"), GEESE)
def test_the_point_keeps_its_allowance_and_both_seams_run_into_the_corners(
    unit: Unit, size: F, seam: F
) -> None:
    quilt = quilt_of("flying-geese-four", unit, size, seam)
    made = derive("flying-geese-four", {start.pile: start.size for start in quilt.starts}, seam)
    trim = decided_unit(quilt, made)
    for flat in made.units:
        goose, x, y = _goose(flat)
        cut = box(
            x - float(trim.width) / 2,
            y - float(seam),
            x + float(trim.width) / 2,
            y - float(seam) + float(trim.length),
        )
        cloth = box(0, 0, *flat.size).buffer(2e-6)
        assert cloth.contains(cut), "there is cloth for it"
        shown = cut.buffer(-float(seam), join_style="mitre").intersection(goose)
        assert isinstance(shown, Polygon)
        left, top, right, bottom = shown.bounds
        assert top == pytest.approx(y, abs=1e-6), "the point is whole, its allowance above it"
        corners = {(round(a, 5), round(b, 5)) for a, b in shown.exterior.coords}
        assert (round(left, 5), round(bottom, 5)) in corners
        assert (round(right, 5), round(bottom, 5)) in corners
        assert (right - left) == pytest.approx(float(trim.width - 2 * seam), abs=1e-5)
        assert (right - left) == pytest.approx(2 * (bottom - top), abs=1e-5)


def _goose(flat: Flat) -> tuple[Polygon, float, float]:
    """The large triangle of a unit, and its point."""
    (goose,) = (p for p in flat.patches if p.letter == "A")
    x, y = min(goose.points, key=lambda point: point[1])
    return Polygon(goose.points), x, y
