"""A quilt as it was planned: what the quilt file says, checked and exact."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from sewalong.lengths import Length, Unit
from sewalong.piecing.catalogue import method_for, written_for
from sewalong.piecing.method import Method, MethodKey
from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.set_rows import SetRow, set_rows, units_in
from sewalong.quilt.setting import Sashing, SetOnPoint, Setting
from sewalong.quilt.size import Size
from sewalong.quilt.web import ROWS, WEB

if TYPE_CHECKING:
    from sewalong.piecing.definition import Definition


class Target(Struct, frozen=True, order=True):
    """The layout wanted: rows down, columns across, both at least 1.

    On point, they are the whole units along the edges (see `set_rows`).
    """

    rows: int
    columns: int

    def __str__(self) -> str:
        return f"{self.rows} × {self.columns}"


class Lot(Struct, frozen=True):
    """Squares of one pile that are of one size, in `packs` or simply counted."""

    size: Length
    count: int
    packs: int | None = None


class StartPile(Struct, frozen=True):
    """Pieces there are to begin with.

    `size` is the side of a square or the width of a strip; `length` is the usable
    length of a strip and None for squares. `packs` is None when the pieces were
    simply counted.

    Squares can have come in several sizes. Then `lots` has each of them, the smallest first;
    `size` is the smallest, since all can be brought to that and no larger, and `count` and
    `packs` are those of all lots together.
    """

    pile: str
    size: Length
    count: int
    packs: int | None = None
    length: Length | None = None
    lots: tuple[Lot, ...] = ()

    @property
    def in_lots(self) -> tuple[Lot, ...]:
        """The lots, of which most piles have one."""
        return self.lots or (Lot(self.size, self.count, self.packs),)


def pile_of_lots(pile: str, lots: Iterable[Lot]) -> StartPile:
    """The pile that squares in these lots make; there is at least one, and no size twice."""
    smallest_first = tuple(sorted(lots, key=lambda lot: lot.size))
    packs = [lot.packs for lot in smallest_first]
    return StartPile(
        pile,
        smallest_first[0].size,
        sum(lot.count for lot in smallest_first),
        None if None in packs else sum(n for n in packs if n),
        lots=smallest_first if len(smallest_first) > 1 else (),
    )


def with_more(start: StartPile, size: Length, count: int) -> StartPile:
    """A pile of squares with so many more, counted and of that size, to begin with."""
    lots = {lot.size: lot for lot in start.in_lots}
    there = lots.get(size, Lot(size, 0))
    return pile_of_lots(start.pile, (lots | {size: Lot(size, there.count + count)}).values())


class Border(Struct, frozen=True):
    """One border: the width its strips are cut at, the name of its cloth, its "#rrggbb"."""

    cut: Length
    cloth: str
    colour: str | None = None


class Quilt(Struct, frozen=True):
    """The plan of one quilt. `starts` begins with the pile the method names first.

    `fabrics` are those of the units that she has said something of, in the order of their letters.
    `trim` is the size the owner trims units to, raw edge to raw edge, where she says one; what
    the units come to is `unit_size.decided_unit`. `method_text` is the method file as it was when
    the quilt began, which the quilt goes by whatever became of the file since; None in quilts
    begun before it was kept, which go by the program's own method of this id. `setting` is None
    where units are set straight. `joined` is one of `web.JOINED`.
    """

    name: str
    method_id: str
    unit: Unit
    seam: Length
    starts: tuple[StartPile, ...]
    target: Target
    borders: tuple[Border, ...] = ()
    finishing: tuple[str, ...] = ()
    notes: str = ""
    fabrics: tuple[Fabric, ...] = ()
    choices: Choices = Choices()
    trim: Size | None = None
    setting: Setting | None = None
    method_text: str | None = None
    joined: str = ROWS

    @property
    def is_web(self) -> bool:
        """Whether it is put together column by column, the threads between the rows uncut."""
        return self.joined == WEB

    @property
    def named_fabrics(self) -> tuple[Fabric, ...]:
        """Names for what the method calls by its letters."""
        return tuple(fabric for fabric in self.fabrics if fabric.squares is None)

    @property
    def counted_fabrics(self) -> tuple[Fabric, ...]:
        """The fabrics she has so many squares of, to make sets from."""
        return tuple(fabric for fabric in self.fabrics if fabric.squares is not None)

    @property
    def sashing(self) -> Sashing | None:
        """Its sashes, None where it has none."""
        return self.setting if isinstance(self.setting, Sashing) else None

    @property
    def is_on_point(self) -> bool:
        """Whether its units stand on a corner."""
        return isinstance(self.setting, SetOnPoint)

    def units_for(self, target: Target) -> int:
        """Units the layout holds, as they are set."""
        return units_in(self.setting, target.rows, target.columns)

    def rows_for(self, target: Target) -> tuple[SetRow, ...]:
        """The rows its units are sewn into, in order; on point those on the slant."""
        return set_rows(self.setting, target.rows, target.columns)

    @property
    def method_key(self) -> MethodKey:
        """What the counts of its method follow from."""
        first = self.starts[0]
        if first.length is None:
            return MethodKey(self.method_id, text=self.method_text)
        width = self.cut_at(first)
        return MethodKey(self.method_id, width, first.length, self.seam, self.method_text)

    def cut_at(self, start: StartPile) -> Length:
        """The one size of the pieces of a starting pile, which units and cloth both follow.

        Pieces from packs, or of several sizes, came as they are; all others are cut from cloth,
        on the marks of a ruler, and so a size that no ruler shows is cut a little larger.
        """
        if start.packs is not None or start.lots:
            return start.size
        # Not loaded to count with, where no width has to be known.
        from sewalong.quilt.cloth.to_cut import to_cut

        return to_cut(start.size, self.unit).length

    @property
    def method(self) -> Method:
        """The method; raises UnknownMethod if this version no longer has it."""
        return method_for(self.method_key)

    @property
    def written_method(self) -> Definition:
        """The method as it is written, its operations too; raises as `method` does."""
        return written_for(self.method_key)


def with_lot_alone(quilt: Quilt, start: StartPile, lot: Lot) -> Quilt:
    """The quilt as if all squares of a pile were of one of its lots."""
    alone = replace(start, size=lot.size, packs=lot.packs, lots=(lot,))
    return replace(quilt, starts=tuple(alone if one == start else one for one in quilt.starts))
