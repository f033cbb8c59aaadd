"""Everything works in centimetres: allowances, redrawn blocks, cutting sizes by the half."""

from fractions import Fraction as F

import pytest

from sewalong.lengths import CENTIMETRE, Rounding, Unit, from_cm, round_to, to_cm
from sewalong.quilt.cloth.allowances import half_square_adds, quarter_square_adds, square_adds
from sewalong.quilt.cloth.backing import backing
from sewalong.quilt.cloth.binding import binding
from sewalong.quilt.cloth.borders import BorderPlan, border
from sewalong.quilt.cloth.row import row_length
from sewalong.quilt.size import Size

SEAM = from_cm(F("0.75"))


def in_cm(inches: float | F) -> float:
    return float(inches) * 2.54


def test_the_trade_s_inch_rules_are_rounded_up() -> None:
    # Plane geometry: 7/8 and 1 1/4 in are the next marks over 0.8536 and 1.2071 in.
    assert square_adds(F(1, 4)) == F(1, 2)
    assert half_square_adds(F(1, 4)) == pytest.approx(0.8535533905932737)
    assert quarter_square_adds(F(1, 4)) == pytest.approx(1.2071067811865475)
    assert round_to(half_square_adds(F(1, 4)), F(1, 8), Rounding.UP) == F(7, 8)
    assert round_to(quarter_square_adds(F(1, 4)), F(1, 8), Rounding.UP) == F(5, 4)


@pytest.mark.parametrize(
    ("seam", "half", "quarter"),
    [
        pytest.param("0.75", 2.56, 3.62, id="Q167-0.75cm"),
        pytest.param("0.7", 2.39, 3.38, id="Q167-0.7cm"),
    ],
)
def test_a_metric_rule_of_thumb(seam: str, half: float, quarter: float) -> None:
    # quilteuseforever.com 2012, Les formules magiques: 1.5, 2.5 and 3.5 cm at 0.75 cm seams.
    allowance = from_cm(F(seam))
    assert in_cm(half_square_adds(allowance)) == pytest.approx(half, abs=0.005)
    assert in_cm(quarter_square_adds(allowance)) == pytest.approx(quarter, abs=0.005)
    if seam == "0.75":
        assert to_cm(square_adds(allowance)) == F("1.5")
        # The last two rules are 0.6 and 1.2 mm under: they need a scant seam.
        assert half - 2.5 == pytest.approx(0.06, abs=0.005)
        assert quarter - 3.5 == pytest.approx(0.12, abs=0.005)
    else:
        assert half < 2.5
        assert quarter < 3.5


@pytest.mark.parametrize("parts", [pytest.param(n, id=f"Q169-{n}") for n in (2, 3, 4, 5, 6, 8, 10)])
def test_a_block_redrawn_at_thirty_centimetres_divides_evenly(parts: int) -> None:
    # pandqmagazine.com forum: 12 in is 30.48 cm, which does not divide; 30 cm does, by 8 to half
    # a millimetre.
    half_millimetre = F(1, 20)
    assert (F(30) / parts) % half_millimetre == 0
    assert to_cm(F(12)) == F("30.48")
    assert (F("30.48") / parts) % half_millimetre != 0


def test_cutting_sizes_by_the_millimetre_or_the_half_centimetre() -> None:
    exact = from_cm(F(6)) + square_adds(from_cm(F("0.64")))
    assert to_cm(round_to(exact, CENTIMETRE / 10, Rounding.UP)) == F("7.3")
    assert to_cm(round_to(exact, CENTIMETRE / 2, Rounding.UP)) == F("7.5")


def test_a_row_in_centimetres_is_exact() -> None:
    assert to_cm(row_length(8, from_cm(F("16.5")), SEAM)) == 8 * F("16.5") - 7 * F("1.5")


def test_a_metric_quilt_speaks_of_centimetres_and_metres() -> None:
    top = Size(from_cm(F("121.5")), from_cm(F("151.5")))
    usable = from_cm(F(105))
    edged = border(top, BorderPlan(from_cm(F(10))), seam=SEAM, usable=usable, unit=Unit.CM)
    assert to_cm(edged.outer.width) == F("138.5")
    assert edged.strips.reason == "6 strips: 580 cm at 105 cm usable less 1.5 cm a join, 5.6"
    assert edged.strips.purchase.reason == "60 cm of cloth, 0.60 m: buy 0.6 m, no slack"
    back = backing(edged.outer, margin=from_cm(F(10)), usable=usable, seam=SEAM, unit=Unit.CM)
    assert (
        back.best.reason
        == "2 panels of 158.5 cm reach 208.5 cm of the 188.5 cm needed, so many down to 95 cm usable"
    )
    assert back.best.purchase.reason.endswith("buy 3.2 m, 3 cm slack")
    bound = binding(
        edged.outer,
        strip=from_cm(F(6)),
        allowance=from_cm(F(30)),
        usable=usable,
        seam=SEAM,
        unit=Unit.CM,
    )
    assert bound.reason == (
        "614 cm around and 30 cm allowance; 7 strips: 644 cm at 105 cm usable less 6 cm a join, 6.4"
    )
