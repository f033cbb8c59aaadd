"""Everything a quilt comes to in numbers, as the screen and the commands both show it."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from sewalong.quilt.layouts.yield_of_method import units_of
from sewalong.quilt.quilt import Quilt, Target
from sewalong.quilt.worksheet.basis import basis as basis_of
from sewalong.quilt.worksheet.cloth import cloth
from sewalong.quilt.worksheet.cut_list import cut_list
from sewalong.quilt.worksheet.layout_lines import LayoutLine, fitting
from sewalong.quilt.worksheet.line import CANNOT_BE_HAD, Line, Section
from sewalong.quilt.worksheet.shopping import shopping
from sewalong.quilt.worksheet.sizes import rows, sizes
from sewalong.quilt.worksheet.thread_lines import thread_section

__all__ = ["LayoutLine", "Line", "Section", "Worksheet", "worksheet"]


class Worksheet(Struct, frozen=True):
    """Sections of lines; `layouts` has the one now wanted first.

    `units` is how many units there are or will be. `refusal` is the sentence that says why
    nothing can be worked out; then every section has that one line, and there are no layouts.
    """

    target: Target
    units: int
    sizes: Section
    rows: Section
    cloth: Section
    cut_list: Section
    shopping: Section
    thread: Section
    layouts: tuple[LayoutLine, ...]
    refusal: str = ""

    @property
    def sections(self) -> tuple[Section, ...]:
        """All sections of plain lines, in reading order, the layouts as the last one."""
        lines = tuple(one.line for one in self.layouts)
        fit = Section("layouts", f"Layouts that fit {self.units:,} units", lines)
        return (self.sizes, self.rows, self.cloth, self.cut_list, self.shopping, self.thread, fit)


def worksheet(
    quilt: Quilt,
    target: Target | None = None,
    *,
    have: int | None = None,
    short: Mapping[str, int] | None = None,
) -> Worksheet:
    """The numbers of `quilt` for `target`, its own where that is None.

    `have` is how many units there are or will be, when the record knows better than the plan;
    layouts are chosen from it. `short` is the starting pieces missing for the target, by pile, by
    the record. Nothing is raised: what cannot be worked out is said in a line.
    """
    wanted = quilt.target if target is None else target
    try:
        basis = basis_of(quilt, wanted, short)
        units = units_of(quilt) if have is None else have
        layouts = fitting(basis, units)
    except CANNOT_BE_HAD as fault:
        return _refused(wanted, str(fault))
    return Worksheet(
        wanted,
        units,
        sizes(basis),
        rows(basis),
        cloth(basis),
        cut_list(basis),
        shopping(basis),
        thread_section(basis),
        layouts,
    )


def _refused(target: Target, sentence: str) -> Worksheet:
    def empty(id: str, title: str) -> Section:
        return Section(id, title, (Line("", sentence),))

    return Worksheet(
        target,
        0,
        empty("sizes", "Sizes"),
        empty("rows", "Row by row"),
        empty("cloth", "Cloth"),
        empty("cut-list", "Cut list"),
        empty("shopping", "Shopping list"),
        empty("thread", "Thread"),
        (),
        sentence,
    )
