"""The cut list, in cutting order.

The rule: the longest pieces first, since short ones can be cut from what is left and long ones
cannot; so the strips of the borders, the widest first, then binding, then the starting pieces.
What has to fit what is sewn is cut when there is that to measure: what lies between the units,
the borders' own lengths, and last of all the back and the batting, when all borders are on.
"""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.lengths import as_given
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.cloth import (
    back_of,
    batting_of,
    binding_of,
    border_label,
    strips_text,
)
from sewalong.quilt.worksheet.label_lines import label_lines
from sewalong.quilt.worksheet.line import Line, Section, attempt, plural
from sewalong.quilt.worksheet.setting_cloth import setting_lines
from sewalong.quilt.worksheet.starting_pieces import starting_pieces

RULE = (
    "longest pieces first, as short ones can be cut from what is left; what must fit the sewn "
    "top is cut when it can be measured; the back last, when all borders are on"
)


def cut_list(basis: Basis) -> Section:
    """Every cut with its reason, in the order to cut in."""
    lines = [
        Line("order", RULE),
        *attempt("border strips", lambda: _border_strips(basis)),
        *attempt("binding", lambda: _binding(basis)),
        *attempt("starting pieces", lambda: starting_pieces(basis)),
        *attempt("setting", lambda: setting_lines(basis)),
        *attempt("borders to length", lambda: _border_lengths(basis)),
        *attempt("back", lambda: _back(basis)),
        *attempt("batting", lambda: _batting(basis)),
        *attempt("label", lambda: label_lines(basis)),
    ]
    return Section("cut-list", "Cut list, in cutting order", tuple(lines))


def _border_strips(basis: Basis) -> Iterator[Line]:
    found = list(enumerate(zip(basis.quilt.borders, basis.bordered(), strict=True), start=1))
    for place, (border, one) in sorted(found, key=lambda each: -each[1][0].cut):
        yield Line(
            border_label(place, border.cloth),
            strips_text(one.strips.count, one.strips.width_text),
            one.strips.reason,
            float(one.strips.cloth),
        )


def _binding(basis: Basis) -> Iterator[Line]:
    strips = binding_of(basis).strips
    yield Line(
        "binding",
        strips_text(strips.count, strips.width_text),
        strips.reason,
        float(strips.cloth),
    )


def _border_lengths(basis: Basis) -> Iterator[Line]:
    unit = basis.shown_in
    numbers = zip(basis.quilt.borders, basis.bordered(), strict=True)
    for place, (border, one) in enumerate(numbers, start=1):
        yield Line(
            f"{border_label(place, border.cloth)}, to length",
            f"2 sides of {as_given(one.each_side, unit)}, top and bottom of "
            f"{as_given(one.each_end, unit)}, or as the real top measures",
            f"when the top is sewn so far; {one.plan.corners.value}",
            float(one.each_side),
            float(one.each_end),
        )


def _back(basis: Basis) -> Iterator[Line]:
    way = back_of(basis).best
    when = "when all borders are on" if basis.quilt.borders else "when the top is done"
    yield Line(
        "back",
        f"{plural(way.panels, 'panel')} of {as_given(way.panel, basis.shown_in)}, "
        f"seams {way.seams.value}",
        f"{when}; {way.reason}",
        float(way.cloth),
    )


def _batting(basis: Basis) -> Iterator[Line]:
    need, unit = batting_of(basis).need, basis.shown_in
    yield Line(
        "batting",
        f"{as_given(need.width, unit)} across × {as_given(need.length, unit)} down",
        "with the back, and as large",
        float(need.width),
        float(need.length),
    )
