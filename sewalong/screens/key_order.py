"""Which screen a key is for: the one that stood there when it was pressed.

Keys can come in one burst, out of a stalled connection or a paste, while what the first of them
began is only on its way. Those behind it were pressed by somebody who did not see it yet.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any
from weakref import WeakKeyDictionary

from textual.app import App
from textual.events import Event, Key
from textual.screen import Screen

from sewalong.screens.asking import AskingScreen

LEAVES = ("ctrl+c", "ctrl+q")
"""Keys that leave, whatever is being asked: nobody may be locked in."""


class KeyOrder:
    """Keeps keys from screens they are not for, and gives a dialog those it says were meant for it."""

    def __init__(self, app: App[Any], asks: Callable[[], bool], stands: Callable[[], None]) -> None:
        """`asks` says whether the app itself asks something, over whatever screen; `stands` is
        called whenever a screen stands there."""
        self._app = app
        self._app_asks = asks
        self._stands = stands
        self._stands_since: WeakKeyDictionary[Screen[Any], float] = WeakKeyDictionary()
        self._early: list[Key] = []
        self._last = ""
        """The last key that was for the screen in front; none yet since it stands there."""

    def watch(self) -> None:
        """Follow which screen is in front; the app must be running."""
        signal = self._app.screen_change_signal
        signal.subscribe(self._app, self._another_is_in_front, immediate=True)

    def keeps_back(self, event: Event, *, on_its_way_back: bool = False) -> bool:
        """Whether a key is not for the screen in front; it is kept for a form on its way."""
        if not isinstance(event, Key) or event.is_forwarded is not on_its_way_back:
            return False
        if event.key in LEAVES and self._stood_there(event.time):
            return False
        if not self.are_for_the_screen_in_front(event.time):
            self._early.append(event)
            return True
        if not on_its_way_back:
            left_by = getattr(self._app.screen, "is_left_by", "")
            if left_by and left_by == self._last:
                self._early.append(event)
                return True
            self._early.clear()
            self._last = event.key
        return False

    def are_for_the_screen_in_front(self, pressed: float) -> bool:
        """Whether keys of that moment are: it stood there by then, and asks nothing."""
        return not self._asks(self._app.screen) and self._stood_there(pressed)

    def _asks(self, screen: Screen[Any]) -> bool:
        """Whether something is asked over a screen, and no key is for it."""
        return isinstance(screen, AskingScreen) and bool(screen.asks or self._app_asks())

    def _stood_there(self, pressed: float) -> bool:
        return pressed >= self._stands_since.get(self._app.screen, 0.0)

    def _another_is_in_front(self, screen: Screen[Any]) -> None:
        self._stands_since[screen] = float("inf")
        screen.call_later(self._it_stands, screen)

    def _it_stands(self, screen: Screen[Any]) -> None:
        """The screen is there, filled and with its focus; from now on keys are for it."""
        self._stands_since[screen] = Event().time
        self._stands()
        if self._asks(screen):
            return
        early, self._early = self._early, []
        meant_early = getattr(screen, "meant_early", None)
        last, self._last = self._last, ""
        for key in meant_early(early, last) if meant_early else ():
            self._app.post_message(Key(key.key, key.character))
