"""Other layouts than the one chosen: its neighbours, the ones a size lies between, a pattern
taken to another size, and those that use up what there is."""

from fractions import Fraction
from math import isqrt

from msgspec import Struct

from sewalong.quilt.layouts.counts_for_length import counts_for_length
from sewalong.quilt.layouts.layout import Layout, LayoutChoice
from sewalong.quilt.refusal import NumbersFault, at_least
from sewalong.quilt.size import Size


def neighbours(
    choice: LayoutChoice, rows: int, columns: int, *, alike: bool = False
) -> tuple[Layout, ...]:
    """Layouts one step of rows, of columns, or of both away, the smallest first.

    Each says how many units it is short of or leaves over. With `alike`, a step is two, since
    one more row would put the other unit in two corners.
    """
    step = 2 if alike else 1
    steps = (-step, 0, step)
    near_by = {(rows + down, columns + across) for down in steps for across in steps}
    near_by.discard((rows, columns))
    kept = [(r, c) for r, c in near_by if r >= 1 and c >= 1]
    return tuple(
        sorted((choice.layout(*one) for one in kept), key=lambda one: (one.units, one.rows))
    )


class Around(Struct, frozen=True):
    """The two layouts a wanted size lies between: one that covers it, one that lies within."""

    covering: Layout
    within: Layout | None


def around(choice: LayoutChoice) -> Around:
    """The smallest layout that covers the size wanted and the largest that lies within it.

    `within` is None when not even one unit fits. Raises `NumbersFault` when no size is wanted.
    """
    wanted = _wanted(choice)
    across = counts_for_length(lambda n: choice.size(1, n).width, wanted.width)
    down = counts_for_length(lambda n: choice.size(n, 1).length, wanted.length)
    within = choice.layout(down[1], across[1]) if down[1] and across[1] else None
    return Around(choice.layout(down[0], across[0]), within)


class Grown(Struct, frozen=True):
    """Another layout than the pattern's, and how many times the units it takes."""

    layout: Layout
    units: int
    more: int
    times: Fraction
    reason: str


def grow(choice: LayoutChoice, old: tuple[int, int], new: tuple[int, int]) -> Grown:
    """What changing from one layout (rows, columns) to another takes."""
    before = choice.layout(*old).units
    layout = choice.layout(*new)
    more = layout.units - before
    times = Fraction(layout.units, before)
    change = f"{more} more" if more >= 0 else f"{-more} fewer"
    reason = (
        f"{layout.rows} rows of {layout.columns} take {layout.units} units, {change} than {before}: "
        f"{float(times):.2f} times as many"
    )
    return Grown(layout, layout.units, more, times, reason)


def factor_layouts(units: int) -> tuple[tuple[int, int], ...]:
    """Every rows by columns that takes exactly `units`, at least two of each, the shorter side
    first; perhaps none."""
    at_least(1, units, "units")
    return tuple((side, units // side) for side in range(2, isqrt(units) + 1) if units % side == 0)


def _wanted(choice: LayoutChoice) -> Size:
    if choice.wanted is None:
        raise NumbersFault("No size is wanted yet. Give a width and a length, or a bed.")
    return choice.wanted
