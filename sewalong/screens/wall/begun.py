"""What is sewn of rows begun: with units on the wall square by square, else said in a form."""

from __future__ import annotations

from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.stage_prompts import begun as said_begun


async def begun(desk: Desk) -> None:
    """The row in hand where one is laid; what it takes is loaded then."""
    if desk.quilt.state.wall.is_laid:
        from sewalong.screens.wall.row_in_hand import RowInHandScreen

        await desk.app.push_screen_wait(RowInHandScreen(desk))
        return
    await said_begun(desk)
