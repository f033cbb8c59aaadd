"""Where a set lies, and what is to be known of it, in words."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.record.sets.laid import LaidSet
from sewalong.progress.record.state import State
from sewalong.progress.sets.finding import WhereASetIs, sets_with
from sewalong.progress.sets.set_words import called

NONE_HAS = "No set has {these} together. Look at one of them alone, or at what is over."


def standing_words(state: State, laid: LaidSet) -> str:
    """ "held back, locked"; whether it is the next or begun. Empty for one that waits its turn."""
    start = state.quilt.starts[0].pile
    order = state.sets.order(start)
    said = ["held back"] if laid.held_back else []
    if order[:1] == (laid.number,):
        said.append("next")
    elif laid.number in state.sets.begun(start):
        said.append("begun")
    if laid.locked:
        said.append("locked")
    return ", ".join(said)


def where_words(state: State, found: WhereASetIs) -> str:
    """ "Set 7: 2 pairs (blue tray), 4 squares."; unsure where one of a pile is gone."""
    return " ".join(where_facts(state, found))


def where_facts(state: State, found: WhereASetIs) -> tuple[str, ...]:
    """The same, a sentence each."""
    name = f"Set {found.laid.number}"
    if found.laid.held_back and not found.piles:
        return (f"{name} is held back: its squares lie by themselves.",)
    if not found.piles:
        return (f"{name}: nobody knows where its pieces are now.",)
    start, squares = state.quilt.starts[0].pile, len(found.laid.squares)
    if found.piles == ((start, squares),):
        return (f"{name} is not begun: its {squares} squares lie with the others.",)
    lies = f"{name}: {', '.join(_pieces(state, pile, n) for pile, n in found.piles)}."
    return (lies,) if found.sure else (lies, "Not sure: a piece of a pile there is gone.")


def _pieces(state: State, pile: str, n: int) -> str:
    noun = state.route.piles[pile].noun
    place = state.where.get(pile)
    return f"{noun.count(n)} ({place})" if place else noun.count(n)


def found_words(state: State, fabrics: Sequence[str]) -> tuple[str, ...]:
    """The sets that have all of these fabrics and where they lie, a sentence each; first those that
    have them in one piece."""
    names = called(state.quilt)
    found = sets_with(state, fabrics)
    if not found:
        these = " and ".join(names.get(one, one) for one in fabrics)
        return (NONE_HAS.format(these=these),)
    return tuple(
        f"{where_words(state, one)}{' They are in one piece there.' if one.together else ''}"
        for one in found
    )
