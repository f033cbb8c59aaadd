"""Her sets looked at: what lies in each, what its seams will show, and what can be done with it.

Colours are reckoned with here, so it is loaded only by whoever looks at sets.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.sets import LayOwn, MarkSet, SwapSquares
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.squares_left import laid_set, shape_of_sets, squares_left
from sewalong.progress.record.state import State
from sewalong.progress.sets.contrast import Laid, all_words, set_contrast, weakest_words
from sewalong.progress.sets.finding import where_is
from sewalong.progress.sets.groups import groups
from sewalong.progress.sets.in_hand import set_in_hand
from sewalong.progress.sets.swapping import OVER, Square, swap_words
from sewalong.progress.sets.where_words import standing_words, where_words
from sewalong.service.set_pictures import known


class Row(Struct, frozen=True):
    """Squares that lie together, under a heading."""

    title: str
    squares: tuple[Square, ...]


class SetPage(Struct, frozen=True):
    """One set: what it is called and how it stands, its squares, and what is said of it.

    `laid` is empty for the page of what is over; `counts` has there the squares of each fabric.
    """

    number: int
    title: str
    rows: tuple[Row, ...]
    verdict: tuple[str, ...]
    facts: tuple[str, ...]
    laid: Laid = ()
    counts: Mapping[str, int] = {}

    @property
    def squares(self) -> tuple[Square, ...]:
        """All its squares, in the order in which they stand in the rows."""
        return tuple(square for row in self.rows for square in row.squares)


def why_no_sets(state: State) -> str:
    """Why there can be no sets of this quilt, in a sentence; empty where there can."""
    try:
        shape_of_sets(state.quilt)
    except Refused as refused:
        return str(refused)
    return ""


def pages(state: State) -> tuple[int, ...]:
    """The numbers of all sets in order, and last OVER for the squares in none."""
    return (*sorted(state.sets.sets), OVER)


def first_page(state: State, stage: str) -> int:
    """The set in hand at a stage; else the one that is next, else the first there is."""
    found = set_in_hand(state, stage)
    if found is not None:
        return found.number
    order = state.sets.order(state.quilt.starts[0].pile)
    return order[0] if order else pages(state)[0]


def page(state: State, number: int) -> SetPage:
    """A set as it lies, or of number OVER what is in none. Raises Refused for none there is."""
    if number == OVER:
        return _over(state)
    laid = laid_set(state, number)
    standing = standing_words(state, laid)
    title = f"set {number} of {len(state.sets.sets)}"
    found = page_of(state, known(laid), len(state.sets.sets), number)
    where = where_words(state, where_is(state, laid))
    return SetPage(
        number,
        f"{title}, {standing}" if standing else title,
        found.rows,
        (*found.verdict, *all_words(set_contrast(state.quilt), _laid(state))),
        (*found.facts, where),
        found.laid,
    )


def page_of(state: State, squares: Laid, sets: int, number: int) -> SetPage:
    """These squares as set `number` of so many, whether it is accepted or only proposed."""
    seams = set_contrast(state.quilt)
    rows = tuple(
        Row(group.title, tuple(Square(number, p, squares[p] or "") for p in group.places))
        for group in groups(state.quilt, shape_of_sets(state.quilt))
    )
    weakest, more = weakest_words(seams, squares), seams.facts(squares).more
    return SetPage(number, f"set {number} of {sets}", rows, weakest, more, squares)


def _over(state: State) -> SetPage:
    left = squares_left(state.quilt, state.sets)
    counts = {letter: n for letter, n in left.items() if n > 0}
    rows = (Row("over", tuple(Square(OVER, 0, letter) for letter in counts)),) if counts else ()
    n = sum(counts.values())
    said = f"{n} squares are in no set." if n > 1 else "1 square is in no set."
    return SetPage(
        OVER, "over", rows, (said if n else "Every square is in a set.",), (), counts=counts
    )


def what_meets_what(state: State, squares: Laid) -> tuple[str, ...]:
    """Every seam between two squares of a set, the weakest first, a sentence each."""
    return tuple(met.words for met in set_contrast(state.quilt).met(squares))


def all_of_it(state: State, squares: Laid) -> tuple[str, ...]:
    """The same, and behind them what else is to be said of the set."""
    return set_contrast(state.quilt).facts(squares).facts


def what_a_swap_does(state: State, one: Square, other: Square) -> tuple[str, ...]:
    """What it mends or costs to change two squares, a sentence each; or why it cannot be."""
    try:
        swap(state, one, other)
    except Refused as refused:
        return (str(refused),)
    return swap_words(set_contrast(state.quilt), _laid(state), one, other)


def swap(state: State, one: Square, other: Square) -> Act:
    """The act that changes two squares for each other. Raises Refused where nothing would change."""
    if one.number == other.number == OVER:
        raise Refused("Both are in no set. Mark a square of a set.")
    if one.letter == other.letter:
        raise Refused("Both are the same fabric. Go to another.")
    if one.number == OVER:
        one, other = other, one
    if other.number != OVER:
        return SwapSquares(one.number, one.place + 1, other.number, other.place + 1)
    squares = list(laid_set(state, one.number).squares)
    squares[one.place] = other.letter
    return LayOwn(one.number, tuple(squares))


def hold_back(state: State, number: int) -> Act:
    """Hold a set back, or let it in again."""
    return MarkSet(number, "back in" if laid_set(state, number).held_back else "held back")


def lock(state: State, number: int) -> Act:
    """Lock a set, or unlock it."""
    return MarkSet(number, "unlocked" if laid_set(state, number).locked else "locked")


def _laid(state: State) -> Mapping[int, Laid]:
    return {number: known(laid) for number, laid in state.sets.sets.items()}


def all_laid(state: State) -> Sequence[Laid]:
    """The squares of all sets that are not held back, in order of their numbers."""
    return [known(one) for _, one in sorted(state.sets.sets.items()) if not one.held_back]
