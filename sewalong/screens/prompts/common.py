"""What every longer ask needs: which pile, and a number typed."""

from __future__ import annotations

from collections.abc import Callable

from sewalong.progress.record.limits import MOST_AT_ONCE
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.rows_sewn import rows_pile
from sewalong.progress.record.state import State
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog


def whole(text: str) -> int:
    """The whole number typed; raises Refused where it is none, or longer than any there is."""
    text = text.strip()
    if not (text.isascii() and text.isdigit()):
        raise Refused("Write a whole number, such as 4.")
    if len(text.lstrip("0")) > len(str(MOST_AT_ONCE)):
        raise Refused(f"That number is too long; {MOST_AT_ONCE} is the most.")
    return int(text)


async def which_pile(
    desk: Desk, title: str, there: Callable[[State, str], int] | None = None
) -> str | None:
    """Choose a pile, the one waiting at the stage in hand first; None when left.

    Where `there` says how many of a pile can be chosen from, those without any are left out.
    """
    state = desk.quilt.state
    choices = [
        Choice(id, f"{pile.noun.many}: {n}{in_place(state.where.get(id))}")
        for id, pile in state.route.piles.items()
        if (n := there(state, id) if there else state.piles[id]) or there is None
    ]
    if not choices:
        desk.tell("There is nothing in any pile for that.", refused=True)
        return None
    return await desk.app.push_screen_wait(ChoiceDialog(title, choices, _waiting_pile(desk)))


def in_place(place: str | None) -> str:
    """Where a pile lies, to stand after its name."""
    return f" – {place}" if place else ""


def _waiting_pile(desk: Desk) -> str | None:
    stage = desk.outcome.hand.line.stage
    takes = getattr(stage, "takes", ())
    return takes[0].pile if takes else rows_pile(desk.quilt.state.quilt).id
