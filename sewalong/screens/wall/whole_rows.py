"""Whole rows by keys: exchanged, turned end for end, put in order again; and all of it taken off."""

from __future__ import annotations

import asyncio
from collections.abc import Sequence

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.wall import ClearWall, ExchangeRows, TurnRow
from sewalong.progress.record.refused import Refused
from sewalong.screens.prompts.common import whole
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog, Field, FormDialog, LinesDialog
from sewalong.screens.wall.wall_look import WallLook
from sewalong.screens.widgets.keys import Key
from sewalong.service.wall.rows import order_found, what_moving_rows_does

ROW_KEYS = (
    Key("wall.exchange", "e", "exchange", "exchange rows",
        "This row changes places with another; what that does is said first.",
        words="swap rows whole order press parity"),
    Key("wall.end_for_end", "o", "end_for_end", "turn the row",
        "This row lies end for end; what that does is said first.",
        words="reverse whole row wrong way round turned"),
    Key("wall.order", "h", "order", "order of rows",
        "Rows whose order was lost, put in order again from what their edges show.",
        words="lost mixed up cat fan find again sort"),
    Key("wall.clear", "k", "clear", "clear", "Nothing is laid any more; undo lays it again.",
        words="empty remove all take off delete"),
)  # fmt: skip


class WholeRows(WallLook):
    """The wall on which rows are moved as they are."""

    def action_exchange(self) -> None:
        """Exchange this row with another, once it was said what that does."""
        self.ask_in_turn(self._exchange(self.at[0]))

    async def _exchange(self, row: int) -> None:
        wanted: list[Act] = []

        def look(values: dict[str, str]) -> str | None:
            other = whole(values["row"])
            if not other:
                return "Write the number of a row, such as 4."
            act = ExchangeRows(row, other)
            what_moving_rows_does(self.quilt, act)
            wanted.append(act)
            return None

        field = (Field("row", f"Row {row} changes places with row"),)
        if await self.app.push_screen_wait(FormDialog("Exchange rows", field, look)):
            await self._if_meant(wanted[-1], "exchange them")

    def action_end_for_end(self) -> None:
        """Turn this row end for end, once it was said what that does."""
        self.ask_in_turn(self._if_meant(TurnRow(self.at[0]), f"turn row {self.at[0]}"))

    async def _if_meant(self, act: Act, does: str) -> None:
        """Say what it does, and do it where that is meant."""
        try:
            said = what_moving_rows_does(self.quilt, act)
        except Refused as refused:
            self.tell(str(refused), refused=True)
            return
        if await self._is_meant(said, does):
            await self._carry_out(lambda: act)

    async def _is_meant(self, said: Sequence[str], does: str) -> bool:
        choices = (Choice("yes", does), Choice("no", "leave it as it is"))
        chosen = await self.app.push_screen_wait(ChoiceDialog("\n".join(said), choices))
        return chosen == "yes"

    def action_order(self) -> None:
        """Look for the order in which neighbouring rows touch least, and have it if that is meant."""
        self.ask_in_turn(self._order())

    async def _order(self) -> None:
        ways = (Choice("one", "all lie as they do"), Choice("either", "they may lie end for end"))
        way = await self.app.push_screen_wait(ChoiceDialog("The order of the rows is lost", ways))
        if way is None:
            return
        state = self.quilt.state
        try:
            # Of many rows it takes a second or two.
            found = await asyncio.to_thread(order_found, state, turning=way == "either")
        except Refused as refused:
            self.tell(str(refused), refused=True)
            return
        if found.before == found.after:
            await self.app.push_screen_wait(LinesDialog("The order of the rows", found.lines))
        elif await self._is_meant(found.lines, "have the rows lie so"):
            await self._carry_out(lambda: found.act)

    def action_clear(self) -> None:
        """Have nothing be laid any more."""
        self.carry_out(ClearWall)
