"""Leaving the app: each session open in it is closed as the key for it would, or asked about later."""

from __future__ import annotations

from typing import Any

from textual.app import App

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.sessions import CloseSession
from sewalong.progress.record.refused import Refused
from sewalong.service.acting import do
from sewalong.service.left_unasked import is_asked_about, questions_left
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault

HINT = "esc: stay   ctrl+c: leave without answering"


class _Leaving:
    """What the closing questions need of whoever asks them, where no screen of the quilt is open."""

    def __init__(self, app: App[Any], quilt: OpenQuilt) -> None:
        self.app = app
        self.quilt = quilt

    def attempt(self, act: Act, *, say: bool = True) -> str | None:
        """Carry out an act; a refusal is returned, and changes nothing."""
        try:
            do(self.quilt, act, quietly=True)
        except (Refused, StoreFault) as refusal:
            return str(refusal)
        return None


async def close_on_leaving(app: App[Any], quilt: OpenQuilt) -> bool:
    """Close the session as the key for it would; False where it stays open and so does the app."""
    from sewalong.screens.prompts.closing_prompts import close

    return not is_asked_about(quilt) or await close(_Leaving(app, quilt), HINT)


async def ask_what_was_left(app: App[Any], quilt: OpenQuilt) -> None:
    """Ask first of all what was left unasked at the last leaving, and close that session."""
    asked = questions_left(quilt)
    if not asked:
        return
    from sewalong.screens.prompts.closing_prompts import ask_each

    answers = await ask_each(app, asked, "You left before this was asked")
    if answers is not None:
        _Leaving(app, quilt).attempt(CloseSession(answers))
