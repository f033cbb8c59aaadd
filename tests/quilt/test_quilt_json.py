"""A quilt as plain values and JSON: nothing is lost there and back, nothing odd gets in."""

import json
import re
import subprocess
import sys
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.lengths import LONGEST, Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.quilt.choices import CORNERS, JOINS, Choices, Fabric
from sewalong.quilt.json_codec import (
    quilt_from_dict,
    quilt_from_json,
    quilt_to_dict,
    quilt_to_json,
)
from sewalong.quilt.quilt import Border, Lot, Quilt, StartPile, Target, pile_of_lots
from sewalong.quilt.rules import FINISHING_STAGES
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint
from sewalong.quilt.size import Size
from sewalong.quilt.web import JOINED, why_no_web

QUILT = Quilt(
    name="Low tide",
    method_id="rail-fence",
    unit=Unit.CM,
    seam=Fraction(1, 4),
    starts=(
        StartPile("dark-strip", Fraction(100, 127), 40, packs=2, length=Fraction(40)),
        StartPile("light-strip", Fraction(5, 2), 9999),
    ),
    target=Target(9, 10),
    borders=(Border(Fraction(5, 2), "[deep] sea"),),
    finishing=("layer", "bind"),
    notes="Two\nlines.\t½",
)

PLAIN = {
    "name": "Low tide",
    "method": "rail-fence",
    "unit": "cm",
    "seam": "1/4",
    "starts": [
        {"pile": "dark-strip", "size": "100/127", "count": 40, "packs": 2, "length": "40"},
        {"pile": "light-strip", "size": "5/2", "count": 9999, "packs": None, "length": None},
    ],
    "target": {"rows": 9, "columns": 10},
    "borders": [{"cut": "5/2", "cloth": "[deep] sea"}],
    "finishing": ["layer", "bind"],
    "notes": "Two\nlines.\t½",
}

NAMES = st.text(
    st.characters(exclude_categories=("Cc", "Cs", "Zl", "Zp", "Cf")), min_size=1, max_size=80
).filter(lambda name: bool(name.strip()))
LENGTHS = st.fractions(min_value=Fraction(1, 10**6), max_value=LONGEST)
PIECES = st.integers(1, 9999)
LOTS = st.lists(
    st.builds(Lot, LENGTHS, st.integers(1, 2000), st.none() | st.integers(1, 2000)),
    min_size=2,
    max_size=4,
    unique_by=lambda lot: lot.size,
)
STARTS = st.lists(
    st.builds(StartPile, NAMES, LENGTHS, PIECES, st.none() | PIECES, st.none() | LENGTHS)
    | st.builds(pile_of_lots, NAMES, LOTS),
    min_size=1,
    max_size=3,
    unique_by=lambda start: start.pile,
).map(tuple)
COLOURS = st.none() | st.from_regex("#[0-9a-f]{6}", fullmatch=True)
FABRICS = st.lists(
    st.builds(Fabric, st.sampled_from("ABCDEFGHZ"), NAMES, COLOURS),
    max_size=4,
    unique_by=lambda fabric: fabric.letter,
).map(lambda fabrics: tuple(sorted(fabrics, key=lambda fabric: fabric.letter)))
METRES = st.none() | st.integers(1, 20_000)
CHOICES = st.builds(
    Choices,
    usable=st.just(Fraction(40)) | LENGTHS,
    margin=st.just(Fraction(0)) | LENGTHS,
    binding=LENGTHS,
    binding_ends=st.just(Fraction(0)) | LENGTHS,
    joins=st.sampled_from(JOINS),
    corners=st.sampled_from(CORNERS),
    spool_metres=METRES,
    bobbin_metres=METRES,
    own_seam=st.none() | LENGTHS,
)
SEAMS = st.fractions(min_value=Fraction(1, 10**6), max_value=1)
SIDES = st.fractions(min_value=Fraction(5, 2), max_value=LONGEST)
SASHINGS = st.builds(
    Sashing,
    SIDES,
    NAMES,
    COLOURS,
    st.booleans(),
    st.none() | st.builds(Cornerstones, NAMES, COLOURS),
)


def _no_web(quilt: Quilt) -> str:
    return why_no_web(quilt.setting, quilt.target.rows, quilt.target.columns)


QUILTS: st.SearchStrategy[Quilt] = (
    st.builds(
        Quilt,
        name=NAMES,
        method_id=NAMES | st.sampled_from(method_ids()),
        unit=st.sampled_from(Unit),
        seam=SEAMS,
        starts=STARTS,
        target=st.builds(Target, st.integers(1, 200), st.integers(1, 200)),
        borders=st.lists(st.builds(Border, LENGTHS, NAMES, COLOURS), max_size=12).map(tuple),
        finishing=st.lists(st.sampled_from(FINISHING_STAGES), unique=True).map(tuple),
        notes=st.text(
            st.characters(exclude_categories=("Cc", "Cs", "Zl", "Zp", "Cf")), max_size=99
        ),
        fabrics=FABRICS,
        choices=st.just(Choices()) | CHOICES,
        trim=st.none() | st.builds(Size, SIDES, SIDES),
        setting=st.none()
        | SASHINGS
        | st.builds(SetOnPoint, NAMES, COLOURS, st.just(Fraction(0)) | LENGTHS),
        method_text=st.none() | st.lists(NAMES | st.sampled_from(["", "\t"])).map("\n".join),
        joined=st.sampled_from(JOINED),
    )
    .filter(lambda quilt: not quilt.is_web or not _no_web(quilt))
    .filter(lambda quilt: quilt.sashing is None or not quilt.sashing.why_not(quilt.target.columns))
)


def test_a_quilt_written_plainly() -> None:
    assert quilt_to_dict(QUILT) == PLAIN
    assert quilt_from_dict(PLAIN) == QUILT


@settings(max_examples=40, deadline=None)
@given(QUILTS)
def test_there_and_back_by_way_of_json_is_the_same_quilt(quilt: Quilt) -> None:
    assert quilt_from_dict(quilt_to_dict(quilt)) == quilt
    assert quilt_from_dict(json.loads(json.dumps(quilt_to_dict(quilt)))) == quilt
    assert quilt_from_json(quilt_to_json(quilt)) == quilt
    assert quilt_from_json(quilt_to_json(quilt).decode()) == quilt


@settings(max_examples=40, deadline=None)
@given(QUILTS)
def test_the_json_is_that_of_the_first_version(quilt: Quilt) -> None:
    """Which wrote it with the standard library; a record is compared byte by byte."""
    assert quilt_to_json(quilt).decode() == json.dumps(quilt_to_dict(quilt), ensure_ascii=False)


def test_what_was_not_given_is_not_written() -> None:
    assert list(quilt_to_dict(QUILT)) == list(PLAIN)
    own = replace(QUILT, choices=Choices(margin=Fraction(0), spool_metres=500))
    assert quilt_to_dict(own)["choices"] == {"margin": "0", "spool_metres": 500}
    trimmed = replace(QUILT, trim=Size(Fraction(9, 2), Fraction(5, 2)))
    assert quilt_to_dict(trimmed) == {**PLAIN, "trim": {"width": "9/2", "length": "5/2"}}


@pytest.mark.parametrize(
    ("trim", "sentence"),
    [
        ({"width": "9/2", "length": "1/2"}, "trim: nothing but seams would be left of a unit."),
        ({"width": "9/2"}, "trim.length: this is missing."),
        ({"width": "9/2", "length": "0"}, "trim.length: This must be a fraction of an inch"),
        ("9/2", "trim: this must be a table of keys and values."),
    ],
)
def test_a_trim_that_no_unit_can_have_is_not_taken_in(trim: object, sentence: str) -> None:
    with pytest.raises(ValueError, match=sentence):
        quilt_from_dict({**PLAIN, "trim": trim})


SASHED: dict[str, object] = {"kind": "sashed", "cut": "2", "cloth": "oat", "frame": False}


def test_sashes_written_plainly() -> None:
    sashing = Sashing(Fraction(2), "oat")
    assert quilt_to_dict(replace(QUILT, setting=sashing)) == {**PLAIN, "setting": SASHED}
    stones = {"cloth": "coral", "colour": "#e2725b"}
    whole = replace(
        sashing, colour="#e3d9c3", frame=True, cornerstones=Cornerstones("coral", "#e2725b")
    )
    assert quilt_to_dict(replace(QUILT, setting=whole))["setting"] == {
        "kind": "sashed",
        "cut": "2",
        "cloth": "oat",
        "frame": True,
        "colour": "#e3d9c3",
        "cornerstones": stones,
    }


def test_a_web_written_plainly() -> None:
    web = replace(QUILT, joined="web")
    assert quilt_to_dict(web) == {**PLAIN, "joined": "web"}
    assert quilt_from_dict({**PLAIN, "joined": "web"}) == web


@pytest.mark.parametrize(
    ("parts", "sentence"),
    [
        ({"joined": "rows"}, 'joined: this is left out where it is "rows".'),
        ({"joined": "net"}, "joined: 'net' is not one of these. Write one of"),
        ({"joined": "web", "target": {"rows": 1, "columns": 9}}, "joined: these units are not put"),
        ({"joined": "web", "setting": SASHED}, "joined: these units are not put together as a web"),
    ],
)
def test_a_web_that_cannot_be_is_not_taken_in(parts: dict[str, object], sentence: str) -> None:
    with pytest.raises(ValueError, match=sentence):
        quilt_from_dict({**PLAIN, **parts})


@pytest.mark.parametrize(
    ("setting", "sentence"),
    [
        ({**SASHED, "cut": "1/2"}, "setting.cut: nothing but seams would be left of a sash."),
        ({**SASHED, "kind": "straight"}, 'setting.kind: This must be "sashed" or "on point".'),
        ({**SASHED, "frame": 1}, "setting.frame: This must be true or false"),
        ({**SASHED, "colour": "#E3D9C3"}, "setting.colour: This must be in small letters"),
        ({"kind": "sashed"}, "setting.cloth: this is missing."),
        ({"kind": "sashed", "cloth": "oat", "frame": True}, "setting.cut: this is missing."),
        ({"kind": "sashed", "cloth": "oat", "cut": "2"}, "setting.frame: this is missing."),
        ({**SASHED, "larger": "1"}, "setting.larger: units set sashed have none."),
        ({**SASHED, "kind": "on point"}, "setting.cut: units set on point have none."),
        ("sashed", "setting: this must be a table of keys and values."),
        (
            {**SASHED, "cornerstones": {"cloth": ""}},
            "setting.cornerstones.cloth: This is empty.",
        ),
    ],
)
def test_a_setting_that_no_top_can_have_is_not_taken_in(setting: object, sentence: str) -> None:
    with pytest.raises(ValueError, match=re.escape(sentence)):
        quilt_from_dict({**PLAIN, "setting": setting})


def test_cornerstones_want_sashes_that_meet() -> None:
    setting: dict[str, object] = {**SASHED, "cornerstones": {"cloth": "coral"}}
    one: dict[str, object] = {**PLAIN, "target": {"rows": 9, "columns": 1}, "setting": setting}
    with pytest.raises(ValueError, match=r"^setting\.cornerstones: in one column"):
        quilt_from_dict(one)
    quilt_from_dict({**one, "setting": {**setting, "frame": True}})


def test_a_method_file_is_kept_line_by_line() -> None:
    own = replace(QUILT, method_text='id = "x"\n\n# ½\n')
    assert quilt_to_dict(own) == {**PLAIN, "method_text": ['id = "x"', "", "# ½", ""]}
    assert quilt_from_dict(quilt_to_dict(own)).method_text == 'id = "x"\n\n# ½\n'


@pytest.mark.parametrize(
    ("lines", "sentence"),
    [
        ([], "This must be a list of texts, the lines of a method file"),
        (["a", 1], "This must be a list of texts"),
        ("a", "This must be a list of texts"),
        (None, "This must be a list of texts"),
        (["a\nb"], "One of its lines has a line end in it"),
        (["a\x1b"], "This has a control character"),
        (["a\u202e"], "This has a control character"),
        (["a" * 25_000] * 2, "This has more than 50,000 characters"),
        ([""] * 50_001, "This has more than 50,000 characters"),
    ],
)
def test_what_is_no_method_file_is_not_taken_in(lines: object, sentence: str) -> None:
    with pytest.raises(ValueError, match=f"^method_text: {sentence}"):
        quilt_from_dict({**PLAIN, "method_text": lines})


@pytest.mark.parametrize("text", ["", "{", "NaN", '{"name": "\\ud800"}', "[" * 100_000])
def test_what_is_no_json_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"^quilt: this is not JSON \(.*\)\.$"):
        quilt_from_json(text)


def test_half_a_character_is_refused_wherever_it_stands() -> None:
    for place in [("name",), ("notes",), ("seam",), ("unit",), ("starts", 0), ("target", "rows")]:
        with pytest.raises(ValueError, match=r"^[a-z]+.*: .*\.$"):
            quilt_from_dict(spoiled(place, "\ud800"))


def test_a_method_this_version_does_not_have_is_kept() -> None:
    later = replace(QUILT, method_id="from-a-later-version")
    assert quilt_from_dict(quilt_to_dict(later)) == later


JUNK = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner),
    max_leaves=5,
)
PLACES: list[tuple[str | int, ...]] = [
    *((key,) for key in PLAIN),
    ("starts", 0),
    *(("starts", 1, key) for key in ("pile", "size", "count", "packs", "length")),
    ("target", "rows"),
    ("target", "columns"),
    ("borders", 0),
    ("borders", 0, "cut"),
    ("borders", 0, "cloth"),
    ("finishing", 0),
]


def spoiled(place: tuple[str | int, ...], value: object) -> Any:
    plain = json.loads(json.dumps(PLAIN))
    holder = plain
    for part in place[:-1]:
        holder = holder[part]
    holder[place[-1]] = value
    return plain


@settings(deadline=None)
@given(st.sampled_from(PLACES), JUNK)
def test_whatever_stands_there_is_taken_as_it_is_or_refused(
    place: tuple[str | int, ...], value: object
) -> None:
    plain = spoiled(place, value)
    try:
        quilt = quilt_from_dict(plain)
    except ValueError as error:
        assert str(error).endswith(".")  # noqa: PT017
    else:
        assert quilt_to_dict(quilt) == plain


@pytest.mark.parametrize(
    ("place", "value", "sentence"),
    [
        (("seam",), 0.25, 'seam: This must be a fraction of an inch as text, such as "5/2".'),
        (("seam",), "1/4 in", 'seam: This must be a fraction of an inch as text, such as "5/2".'),
        (("seam",), "0", 'seam: This must be a fraction of an inch as text, such as "5/2".'),
        (("seam",), "-1", 'seam: This must be a fraction of an inch as text, such as "5/2".'),
        (("seam",), "1/0", 'seam: This must be a fraction of an inch as text, such as "5/2".'),
        (("seam",), "9" * 500, 'seam: This must be a fraction of an inch as text, such as "5/2".'),
        (("seam",), "2/4", 'seam: This must be in lowest terms: "1/2".'),
        (("seam",), "1001", "seam: This is longer than 1000 in."),
        (
            ("starts", 1, "count"),
            True,
            "starts[2].count: This must be a whole number from 1 to 9,999, without quotes.",
        ),
        (("starts", 1, "count"), 0, "starts[2].count: This must be at least 1, and at most 9,999."),
        (
            ("starts", 0, "packs"),
            10_000,
            "starts[1].packs: This is more than 9,999. Write a whole number from 1 to 9,999.",
        ),
        (("starts", 0), [], "starts[1]: this must be a table of keys and values."),
        (("starts",), [], "starts: a quilt begins with at least one pile."),
        (("starts",), {}, "starts: This must be a list."),
        (("starts", 1, "pile"), "dark-strip", "starts: a pile is listed twice."),
        (("starts", 1, "colour"), "red", "starts[2]: the key 'colour' is not known."),
        (("borders",), PLAIN["borders"] * 13, "borders: a quilt has at most 12."),  # type: ignore[operator]
        (
            ("unit",),
            "mm",
            'unit: \'mm\' is not a unit to work in. Write "inch" or "cm".',
        ),
        (
            ("finishing",),
            ["bind", "bind"],
            'finishing: "bind" stands here more than once. Write each stage once.',
        ),
        (("seam",), "1/2/3", 'seam: This must be a fraction of an inch as text, such as "5/2".'),
        (
            ("seam",),
            "1/" + "9" * 201,
            'seam: This must be a fraction of an inch as text, such as "5/2".',
        ),
        (
            ("starts", 0, "size"),
            "0",
            'starts[1].size: This must be a fraction of an inch as text, such as "5/2".',
        ),
        (
            ("starts", 0, "length"),
            "05",
            'starts[1].length: This must be a fraction of an inch as text, such as "5/2".',
        ),
        (
            ("starts", 0, "count"),
            2.0,
            "starts[1].count: This must be a whole number from 1 to 9,999, without quotes.",
        ),
        (("starts", 0, "packs"), 0, "starts[1].packs: This must be at least 1, and at most 9,999."),
        (
            ("target", "rows"),
            201,
            "target.rows: This is more than 200. Write a whole number from 1 to 200.",
        ),
        (
            ("borders", 0, "cloth"),
            " ",
            "borders[1].cloth: This is empty. Write a name of 1 to 80 characters.",
        ),
        (
            ("finishing", 1),
            "fold",
            "finishing: 'fold' is not a finishing stage. "
            'The finishing stages are "layer", "quilt", "bind".',
        ),
        (
            ("finishing", 1),
            2,
            'finishing: This must be a list between [ and ] of any of "layer", "quilt", "bind".',
        ),
        (
            ("choices",),
            {"spool_metres": None},
            "choices.spool_metres: This must be a whole number from 1 to 20,000, without quotes.",
        ),
        (
            ("choices",),
            {"usable": "0"},
            'choices.usable: This must be a fraction of an inch as text, such as "5/2".',
        ),
        (("version",), 2, "quilt: the key 'version' is not known."),
        (("name",), "", "name: This is empty. Write a name of 1 to 80 characters."),
        (("target",), None, "target: this must be a table of keys and values."),
    ],
)
def test_what_is_refused(place: tuple[str | int, ...], value: object, sentence: str) -> None:
    with pytest.raises(ValueError, match=r"\.$") as caught:
        quilt_from_dict(spoiled(place, value))
    assert str(caught.value) == sentence


@pytest.mark.parametrize(
    ("key", "table"),
    [
        ("target", {"rows": 1, "columns": 1}),
        ("borders", [{"cut": "1", "cloth": "sea"}]),
        ("fabrics", [{"letter": "A", "name": "sea"}]),
        ("choices", {"usable": "42"}),
    ],
)
def test_a_key_of_a_later_version_is_refused_in_every_table(key: str, table: Any) -> None:
    plain = {**PLAIN, key: table}
    assert quilt_to_dict(quilt_from_dict(plain)) == plain
    (table[0] if isinstance(table, list) else table)["later"] = 1
    with pytest.raises(ValueError, match=rf"^{key}.*: the key 'later' is not known\.$"):
        quilt_from_dict(plain)


def test_the_most_there_can_be_is_taken() -> None:
    longest = f"{10**199 + 1}/{10**199}"
    for place, value in [
        (("borders",), [{"cut": "1", "cloth": "sea"}] * 12),
        (("seam",), longest),
        (("seam",), "1000"),
        (("target", "rows"), 200),
        (("starts", 0, "count"), 9999),
    ]:
        plain = spoiled(place, value)
        assert quilt_to_dict(quilt_from_dict(plain)) == plain


@pytest.mark.parametrize("key", list(PLAIN))
def test_a_missing_key_is_refused_by_name(key: str) -> None:
    plain = {name: value for name, value in PLAIN.items() if name != key}
    with pytest.raises(ValueError, match=f"^{key}: this is missing.$"):
        quilt_from_dict(plain)


@pytest.mark.parametrize("make", [list, str, lambda plain: None])
def test_what_is_no_dictionary_is_refused(make: Callable[[object], object]) -> None:
    with pytest.raises(ValueError, match=r"^quilt: this must be a table of keys and values.$"):
        quilt_from_dict(make(PLAIN))


def test_reading_a_plan_loads_neither_geometry_nor_a_reader_of_toml() -> None:
    script = "import sewalong.quilt.json_codec, sys; print(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    loaded = set(done.stdout.split())
    assert "sewalong.quilt.quilt" in loaded
    assert not loaded & {"sewalong.piecing.geometry", "sewalong.piecing.definition"}
    assert not loaded & {"tomllib", "difflib", "pkgutil", "importlib.resources"}
