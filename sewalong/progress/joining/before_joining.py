"""What the wall says of the two rows that are joined next, before they are: how they meet as they
lie, and what would show if one was picked up end for end.

Loaded only where something lies on the wall.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from sewalong.progress.joining.join_order import Join
from sewalong.progress.joining.nesting import press_anew_words
from sewalong.progress.joining.next_joins import joining
from sewalong.progress.record.limits import are
from sewalong.progress.record.state import State
from sewalong.progress.sets.set_words import called
from sewalong.progress.wall.on_wall import laying_of, rules_of
from sewalong.progress.wall.units import shown_by
from sewalong.wall.laying.laying import Laying, Put, Touch, touches_at
from sewalong.wall.laying.rows import end_for_end
from sewalong.wall.laying.touch_words import touch_words
from sewalong.wall.laying.units import WallUnit, plain_unit


def before_the_join(state: State) -> tuple[str, ...]:
    """What to know before the next two rows are joined, a sentence each, the most important first;
    none where nobody can say which they are, or nothing meets across that seam."""
    wall, joins = state.wall, joining(state).joins
    # Across a sash nothing meets, and rows on point fit one way round only.
    if not wall.is_laid or not joins or state.quilt.setting is not None or state.quilt.is_web:
        return ()
    join = joins[0]
    press = press_anew_words(state, join.first, join.second)
    return tuple(filter(None, (press, *_meeting(state, join))))


def _meeting(state: State, join: Join) -> tuple[str, ...]:
    """The most important first."""
    laying, units = laying_of(state, state.wall.rows), _units(state, join)
    now = _across(state, laying, units, join)
    turned = _across(state, _turned(laying, join), units, join)
    names = called(state.quilt)
    one = join.below[0] == join.below[1]
    piece = f"row {join.second}" if one else f"the piece with row {join.second}"
    new = [touch for touch in turned if touch not in now]
    said = [f"As they lie: {_lower(touch_words(touch, names))}" for touch in now]
    if len(turned) < len(now):
        fewer = f"Turned end for end {piece} would touch less, at {len(turned)}"
        said.insert(0, f"{fewer}: was it picked up so?")
    elif new:
        n = f"{len(new)} new touch{'' if len(new) == 1 else 'es'}"
        where = _lower(touch_words(new[0], names))
        said.append(f"If {piece} lies end for end there {are(len(new))} {n}: {where}")
    else:
        said.append(f"If {piece} lay end for end, nothing new would touch: go by its tag.")
    return tuple(said)


def _units(state: State, join: Join) -> list[WallUnit]:
    """What the units of these rows show, by their numbers on the wall: of all others it is not asked,
    and no colour is loaded for it."""
    wall = state.wall
    units = [plain_unit("")] * len(wall.units)
    for row in {join.first, *join.below}:
        for lies in filter(None, wall.rows[row - 1]):
            units[lies[0]] = shown_by(state, wall.units[lies[0]], lies[0])
    return units


def _across(
    state: State, laying: Laying, units: Sequence[WallUnit], join: Join
) -> tuple[Touch, ...]:
    """The touches along the seam between the two rows."""
    grid, lie = laying.grid, laying.in_order
    both = [n for n, at in enumerate(grid.places) if at[0] in (join.first, join.second)]
    puts: list[Put | None] = [None] * len(lie)
    for n in both:
        puts[n] = lie[n]
    rules = rules_of(state.wall.touch, stacks=state.wall.stacks, rim="")
    found = touches_at(grid, puts, units, rules, both)
    return tuple(one for one in found if {at[0] for at in one.places} == {join.first, join.second})


def _turned(laying: Laying, join: Join) -> Laying:
    """The laying with the whole lower piece turned half way round."""
    first, last = join.below
    rows = list(laying.places)
    rows[first - 1 : last] = [end_for_end(row) for row in reversed(rows[first - 1 : last])]
    return replace(laying, places=tuple(rows))


def _lower(sentence: str) -> str:
    return f"{sentence[:1].lower()}{sentence[1:]}"
