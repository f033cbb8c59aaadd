"""Cloth: each border's strips, the back both ways, binding and batting."""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.lengths import as_given, cloth_length
from sewalong.quilt.cloth.backing import Backing, BackingWay, backing
from sewalong.quilt.cloth.batting import BattingChoice, smallest_batting
from sewalong.quilt.cloth.binding import Binding, binding
from sewalong.quilt.cloth.borders import BorderNumbers
from sewalong.quilt.cloth.narrower import so_many_down_to
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.line import Line, Section, attempt, plural, size_line


def cloth(basis: Basis) -> Section:
    """Strips, cloth to buy, slack and reasons, for what goes around and behind the units."""
    lines = [
        Line(
            "reckoned with",
            f"{as_given(basis.choices.usable, basis.shown_in)} of usable width, "
            f"{basis.choices.joins} joins, corners {basis.choices.corners}",
            "settings: measure your own cloth",
        ),
        *attempt("borders", lambda: _borders(basis)),
        *attempt("backing", lambda: _backing(basis)),
        *attempt("binding", lambda: _binding(basis)),
        *attempt("batting", lambda: _batting(basis)),
    ]
    return Section("cloth", "Cloth", tuple(lines))


def back_of(basis: Basis) -> Backing:
    """The back of the whole top, both ways."""
    choices = basis.choices
    return backing(basis.top, margin=choices.margin, usable=choices.usable, unit=basis.shown_in)


def binding_of(basis: Basis) -> Binding:
    """The binding of the whole top; the quilt is trimmed to the top's raw edges for it."""
    choices = basis.choices
    return binding(
        basis.top,
        strip=choices.binding,
        allowance=choices.binding_ends,
        usable=choices.usable,
        join=basis.join,
        seam=basis.quilt.seam,
        unit=basis.shown_in,
    )


def batting_of(basis: Basis) -> BattingChoice:
    """The smallest batting on sale that covers the top and the margin."""
    return smallest_batting(basis.top, margin=basis.choices.margin, unit=basis.shown_in)


def border_label(number: int, name: str) -> str:
    """How a border is called in every list."""
    return f"border {number}, {name}"


def strips_text(count: int, width: str) -> str:
    """`6 strips of 2 1/2 in`."""
    return f"{plural(count, 'strip')} of {width}"


def _borders(basis: Basis) -> Iterator[Line]:
    unit = basis.shown_in
    numbers = zip(basis.quilt.borders, basis.bordered(), strict=True)
    for place, (border, one) in enumerate(numbers, start=1):
        label = border_label(place, border.cloth)
        strips = one.strips
        yield Line(
            label,
            f"{strips_text(strips.count, strips.width_text)}, "
            f"buy {cloth_length(strips.cloth, unit)}",
            f"{strips.reason}, {so_many_down_to(strips.narrowest, unit)}; {strips.purchase.reason}",
            float(strips.purchase.buy),
        )
        yield _lengths(label, one, basis)


def _lengths(label: str, one: BorderNumbers, basis: Basis) -> Line:
    """What to cut the joined strip into."""
    unit = basis.shown_in
    ends = as_given(one.each_end, unit)
    text = f"2 sides of {as_given(one.each_side, unit)}, top and bottom of {ends}"
    reason = f"{one.plan.corners.value}; measure the real top before cutting"
    if one.side_mitre is not None and one.end_mitre is not None:
        least = f"{as_given(one.side_mitre.least, unit)} and {as_given(one.end_mitre.least, unit)}"
        reason = f"{reason}; mitred strips need {least} at the least, the rest is to cut off"
    return Line(f"{label}, lengths", text, reason, float(one.each_side), float(one.each_end))


def _backing(basis: Basis) -> Iterator[Line]:
    unit = basis.shown_in
    back = back_of(basis)
    margin = as_given(back.margin, unit)
    yield size_line("back", back.size, unit, f"the top and {margin} each side")
    saves = (
        f"takes {as_given(back.saves, unit)} less cloth" if back.saves else "takes no more cloth"
    )
    yield _way(back.best, f"this way {saves}", basis)
    yield _way(back.other, "", basis)


def _way(way: BackingWay, marked: str, basis: Basis) -> Line:
    unit = basis.shown_in
    bought = f"buy {cloth_length(way.cloth, unit)}"
    text = f"{plural(way.panels, 'panel')} of {as_given(way.panel, unit)}, {bought}"
    reason = f"{way.reason}; {way.purchase.reason}"
    return Line(
        f"backing, seams {way.seams.value}",
        f"{text}; {marked}" if marked else text,
        reason,
        float(way.purchase.buy),
    )


def _binding(basis: Basis) -> Iterator[Line]:
    unit = basis.shown_in
    one = binding_of(basis)
    text = strips_text(one.strips.count, one.strips.width_text)
    yield Line(
        "binding",
        f"{text}, buy {cloth_length(one.strips.cloth, unit)}",
        f"{one.reason}, {so_many_down_to(one.strips.narrowest, unit)}; "
        f"{one.strips.purchase.reason}",
        float(one.strips.purchase.buy),
    )


def _batting(basis: Basis) -> Iterator[Line]:
    unit = basis.shown_in
    choice = batting_of(basis)
    if choice.batting is None:
        yield size_line("batting", choice.need, unit, choice.reason)
        return
    size = choice.batting.size
    yield Line(
        "batting",
        f"{choice.batting.name}, {size.show(unit)}",
        f"{choice.reason}; sizes on sale differ",
        float(size.width),
        float(size.length),
    )
