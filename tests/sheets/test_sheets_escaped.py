"""Whatever somebody called something, it stands on the page as it was written, and changes nothing
else there: it is no markup, and turns no other writing round."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from xml.etree.ElementTree import Element

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.owner.preferences import Preferences
from sewalong.progress.record.state import State
from sewalong.quilt.choices import Fabric
from sewalong.quilt.quilt import Border, Quilt, Target
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint
from sewalong.service.sheets import contents_of, top_of
from sewalong.sheets.booklet import booklet
from sewalong.wall.drawing.svg import as_svg
from tests.progress import every_act as c
from tests.progress.building import EVENING, a_quilt, play
from tests.progress.sets.fabrics import sets_of, with_fabrics
from tests.sheets.conforming import called, faults, parsed, text_of
from tests.sheets.paper_quilts import laid

HOSTILE = (
    "<script>alert(1)</script>",
    "</style><script>alert(1)</script>",
    "</title></head><body onload=alert(1)>",
    "\"'><img src=x onerror=alert(1)>",
    "&lt;b&gt; &amp &#60; &notit;",
    "<!-- -->]]><![CDATA[ {{7*7}} [red] */ }",
    "שמיכה ירוקה 6/9",
    "abc\u202edef\u2066ghi",
    "＜ｓｃｒｉｐｔ＞",
    "W" * 80,
    "\ufdd0\uffff\x85\x1b[2J",
    "猫の布🧵",
)
NOT_ON_A_PAGE = re.compile("[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ufdd0-\ufdef]")


def plain(name: str) -> State:
    """Her words everywhere they can be: cloth of borders, sashes and stones, fabrics, a place."""
    quilt = replace(
        a_quilt(pieces=64, rows=3, columns=4),
        name=name,
        borders=(Border(Fraction(3), name), Border(Fraction(2), name)),
        setting=Sashing(Fraction(2), name, frame=True, cornerstones=Cornerstones(name)),
        fabrics=(Fabric("A", name), Fabric("B", name, "#aa5533")),
    )
    return play(quilt, c.Count("pair", 8), c.PutPileAway("pair", name))[0]


def with_sets(name: str) -> State:
    """A quilt on point with fabrics of that name, and sets of them."""
    quilt = with_fabrics()
    called_so = tuple(replace(one, name=name) for one in quilt.fabrics)
    so: Quilt = replace(
        quilt, name=name, fabrics=called_so, setting=SetOnPoint(name), target=Target(2, 3)
    )
    return play(so, c.AcceptSets(sets_of(8, 3)))[0]


def on_a_wall(name: str) -> State:
    """Fabrics of that name in units that are laid, and all that is said of them there."""
    quilt = with_fabrics()
    called_so = tuple(replace(one, name=name) for one in quilt.fabrics)
    return laid(replace(quilt, name=name, fabrics=called_so, target=Target(2, 3)))


def drawn_up(state: State, name: str) -> tuple[Element, str]:
    own = Preferences(cautions={"needle": (name,), "cutter": (name,)})
    top = top_of(state)
    assert top is not None
    page = booklet(contents_of(state, top, EVENING, own, name))
    return parsed(page), as_svg(top)


def structure(root: Element) -> Iterator[tuple[str, dict[str, str]]]:
    """Every element with its attributes, in order."""
    yield from ((called(one), dict(one.attrib)) for one in root.iter())


KINDS = {"plain": plain, "sets": with_sets, "laid": on_a_wall}
HARMLESS = {kind: list(structure(drawn_up(make("x"), "x")[0])) for kind, make in KINDS.items()}


def check(kind: str, name: str) -> None:
    root, svg = drawn_up(KINDS[kind](name), name)
    assert list(structure(root)) == HARMLESS[kind]
    assert list(faults(root)) == []
    shown = re.sub(
        "[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ufdd0-\ufdef\ufffe\uffff]", "\ufffd", name
    )
    text = text_of(root)
    # Its name, the record's fault, each caution, a fabric or cloth of the legend, at the least.
    assert text.count(shown) >= 4
    assert not NOT_ON_A_PAGE.search(text.replace("\n", ""))
    assert "<script" not in svg


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_name_is_a_name(kind: str, name: str) -> None:
    check(kind, name)


NAMES = st.text(
    st.one_of(
        st.sampled_from("<>&\"';/\\-![]{}=()#`"),
        st.characters(exclude_categories=["Cs"], exclude_characters="\n\r\t"),
    ),
    min_size=1,
    max_size=80,
).filter(lambda name: any(sign.isprintable() and not sign.isspace() for sign in name))


@settings(max_examples=40)
@given(name=NAMES, kind=st.sampled_from(sorted(KINDS)))
@example(name="&#0;", kind="plain")
def test_any_name_is_a_name(name: str, kind: str) -> None:
    check(kind, name)
