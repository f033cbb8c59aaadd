"""A screen of one quilt that follows what another window records while it stands there."""

from __future__ import annotations

from abc import abstractmethod
from contextlib import suppress
from typing import ClassVar, Generic, TypeVar

from sewalong.screens.helped import HelpedScreen
from sewalong.screens.widgets.breakpoints import LOOK_AGAIN
from sewalong.service.open_quilt import OpenQuilt
from sewalong.store.faults import StoreFault

Result = TypeVar("Result")


class FollowingScreen(HelpedScreen[Result], Generic[Result]):
    """Draws itself anew when the quilt stands elsewhere than it showed."""

    reads_on: ClassVar[bool] = False
    """Whether it reads the record on itself; the sewing screen below it does so too."""

    def __init__(self, quilt: OpenQuilt) -> None:
        super().__init__()
        self.quilt = quilt
        self._shown = quilt.state

    def follow(self) -> None:
        """Look again and again from now on."""
        self.set_interval(LOOK_AGAIN, self._look_again)

    @abstractmethod
    async def show_anew(self) -> None:
        """Draw everything as it stands now."""

    async def _look_again(self) -> None:
        if self.reads_on:
            with suppress(StoreFault):
                self.quilt.refresh()
        if self.quilt.state is not self._shown and not self.asks:
            await self.bring_up_to_date()

    async def bring_up_to_date(self) -> None:
        """Draw it anew now, as after something that was done on this screen."""
        self._shown = self.quilt.state
        await self.show_anew()
