"""The shopping list: cloth added up by its name, batting and thread."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from sewalong.lengths import METRE, Length, as_given, cloth_length
from sewalong.quilt.cloth.precuts import packs_for
from sewalong.quilt.cloth.purchase import to_buy
from sewalong.quilt.cloth.thread import metres, wound
from sewalong.quilt.worksheet.basis import Basis
from sewalong.quilt.worksheet.cloth import back_of, batting_of, binding_of
from sewalong.quilt.worksheet.line import CANNOT_BE_HAD, Line, Section, attempt, plural
from sewalong.quilt.worksheet.piece_cloth import (
    cloth_of,
    fabric_counts,
    piece_cloths,
    start_needs,
)
from sewalong.quilt.worksheet.setting_cloth import setting_cuts
from sewalong.quilt.worksheet.thread_lines import thread_of


class Use(Struct, frozen=True):
    """So much of the cloth called `name` for one thing, in inches along the cloth."""

    name: str
    what: str
    cloth: Length


def shopping(basis: Basis) -> Section:
    """What to buy, each with what it is for."""
    lines = [
        *_packs(basis),
        *attempt("cloth", lambda: _cloth(basis)),
        *attempt("batting", lambda: _batting(basis)),
        *attempt("thread", lambda: _thread(basis)),
    ]
    return Section("shopping", "Shopping list", tuple(lines))


def _packs(basis: Basis) -> Iterator[Line]:
    """The packs there are, and those still short; of each fabric with a name, its own count."""
    for need in start_needs(basis):
        start, noun = need.start, need.noun
        if start.packs is None:
            continue
        label = f"{noun.many} of {as_given(start.size, basis.shown_in)}"
        yield Line(
            label,
            plural(start.packs, "pack"),
            f"{noun.count(start.count)} in all; {need.words}; count them, packs differ",
        )
        if basis.quilt.named_fabrics:
            for name, count in fabric_counts(need, basis).items():
                yield Line(f"{label}, {name or 'any other'}", noun.count(count), "for the target")
        if need.short:
            per_pack = max(1, start.count // start.packs)
            more = packs_for(need.short, per_pack)
            text = f"{plural(more.packs, 'more pack', 'more packs')} of {per_pack}"
            yield Line(f"{label}, still short", text, f"{noun.count(need.short)} short")


def _cloth(basis: Basis) -> Iterator[Line]:
    """Strips of several things from one cloth are added before they are rounded up.

    What is short is a line of its own: it is what to buy once the pieces there are have been cut.
    """
    unit = basis.shown_in
    by_name: dict[str, list[Use]] = {}
    for label, uses_of in (
        ("starting pieces", _pieces),
        ("pieces still short", _short),
        ("setting", _setting),
        ("borders", _borders),
        ("binding", _binding),
        ("backing", _backing),
    ):
        try:
            for use in uses_of(basis):
                by_name.setdefault(use.name.casefold(), []).append(use)
        except CANNOT_BE_HAD as fault:
            yield Line(label, str(fault))
    for uses in by_name.values():
        purchase = to_buy(sum((use.cloth for use in uses), Length(0)), unit)
        parts = ", ".join(f"{use.what} {as_given(use.cloth, unit)}" for use in uses)
        yield Line(
            uses[0].name,
            f"buy {cloth_length(purchase.need, unit)}",
            f"{parts}; {purchase.reason}",
            float(purchase.buy),
        )


def _pieces(basis: Basis) -> Iterator[Use]:
    for piece in piece_cloths(basis):
        noun = basis.quilt.method.pile(piece.pile).noun
        name = piece.name or f"cloth for {noun.many}, if not cut yet"
        yield Use(name, noun.count(piece.cut.count), piece.cut.cloth)


def _short(basis: Basis) -> Iterator[Use]:
    for need in start_needs(basis):
        if need.short and need.start.packs is None:
            cut = cloth_of(need.start, need.short, basis)
            yield Use(f"cloth for {need.noun.many} still short", need.words, cut.cloth)


def _setting(basis: Basis) -> Iterator[Use]:
    for one in setting_cuts(basis):
        yield Use(one.name, one.noun.count(one.count), one.cloth)


def _borders(basis: Basis) -> Iterator[Use]:
    bordered = zip(basis.quilt.borders, basis.bordered(), strict=True)
    for place, (border, one) in enumerate(bordered, start=1):
        yield Use(border.cloth, f"border {place}", one.strips.cloth)


def _binding(basis: Basis) -> Iterator[Use]:
    yield Use("binding", "binding strips", binding_of(basis).strips.cloth)


def _backing(basis: Basis) -> Iterator[Use]:
    back = back_of(basis).best
    yield Use("backing", f"seams {back.seams.value}", back.cloth)


def _batting(basis: Basis) -> Iterator[Line]:
    unit = basis.shown_in
    choice = batting_of(basis)
    size = choice.need if choice.batting is None else choice.batting.size
    name = "from the roll" if choice.batting is None else choice.batting.name
    yield Line("batting", f"{name}, {size.show(unit)}", choice.reason,
               float(size.width), float(size.length))  # fmt: skip


def _thread(basis: Basis) -> Iterator[Line]:
    found = thread_of(basis)
    text = f"{metres(found.total):.0f} m"
    spool = basis.choices.spool_metres
    if spool is not None:
        text = f"{plural(wound(found.total, spool * METRE).count, 'spool')} of {spool:,} m, {text}"
    yield Line("thread", text, "for piecing, borders and binding; quilting takes more",
               float(found.total))  # fmt: skip
