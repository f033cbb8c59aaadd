"""Invented quilts to be put on paper: of every kind of setting, with and without fabrics and sets."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from xml.etree.ElementTree import Element

from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.progress.record.state import State
from sewalong.progress.wall.units import units_by_letter, units_to_lay
from sewalong.quilt.choices import Fabric
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint
from sewalong.service.sheets import contents_of, top_of
from sewalong.sheets.booklet import booklet
from sewalong.sheets.contents import Contents
from tests.progress import every_act as c
from tests.progress.building import EVENING, a_quilt, go_on, play
from tests.progress.sets.fabrics import sets_of, with_fabrics
from tests.sheets.conforming import parsed

PLAIN = a_quilt(pieces=64, rows=4, columns=5, borders=2, finishing=("layer", "quilt", "bind"))
SASHED = Sashing(Fraction(2), "oat", frame=True, cornerstones=Cornerstones("coral"))
ACCEPTED = c.AcceptSets(sets_of(8, 6), "by value")
BEGUN = (c.Count("pair", 12), c.Count("sew", 6), c.PutPileAway("four-patch", "blue tray"))


def of_sets(quilt: Quilt) -> State:
    """Six sets of it accepted."""
    return play(quilt, ACCEPTED)[0]


def laid(quilt: Quilt, *after: c.Act, by_letter: bool = False) -> State:
    """Its units laid in order of making, every second one turned, those of three sets or known by
    their letter alone; places are left over, and empty."""
    state, record = play(quilt, c.AcceptSets(sets_of(8, 3)))
    units = units_by_letter("ABCDEFGHIJKL") if by_letter else units_to_lay(state)
    numbers = iter(range(len(units)))
    rows = tuple(
        tuple(
            (n, 0 if by_letter else n % 2) if (n := next(numbers, -1)) >= 0 else None
            for _ in range(row.units)
        )
        for row in quilt.rows_for(quilt.target)
    )
    return go_on(state, record, c.LayWall(units, rows), *after)


THREE_BY_FOUR = replace(with_fabrics(), target=Target(3, 4))
STATES: Mapping[str, State] = {
    "not begun": play(PLAIN)[0],
    "begun, two places": play(PLAIN, *BEGUN)[0],
    "fabrics named": play(
        replace(PLAIN, fabrics=(Fabric("A", "indigo print", "#243b6b"), Fabric("B", "linen")))
    )[0],
    "fabrics, no sets": play(with_fabrics())[0],
    "sets": of_sets(replace(with_fabrics(), target=Target(4, 6))),
    "one set": play(with_fabrics(), c.AcceptSets(sets_of(8, 1)))[0],
    "a stage done": play(PLAIN, c.Count("pair", 20))[0],
    "sets, colours not said": of_sets(
        replace(
            with_fabrics(),
            fabrics=tuple(replace(one, colour=None) for one in with_fabrics().fabrics),
        )
    ),
    "sets, units unknown": play(
        replace(with_fabrics(), target=Target(4, 6)),
        c.Count("pair", 4),
        c.Count("sew", 2),
        ACCEPTED,
    )[0],
    "sets, on point": of_sets(replace(with_fabrics(), setting=SetOnPoint("grey"))),
    "sets, sashed": of_sets(replace(with_fabrics(), setting=SASHED)),
    "laid": laid(THREE_BY_FOUR),
    "laid, two rows sewn": laid(
        THREE_BY_FOUR, c.Find("unit", 12, "bought"), c.Count("sew-rows", 2)
    ),
    "laid, empty places": laid(
        replace(with_fabrics(), target=Target(4, 4)), c.PutSpare(1, 4), c.PutSpare(2, 1)
    ),
    "laid by letters": laid(THREE_BY_FOUR, by_letter=True),
    "laid, on point": laid(
        replace(with_fabrics(), setting=SetOnPoint("grey"), target=Target(2, 3))
    ),
    "laid, sashed": laid(replace(THREE_BY_FOUR, setting=SASHED)),
    "laid, a web": laid(replace(THREE_BY_FOUR, joined="web")),
    "on point": play(replace(PLAIN, setting=SetOnPoint("grey", "#8d99a6"), target=Target(3, 4)))[0],
    "sashed": play(replace(PLAIN, setting=SASHED))[0],
    "sashed, long sashes": play(replace(PLAIN, setting=replace(SASHED, cornerstones=None)))[0],
    "web": play(replace(PLAIN, joined="web"))[0],
    "centimetres": play(replace(PLAIN, unit=Unit.CM))[0],
    "one row": play(replace(PLAIN, target=Target(1, 3)))[0],
    "many rows": play(a_quilt("paired-squares", 9999, 30, 30))[0],
    "strips": play(a_quilt("rail-fence", 30, 3, 4))[0],
    "too small for its seams": play(
        replace(PLAIN, starts=tuple(replace(one, size=Fraction(1, 2)) for one in PLAIN.starts))
    )[0],
}


def contents(state: State) -> Contents:
    """What its pages say on the first evening."""
    return contents_of(state, top_of(state), EVENING)


@cache
def parsed_page(quilt: str) -> Element:
    """The pages of one of STATES as a tree, not to be changed."""
    return parsed(page(STATES[quilt]))


def page(state: State, only: str = "") -> str:
    """Its pages, or one part of them."""
    return booklet(contents(state), only)
