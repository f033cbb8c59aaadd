"""Every length that is refused, and that the sentence says what was understood."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.lengths import LONGEST, LengthFault, Unit, parse

REFUSED = [
    ("", "No length is given"),
    (" \t\n", "No length is given"),
    ("inches", "No number was found in 'inches'"),
    ("inf", "No number was found in 'inf'"),
    ("nan", "No number was found in 'nan'"),
    ("/", "No number was found"),
    ("about 5", "does not begin with its number"),
    ("+2", "does not begin with its number"),
    ('"2"', "does not begin with its number"),
    ("0", "'0' was read as zero"),
    ("0.0 cm", "was read as zero"),
    ("0/4", "was read as zero"),
    ("0,000", "was read as zero"),
    ("-1", "'-1' was read as less than zero"),
    ("-2 1/2 in", "was read as less than zero"),
    ("−2", "was read as less than zero"),
    ("–2", "was read as less than zero"),
    ("1001", "'1001' was read as 1001 in, which is too long. A length is at most 1,000 in."),
    ("1000.01", "was read as 1000 1/8 in"),
    ("26 m", "was read as 1023 5/8 in"),
    ("28 yd", "was read as 1008 in"),
    ("1234567890123", "was read as 1234567890123 in, which is too long"),
    ("12345678901234", "was read as far more than 1,000 in"),
    ("9" * 90, "was read as far more than 1,000 in"),
    ("9" * 100, "was read as far more than 1,000 in"),
    ("9" * 101, "is too long to be one length"),
    ("9" * 5000, "is too long to be one length"),
    ("1/0", "divides by zero"),
    ("2 1/0 in", "divides by zero"),
    ("1/2/3", "more than one slash"),
    ("1/½", "more than one fraction"),
    ("1,000", "may be 1000 or 1.000"),
    ("12,500 cm", "may be 12500 or 12.500"),
    ("1,234.5", "more than one point or comma"),
    ("1.2.3", "more than one point or comma"),
    ("2 1/2 1/4", "more than one fraction"),
    ("2½ 1/4", "more than one fraction"),
    ("½½", "more than one fraction"),
    ("1.5 1/2", "mixes a decimal with a fraction"),
    ("1.5½", "mixes a decimal with a fraction"),
    ("1.5/2", "mixes a decimal with a fraction"),
    ("2 3/2", "read as 2 and 3/2"),
    ("2 3/2", "If 3 1/2 is meant, write that."),
    ("2 2/2", "If 3 is meant"),
    ("2 0/4", "If 2 is meant"),
    ("21/2", "may be 2 1/2 or 10 1/2"),
    ("15/8", "may be 1 5/8 or 1 7/8"),
    ("123/4 yd", "may be 12 3/4 or 30 3/4"),
    ("2 - 1/2", "two numbers or a subtraction"),
    ("2 -1/2", "two numbers or a subtraction"),
    ("2−1/2", "two numbers or a subtraction"),
    ("2—1/2", "two numbers or a subtraction"),
    ("2-3", "two numbers or a subtraction"),
    ("2-2.5", "two numbers or a subtraction"),
    ("2 3", "2 numbers in a row"),
    ("1 1 1/2", "3 numbers in a row"),
    ("½2", "2 numbers in a row"),
    ("12 345", "2 numbers in a row"),
    ("5.", "as it stands"),
    ("1/", "as it stands"),
    ("/2", "as it stands"),
    ("2 ft", "was read as feet"),
    ("2'", "was read as feet"),
    ("2 feet", "2 feet are 24 in"),
    ("1 yd 3 in", "more than one number with a unit"),
    ("1 1/2 yd 3 in", "more than one number with a unit"),
    ("5'6\"", "more than one number with a unit"),
    ("1e5", "'1' was understood, but 'e5' behind it is not a unit"),
    ("5x3", "'5' was understood, but 'x3'"),
    ("5 km", "'5' was understood, but 'km'"),
    ("5 in in", "'5' was understood, but 'in in'"),
    ("5 in x", "not a unit known here"),
    ("٢", "a digit other than 0 to 9"),
    ("２ in", "a digit other than 0 to 9"),
    ("2²", "a digit other than 0 to 9"),
    ("2\x00", "not a unit known here"),
    ("\ud800", "No number was found in '?'"),
]


@pytest.mark.parametrize(("text", "words"), REFUSED)
def test_each_refusal_says_what_was_understood(text: str, words: str) -> None:
    with pytest.raises(LengthFault) as refusal:
        parse(text)
    assert words in refusal.value.sentence
    assert str(refusal.value) == refusal.value.sentence


@pytest.mark.parametrize("text", [text for text, _ in REFUSED])
def test_each_refusal_is_a_plain_line_that_says_what_to_write(text: str) -> None:
    with pytest.raises(LengthFault) as refusal:
        parse(text)
    sentence = refusal.value.sentence
    assert sentence.isprintable()
    assert sentence.endswith(".")
    assert any(
        what in sentence
        for what in ("rite ", "such as", "at most", "Give one length", "Use in", "If ")
    )


def test_the_limit_and_the_examples_are_in_the_owners_unit() -> None:
    with pytest.raises(LengthFault, match=r"2600 cm, which is too long.*at most 2,540 cm"):
        parse("2600", Unit.CM)
    with pytest.raises(LengthFault, match=r"such as 6\.4 cm"):
        parse("", Unit.CM)


def understood(text: str) -> str:
    """The sentence that refuses `5` and a unit of this name."""
    with pytest.raises(LengthFault) as refusal:
        parse(f"5 {text}")
    return refusal.value.sentence


def test_a_text_of_forty_characters_is_quoted_whole() -> None:
    assert f"'5 {'z' * 38}'" in understood("z" * 38)


def test_a_longer_text_is_quoted_to_forty_characters_with_dots_for_the_rest() -> None:
    assert f"'5 {'z' * 35}...'" in understood("z" * 39)
    assert f"'5 {'z' * 35}...'" in understood("z" * 70)


def test_no_space_is_left_before_the_dots() -> None:
    assert f"'5 {'z' * 34}...'" in understood("z" * 34 + "  zzz" + "z" * 30)


def test_words_with_a_quote_in_them_stand_between_quotes_of_the_other_kind() -> None:
    assert "In '5 \"x\"'," in understood('"x"')
    assert "In \"5 'x'\"," in understood("'x'")
    assert "In '5 x'y\"'," in understood("x'y\"")


# What people type when they type lengths: more often near a length than arbitrary text is.
NEAR_LENGTHS = st.text(alphabet="0123456789 ./,-–−⁄½¼⅝\"'″”incmydft²٢", max_size=14)


@settings(max_examples=150)
@given(st.one_of(st.text(), NEAR_LENGTHS), st.sampled_from(Unit))
def test_any_text_is_a_length_in_range_or_a_plain_refusal(text: str, unit: Unit) -> None:
    try:
        length, sentence = parse(text, unit), None
    except LengthFault as fault:
        length, sentence = None, fault.sentence
    if length is not None:
        assert 0 < length <= LONGEST
    else:
        assert sentence is not None
        assert sentence.isprintable()
        assert sentence.endswith(".")
