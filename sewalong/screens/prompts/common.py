"""What every longer ask needs: which pile, and a number typed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sewalong.progress.record.route import ROW
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog

if TYPE_CHECKING:
    from sewalong.screens.sewing import SewingScreen

NOT_A_NUMBER = "Write a whole number, such as 4."


def whole(text: str) -> int | None:
    """The whole number typed, or None when it is none."""
    text = text.strip()
    return int(text) if text.isascii() and text.isdigit() and len(text) <= 6 else None


async def which_pile(screen: SewingScreen, title: str, *, only_full: bool = False) -> str | None:
    """Choose a pile, the one waiting at the stage in hand first; None when left."""
    state = screen.quilt.state
    choices = [
        Choice(id, f"{pile.noun.many}: {state.piles[id]}{in_place(state.where.get(id))}")
        for id, pile in state.route.piles.items()
        if state.piles[id] or not only_full
    ]
    if not choices:
        screen.tell("Every pile is empty.", refused=True)
        return None
    return await screen.app.push_screen_wait(ChoiceDialog(title, choices, _waiting_pile(screen)))


def in_place(place: str | None) -> str:
    """Where a pile lies, to stand after its name."""
    return f", in {place}" if place else ""


def _waiting_pile(screen: SewingScreen) -> str | None:
    stage = screen.hand.line.stage
    takes = getattr(stage, "takes", ())
    return takes[0].pile if takes else ROW.id
