"""What cannot be is refused in a plain sentence that says what to do next."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from tests.cli.reckoning.conftest import Ask

# A guild's sheet of units "sewn all round, cut twice" lists these, which plane geometry does not
# give: (square - 2 * 1/4) / root 2. https://classicquiltersofla.blogspot.com/2010/06/easiest-hst-ever.html
OUT_OF_REACH = [
    ("2 1/2", "1 1/2", "1.414", "0.086"),
    ("4", "2 1/2", "2.475", "0.025"),
    ("6", "4", "3.889", "0.111"),
    ("10", "7", "6.718", "0.282"),
]


@pytest.mark.parametrize(("square", "wanted", "unit", "short"), OUT_OF_REACH)
def test_a_size_the_square_cannot_give(
    ask: Ask, square: str, wanted: str, unit: str, short: str
) -> None:
    answer = ask(f"size --method paired-squares --square {square} --trim-to {wanted}")
    assert answer.status == 2
    assert f"come to {unit} in" in answer.err
    assert f"{short} in short of" in answer.err
    assert "It would take seams of" in answer.err


def test_a_size_no_seam_is_narrow_enough_for(ask: Ask) -> None:
    answer = ask("size --method paired-squares --square 4 --trim-to 3")
    assert answer.status == 2
    assert "No seam is narrow enough for that. Cut larger pieces." in answer.err


def test_a_square_of_nine_inches_leaves_nothing_to_trim(ask: Ask) -> None:
    # The same sheet; 6.010 in is within a hundredth of the size it is trimmed to.
    answer = ask("size --method paired-squares --square 9 --trim-to 6")
    assert answer.status == 0
    assert "to trim off: 0.010 in across" in answer.out


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("size --method paired-squares", "Give one of --square (or --strip), --finishes"),
        ("size --method paired-squares --square 5 --finishes 6", "Give one of --square"),
        ("size --method paired-square --square 5", "The nearest is 'paired-squares'"),
        ("size --method paired-squares --square 1/2", "leave nothing"),
        ("size --method paired-squares --square five", "No number was found"),
        ("size --method paired-squares --finishes 0", "leave nothing of such a unit"),
        ("reckon squares --size 5", "Give --count, --cloth or --fat-quarter"),
        ("reckon squares --size 41 --count 3", "wider than the 40 in of usable cloth"),
        ("reckon squares --size 5 --count 0", "must be at least 1"),
        ("reckon fit --cut 52 4 --cloth 1yd", "Write such as: --cut 52 of 4"),
        ("reckon border --cut 3", "Give one of --top"),
        ("reckon border --top 40", "--cut or --finishes, once for each"),
        ("reckon border --top 40 --cut 1/2", "used up by its two seams"),
        ("reckon binding --top 60 x 80 x 3", "more than two lengths"),
        ("reckon batting", "Give --top, or --batting"),
        ("reckon strips --length 0 --width 2", "more than nothing"),
        ("reckon strips --length 90 --width 40", "Cut narrower strips or use wider cloth"),
        ("reckon thread --each 36 --stitches 10", "Give --thickness and --stitches together"),
        ("reckon packs --need 140 --in-a-pack 0", "must be at least 1"),
        ("reckon makes --method paired-squares", "Give --have and what there is"),
        ("reckon makes --method paired-squares --have many", "is not a count"),
        ("reckon makes --method flying-geese-four --have 3", "--have small-square=N"),
        ("reckon makes --method paired-squares --have circle=3", "does not begin with"),
        ("reckon border-length 60", "must be at least 2"),
        ("reckon border-length 60, 61 --rule middle", "needs a measurement of the middle"),
        ("reckon pieced-border --edge 0 --piece 5", "more than nothing"),
        ("reckon sashing --rows 3 --columns 3 --finishes 12 --sash 0", "more than nothing"),
        ("reckon on-point --rows 3 --columns 3 --finishes 3 x 4", "Only square units"),
        ("reckon on-point --rows 0 --columns 3 --finishes 6", "must be at least 1"),
        ("reckon row --pieces 5", "Give --cut and a length"),
        ("reckon row --cut 5", "Give --pieces and --cut"),
        ("reckon row --pieces 1 --cut 2 --measured 5", "must be at least 2"),
        ("reckon ease --edge 9", "Give --to and a length"),
        ("reckon shrunk --label 5 --measured 6 --method four-patch", "is more than"),
        ("methods show", "Which one?"),
        ("layouts --units 30", "Give --finishes and a size"),
        ("layouts --finishes 6", "Give --units besides --finishes"),
        ("layouts --units 30 --finishes 6 --bed cradle", "Use one of: crib, twin"),
        ("layouts --units 30 --finishes 6 --near 4x5 --bed twin", "not both"),
        ("layouts --units 30 --finishes 6 --pattern 6", "rows and columns, such as 6x5"),
        ("layouts --units 30 --finishes 6 --pattern 6x5", "--pattern needs --near"),
        ("layouts --units 30 --finishes 6 --rows 3", "Give --rows and --columns together"),
        ("plan no-such-file.toml", "There is no file no-such-file.toml"),
        ("plan", "There is no quilt yet"),
        ("yardage", "Type: sewalong reckon squares, fit"),
        ("reckon squares", "required: --size"),
    ],
)
def test_refused_in_a_sentence(ask: Ask, line: str, sentence: str) -> None:
    answer = ask(line)
    assert answer.status == 2
    assert answer.out == ""
    assert sentence in answer.err
    assert "Traceback" not in answer.err
