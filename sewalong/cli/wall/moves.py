"""What is moved on the wall: `wall swap 2.3 7.8` and so on. Each says what it mends and costs."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Sequence

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.sewing.outcome import aftermath
from sewalong.cli.wall.typed_places import place_and_turns, place_typed, spare_typed
from sewalong.cli.wall.wall_report import touch_data
from sewalong.progress.acts.act import Act
from sewalong.progress.acts.wall import (
    ClearWall,
    ExchangeRows,
    LockPlaces,
    PutSpare,
    SwapPlaces,
    TurnRow,
    TurnUnit,
)
from sewalong.progress.joining.nesting import nesting, nesting_facts
from sewalong.progress.joining.row_tags import read_label
from sewalong.progress.record.events.wall import a_place, must_be_laid
from sewalong.progress.record.state import State
from sewalong.progress.sets.set_words import called
from sewalong.service.acting import do
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.wall.changes import effect_of, would_be
from sewalong.service.wall.in_hand import wall_in_hand
from sewalong.service.wall.moves import turn
from sewalong.service.wall.rows import between_rows
from sewalong.wall.laying.moves import Effect
from sewalong.wall.laying.touch_words import effect_words

Words = Sequence[str]


def moved(
    quilt: OpenQuilt, word: str, behind: Words, args: argparse.Namespace, context: Context
) -> Report:
    """Carry out what `word` asks for, or with --look only say what it would do."""
    quilt.refresh()
    must_be_laid(quilt.state)
    act = MOVES[word](quilt.state, behind)
    before, after = quilt.state, would_be(quilt, act)
    if isinstance(act, LockPlaces | ClearWall):
        lines: tuple[str, ...] = ()
        data: dict[str, object] = {}
    else:
        effect = between_rows(effect_of(before, after), act)
        lines = (*effect_words(effect, called(before.quilt)), *_pressing(act, after))
        data = _effect_data(effect, after)
    if args.look:
        said = lines or ("It can be done.",)
        return Report(
            (*said, "Nothing was recorded."), {"quilt": quilt.entry.name, "recorded": [], **data}
        )
    if isinstance(act, TurnRow | ExchangeRows) and not args.all_the_same:
        _must_be_meant(before, after, lines, context)
    return aftermath(quilt, do(quilt, act), first=lines, more=data)


def _must_be_meant(before: State, after: State, lines: Words, context: Context) -> None:
    """Whole rows that touch or collide more than before are moved only when that was said."""
    effect = effect_of(before, after)
    collide = len(nesting(after).collide) > len(nesting(before).collide)
    if effect.after <= effect.before and not collide:
        return
    if not context.interactive:
        again = "Nothing was recorded. To do it all the same: the same with --all-the-same"
        raise CommandError("\n".join((*lines, again)))
    if context.ask(*lines, "Press Enter to do it all the same, or n to leave it:"):
        raise CommandError("Nothing was recorded.")


def _pressing(act: Act, after: State) -> tuple[str, ...]:
    return nesting_facts(after) if isinstance(act, TurnRow | ExchangeRows) else ()


def _effect_data(effect: Effect, after: State) -> dict[str, object]:
    found = nesting(after)
    return {
        "touches_before": effect.before,
        "touches_after": effect.after,
        "mends": [touch_data(touch) for touch in effect.mends],
        "makes": [touch_data(touch) for touch in effect.makes],
        "ridge_on_ridge": [list(join) for join in found.collide],
        "press_anew": list(found.anew),
    }


# -- what is typed ---------------------------------------------------------------


def _swap(state: State, behind: Words) -> Act:
    one, other = _words(behind, 2, "swap takes two places, such as: swap 2.3 7.8")
    here, turned = place_and_turns(one)
    there, other_turned = place_and_turns(other)
    return SwapPlaces(*here, *there, turned, other_turned)


def _turn(state: State, behind: Words) -> Act:
    if len(behind) == 1:
        at = a_place(state, place_typed(behind[0]))
        wall = wall_in_hand(state)
        # `moved` looked whether anything is laid.
        assert wall is not None
        return turn(wall, at)
    place, quarters = _words(behind, 2, "turn takes a place and quarter turns: turn 2.3 1")
    if quarters not in ("1", "2", "3"):
        raise CommandError("A unit is turned by 1, 2 or 3 quarters, such as: turn 2.3 2")
    return TurnUnit(*place_typed(place), int(quarters))


def _spare(state: State, behind: Words) -> Act:
    place, unit = _words(behind, 2, "spare takes a place and the spare: spare 2.3 7/2")
    number, turns = spare_typed(state, unit)
    return PutSpare(*place_typed(place), number, turns)


def _out(state: State, behind: Words) -> Act:
    (place,) = _words(behind, 1, "out takes a place, such as: out 2.3")
    return PutSpare(*place_typed(place))


def _lock(state: State, behind: Words) -> Act:
    return LockPlaces(_places(behind, "lock"))


def _unlock(state: State, behind: Words) -> Act:
    return LockPlaces(_places(behind, "unlock"), locked=False)


def _exchange(state: State, behind: Words) -> Act:
    first, second = _words(behind, 2, "exchange takes two rows by their tags: exchange R3 R6")
    return ExchangeRows(read_label(first), read_label(second))


def _turn_row(state: State, behind: Words) -> Act:
    (row,) = _words(behind, 1, "turn-row takes a row by its tag, such as: turn-row R4")
    return TurnRow(read_label(row))


def _clear(state: State, behind: Words) -> Act:
    _words(behind, 0, "clear takes the whole wall, and nothing behind it.")
    return ClearWall()


def _places(behind: Words, word: str) -> tuple[tuple[int, int], ...]:
    if not behind:
        raise CommandError(f"{word.capitalize()} takes places, such as: {word} 2.3 2.4")
    return tuple(place_typed(one) for one in behind)


def _words(behind: Words, count: int, how: str) -> Words:
    if len(behind) != count:
        raise CommandError(f"{how[:1].upper()}{how[1:]}")
    return behind


MOVES: dict[str, Callable[[State, Words], Act]] = {
    "swap": _swap,
    "turn": _turn,
    "spare": _spare,
    "out": _out,
    "lock": _lock,
    "unlock": _unlock,
    "exchange": _exchange,
    "turn-row": _turn_row,
    "clear": _clear,
}
