"""A name has something in it that can be seen; what records hold already is read all the same."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from sewalong.quilt.file.reader import QuiltFileFaults, read_quilt
from sewalong.quilt.json_codec import quilt_from_json, quilt_to_json
from sewalong.quilt.quilt import Border
from sewalong.quilt.rules import a_name
from sewalong.store.archive import from_text, take_in, to_text
from sewalong.store.faults import StoreFault
from tests.store.shelf import EVENING, a_quilt, shelf

# By the names of the Unicode character database.
UNSEEN = {
    "zero width space": "\u200b",
    "zero width non-joiner and joiner": "\u200c\u200d",
    "left-to-right and right-to-left mark": "\u200e\u200f",
    "word joiner": "\u2060",
    "invisible times and plus": "\u2062\u2064",
    "zero width no-break space": "\ufeff",
    "soft hyphen": "\u00ad",
    "Mongolian vowel separator": "\u180e",
    "combining acute accent": "\u0301",
    "combining enclosing circle": "\u20dd",
    "combining grapheme joiner": "\u034f",
    "variation selectors": "\ufe0f\ufe0e",
    "a variation selector of the supplement": "\U000e0100",
    "tags": "\U000e0041\U000e007f",
    "Hangul fillers": "\u115f\u1160\u3164\uffa0",
    "Braille pattern blank": "\u2800",
    "musical symbol null notehead": "\U0001d159",
    "interlinear annotation anchor": "\ufff9",
    "no-break space and zero width space": "\u00a0\u200b",
    "ideographic space and a bare accent": "\u3000\u0300",
}
SEEN = [
    "a",
    "7",
    "é",
    "e\u0301",
    "布",
    "꽃",
    "🧵",
    "👩\u200d🎨",
    "❤\ufe0f",
    "§",
    "-",
    "\u200ba",
    "ക",
]


@pytest.mark.parametrize("name", UNSEEN.values(), ids=UNSEEN.keys())
def test_a_name_of_which_nothing_can_be_seen_is_refused(name: str) -> None:
    with pytest.raises(ValueError, match=r"^(This is empty|Nothing in this name can be seen)\."):
        a_name(name)


@pytest.mark.parametrize("name", SEEN)
def test_a_name_with_anything_to_see_is_taken(name: str) -> None:
    assert a_name(name) == name


def test_it_is_refused_in_a_quilt_file_with_its_line() -> None:
    with pytest.raises(QuiltFileFaults) as refused:
        read_quilt('name = "\u200b\u2060"\n[[border]]\ncut = 3\ncloth = "\ufeff"')
    found = {(fault.line, fault.key): fault.sentence for fault in refused.value.faults}
    for place in ((1, "name"), (4, "border[1].cloth")):
        assert found[place].startswith("Nothing in this name can be seen.")


@pytest.mark.parametrize("name", UNSEEN.values(), ids=UNSEEN.keys())
def test_a_record_that_has_such_a_name_is_read_and_goes_out_and_in(
    tmp_path: Path, name: str
) -> None:
    quilt = replace(a_quilt(name), borders=(Border(a_quilt().seam * 10, name),))
    assert quilt_from_json(quilt_to_json(quilt)) == quilt
    with shelf(tmp_path / "here.db") as library:
        entry = library.add(quilt, EVENING)
        assert library.entries() == (entry,)
        text = to_text(library.load(entry))
    with shelf(tmp_path / "there.db") as library:
        archive = from_text(text)
        with pytest.raises(StoreFault, match="The quilt cannot be called that"):
            take_in(library, archive, EVENING, name=name)
        assert library.load(take_in(library, archive, EVENING)).quilt == quilt
