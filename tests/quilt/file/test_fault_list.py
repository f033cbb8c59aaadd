"""The faults of one file: gathered as they are found, told in the order of their lines."""

import pytest

from sewalong.quilt.file.faults import FAULTS_AT_MOST, Fault, FaultList, QuiltFileFaults, dotted

TEXT = "name = 5\n[layout]\nrows = 0\n"


def told(faults: FaultList) -> list[Fault]:
    with pytest.raises(QuiltFileFaults) as caught:
        faults.refuse_if_any()
    return list(caught.value.faults)


def test_nothing_gathered_is_nothing_refused() -> None:
    FaultList(TEXT).refuse_if_any()


def test_the_same_fault_found_twice_is_told_once_and_lines_stand_in_order() -> None:
    faults = FaultList(TEXT)
    faults.add(("method",), "It is missing.")
    faults.add(("layout", "rows"), "Too few.")
    faults.add(("name",), "No text.")
    faults.add(("layout", "rows"), "Too few.")
    assert told(faults) == [
        Fault("name", 1, "No text."),
        Fault("layout.rows", 3, "Too few."),
        Fault("method", None, "It is missing."),
    ]


def test_what_is_missing_in_a_faulty_place_is_not_told_besides() -> None:
    faults = FaultList(TEXT)
    faults.add(("layout",), "No table.")
    faults.missing(("layout",), "Missing.")
    faults.missing(("layout", "columns"), "Missing.")
    faults.missing(("border", 0, "cut"), "Missing.")
    faults.missing(("border", 0), "Missing.")
    assert [fault.key for fault in told(faults)] == ["layout", "border[1].cut", "border[1]"]


def test_as_many_as_are_listed_are_not_too_many() -> None:
    faults = FaultList(TEXT)
    for number in range(FAULTS_AT_MOST):
        faults.add((f"k{number}",), "Unknown.")
    assert len(told(faults)) == FAULTS_AT_MOST == 100
    faults.add(("one more",), "Unknown.")
    *listed, last = told(faults)
    assert len(listed) == FAULTS_AT_MOST
    assert last.sentence == "There is 1 more fault than these. Is this a quilt file?"


@pytest.mark.parametrize(
    ("key", "written"),
    [
        ("k" * 60, "k" * 60),
        ("k" * 61, f'"{"k" * 60}..."'),
        ("é" * 60, f'"{"é" * 60}"'),
        ("é" * 61, f'"{"é" * 60}..."'),
        ("", '""'),
        ("a b", '"a b"'),
        ('\\"', '"\\\\\\""'),
        ("\x1b", '"\\U0000001b"'),
    ],
)
def test_a_key_is_written_as_it_could_stand_in_the_file_and_cut_where_it_is_long(
    key: str, written: str
) -> None:
    assert dotted((key,)) == written
    assert dotted(("border", 1, key)) == f"border[2].{written}"
