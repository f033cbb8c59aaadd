"""Putting the work down: is it a good place to stop, and where does each pile lie."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.selection import pile_id
from sewalong.progress.record.limits import a_pile
from sewalong.progress.record.state import State
from sewalong.progress.resuming.pause_note import PauseNote, PileToPlace
from sewalong.progress.resuming.stop_advice import StopHere

_IN_THE_REPORT = ("Machine", "Tested by", "Seam", "Press", "Missing")


def placed(pairs: Sequence[str], state: State) -> dict[str, str]:
    """Places by pile from `PILE=PLACE`. Raises CommandError or Refused."""
    places = {}
    for pair in pairs:
        pile, equals, place = pair.partition("=")
        if not equals or not place.strip():
            raise CommandError(f"“{pair[:40]}” is no place. Write it like unit='flat box'")
        places[a_pile(state, pile_id(state.route, pile.strip()))] = place.strip()
    return places


def ask_to_stop(stop: StopHere, context: Context) -> None:
    """Say that another place to stop is better; raises CommandError when the person goes on."""
    if stop.good:
        return
    said = context.ask(f"{stop.why} {stop.offer}".rstrip(), "Enter to stop here, n to go on first:")
    if said:
        raise CommandError("The session stays open. Nothing was recorded.")


def ask_places(piles: Sequence[PileToPlace], context: Context) -> dict[str, str]:
    """Where each pile was put; Enter keeps the place offered, or says nothing of it."""
    places = {}
    for one in piles:
        lies = one.noun.count(one.n)
        keep = f"Enter for: {one.offered}" if one.offered else "Enter for nothing"
        said = context.ask(f"Where did you put the {lies}? ({keep})")
        if said:
            places[one.pile] = said
    return places


def left_lines(note: PauseNote) -> list[str]:
    """What the note says besides, and whether it was a good place to stop."""
    lines = [f"{label}: {text}" for label, text in note.lines if label in _IN_THE_REPORT]
    return [*lines, f"Stopping here: {note.stop.why}"]


def left_data(note: PauseNote) -> dict[str, object]:
    """The same as data."""
    return {
        "next_thing": note.next_step or None,
        "good_place_to_stop": note.stop.good,
        "stopping_here": note.stop.why,
    }
