"""What was to be done once a screen is drawn is not done any more while it is taken off."""

from __future__ import annotations

from textual.app import App, ComposeResult
from textual.widgets import Static

from sewalong.screens.left_once import LeftOnce


class Leaving(LeftOnce[None]):
    """Looked at once more while it is taken off, as by a key that was on its way."""

    looked = 0

    def compose(self) -> ComposeResult:
        yield Static("cloth", id="cloth")

    def look(self) -> None:
        self.query_one("#cloth")
        Leaving.looked += 1


async def test_nothing_is_looked_for_on_a_screen_that_is_taken_off() -> None:
    app: App[None] = App()
    async with app.run_test() as pilot:
        screen = Leaving()
        await app.push_screen(screen)
        screen.call_after_refresh(screen.look)
        await pilot.pause()
        assert Leaving.looked == 1
        # As the library has it on the way: the widgets are gone, the screen still takes messages.
        await screen.query_one("#cloth").remove()
        screen._pruning = True
        screen.call_after_refresh(screen.look)
        await pilot.pause()
        screen._pruning = False
        assert Leaving.looked == 1
