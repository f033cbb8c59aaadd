"""The piles a quilt file begins with, held against what its method begins with."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sewalong.lengths import Length, Unit, as_given, show_stated
from sewalong.lengths.fault import quoted
from sewalong.piecing.definition import Definition, StartDefinition
from sewalong.quilt.file.faults import FaultList
from sewalong.quilt.file.models import Counted, More, QuiltFile, Squares, Strips
from sewalong.quilt.quilt import StartPile, pile_of_lots
from sewalong.quilt.rules import MOST_PIECES

if TYPE_CHECKING:
    from sewalong.quilt.file.toml_lines import Path


def starting_piles(
    written: QuiltFile, definition: Definition | None, seam: Length, faults: FaultList
) -> tuple[StartPile, ...]:
    """The piles in the order the method names them; what is wrong with them goes to `faults`.

    Piles with a fault are left out. `definition` is None when the method is not known: then
    what does not hang on it is checked, and no pile is given.
    """
    reader = _Reader(written, seam, faults)
    if definition is None:
        reader.without_method()
        return ()
    first = reader.first(definition)
    others = reader.others(definition)
    read = [pile for pile in (first, *others) if pile is not None]
    reader.not_too_many(read)
    return tuple(
        _together([pile for pile in read if pile.pile == start.pile])
        for start in definition.starts
        if any(pile.pile == start.pile for pile in read)
    )


def _together(lots: list[StartPile]) -> StartPile:
    """One pile of what stands in the file as several lots of it."""
    if len(lots) == 1:
        return lots[0]
    return pile_of_lots(lots[0].pile, [lot for pile in lots for lot in pile.in_lots])


class _Reader:
    def __init__(self, written: QuiltFile, seam: Length, faults: FaultList) -> None:
        self.written = written
        self.seam = seam
        self.faults = faults
        self.meant: set[str] = set()
        """Piles that a misspelt name was taken for: they are not missing besides."""
        self.lots: set[tuple[str, Length]] = set()
        """Squares that stood in the file already, by pile and size."""

    def without_method(self) -> None:
        """Check what can be checked of any method."""
        squares, strips = self.written.squares, self.written.strips
        if squares is None and strips is None:
            table = f"{_WRITE[False]} Or, for a method that begins with strips: {_WRITE[True]}"
            self.faults.missing(("squares",), f"What there is to begin with is missing. {table}")
        if squares is not None:
            self._squares("", squares, ("squares",))
        if strips is not None:
            self._strips("", strips, ("strips",))
        for index, more in enumerate(self.written.more):
            self._count(more, ("more", index))
            if more.pile is None:
                self.faults.missing(("more", index, "pile"), "The name of the pile is missing.")

    def first(self, definition: Definition) -> StartPile | None:
        """The pile under [squares] or [strips], whichever the method wants."""
        start = definition.starts[0]
        squares, strips = self.written.squares, self.written.strips
        noun = _noun(definition, start)
        wanted, other = ("strips", "squares") if start.strip else ("squares", "strips")
        if (squares if start.strip else strips) is not None:
            self.faults.add(
                (other,),
                f"The method {definition.id} begins with {noun}, which go under [{wanted}], "
                f"not [{other}]. {_WRITE[start.strip]}",
            )
        elif (strips if start.strip else squares) is None:
            self.faults.missing(
                (wanted,), f"The {noun} to begin with are missing. {_WRITE[start.strip]}"
            )
        if start.strip:
            return None if strips is None else self._strips(start.pile, strips, ("strips",))
        if squares is None:
            return None
        if squares.size is not None:
            self.lots.add((start.pile, squares.size))
        return self._squares(start.pile, squares, ("squares",))

    def others(self, definition: Definition) -> list[StartPile | None]:
        """The piles of [[more]], each of which the method must name."""
        if self.faults.is_faulty(("more",)):
            return []
        read: list[StartPile | None] = []
        seen: set[str] = set()
        for index, more in enumerate(self.written.more):
            path: Path = ("more", index)
            start = self._start_of(definition, more, path, seen)
            if start is None:
                self._count(more, path)
                continue
            self._not_both_shapes(more, path, start)
            if start.strip:
                read.append(self._strips(start.pile, more, path))
            else:
                read.append(self._squares(start.pile, more, path))
        for start in definition.starts[1:]:
            if start.pile not in seen | self.meant:
                size = "width" if start.strip else "size"
                self.faults.add(
                    ("more",),
                    f"The method {definition.id} also begins with {_noun(definition, start)}, "
                    f"which are missing. Add the heading [[more]], and below it "
                    f'pile = "{start.pile}", {size} and count.',
                )
        return read

    def _start_of(
        self, definition: Definition, more: More, path: Path, seen: set[str]
    ) -> StartDefinition | None:
        """What the method begins with under the name in `more`; the name is added to `seen`."""
        first, *others = definition.starts
        known = [start.pile for start in others]
        if more.pile == first.pile and not first.strip:
            return self._lot_of(first, more, path)
        if not known:
            self.faults.add(
                path,
                f"The method {definition.id} begins with {_noun(definition, first)} only. "
                "Take this [[more]] out.",
            )
            return None
        if more.pile is None:
            names = " or ".join(f'pile = "{name}"' for name in known)
            self.faults.missing(
                (*path, "pile"), f"It does not say which pile this is. Add {names}."
            )
            return None
        if more.pile == first.pile:
            sentence = f"The {_noun(definition, first)} go under [strips]. Here belong: {', '.join(known)}."
        elif more.pile not in known:
            from difflib import get_close_matches

            nearest = get_close_matches(more.pile, known, n=1, cutoff=0.0)[0]
            self.meant.add(nearest)
            sentence = (
                f"The method {definition.id} begins with no pile called {quoted(more.pile)}. "
                f'The nearest is "{nearest}".'
            )
        elif more.pile in seen and others[known.index(more.pile)].strip:
            sentence = (
                f'"{more.pile}" has stood here before. Give each pile once, with its whole count.'
            )
        else:
            seen.add(more.pile)
            return self._lot_of(others[known.index(more.pile)], more, path)
        self.faults.add((*path, "pile"), sentence)
        return None

    def _lot_of(self, start: StartDefinition, more: More, path: Path) -> StartDefinition | None:
        """`start`, unless squares of it of this size stood in the file before."""
        if more.size is None:
            return start
        if (start.pile, more.size) in self.lots:
            self.faults.add(
                (*path, "size"),
                f'"{more.pile}" of {as_given(more.size, self.written.unit)} has stood here before. '
                "Give each size once, with its whole count.",
            )
            return None
        self.lots.add((start.pile, more.size))
        return start

    def not_too_many(self, read: list[StartPile]) -> None:
        """All lots of a pile together are no more than one may have."""
        for pile in dict.fromkeys(one.pile for one in read):
            together = sum(one.count for one in read if one.pile == pile)
            if together > MOST_PIECES and max(one.count for one in read) <= MOST_PIECES:
                self.faults.add(
                    ("more",),
                    f"All sizes of {quoted(pile)} are {together:,} pieces together, and there can be at "
                    f"most {MOST_PIECES:,}. Check the counts.",
                )

    def _not_both_shapes(self, more: More, path: Path, start: StartDefinition) -> None:
        """Squares have a size; strips have a width and a length."""
        if start.strip and more.size is not None:
            self.faults.add(
                (*path, "size"), "These are strips. Give their width instead of a size."
            )
        if not start.strip:
            for key, length in (("width", more.width), ("length", more.length)):
                if length is not None:
                    self.faults.add(
                        (*path, key), f"These are squares. Give their size instead of a {key}."
                    )

    def _squares(self, pile: str, table: Squares | More, path: Path) -> StartPile | None:
        self._side(table.size, "size", "squares", path)
        count = self._count(table, path)
        if table.size is None or count is None:
            return None
        return StartPile(pile, table.size, count, table.packs)

    def _strips(self, pile: str, table: Strips | More, path: Path) -> StartPile | None:
        self._side(table.width, "width", "strips", path)
        length = self._strip_length(table, path)
        count = self._count(table, path)
        if table.width is None or length is None or count is None:
            return None
        return StartPile(pile, table.width, count, table.packs, length)

    def _strip_length(self, table: Strips | More, path: Path) -> Length | None:
        """The length of these strips: their own, or that of [strips]. It is one for all."""
        shared = None if self.written.strips is None else self.written.strips.length
        if table.length is not None and shared is not None and table.length != shared:
            self.faults.add(
                (*path, "length"),
                "All strips of a quilt are worked out at one length. Give the shortest under "
                "[strips], and leave it out here.",
            )
            return None
        said_there = path[0] == "more" and (
            self.written.strips is not None or self.faults.is_faulty(("strips",))
        )
        if table.length is None and shared is None and not said_there:
            self.faults.missing(
                (*path, "length"),
                "The length of a strip that can be used is missing. Measure one between its "
                'selvedges and add it, such as length = "40 in".',
            )
        return shared if table.length is None else table.length

    def _side(self, side: Length | None, key: str, what: str, path: Path) -> None:
        """A side there is, and something left of it between two seams."""
        if side is None:
            self.faults.missing(
                (*path, key), f'The {key} of the {what} is missing. Add it, such as {key} = "5 in".'
            )
        elif side <= 2 * self.seam:
            at_fault: Path = (*path, key) if self.written.seam is None else ("seam",)
            self.faults.add(
                at_fault,
                f"A seam allowance of {show_finely(self.seam, self.written.unit)} on both sides leaves nothing of "
                f"{what} of {show_finely(side, self.written.unit)}. It must be less than half of that; 1/4 in is usual.",
            )

    def _count(self, table: Counted, path: Path) -> int | None:
        """How many pieces there are, said in one of two ways."""
        packs, each = table.packs, table.in_a_pack
        if table.count is not None:
            for key, number in (("packs", packs), ("in_a_pack", each)):
                if number is not None:
                    self.faults.add(
                        (*path, key),
                        "The pieces are given twice. Keep either count, or packs and in_a_pack.",
                    )
                    return None
            return table.count
        if packs is not None and each is not None:
            if packs * each > MOST_PIECES:
                self.faults.add(
                    (*path, "packs"),
                    f"{packs:,} packs of {each:,} are {packs * each:,} pieces, and there can be at "
                    f"most {MOST_PIECES:,}. Check both numbers.",
                )
                return None
            return packs * each
        if packs is not None:
            self.faults.missing(
                (*path, "in_a_pack"),
                "It does not say how many are in a pack, and packs differ. Count one and add "
                "in_a_pack, such as in_a_pack = 42.",
            )
        elif each is not None:
            self.faults.missing(
                (*path, "packs"), "The number of packs is missing. Add it, such as packs = 4."
            )
        else:
            self.faults.missing(
                (*path, "count"),
                "It does not say how many pieces there are. Add count, or packs and in_a_pack.",
            )
        return None


def show_finely(length: Length, unit: Unit) -> str:
    """`length` finer than a ruler has it, so that it reads as it was written where it can."""
    return show_stated(length, unit, fineness=unit.finest)


_WRITE = {
    False: "Write the heading [squares], and below it size and count (or packs and in_a_pack).",
    True: "Write the heading [strips], and below it width, length and count.",
}
"""How a table is written; of strips when True."""


def _noun(definition: Definition, start: StartDefinition) -> str:
    """`start` in the plural, such as "squares"."""
    return next(pile.noun.many for pile in definition.piles if pile.id == start.pile)
