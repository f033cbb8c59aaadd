"""How colours are seen: published values, worked cases, and a second library."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

import coloraide
import numpy as np
import pytest
from daltonlens import simulate
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.fabrics.sight import Sight, contrast, difference, from_afar, seen, value

PARTS = st.integers(0, 255)
COLOURS = st.builds(Colour, PARTS, PARTS, PARTS)

# Sharma, Wu, Dalal 2005 Table 1 (scikit-image skimage/color/tests/ciede2000_test_data.txt):
# L1 a1 b1, L2 a2 b2, difference, printed to four places.
PAIRS = """
50.0000 2.6772 -79.7751 50.0000 0.0000 -82.7485 2.0425
50.0000 3.1571 -77.2803 50.0000 0.0000 -82.7485 2.8615
50.0000 2.8361 -74.0200 50.0000 0.0000 -82.7485 3.4412
50.0000 -1.3802 -84.2814 50.0000 0.0000 -82.7485 1.0000
50.0000 -1.1848 -84.8006 50.0000 0.0000 -82.7485 1.0000
50.0000 -0.9009 -85.5211 50.0000 0.0000 -82.7485 1.0000
50.0000 0.0000 0.0000 50.0000 -1.0000 2.0000 2.3669
50.0000 -1.0000 2.0000 50.0000 0.0000 0.0000 2.3669
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0009 7.1792
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0010 7.1792
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0011 7.2195
50.0000 2.4900 -0.0010 50.0000 -2.4900 0.0012 7.2195
50.0000 -0.0010 2.4900 50.0000 0.0009 -2.4900 4.8045
50.0000 -0.0010 2.4900 50.0000 0.0010 -2.4900 4.8045
50.0000 -0.0010 2.4900 50.0000 0.0011 -2.4900 4.7461
50.0000 2.5000 0.0000 50.0000 0.0000 -2.5000 4.3065
50.0000 2.5000 0.0000 73.0000 25.0000 -18.0000 27.1492
50.0000 2.5000 0.0000 61.0000 -5.0000 29.0000 22.8977
50.0000 2.5000 0.0000 56.0000 -27.0000 -3.0000 31.9030
50.0000 2.5000 0.0000 58.0000 24.0000 15.0000 19.4535
50.0000 2.5000 0.0000 50.0000 3.1736 0.5854 1.0000
50.0000 2.5000 0.0000 50.0000 3.2972 0.0000 1.0000
50.0000 2.5000 0.0000 50.0000 1.8634 0.5757 1.0000
50.0000 2.5000 0.0000 50.0000 3.2592 0.3350 1.0000
60.2574 -34.0099 36.2677 60.4626 -34.1751 39.4387 1.2644
63.0109 -31.0961 -5.8663 62.8187 -29.7946 -4.0864 1.2630
61.2901 3.7196 -5.3901 61.4292 2.2480 -4.9620 1.8731
35.0831 -44.1164 3.7933 35.0232 -40.0716 1.5901 1.8645
22.7233 20.0904 -46.6940 23.0331 14.9730 -42.5619 2.0373
36.4612 47.8580 18.3852 36.2715 50.5065 21.2231 1.4146
90.8027 -2.0831 1.4410 91.1528 -1.6435 0.0447 1.4441
90.9257 -0.5406 -0.9208 88.6381 -0.8985 -0.7239 1.5381
6.7747 -0.2908 -2.4247 5.8714 -0.0985 -2.2286 0.6377
2.0776 0.0795 -1.1350 0.9033 -0.0636 -0.5514 0.9082
"""

ROWS = [tuple(map(float, line.split())) for line in PAIRS.strip().splitlines()]


@pytest.mark.parametrize("row", ROWS, ids=[str(n) for n in range(1, len(ROWS) + 1)])
def test_the_published_pairs_agree_to_their_last_place(row: tuple[float, ...]) -> None:
    # What `difference` asks of the library, of colours most of which no screen can show.
    one, other = (coloraide.Color("lab-d65", parts) for parts in (row[:3], row[3:6]))
    assert one.delta_e(other, method="2000") == pytest.approx(row[6], abs=0.00005)


def test_all_the_published_pairs_are_here() -> None:
    assert len(ROWS) == 34


@given(COLOURS, COLOURS)
def test_a_difference_is_the_same_either_way_and_nothing_only_to_itself(
    one: Colour, other: Colour
) -> None:
    assert difference(one, other) == pytest.approx(difference(other, one), abs=1e-9)
    assert (difference(one, other) == 0) == (one == other)


def test_a_colour_is_read_as_its_own_parts() -> None:
    one, other = parse_colour("#b24a2c"), parse_colour("#2f3fd0")
    expected = coloraide.Color("#b24a2c").delta_e("#2f3fd0", method="2000")
    assert difference(one, other) == pytest.approx(expected)


# Practice: saturation taken to nothing makes one grey of yellow and blue, value does not.
@pytest.mark.parametrize(
    ("text", "lightness"),
    [("#ffff00", 97.1), ("#0000ff", 32.3), ("#d9a400", 70.4), ("#2f3fd0", 35.4)],
)
def test_value_is_lightness(text: str, lightness: float) -> None:
    assert value(parse_colour(text)) == pytest.approx(lightness, abs=0.05)


def test_white_dots_on_navy_are_a_medium_light_from_afar() -> None:
    # Mean in linear light (sRGB, IEC 61966-2-1), then L*: computed by two libraries.
    navy, white = parse_colour("#22305c"), parse_colour("#ffffff")
    print_from_afar = from_afar(navy, white, 0.3)
    assert print_from_afar == parse_colour("#9799a5")
    # The whole parts of an sRGB colour are steps of 0.4 here.
    assert value(print_from_afar) == pytest.approx(63.6, abs=0.2)
    assert value(navy) == pytest.approx(20.9, abs=0.05)


@given(COLOURS, COLOURS)
def test_a_print_goes_from_its_ground_to_its_second_colour(ground: Colour, second: Colour) -> None:
    assert from_afar(ground, second, 0) == ground
    assert from_afar(ground, second, 1) == second
    low, high = sorted((value(ground), value(second)))
    assert low - 0.5 <= value(from_afar(ground, second, 0.5)) <= high + 0.5


@pytest.mark.parametrize(
    ("sight", "deficiency", "simulator", "within"),
    [
        (Sight.WITHOUT_RED, simulate.Deficiency.PROTAN, simulate.Simulator_Vienot1999, 2),
        (Sight.WITHOUT_GREEN, simulate.Deficiency.DEUTAN, simulate.Simulator_Vienot1999, 2),
        (Sight.WITHOUT_BLUE, simulate.Deficiency.TRITAN, simulate.Simulator_Brettel1997, 20),
    ],
    ids=["protan", "deutan", "tritan"],
)
def test_simulated_sight_agrees_with_a_second_library(
    sight: Sight,
    deficiency: simulate.Deficiency,
    simulator: type[simulate.Simulator],
    within: int,
) -> None:
    # DaltonLens, the same published models; for the third its white point differs.
    steps = (0, 51, 102, 153, 204, 255)
    colours = [(r, g, b) for r in steps for g in steps for b in steps]
    picture = np.array([colours], dtype=np.uint8)
    theirs = simulator().simulate_cvd(picture, deficiency, severity=1.0)[0]
    ours = [_parts(seen(Colour(*colour), sight)) for colour in colours]
    assert np.abs(np.array(ours, dtype=int) - theirs.astype(int)).max() <= within


def _parts(colour: Colour) -> Sequence[int]:
    return (colour.red, colour.green, colour.blue)


def test_red_and_green_of_one_value_are_taken_for_each_other_and_light_and_dark_never() -> None:
    rust, moss, gold = map(parse_colour, ("#a5532f", "#6a6f2c", "#e0b14a"))
    assert difference(rust, moss) > 30
    assert difference(seen(rust, Sight.WITHOUT_GREEN), seen(moss, Sight.WITHOUT_GREEN)) < 10
    for sight in Sight:
        assert difference(seen(rust, sight), seen(gold, sight)) > 20


@given(PARTS, st.sampled_from(list(Sight)))
def test_greys_are_greys_to_everybody(part: int, sight: Sight) -> None:
    shown = _parts(seen(Colour(part, part, part), sight))
    assert all(abs(found - part) <= 1 for found in shown)


@settings(max_examples=30)
@given(st.lists(COLOURS, min_size=3, max_size=3, unique=True))
def test_contrast_is_highest_between_the_lightest_and_the_darkest(colours: list[Colour]) -> None:
    darkest, *_, lightest = sorted(colours, key=value)
    most = max(contrast(a, b) for a, b in combinations(colours, 2))
    assert contrast(darkest, lightest) == pytest.approx(most, abs=0.02)
