"""What is not TOML is one fault, with its line and in plain words."""

import tomllib

import pytest

from sewalong.quilt.file.reader import Fault, QuiltFileFaults, read_quilt, read_quilt_bytes
from sewalong.quilt.file.toml_errors import _PLAIN

AFTER_VALUE = _PLAIN["Expected newline or end of document"]
NO_VALUE = _PLAIN["Invalid value"]
TWICE = _PLAIN["Cannot"]


def fault_of(text: str | bytes) -> Fault:
    with pytest.raises(QuiltFileFaults) as caught:
        read_quilt(text) if isinstance(text, str) else read_quilt_bytes(text)
    (fault,) = caught.value.faults
    return fault


@pytest.mark.parametrize(
    ("text", "line", "opening"),
    [
        # What a person who has never seen TOML writes.
        ("name = Low tide", 1, "What stands behind the = is not a value."),
        ("[squares]\nsize = ½", 2, "What stands behind the = is not a value."),
        ("name =\n", 1, "What stands behind the = is not a value."),
        ("a = 2025-02-30", 1, "What stands behind the = is not a value."),
        ("[squares]\n\nsize = 2 1/2", 3, "Something stands behind the value on this line."),
        ('# 5"\nsize = "5""', 2, "Something stands behind the value on this line."),
        ('size = 5"', 1, "Something stands behind the value on this line."),
        ("name", 1, "There is no = behind the key."),
        ("name: 5", 1, "There is no = behind the key."),
        ("in a pack = 5", 1, "There is no = behind the key."),
        ("= 5", 1, "A key was expected here."),
        ("[]", 1, "A key was expected here."),
        ("a = 1\n// remark", 2, "A key was expected here."),
        ("a = 1\n\na = 2", 3, "This key or heading stands in the file twice."),
        ("[layout]\n[layout]", 2, "This key or heading stands in the file twice."),
        ("a = {b = 1, b = 2}", 1, "This key or heading stands in the file twice."),
        ("a = 1\n[a]", 2, "This key or heading stands in the file twice."),
        ("a = 1\n[[a]]", 2, "This key or heading stands in the file twice."),
        ("[layout", 1, "The heading is not closed. Write it like [layout]."),
        ("[[border]", 1, "The heading is not closed. Write it like [[border]]."),
        ('name = "Low tide\nunit = "cm"', 1, "The text is not closed on its line."),
        ("name = 'Low tide\n", 1, "The text is not closed. Put ' behind it, on the same line."),
        ("name = 'Low tide", 1, "The text is not closed. Put ' behind it"),
        ('name = "Low tide', 1, "The text is not closed. Put the same quotes"),
        ('a = 1\nnotes = """\nx\n\n', 3, "The text is not closed."),
        ("notes = '''\nx\n", 2, "The text is not closed. Put ''' behind it."),
        ('a = ["layer"\nb = 1', 2, "The list is not closed."),
        ("a = {b = 1", 1, "The { is not closed."),
        (r'notes = "C:\quilts"', 1, r"A \ in text between double quotes"),
        (r'notes = "\uZZZZ"', 1, r"A \ in text between double quotes"),
        (r'notes = "\ud800"', 1, r"A \ in text between double quotes"),
        ('name = "a\x07b"', 1, "There is a control character here. Take it out."),
        ("# a\x07b", 1, "There is a control character here. Take it out."),
    ],
)
def test_toml_that_is_not(text: str, line: int, opening: str) -> None:
    with pytest.raises(tomllib.TOMLDecodeError):
        tomllib.loads(text)
    fault = fault_of(text)
    assert (fault.key, fault.line) == ("", line)
    assert fault.sentence.startswith(opening)
    assert fault.sentence in _PLAIN.values()


def test_the_line_is_right_with_line_ends_of_two_characters() -> None:
    assert fault_of(b'name = "x"\r\n\r\nsize = 2 1/2\r\n').line == 3


@pytest.mark.parametrize("text", ["[" * 100_001, b"[" * 100_001, b"\xff" * 100_001])
def test_a_file_too_long_is_refused_before_it_is_read(text: str | bytes) -> None:
    assert fault_of(text) == Fault(
        "",
        None,
        "The file has 100,001 bytes, and a quilt file has at most 100,000. Is this the right file?",
    )


def test_length_is_counted_in_bytes() -> None:
    assert "100,002 bytes" in fault_of("é" * 50_001).sentence


@pytest.mark.parametrize(
    ("data", "line"),
    [
        ("name = 'Ebbe über Sand'".encode("latin-1"), 1),
        ("a = 1\nname = '½'".encode("cp1252"), 2),
        ("name = 'x'".encode("utf-16"), 1),
        (b"\x89PNG\r\n", 1),
    ],
)
def test_bytes_that_are_not_utf_8_are_refused_with_their_line(data: bytes, line: int) -> None:
    assert fault_of(data) == Fault(
        "",
        line,
        "There are characters here that are not written in UTF-8. Open the file in an editor and "
        "save it as UTF-8.",
    )


def test_half_a_character_is_refused() -> None:
    assert fault_of("a = 1\nname = '\ud83d'") == Fault(
        "", 2, "There is half a character here, which no file can hold. Take it out."
    )
