"""Every command that prints a size to cut reckons its cloth from that very size.

The judge multiplies what is printed: so many strips times their printed width is the cloth.
"""

from __future__ import annotations

import re
from fractions import Fraction as F
from pathlib import Path

import pytest

from sewalong.lengths import METRE, Unit, parse, round_up_cloth
from tests.cli.reckoning.conftest import Ask

# Widths a person might type that an eighth of an inch does not show, and a few that it does.
AWKWARD = ["2 9/16", "2 5/8", "2 17/32", "2 1/3", "2.533", "3.2", "9/4", "1 15/16", "7.01", "5"]
AWKWARD_CM = ["6.35", "6.4", "6.33", "12.75", "8.125", "10"]

_PRINTED = re.compile(r"(\d+) strips? of ([0-9][0-9 /.]*(?:in|cm))")


def printed_strips(out: str, unit: Unit) -> tuple[int, F]:
    """How many strips, and how wide, as a reader would take it from the line."""
    found = _PRINTED.search(out)
    assert found is not None, out
    return int(found[1]), parse(found[2], unit)


@pytest.mark.parametrize("typed", AWKWARD)
@pytest.mark.parametrize(
    "command",
    [
        "reckon squares --count 100 --size {}",
        "reckon strips --length 280 --width {}",
        "reckon binding --top 60 x 80 --strip {}",
        "reckon border --top 60 x 80 --cut {}",
    ],
)
def test_strips_times_their_printed_width_is_the_cloth_to_buy(
    ask: Ask, command: str, typed: str
) -> None:
    words = command.format(typed).split()
    data = ask(*words, "--json").data
    count, width = printed_strips(ask(*words).out, Unit.INCH)
    assert 0 <= width - parse(typed) < F(1, 16)
    buy = next(line for line in data["lines"] if line["label"] == "buy")
    assert round_up_cloth(count * width) == F(buy["inches"])
    assert count * width <= F(buy["inches"])


@pytest.mark.parametrize("typed", AWKWARD_CM)
@pytest.mark.parametrize(
    "command",
    [
        "reckon squares --count 100 --size {} cm",
        "reckon strips --length 700 cm --width {} cm",
        "reckon binding --top 150 x 200 cm --strip {} cm",
        "reckon border --top 150 x 200 cm --cut {} cm",
    ],
)
def test_it_is_so_in_centimetres(ask: Ask, command: str, typed: str) -> None:
    words = command.format(typed).split()
    data = ask(*words, "--json").data
    count, width = printed_strips(ask(*words).out, Unit.CM)
    buy = next(line for line in data["lines"] if line["label"] == "buy")
    tenths = -(-(count * width) * 10 // METRE)
    assert float(tenths * METRE / 10) == pytest.approx(buy["inches"])


def test_seven_strips_of_2_9_16_are_not_called_2_5_8(ask: Ask) -> None:
    out = ask("reckon squares --size 2 9/16 --count 100").out
    assert "7 strips of 2 9/16 in: 100 pieces, 15 a strip" in out
    assert "17 15/16 in of cloth, 0.50 yd: buy 1/2 yd, 1/16 in slack" in out
    assert "2 5/8" not in out


def test_a_size_no_ruler_shows_is_cut_larger_and_takes_the_cloth_of_that(ask: Ask) -> None:
    # 7 strips of 2.533 in would be 17.73 in; of 2 9/16 in they are 17 15/16 in.
    out = ask("reckon squares --size 2.533 --count 100").out
    assert "7 strips of 2 9/16 in, rounded up from 2.533 in" in out
    assert "17 15/16 in of cloth" in out


def test_pieces_from_a_length_of_cloth_are_those_of_the_size_cut(ask: Ask) -> None:
    # 40 / 2.49 = 16.06, but at 2 1/2 in there are 16; 40 / 3.07 = 13.03, at 3 1/8 only 12.
    assert "12 across 40 in" in ask("reckon squares --size 3.07 --cloth 36").out


def test_a_border_no_ruler_shows_makes_the_top_it_is_cut_for(ask: Ask) -> None:
    data = ask("reckon border --top 60 x 80 --cut 2.45 --json").data
    outer = next(line for line in data["lines"] if line["label"] == "with border 1")
    assert (outer["inches"], outer["inches_down"]) == (64, 84)


def test_border_lengths_are_on_the_ruler_and_the_strips_reach_them(ask: Ask) -> None:
    out = ask("reckon border --top 53.276 x 65.776 --cut 2 1/2").out
    assert "2 sides of 65 13/16 in, top and bottom of 57 5/16 in" in out
    assert "246 1/4 in at 40 in usable" in out


def test_backing_panels_are_on_the_ruler_and_so_is_their_cloth(ask: Ask) -> None:
    data = ask("reckon backing --top 60.3 x 80.3 --json").data
    ways = {line["label"]: line for line in data["lines"]}
    assert ways["seams along the length"]["text"].startswith("2 panels of 88 5/16 in")
    assert "176 5/8 in of cloth" in ways["seams along the length"]["reason"]


def test_a_sash_no_ruler_shows_makes_the_top_it_is_cut_for(ask: Ask) -> None:
    data = ask(
        "reckon sashing --rows 1 --columns 2 --finishes 6 --sash 1.7 --inner-only --json"
    ).data
    lines = {line["label"]: line for line in data["lines"]}
    # 1.7 + 1/2 = 2.2, cut at 2 1/4 in, finishing at 1 3/4 in.
    assert lines["standing between the columns"]["inches"] == 2.25
    assert lines["top finishes at"]["inches"] == 13.75
    assert "sashes cut at 2 1/4 in, rounded up from 2.2 in" in lines["top finishes at"]["reason"]


def test_setting_triangles_cut_larger_say_the_size_they_are_cut_at(ask: Ask) -> None:
    out = ask("reckon on-point --rows 4 --columns 4 --finishes 6 --larger 3/16").out
    assert "12 from 3 squares cut at 9 15/16 in" in out


def test_a_spacer_is_on_the_ruler_and_the_rest_is_eased(ask: Ask) -> None:
    # (10 * 5 - 46.3) / 2 = 1.85, cut at 2.35: 2 3/8 in, and 0.05 in more on the whole edge.
    out = ask("reckon pieced-border --edge 46.3 --piece 5").out
    assert "a strip cut at 2 3/8 in, rounded up from 2.35 in" in out
    assert "0.050 in to ease in" in out


def test_a_border_length_in_centimetres_is_a_whole_millimetre(ask: Ask) -> None:
    data = ask("reckon border-length 151.2 cm; 152.4 cm; 154.3 cm --json").data
    cut = next(line for line in data["lines"] if line["label"] == "cut two at")
    assert cut["text"] == "152.6 cm"
    assert cut["inches"] == pytest.approx(152.6 / 2.54)


def test_bias_from_a_piece_in_hand_says_nothing_of_straight_strips(ask: Ask) -> None:
    out = ask("reckon binding --top 60 x 80 --bias --remnant 20 x 60").out
    assert "enough" in out
    assert "441 1/8 in on the bias" in out
    for straight in ("40 in usable", "strips:", "buy", "a join"):
        assert straight not in out


def test_a_square_to_cut_bias_from_is_a_whole_centimetre_for_who_works_in_them(ask: Ask) -> None:
    data = ask("reckon binding --top 150 x 200 cm --strip 6.4 cm --bias --json").data
    side = data["lines"][-1]["inches"] * 2.54
    assert side == pytest.approx(round(side))


def test_squares_cut_down_to_a_common_size_are_reckoned_with_that(ask: Ask) -> None:
    # The shortest side is 4.97 in; all can be cut to 4 15/16 in, and the unit is of that.
    out = ask(
        "reckon", "shrunk", "--label", "5", "--measured", "4.97, 4.99", "--method", "four-patch"
    ).out
    assert "common size: 4 15/16 in" in out
    assert "unit, unfinished: 9.375 in\nwhy: squares at 4 15/16 in" in out


def test_two_sizes_of_one_cloth_that_look_alike_are_to_be_labelled(ask: Ask) -> None:
    words = ["reckon", "fit", "--cut", "52 of 4", "--cut", "20 of 4 1/4", "--cloth", "72"]
    assert "4 in for 52 pieces and 4 1/4 in for 20 pieces, 1/4 in apart" in ask(*words).out
    words[6] = "20 of 4 1/2"
    assert "apart" not in ask(*words).out


def test_what_was_spoiled_is_short_in_the_cut_list(ask: Ask, tmp_path: Path) -> None:
    file = tmp_path / "gate.toml"
    file.write_text(
        'name = "Gate Post"\nmethod = "plain-squares"\nsquares = {size = 5, count = 22}\n'
        "layout = {rows = 4, columns = 5}\n",
        encoding="utf-8",
    )
    assert ask("start", str(file)).status == 0
    assert "20 for the target: 20 there, none short" in ask("plan --only cut-list").out
    assert ask("spoil square 5 --reason torn").status == 0
    said = ask("plan --only cut-list").out
    assert "20 for the target: 17 there, 3 short" in said
    assert "squares still short: 3 squares of 5 in from 1 strip of 5 in" in said
    # For another layout on the line the record is asked about that one.
    assert "15 for the target" in ask("plan --only cut-list --rows 3").out
    assert "none short" in ask("plan --only cut-list --rows 3").out
    assert "cloth for squares still short" in ask("plan --only shopping --rows 5").out
