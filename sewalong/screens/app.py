"""The terminal app: which quilt, where was I, what now."""

from __future__ import annotations

import gc
import os
from typing import ClassVar

from textual import work
from textual.app import App
from textual.binding import Binding
from textual.driver import Driver
from textual.theme import Theme

from sewalong.owner.preferences import AS_USUAL, Preferences
from sewalong.progress.resuming.resume_facts import was_away
from sewalong.screens.key_reading import forgive_bad_bytes
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.terminal import leave_on_signals, watch_terminal
from sewalong.screens.widgets.keys import keys_with
from sewalong.screens.widgets.themes import DAYLIGHT, LAMPLIGHT, THEMES
from sewalong.service.open_quilt import Clock, OpenQuilt, local_now
from sewalong.service.preferences import own_preferences
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from sewalong.store.look import read_look, remember_look

STANDS_AFTER = 1.0
"""Seconds after which the app stands and what was loaded for it stays for good."""


def collect_again() -> None:
    """Collect garbage from now on, but not among what was loaded at the start."""
    gc.freeze()
    gc.enable()


class SewalongApp(App[int]):
    """Opens quilts one after another until the person leaves."""

    CSS_PATH = "style.tcss"
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar = [Binding("ctrl+q", "quit", "leave", show=False, id="app.leave")]

    def __init__(
        self,
        library: Library,
        *,
        quilt: str | None = None,
        clock: Clock = local_now,
        title: str = "sewalong",
        look_folder: str | os.PathLike[str] | None = None,
        preferences: Preferences = AS_USUAL,
        trouble: str = "",
    ) -> None:
        super().__init__()
        self._preferences = preferences
        self._trouble = trouble
        self._library = library
        self._first = quilt
        self._clock = clock
        self._title = title
        self._look_folder = look_folder
        for theme in THEMES.values():
            self.register_theme(theme)
        look = read_look(look_folder) if look_folder else None
        self.theme = look if look in THEMES else LAMPLIGHT.name

    def get_theme(self, theme_name: str) -> Theme | None:
        """A theme by name; ours are found at once, as it is asked for every line drawn."""
        return THEMES.get(theme_name) or super().get_theme(theme_name)

    def get_driver_class(self) -> type[Driver]:
        """The library's driver, whichever it is, made forgiving."""
        driver = super().get_driver_class()
        forgive_bad_bytes(driver)
        return driver

    def on_mount(self) -> None:
        if not self.is_headless:
            leave_on_signals(self)
            watch_terminal()
        self.set_timer(STANDS_AFTER, collect_again)
        if self._preferences.keys:
            moved = keys_with(self._preferences.keys)
            self.set_keymap({key.id: key.keys for key in moved})
        if self._trouble:
            self.notify(self._trouble, markup=False, severity="warning", timeout=30)
        self.app_resume_signal.subscribe(self, lambda _: self.refresh(layout=True))
        self._go_round()

    @work
    async def _go_round(self) -> None:
        """A quilt, its return sheet if it is time, the sewing screen; then the list again."""
        wanted = self._first
        while True:
            if wanted is None:
                from sewalong.screens.quilts import QuiltsScreen

                wanted = await self.push_screen_wait(
                    QuiltsScreen(self._library, self._clock, self._title)
                )
            if wanted is None:
                self.exit(0)
                return
            quilt = self._open(wanted)
            wanted = None
            if quilt is None:
                continue
            if was_away(quilt.state, quilt.now()):
                from sewalong.screens.returning import ReturnScreen

                if not await self.push_screen_wait(ReturnScreen(quilt)):
                    continue
            await self.push_screen_wait(SewingScreen(quilt))

    def _open(self, key: str) -> OpenQuilt | None:
        try:
            for entry in self._library.entries():
                if entry.key == key:
                    return OpenQuilt(
                        self._library, entry, self._clock, preferences=self._preferences
                    )
        except StoreFault as fault:
            self.notify(str(fault), markup=False, severity="error", timeout=30)
        return None

    def action_toggle_look(self) -> None:
        """Change between lamplight and daylight, and remember it."""
        self.theme = DAYLIGHT.name if self.theme == LAMPLIGHT.name else LAMPLIGHT.name
        if self._look_folder:
            remember_look(self._look_folder, self.theme)


def run_app(library_path: str | os.PathLike[str], quilt: str | None, demo: bool) -> int:
    """Open the app on the record at `library_path`; the exit status is returned.

    `quilt` is the key of the quilt to open at once. Raises StoreFault when the record
    cannot be opened.
    """
    preferences, trouble = own_preferences()
    library = Library(library_path, local_now())
    try:
        app = SewalongApp(
            library,
            quilt=quilt,
            title="sewalong (demo quilts)" if demo else "sewalong",
            look_folder=os.path.dirname(library_path),
            preferences=preferences,
            trouble=trouble,
        )
        app.run()
        return app.return_code or 0
    finally:
        library.close()
