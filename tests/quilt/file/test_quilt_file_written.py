"""A quilt written out as a quilt file reads back as the same quilt."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.lengths import CENTIMETRE, Unit
from sewalong.piecing.catalogue import method_ids
from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.file.writer import quilt_file
from sewalong.quilt.json_codec import quilt_from_json, quilt_to_json
from sewalong.quilt.plan_words import differences
from sewalong.quilt.quilt import Border, Lot, Quilt, pile_of_lots
from sewalong.quilt.size import Size
from sewalong.service.demo_quilts import demo_folder
from tests.progress.building import a_quilt, suited

NAMES = (
    st.text(
        st.characters(exclude_categories=("Cc", "Cs", "Zl", "Zp", "Cf")), min_size=1, max_size=30
    )
    .map(str.strip)
    .filter(bool)
)
NOTES = st.text(st.characters(exclude_categories=("Cs", "Zl", "Zp", "Cf", "Cc"))).map(str.strip)
WIDTHS = st.fractions(1, 20, max_denominator=64) | st.integers(20, 400).map(
    lambda n: n * CENTIMETRE / 10
)
COLOURS = st.none() | st.from_regex("#[0-9a-f]{6}", fullmatch=True)


@given(
    method=st.sampled_from(method_ids()),
    unit=st.sampled_from(Unit),
    name=NAMES,
    notes=NOTES | st.just('Two\nlines, a "quote", a \\ and 🧵'),
    borders=st.lists(st.builds(Border, WIDTHS, NAMES, COLOURS), max_size=4).map(tuple),
    finishing=st.sampled_from(((), ("layer",), ("layer", "quilt", "bind"))),
    fabrics=st.just(()) | st.just((Fabric("A", "[red]"), Fabric("C", 'oat "2"', "#f3ead8"))),
    choices=st.builds(
        Choices,
        usable=WIDTHS,
        margin=st.just(Fraction(0)) | WIDTHS,
        joins=st.sampled_from(("diagonal", "straight")),
        spool_metres=st.none() | st.integers(1, 20_000),
        own_seam=st.none() | st.just(Fraction(17, 64)),
    ),
)
@settings(max_examples=60, deadline=None)
def test_what_is_written_reads_back(method: str, unit: Unit, **parts: object) -> None:
    quilt = replace(suited(a_quilt(method, pieces=40)), unit=unit, **parts)
    assert read_quilt(quilt_file(quilt), kept=quilt.method_key) == quilt


@pytest.mark.parametrize("trim", [Fraction(6), 14 * CENTIMETRE, Fraction(49, 9)])
def test_lots_packs_and_trim_read_back(trim: Fraction) -> None:
    lots = (Lot(Fraction(9, 2), 84, 2), Lot(Fraction(5), 11), Lot(Fraction(11, 2), 7, 2))
    quilt = replace(
        a_quilt(),
        starts=(pile_of_lots("square", lots),),
        trim=Size.square(min(trim, Fraction(5))),
    )
    again = read_quilt(quilt_file(quilt), kept=quilt.method_key)
    # Seven pieces in two packs cannot be said by packs alike.
    uneven = (*lots[:2], Lot(Fraction(11, 2), 7))
    assert again == replace(quilt, starts=(pile_of_lots("square", uneven),))


@pytest.mark.parametrize(
    ("seam", "unit", "said"),
    [
        (Fraction(5, 16), Unit.INCH, "5/16 in"),
        (Fraction(1, 2), Unit.INCH, "1/2 in"),
        (3 * CENTIMETRE / 4, Unit.CM, "0.75 cm"),
        (2 * CENTIMETRE / 3, Unit.CM, "2/3 cm"),
    ],
)
def test_lengths_are_written_as_a_person_does(seam: Fraction, unit: Unit, said: str) -> None:
    assert f'seam = "{said}"' in quilt_file(replace(a_quilt(), seam=seam, unit=unit))


@pytest.mark.parametrize("path", sorted(demo_folder().glob("*.toml")), ids=lambda path: path.stem)
def test_the_demo_quilts_read_back(path: object) -> None:
    quilt: Quilt = read_quilt(path.read_text(encoding="utf-8"))  # type: ignore[attr-defined]
    assert read_quilt(quilt_file(quilt)) == quilt


CHOSEN = Choices(
    usable=Fraction(42),
    margin=Fraction(3),
    binding=Fraction(9, 4),
    binding_ends=Fraction(10),
    joins="straight",
    corners="mitred",
    spool_metres=500,
    bobbin_metres=70,
    own_seam=Fraction(17, 64),
)


@pytest.mark.parametrize("key", Choices.__struct_fields__)
def test_every_choice_is_written_kept_and_told_when_it_changes(key: str) -> None:
    usual = a_quilt()
    quilt = replace(usual, choices=replace(Choices(), **{key: getattr(CHOSEN, key)}))
    assert quilt != usual
    assert read_quilt(quilt_file(quilt), kept=quilt.method_key) == quilt
    assert quilt_from_json(quilt_to_json(quilt)) == quilt
    assert len(differences(usual, quilt)) == 1
