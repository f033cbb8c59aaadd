"""A quilt file that names a method file of its own: read with it, and its faults with the quilt's."""

from __future__ import annotations

import pytest

from sewalong.piecing.catalogue import method_ids, written_for
from sewalong.piecing.method import MethodKey
from sewalong.piecing.method_files import text_of
from sewalong.quilt.derived import derived
from sewalong.quilt.file.reader import Fault, QuiltFileFaults, read_quilt
from sewalong.quilt.quilt import Quilt
from tests.quilt.file.own_method import OWN, changed, line_of

QUILT = """\
name = "Turnstile"
method_file = "turned twos.toml"
[squares]
size = "2 1/2"
count = 80
[layout]
rows = 4
columns = 5
"""


def with_method(text: str, method: str | Exception = OWN) -> Quilt:
    """The quilt in `text`; its method file holds `method`, or cannot be read."""

    def load(name: str) -> bytes:
        assert name == "turned twos.toml"
        if isinstance(method, Exception):
            raise method
        return method.encode()

    return read_quilt(text, load)


def faults_of(text: str, method: str | Exception = OWN) -> tuple[Fault, ...]:
    with pytest.raises(QuiltFileFaults) as error:
        with_method(text, method)
    return error.value.faults


def test_a_quilt_goes_by_the_method_file_it_names() -> None:
    quilt = with_method(QUILT)
    assert (quilt.method_id, quilt.method_text) == ("turned-twos", OWN)
    assert quilt.method.stage("sew-fours").takes[0].count == 2
    assert derived(quilt).per_unit == {"square": 4}


def test_what_the_program_says_of_its_own_methods_is_kept_with_every_quilt_too() -> None:
    quilt = read_quilt(changed(QUILT, 'method_file = "turned twos.toml"', 'method = "four-patch"'))
    assert quilt.method_text == text_of("four-patch")
    assert quilt.written_method.piles == written_for(MethodKey("four-patch")).piles


@pytest.mark.parametrize("id", method_ids())
def test_a_method_of_ones_own_may_be_called_as_one_of_the_programs(id: str) -> None:
    own = changed(OWN, 'id = "turned-twos"', f'id = "{id}"')
    mine = with_method(QUILT, own)
    theirs = text_of(id)
    assert mine.method_id == id
    assert [stage.id for stage in mine.method.stages] == ["sew-twos", "sew-fours", "press"]
    assert mine.method.name == "Turned twos"
    assert mine.written_method.trim_stage is None
    assert written_for(MethodKey(id, text=theirs)).name == written_for(MethodKey(id)).name
    assert written_for(MethodKey(id)).name != "Turned twos"


def test_faults_of_the_method_file_come_out_with_those_of_the_quilt_and_name_it() -> None:
    own = changed(OWN, 'station = "iron"', 'station = "sofa"')
    own = changed(own, 'name = "Turned twos"', "")
    quilt = changed(QUILT, "rows = 4", "rows = 0")
    faults = faults_of(quilt, own)
    assert [(fault.line, fault.key) for fault in faults] == [
        (2, "method_file"), (2, "method_file"), (7, "layout.rows"),
    ]  # fmt: skip
    assert {fault.sentence.partition(": ")[0] for fault in faults[:2]} == {
        "In turned twos.toml, name",
        f"In turned twos.toml, line {line_of(own, 'sofa')}, stages[3].station",
    }


def test_a_method_file_that_cannot_be_read_is_a_fault_in_the_words_of_whoever_could_not() -> None:
    [fault] = faults_of(QUILT, ValueError("There is no file turned twos.toml."))
    assert str(fault) == "line 2, method_file: There is no file turned twos.toml."
    with pytest.raises(QuiltFileFaults, match="No method file can be read here"):
        read_quilt(QUILT)


@pytest.mark.parametrize("method", ["", "[[", "\x00", 'id = "x"', OWN + "#" * 60_000])
def test_what_is_no_method_file_is_a_fault(method: str) -> None:
    for fault in faults_of(QUILT, method):
        assert fault.line == 2
        assert fault.sentence.startswith("In turned twos.toml")
        assert str(fault).isprintable()


def test_bytes_that_are_no_text_are_a_fault() -> None:
    with pytest.raises(
        QuiltFileFaults, match=r"In turned twos\.toml, line 1: There are characters"
    ):
        read_quilt(QUILT, lambda name: b"\xff")


def test_a_method_and_a_method_file_are_not_given_both() -> None:
    [fault] = faults_of(changed(QUILT, "[squares]", 'method = "four-patch"\n[squares]'))
    assert str(fault) == (
        "line 2, method_file: The method is given twice. Keep method or method_file."
    )


@pytest.mark.parametrize("name", ['""', '" "', "3", '"a\\u001b[2J"', f'"{"x" * 201}"', "[]"])
def test_a_name_that_can_be_no_files_is_the_only_fault(name: str) -> None:
    [fault] = faults_of(changed(QUILT, '"turned twos.toml"', name))
    assert (fault.line, fault.key) == (2, "method_file")


def test_sizes_that_the_method_cannot_be_sewn_at_are_a_fault_of_the_sizes() -> None:
    [fault] = faults_of(changed(QUILT, '"2 1/2"', '"1/2"'))
    assert fault.key == "squares.size"


def test_a_quilt_under_way_goes_by_the_method_it_began_with() -> None:
    begun = with_method(QUILT)
    edited = changed(QUILT, "rows = 4", "rows = 3")
    for method in ('method = "turned-twos"', 'method_file = "turned twos.toml"'):
        text = changed(edited, 'method_file = "turned twos.toml"', method)
        assert read_quilt(text, kept=begun.method_key).method_text == OWN
    text = changed(edited, 'method_file = "turned twos.toml"', 'method = "four-patch"')
    assert read_quilt(text, kept=begun.method_key).method_id == "four-patch"
