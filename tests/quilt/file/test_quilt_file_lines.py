"""The line found for a key is the line it stands on.

Texts are written a statement at a time, so that every line is known before the walk is asked.
"""

import tomllib
from dataclasses import dataclass, field
from textwrap import dedent

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sewalong.quilt.file.toml_lines import Path, key_lines


def test_the_line_of_every_kind_of_key() -> None:
    lines = key_lines(
        dedent(
            """\
            # [not.a.table]
            name = "a # b"
              seam   =   '1/4'  # = remark
            "quoted key" = 1
            'single.key' = 2
            dotted . "k.2".last = 3
            dotted.other = 4

            [ squares ] # heading
            size = "5"
            deep.er = {in = {side = [1,
               2]}}
            [[border]]
            cut = 1
            [[border]]
            cloth = "x"
            [border.thread]
            colour = "red"
            [[border.label]]
            text = "a"
            [[border.label]]
            text = "b"
            [last.of.all]
            [last]
            key = 1"""
        )
    )
    expected: dict[Path, int] = {
        ("name",): 2,
        ("seam",): 3,
        ("quoted key",): 4,
        ("single.key",): 5,
        ("dotted",): 6,
        ("dotted", "k.2"): 6,
        ("dotted", "k.2", "last"): 6,
        ("dotted", "other"): 7,
        ("squares",): 9,
        ("squares", "size"): 10,
        ("squares", "deep", "er"): 11,
        ("squares", "deep", "er", "in", "side", 1): 11,
        ("border",): 13,
        ("border", 0): 13,
        ("border", 0, "cut"): 14,
        ("border", 1): 15,
        ("border", 1, "cloth"): 16,
        ("border", 1, "thread"): 17,
        ("border", 1, "thread", "colour"): 18,
        ("border", 1, "label", 0): 19,
        ("border", 1, "label", 0, "text"): 20,
        ("border", 1, "label", 1, "text"): 22,
        ("last", "of", "all"): 23,
        ("last",): 24,
        ("last", "key"): 25,
    }
    assert {path: lines.of(path) for path in expected} == expected


def test_what_is_missing_has_the_line_of_the_table_it_belongs_in() -> None:
    lines = key_lines("a = 1\n[layout]\nrows = 3\n[[border]]\n")
    assert lines.of(("layout", "columns")) == 2
    assert lines.of(("border", 0, "cut")) == 4
    assert lines.of(("name",)) is None
    assert lines.of(()) is None


@pytest.mark.parametrize(
    "value",
    [
        '"""\n[x]\nz = 1\n"""',
        '"""x""\n"""',
        '"""a"""""',
        '"""a""""',
        "'''a''''",
        '""""""',
        '"""\\"""\nz = 1"""',
        '"""\\\\"""',
        "'''\n[x]\n'z' = 1\n'''",
        "'''a'''''",
        "''''''",
        "'''\\'''",
        '"a \\" = [ # "',
        '"\\\\"',
        "'a \\'",
        '\'"""\'',
        "\"'''\"",
        '[\n"]", # ] "\n\'[\', """\n]\n""",\n[[1,],\n]]',
        '{a = "}", b = [{c = 1}, {"}" = 2}], d.e = \'{\'}',
        "1979-05-27 07:32:00",
        "+1_000.5e-3",
    ],
)
@pytest.mark.parametrize("equals", [" = ", "="])
@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_a_value_is_stepped_over_whatever_is_in_it(value: str, line_end: str, equals: str) -> None:
    text = f'"a"{equals}{value}\nz = 5\n[t]\n'.replace("\n", line_end)
    assert tomllib.loads(text)["z"] == 5
    lines = key_lines(text)
    assert lines.of(("z",)) == 2 + value.count("\n")
    assert lines.of(("t",)) == 3 + value.count("\n")


def test_a_text_that_is_not_toml_is_not_walked() -> None:
    with pytest.raises(ValueError, match="Line 2 is not TOML"):
        key_lines("a = 1\n?")


def test_an_empty_text_has_no_lines() -> None:
    assert key_lines("").of(("name",)) is None
    assert key_lines("\n# remark").of(("name",)) is None


# A key as it means and as it is written.
KEYS = st.sampled_from(
    [
        ("name", "name"),
        ("name", '"name"'),
        ("k-2_x", "k-2_x"),
        ("5", "5"),
        ("a b", "'a b'"),
        ("a.b", '"a.b"'),
        ("", '""'),
        ('"#=[', '"\\"#=["'),
        ("½", '"\\u00bd"'),
        ("\\", "'\\'"),
        ("size", "size"),
        ("cut", "cut"),
        ("z", "z"),
    ]
)
DOTTED = st.lists(KEYS, min_size=1, max_size=3)
ANY_TEXT = st.text(alphabet="ab =[]{}#'\"\\\n.z", max_size=12)


def _basic(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n")
    return f'"{escaped}"'


def _several_lines(text: str) -> str:
    return '"""' + text.replace("\\", "\\\\").replace('"""', '""\\"') + '\\\n"""'


def _literal(text: str) -> str:
    return "'" + text.replace("'", "").replace("\n", "") + "'"


def _literal_lines(text: str) -> str:
    return "'''\n" + text.replace("'''", "''") + " '''"


SCALARS = st.one_of(
    st.sampled_from(["5", "2.5", "true", "1979-05-27", "-inf"]),
    ANY_TEXT.map(_basic),
    ANY_TEXT.map(_literal),
    ANY_TEXT.map(_several_lines),
    ANY_TEXT.map(_literal_lines),
)
VALUES = st.recursive(
    SCALARS,
    lambda inner: (
        st.lists(inner, max_size=3).map(
            lambda items: "[ # ]\n" + "".join(f"{item}, # '\n" for item in items) + "]"
        )
        | st.lists(SCALARS, max_size=3).map(
            lambda items: (
                "{" + ", ".join(f"k{index} = {item}" for index, item in enumerate(items)) + "}"
            )
        )
    ),
    max_leaves=4,
)
BETWEEN = st.sampled_from(["", "\n", "# [z]\n", "  \n# z = 'x\n", "\t"])


@dataclass
class Written:
    """A text, and the line on which the key of each of its statements stands."""

    text: str = ""
    lines: dict[Path, int] = field(default_factory=dict)
    arrays: dict[Path, int] = field(default_factory=dict)

    @property
    def line(self) -> int:
        return self.text.count("\n") + 1

    def within(self, keys: tuple[str, ...]) -> Path:
        """A heading reaches into the last table so far of every array on its way."""
        path: Path = ()
        for key in keys[:-1]:
            path = (*path, key)
            if path in self.arrays:
                path = (*path, self.arrays[path] - 1)
        return (*path, keys[-1])


@st.composite
def documents(draw: st.DrawFn) -> Written:
    """Headings of tables and of arrays of tables, with statements below them."""
    written = Written()
    table: Path = ()
    for _ in range(draw(st.integers(0, 6))):
        written.text += draw(BETWEEN)
        keys = draw(DOTTED)
        spelled = draw(st.sampled_from([".", " . "])).join(spelling for _, spelling in keys)
        means = tuple(meaning for meaning, _ in keys)
        match draw(st.sampled_from(["statement", "statement", "table", "array"])):
            case "statement":
                written.lines.setdefault(table + means, written.line)
                written.text += f"{spelled} = {draw(VALUES)}"
            case "table":
                table = written.within(means)
                written.lines[table] = written.line
                written.text += f"[ {spelled} ]"
            case _:
                array = written.within(means)
                index = written.arrays.get(array, 0)
                written.arrays[array] = index + 1
                table = (*array, index)
                written.lines[table] = written.line
                written.text += f"[[{spelled}]]"
        written.text += draw(st.sampled_from(["\n", " # z = 1 ]]\n"]))
    try:
        tomllib.loads(written.text)
    except tomllib.TOMLDecodeError:
        assume(False)
    return written


@settings(deadline=None)
@given(documents())
def test_the_line_found_is_the_line_written_on(written: Written) -> None:
    lines = key_lines(written.text)
    for path, line in written.lines.items():
        assert lines.of(path) == line, (written.text, path)


def paths_of(value: object, path: Path = ()) -> list[Path]:
    """Every path in a document, tables and lists of tables included."""
    found: list[Path] = [path] if path else []
    if isinstance(value, dict):
        for key, inner in value.items():
            found += paths_of(inner, (*path, key))
    if isinstance(value, list):
        for index, inner in enumerate(value):
            found += paths_of(inner, (*path, index))
    return found


def holds(document: object, path: Path) -> bool:
    return path in paths_of(document)


@settings(max_examples=60, deadline=None)
@given(documents())
def test_the_text_before_that_line_does_not_hold_the_key_and_with_it_it_does(
    written: Written,
) -> None:
    text = written.text.split("\n")
    found = key_lines(written.text)
    for path in paths_of(tomllib.loads(written.text)):
        line = found.of(path)
        assert line is not None
        before = "\n".join(text[: line - 1])
        # A table may come in with [a.b] and have its own heading [a] only later.
        if written.lines.get(path) != line:
            assert not holds(tomllib.loads(before), path), (written.text, path)
        assert holds(_shortest_from(text, line), path), (written.text, path)


def _shortest_from(text: list[str], line: int) -> dict[str, object]:
    """The document that ends with the statement beginning on `line`."""
    for end in range(line, len(text) + 1):
        try:
            return tomllib.loads("\n".join(text[:end]))
        except tomllib.TOMLDecodeError:
            continue
    raise AssertionError("No beginning of the text is TOML.")
