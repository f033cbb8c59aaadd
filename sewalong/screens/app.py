"""The terminal app: which quilt, where was I, what now."""

from __future__ import annotations

import asyncio
import gc
import os
from collections.abc import Mapping
from typing import ClassVar

from textual import events, work
from textual.app import App
from textual.binding import Binding
from textual.driver import Driver
from textual.screen import ModalScreen
from textual.theme import Theme

from sewalong.owner.preferences import AS_USUAL, Preferences
from sewalong.progress.resuming.resume_facts import was_away, was_begun_today
from sewalong.screens.ascii_filter import AsciiFilter
from sewalong.screens.background import Asking
from sewalong.screens.key_order import LEAVES, KeyOrder
from sewalong.screens.key_reading import ForgivingParser, forgive_bad_bytes
from sewalong.screens.prompts.leaving import ask_what_was_left, close_on_leaving
from sewalong.screens.sewing import SewingScreen
from sewalong.screens.terminal import (
    go_on_after_a_stop,
    holding_signals_back,
    leave_on_signals,
    let_signals_through,
    shows_more_than_ascii,
    watch_terminal,
)
from sewalong.screens.widgets.keys import keys_with
from sewalong.screens.widgets.themes import DAYLIGHT, LAMPLIGHT, THEMES
from sewalong.service.left_unasked import leave_unasked
from sewalong.service.open_quilt import Clock, OpenQuilt, local_now
from sewalong.service.preferences import own_preferences
from sewalong.store.faults import StoreFault
from sewalong.store.library import Library
from sewalong.store.look import read_look, remember_look

STANDS_AFTER = 1.0
"""Seconds after which the app stands and what was loaded for it stays for good."""

SIXTEEN = ("standard", "windows")
"""What rich calls terminals of sixteen colours."""


def collect_again() -> None:
    """Collect garbage from now on, but not among what was loaded at the start."""
    gc.freeze()
    gc.enable()


class SewalongApp(App[int]):
    """Opens quilts one after another until the person leaves."""

    CSS_PATH = "style.tcss"
    _looks: Mapping[str, Theme] = THEMES
    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar = [
        Binding(",".join(LEAVES), "leave", "leave", show=False, priority=True, id="app.leave")
    ]

    def __init__(
        self,
        library: Library,
        *,
        quilt: str | None = None,
        new: bool = False,
        clock: Clock = local_now,
        title: str = "sewalong",
        look_folder: str | os.PathLike[str] | None = None,
        preferences: Preferences = AS_USUAL,
        trouble: str = "",
        light: bool = False,
    ) -> None:
        """`quilt` is opened first, or a `new` one asked for. `light`: the look where she has
        chosen none."""
        super().__init__()
        self._preferences = preferences
        self._trouble = trouble
        self._library = library
        self._first = quilt
        self._new = new
        self._clock = clock
        self._title = title
        self._look_folder = look_folder
        self.key_order = KeyOrder(self, lambda: self._leaving, self._first_stands)
        self._opened: dict[str, OpenQuilt] = {}
        self._leaving = False
        if preferences.ascii or not shows_more_than_ascii():
            self._filters.append(AsciiFilter())
        if self.console.color_system in SIXTEEN:
            from sewalong.screens.widgets.few_colours import FEW  # few terminals need them

            self._looks = FEW
        for theme in self._looks.values():
            self.register_theme(theme)
        look = read_look(look_folder) if look_folder else None
        usual = DAYLIGHT.name if light else LAMPLIGHT.name
        self.theme = look if look in THEMES else usual

    def get_theme(self, theme_name: str) -> Theme | None:
        """A theme by name; ours are found at once, as it is asked for every line drawn."""
        return self._looks.get(theme_name) or super().get_theme(theme_name)

    def get_driver_class(self) -> type[Driver]:
        """The library's driver, whichever it is, made forgiving."""
        driver = super().get_driver_class()
        forgive_bad_bytes(driver)
        return driver

    def on_mount(self) -> None:
        self.key_order.watch()
        if not self.is_headless:
            leave_on_signals(self)
            go_on_after_a_stop(self)
            watch_terminal()
        self.set_timer(STANDS_AFTER, collect_again)
        if self._preferences.keys:
            moved = {key.id: key.keys for key in keys_with(self._preferences.keys)}
            self.set_keymap({**moved, "dialog.count": moved["sew.count"]})
        if self._trouble:
            self.notify(self._trouble, markup=False, severity="warning", timeout=30)
        self.app_resume_signal.subscribe(self, lambda _: self.refresh(layout=True))
        self._go_round()

    @work
    async def _go_round(self) -> None:
        """A quilt, its return sheet if it is time, the sewing screen; then the list again."""
        wanted, self._first = self._first, None
        if self._new:
            from sewalong.screens.new_quilt import NewQuiltScreen

            self._new = False
            wanted = await self.push_screen_wait(
                NewQuiltScreen(self._library, self._clock, self._preferences)
            )
        while True:
            if wanted is None:
                from sewalong.screens.quilts import QuiltsScreen

                wanted = await self.push_screen_wait(
                    QuiltsScreen(self._library, self._clock, self._title, self._preferences)
                )
            if wanted is None:
                if await self._leave():
                    return
                continue
            quilt = self._open(wanted)
            wanted = None
            if quilt is None:
                continue
            await ask_what_was_left(self, quilt)
            if self._leaving:
                return
            new = was_begun_today(quilt.record, quilt.entry.started, quilt.now())
            if was_away(quilt.state, quilt.now()) and not new:
                from sewalong.screens.returning import ReturnScreen

                if not await self.push_screen_wait(ReturnScreen(quilt)):
                    continue
            self._opened[quilt.entry.key] = quilt
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

    # -- leaving ---------------------------------------------------------------

    def action_leave(self) -> None:
        """Leave from wherever it is: what was used is asked about first, as by ending the session.

        Pressed again meanwhile it leaves at once, and what was not asked is the first thing at
        the next return.
        """
        if self._leaving:
            self._leave_unasked()
        else:
            self.run_worker(self._leave_or_stay())

    async def _leave_or_stay(self) -> None:
        if not await self._leave() and len(self.screen_stack) == 1:
            # It was asked to leave before a quilt stood there.
            self._go_round()

    async def _leave(self) -> bool:
        """Close the sessions that are open here; True, and the app ends, unless one stays open."""
        self._leaving = True
        self._leaving = await self._closed_all()
        if self._leaving:
            self.exit(0)
        return self._leaving

    async def _closed_all(self) -> bool:
        await self._put_dialogs_away()
        sewing = [one for one in self.screen_stack if isinstance(one, SewingScreen)]
        if not all(one.can_be_left() for one in sewing):
            return False
        for quilt in self._opened.values():
            if not await close_on_leaving(self, quilt):
                return False
        return True

    def _leave_unasked(self) -> None:
        for quilt in self._opened.values():
            leave_unasked(quilt)
        self.exit(0)

    async def _put_dialogs_away(self) -> None:
        """Leave every dialog in front as escape would, whatever was half filled in."""
        while isinstance(self.screen, ModalScreen):
            self.screen.dismiss(None)
            # Whoever put it up may have another to put up.
            await asyncio.sleep(0)

    # -- keys ------------------------------------------------------------------

    async def on_event(self, event: events.Event) -> None:
        """A key is for the screen that was seen when it was pressed, and else for none."""
        if not self.key_order.keeps_back(event):
            await super().on_event(event)

    def on_key(self, event: events.Key) -> None:
        """A key no widget wanted; what it does is looked up when those before it are done."""
        if self.key_order.keeps_back(event, on_its_way_back=True):
            event.prevent_default().stop()

    def _first_stands(self) -> None:
        """From the first screen on the app can be ended and leave nothing behind."""
        if not self.is_headless:
            let_signals_through()

    def action_toggle_look(self) -> None:
        """Change between lamplight and daylight, and remember it."""
        self.theme = DAYLIGHT.name if self.theme == LAMPLIGHT.name else LAMPLIGHT.name
        if self._look_folder:
            remember_look(self._look_folder, self.theme)


def run_app(
    library_path: str | os.PathLike[str],
    quilt: str | None,
    demo: bool,
    asked: Asking | None = None,
    *,
    new: bool = False,
) -> int:
    """Open the app on the record at `library_path`; the exit status is returned.

    `quilt` is the key of the quilt to open at once; with `new` a new one is asked for. Raises
    StoreFault when the record cannot be opened.
    """
    preferences, trouble = own_preferences()
    library = Library(library_path, local_now())
    look_folder = os.path.dirname(library_path)
    try:
        with holding_signals_back():
            ForgivingParser.unfinished = asked.unfinished if asked else ""
            app = SewalongApp(
                library,
                quilt=quilt,
                new=new,
                title="sewalong (demo quilts)" if demo else "sewalong",
                look_folder=look_folder,
                preferences=preferences,
                trouble=trouble,
                light=bool(asked and asked.light),
            )
            app.run()
        return app.return_code or 0
    finally:
        library.close()
