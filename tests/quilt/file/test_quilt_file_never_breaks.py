"""Whatever is done to a quilt file, it is read as a whole quilt or refused in sentences."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.quilt.file.reader import Fault, QuiltFileFaults, read_quilt, read_quilt_bytes
from sewalong.quilt.quilt import Quilt

SAMPLE = """\
name = "Fly home"
method = "flying-geese-four"
unit = "inch"
seam = "1/4"
[layout]
rows = 4
columns = 3
[squares]
size = "5 1/4"
count = 12
[strips]
width = 2
length = 40
count = 4
[[more]]
pile = "small-square"
size = "2 7/8"
packs = 2
in_a_pack = 24
[[more]]
pile = "light-strip"
width = 2
count = 4
[[border]]
cut = 3
cloth = "sand"
[finishing]
stages = ["bind"]
"""
LINES = SAMPLE.splitlines()
METHODS = ["plain-squares", "flying-geese-four", "rail-fence", "four-patch-strips", "geese"]
VALUES = st.one_of(
    st.sampled_from(
        ["1", "0", "-3", "5.25", "nan", "true", "[]", "{}", "[{}]", '[[1], {a = "x"}]', '"2 1/2"']
    ),
    st.sampled_from(['"light-strip"', '"medium-strip"', '"large-square"', '"7 cm"', '"cm"', '""']),
    st.integers(-5, 2000).map(str),
    st.fractions(0, 60, max_denominator=16).map(lambda number: f'"{number}"'),
)


@st.composite
def altered(draw: st.DrawFn) -> str:
    """The sample with lines left out and values and headings exchanged."""
    lines: list[str] = []
    dropped = draw(st.sets(st.integers(2, len(LINES) - 1), max_size=14))
    spoiled = draw(st.dictionaries(st.integers(2, len(LINES) - 1), VALUES, max_size=4))
    for number, line in enumerate(LINES):
        if number in dropped:
            continue
        if line.startswith("method"):
            line = f'method = "{draw(st.sampled_from(METHODS))}"'
        elif number in spoiled and "=" in line:
            line = f"{line.split('=')[0]}= {spoiled[number]}"
        lines.append(line)
    return "\n".join(lines)


def quilt_or_faults(text: str) -> Quilt | tuple[Fault, ...]:
    try:
        return read_quilt(text)
    except QuiltFileFaults as refused:
        return refused.faults


@settings(max_examples=150, deadline=None)
@given(altered())
def test_an_altered_file_is_a_whole_quilt_or_a_list_of_faults(text: str) -> None:
    read = quilt_or_faults(text)
    if isinstance(read, Quilt):
        assert [start.pile for start in read.starts] == list(read.method.starts)
        return
    assert len(set(read)) == len(read) > 0
    lines = text.split("\n")
    for fault in read:
        assert fault.sentence.isprintable()
        if fault.line is not None and fault.key:
            # The key itself, or for a missing one the heading it belongs below.
            names = re.findall(r"[a-z_]+", fault.key)[-2:]
            assert any(name in lines[fault.line - 1] for name in names), fault


@given(st.binary(max_size=40))
def test_any_bytes_are_refused_in_sentences(data: bytes) -> None:
    with pytest.raises(QuiltFileFaults):
        read_quilt_bytes(data)
