"""Where does it go? The wall: looked at place by place, units picked up, put down, turned, locked."""

from __future__ import annotations

import asyncio

from sewalong.progress.record.events.standing import must_be_in_progress
from sewalong.progress.record.refused import Refused
from sewalong.screens.over_sewing import undoing_keys
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog
from sewalong.screens.wall.photographing import photographed
from sewalong.screens.wall.typing import type_rows
from sewalong.screens.wall.wall_look import ALONE, looking_keys
from sewalong.screens.wall.whole_rows import ROW_KEYS, WholeRows
from sewalong.screens.widgets.keys import Key, help_at
from sewalong.service.wall.in_hand import wall_in_hand
from sewalong.service.wall.looks import PlacePage, spares, verdict
from sewalong.service.wall.mending import how_many, mended, move_lines
from sewalong.service.wall.moves import lock, mend_so_far, put_in, swap, take_out, turn
from sewalong.service.wall.proposals import units_there

KEYS = (
    Key("wall.pick", "enter", "pick", "pick up",
        "Pick up what lies here; at another place put it down: the two change places.", True,
        ("space",), "swap exchange change move trade"),
    Key("wall.turn", "t", "turn", "turn", "Turn what lies here by a quarter.", True,
        words="rotate quarter round"),
    *looking_keys("wall"),
    Key("wall.lock", "l", "lock", "lock",
        "Keep what lies here when the rest is proposed anew; again: no longer.", True,
        words="keep fix stay hold"),
    Key("wall.spare", "s", "spare", "spare in", "Bring a unit that lies nowhere to this place.",
        True, words="unused extra other in"),
    Key("wall.out", "d", "take_out", "take out", "Take out what lies here; it is a spare then.",
        False, words="remove delete empty"),
    Key("wall.propose", "p", "propose", "propose",
        "Have a layout proposed, and watch it get better; what is locked or sewn stays.", True,
        words="anew arrange shuffle search layout plan rules"),
    Key("wall.mend", "m", "mend", "mend",
        "The fewest swaps and turns that mend what touches, made as far as you like.", True,
        words="fix repair better fewest moves help"),
    Key("wall.photograph", "f", "photograph", "photograph",
        "Read what lies there from a photograph of the units laid out.", False,
        words="picture camera read file floor scan"),
    Key("wall.type", "a", "type", "type rows", "Type what lies there, row by row.", False,
        words="letters enter write layout by hand"),
    *ROW_KEYS,
    *undoing_keys("wall"),
    Key("wall.leave", "escape", "leave", "back", "Put down what is picked up; else back to sewing.",
        True, ("minus",), "quit sew"),
    help_at("wall"),
)  # fmt: skip

COUNTING_GOES_ON = "None of it need be: counting goes on without."


class WallScreen(WholeRows):
    """Every move is an act of its own, and undone like any."""

    BINDINGS = [*(key.binding() for key in KEYS)]
    offered = KEYS

    def on_mount(self) -> None:
        self.wall = wall_in_hand(self.quilt.state)
        self.follow()
        self.show()

    async def show_anew(self) -> None:
        """The wall as it is now; nothing is picked up any more."""
        self.wall = wall_in_hand(self.quilt.state, self.wall)
        if self.wall is None:
            self.dismiss(True)
            return
        self.held = None
        self.show()

    def verdict(self) -> str:
        return verdict(self.wall) if self.wall is not None else ""

    def placed(self, page: PlacePage) -> None:
        if self.held is not None:
            self.tell(page.in_short(page.does))
        elif not self.panel_is_seen:
            self.tell(page.in_short(page.lies))

    # -- moving --------------------------------------------------------------------

    def action_pick(self) -> None:
        """Pick up what lies here, or have it change places with what is picked up."""
        held, at = self.held, self.at
        if held is None or held == at:
            self.held = at if held is None else None
            self.show()
            if held is not None:
                self.tell("Put down where it lay.")
        else:
            self.carry_out(lambda: swap(held, at))

    def action_turn(self) -> None:
        """Turn what lies here by a quarter, or half way round where that is all it can be turned."""
        if self.wall is not None:
            wall, at = self.wall, self.at
            self.carry_out(lambda: turn(wall, at))

    def action_lock(self) -> None:
        """Lock this place, or unlock it."""
        if self.wall is not None:
            wall, at = self.wall, self.at
            self.carry_out(lambda: lock(wall, at))

    def action_take_out(self) -> None:
        """Leave this place empty."""
        at = self.at
        self.carry_out(lambda: take_out(at))

    def action_spare(self) -> None:
        """Bring a spare to this place."""
        self.ask_in_turn(self._spare())

    async def _spare(self) -> None:
        assert self.wall is not None
        at, found = self.at, spares(self.wall, self.at)
        if not found:
            self.tell("There is no spare: every unit lies somewhere.", refused=True)
            return
        choices = [Choice(str(n), spare.words) for n, spare in enumerate(found)]
        chosen = await self.app.push_screen_wait(ChoiceDialog("Which spare comes here?", choices))
        if chosen is not None:
            spare = found[int(chosen)]
            await self._carry_out(lambda: put_in(at, spare))

    # -- laying anew ---------------------------------------------------------------

    def action_propose(self) -> None:
        """Have a layout proposed."""
        self.ask_in_turn(self._propose())

    async def _propose(self) -> None:
        from sewalong.screens.wall.proposing import ProposedWallScreen

        if await self.app.push_screen_wait(ProposedWallScreen(self._desk)):
            await self.done()

    def action_type(self) -> None:
        """Type what lies there, row by row."""
        self.ask_in_turn(self._type())

    async def _type(self) -> None:
        if await type_rows(self._desk):
            await self.done()

    def action_photograph(self) -> None:
        """Read what lies there from a photograph."""
        self.ask_in_turn(self._photograph())

    async def _photograph(self) -> None:
        if await photographed(self._desk):
            await self.bring_up_to_date()

    def action_mend(self) -> None:
        """Look for the fewest moves that mend what touches, and ask how many of them to make."""
        self.ask_in_turn(self._mend())

    async def _mend(self) -> None:
        self.tell("Looking for the fewest moves.")
        state = self.quilt.state
        # It may take a second or two, in which other windows go on being followed.
        found = await asyncio.to_thread(mended, state)
        self.tell(how_many(found), refused=not found.moves)
        if not found.moves:
            return
        lines = move_lines(state, found)
        choices = [Choice(str(n), f"{n}. {line}") for n, line in enumerate(lines, start=1)]
        title = f"{how_many(found)} Make them down to which?"
        chosen = await self.app.push_screen_wait(ChoiceDialog(title, choices))
        if chosen is not None:
            await self._carry_out(lambda: mend_so_far(state, found, int(chosen)))

    def action_leave(self) -> None:
        """Put down what is picked up, or show the wall again; else back to sewing."""
        if self.held is not None:
            self.held = None
            self.show()
            self.tell("Put down where it lay.")
        elif self.has_class(ALONE):
            self.action_alone()
        else:
            self.dismiss(True)


async def wall(desk: Desk) -> None:
    """The wall; a layout is proposed first where nothing is laid. Loaded only when asked for."""
    if desk.quilt.state.wall.rows or await _laid_first(desk):
        await desk.app.push_screen_wait(WallScreen(desk))


async def _laid_first(desk: Desk) -> bool:
    """Have something be laid: as it is proposed, or where no unit is known as it is typed or
    photographed."""
    try:
        must_be_in_progress(desk.quilt.state)
    except Refused as refused:
        desk.tell(str(refused), refused=True)
        return False
    try:
        units_there(desk.quilt.state)
    except Refused as refused:
        choices = (
            Choice("type", "type what lies there, row by row"),
            Choice("photograph", "read it from a photograph"),
        )
        dialog = ChoiceDialog(f"{refused} {COUNTING_GOES_ON}", choices)
        chosen = await desk.app.push_screen_wait(dialog)
        if chosen is None:
            return False
        return await (type_rows(desk) if chosen == "type" else photographed(desk))
    from sewalong.screens.wall.proposing import ProposedWallScreen

    accepted: bool | None = await desk.app.push_screen_wait(ProposedWallScreen(desk))
    return bool(accepted)
