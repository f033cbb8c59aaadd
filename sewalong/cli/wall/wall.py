"""`wall`: where each unit lies: proposed, typed or photographed, looked at, moved, laid again."""

from __future__ import annotations

import argparse
from collections.abc import Callable

from msgspec.structs import replace

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.cli.wall.laid import proposed, rules_typed, typed
from sewalong.cli.wall.mended import mended_report
from sewalong.cli.wall.moves import MOVES, moved
from sewalong.cli.wall.ordered import ordered
from sewalong.cli.wall.photographed import photographed
from sewalong.cli.wall.wall_report import (
    rebuild_report,
    row_report,
    standing_report,
    units_with_report,
)
from sewalong.progress.record.state import State
from sewalong.progress.sets.read_squares import squares_typed
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.wall.proposals import WallRules

_RULES = ("touch", "stacks", "rim")
_GOES_WITH = {
    "": _RULES,
    "row": (),
    "rebuild": (),
    "with_fabrics": (),
    "propose": (*_RULES, "plan", "spread", "seconds", "seed", "accept"),
    "typed": (*_RULES, "accept"),
    "photo": (*_RULES, "corners", "said", "accept"),
    "mend": ("accept",),
    "order": ("accept", "either_way", "seed"),
    **dict.fromkeys(MOVES, ("look",)),
    **dict.fromkeys(("turn-row", "exchange"), ("look", "all_the_same")),
}
"""What goes with each thing asked for: an option, a word, or nothing, for how the wall stands."""

_MODES = ("row", "rebuild", "with_fabrics", "propose", "typed", "photo")
_WORDS = ("mend", "order", *MOVES)


def wall(args: argparse.Namespace, context: Context) -> Report:
    """`wall`, `wall --row 3`, `wall --propose`, `wall swap 2.3 7.8` and so on."""
    what, behind = _wanted(args)
    with chosen_quilt(args, context) as quilt:
        if what in MOVES:
            return moved(quilt, what, behind, args, context)
        return _REPORTS[what](quilt, args)


def _standing(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    return standing_report(quilt.entry.name, *_by_rules(quilt, args))


def _with_fabrics(quilt: OpenQuilt, args: argparse.Namespace) -> Report:
    return units_with_report(quilt, squares_typed(quilt.state.quilt, args.with_fabrics))


_REPORTS: dict[str, Callable[[OpenQuilt, argparse.Namespace], Report]] = {
    "": _standing,
    "row": lambda quilt, args: row_report(quilt, args.row),
    "rebuild": lambda quilt, args: rebuild_report(quilt),
    "with_fabrics": _with_fabrics,
    "propose": proposed,
    "typed": typed,
    "photo": photographed,
    "mend": mended_report,
    "order": ordered,
}


def _by_rules(quilt: OpenQuilt, args: argparse.Namespace) -> tuple[State, WallRules]:
    """The quilt, its wall looked at by the rules that are typed."""
    state = quilt.state
    rules = rules_typed(state, args)
    seen = replace(state.wall, touch=rules.touch, stacks=rules.stacks, rim=rules.rim)
    return replace(state, wall=seen), rules


def _wanted(args: argparse.Namespace) -> tuple[str, list[str]]:
    """The one thing asked for, and the words behind it. Raises CommandError for two, or for an
    option that does not go with it."""
    word, *behind = args.do or [""]
    modes = [mode for mode in _MODES if _given(args, mode)]
    if word == "order" and modes == ["typed"]:
        modes = []
    if word and word not in _WORDS:
        raise CommandError(
            f"“{word[:20]}” is nothing that is done with the wall: {', '.join(_WORDS)}. "
            "See: sewalong wall --help"
        )
    if len(modes) + bool(word) > 1:
        raise CommandError("One thing at a time. See: sewalong wall --help")
    what = word or next(iter(modes), "")
    if word in ("mend", "order") and behind:
        raise CommandError(f"Nothing is typed behind {word}. See: sewalong wall --help")
    known = {name for names in _GOES_WITH.values() for name in names}
    for name in sorted(known - {*_GOES_WITH[what]}):
        if _given(args, name):
            others = [one or "wall alone" for one, names in _GOES_WITH.items() if name in names]
            said = ", ".join(f"--{one}" if one in _MODES else one for one in others)
            raise CommandError(f"--{name.replace('_', '-')} goes with: {said}.")
    return what, behind


def _given(args: argparse.Namespace, name: str) -> bool:
    # A number typed as 0 is given, though 0 equals False.
    value = getattr(args, name)
    return value is not None and value is not False and value != []
