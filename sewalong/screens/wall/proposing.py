"""A layout proposed, better while it is watched, until it is accepted."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Awaitable, Callable, Iterator

from msgspec.structs import replace

from sewalong.progress.record.refused import Refused
from sewalong.quilt.refusal import NumbersFault
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog
from sewalong.screens.wall.photographing import photographed
from sewalong.screens.wall.typing import type_rows
from sewalong.screens.wall.wall_look import ALONE, WallLook, looking_keys
from sewalong.screens.widgets.keys import Key, help_at
from sewalong.service.wall.proposals import ToPropose, accepting, rules_now, to_propose
from sewalong.service.wall.rules import (
    Wanted,
    around_words,
    fabric_around,
    fabrics_around,
    found_words,
    possible_words,
    proposed_wall,
)
from sewalong.wall.laying.plans import Plan
from sewalong.wall.laying.search import Found, search

KEYS = (
    Key("layout.accept", "y", "accept", "accept", "Have this layout on the wall.", True, ("space",),
        "yes take keep done"),
    Key("layout.stop", "enter", "stop", "stop", "Stop looking for better ones, or go on.", True,
        words="enough go on look"),
    Key("layout.points", "1", "points", "points count",
        "Like fabrics may not meet at a point either; again: along seams only.", True,
        words="corner edge rule seam touch"),
    Key("layout.stacks", "2", "stacks", "stacks apart",
        "Keep units of one stack apart; again: they may lie side by side.", True,
        words="set rule together"),
    Key("layout.rim", "3", "rim", "border",
        "Keep the border's fabric, or another, off the rim; again: it may lie there.", True,
        words="edge outside rule border fabric"),
    Key("layout.spread", "4", "spread", "spread",
        "Families and values spread evenly; again: as they come.", True,
        words="even blob rule family value"),
    Key("layout.plan", "5", "which_plan", "light and dark",
        "Choose where light and dark shall lie.", True,
        words="value plan rings checker scattered mirrored light to dark"),
    Key("layout.seed", "r", "another", "another", "Begin anew from another beginning.", True,
        words="seed again shuffle different"),
    Key("layout.photograph", "f", "photograph", "photograph",
        "Not this one: read what lies there from a photograph of the units laid out.", False,
        words="picture camera read file floor scan own"),
    Key("layout.type", "a", "type", "type rows", "Not this one: type what lies there, row by row.",
        False, words="letters enter write by hand own"),
    *looking_keys("layout"),
    Key("layout.leave", "escape", "leave", "back", "Back, and nothing is changed.", True,
        ("minus",), "quit sew no"),
    help_at("layout"),
)  # fmt: skip

GROUP = "layout"

SHOWN_EVERY = 0.25
"""Seconds from one better layout that is drawn to the next: own choice, so that each can be seen."""


class ProposedWallScreen(WallLook):
    """Proposes by rules that are picked, and shows what it found so far. True is what it is left
    with when that is accepted."""

    BINDINGS = [*(key.binding() for key in KEYS)]
    offered = KEYS
    looks_in_vain = 400
    """Looks that found nothing better after which it stops by itself (own choice)."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._wanted = Wanted(rules_now(self.quilt.state))
        self._asked: ToPropose | None = None
        self._found: Found | None = None
        self._possible: tuple[str, ...] = ()
        self._better: Iterator[Found] = iter(())
        self._step: asyncio.Future[Found | None] | None = None
        """The look that is on its way."""
        self._is_looking = False

    def on_mount(self) -> None:
        self.follow()
        self.call_after_refresh(self._begin)

    async def show_anew(self) -> None:
        """Another window changed something: proposed anew of what there is now."""
        self._begin()

    def verdict(self) -> str:
        return " ".join(found_words(self._possible, self._found))

    # -- looking for better ones ---------------------------------------------------

    def _begin(self) -> None:
        """Propose from the beginning, in place of whatever is being looked for."""
        self._found = self.wall = self._asked = self._step = None
        self._possible = ()
        self._want(self._wanted)

    def _want(self, wanted: Wanted) -> None:
        """Propose by these rules; where nothing can be, what is there stays."""
        try:
            asked = to_propose(self.quilt.state, **wanted.asked())
            possible = possible_words(self.quilt.state, asked)
        except (Refused, NumbersFault) as refused:
            if self._asked is None:
                self._stop()
                self.show()
            self.tell(str(refused), refused=True)
            return
        self._wanted, self._asked, self._possible = wanted, asked, possible
        self._found = self.wall = self._step = None
        self._better = search(asked.asked)
        self._go_on()

    def _go_on(self) -> None:
        self._is_looking = True
        self.run_worker(self._look(), group=GROUP, exclusive=True)
        self._tell_how()

    def _stop(self) -> None:
        self._is_looking = False
        self.workers.cancel_group(self, GROUP)

    async def _look(self) -> None:
        """Look for better ones until there are none, or none was found for long."""
        drawn, in_vain, is_drawn = 0.0, 0, True
        while (found := await self._looked()) is not None:
            is_better = self._found is None or found.laying != self._found.laying
            self._found = found
            in_vain, is_drawn = (0, False) if is_better else (in_vain + 1, is_drawn)
            if not is_drawn and time.monotonic() > drawn + SHOWN_EVERY:
                self._show_found()
                drawn, is_drawn = time.monotonic(), True
            if in_vain >= self.looks_in_vain:
                break
        self._is_looking = False
        self._show_found()
        self._tell_how()

    async def _looked(self) -> Found | None:
        """What comes of one look more, None behind the last. On a large wall one takes half a second
        and more, so it is done aside, and one that was begun is waited for even after a stop."""
        if self._step is None:
            self._step = asyncio.ensure_future(asyncio.to_thread(next, self._better, None))
        found = await asyncio.shield(self._step)
        self._step = None
        return found

    def _show_found(self) -> None:
        if self._asked is not None and self._found is not None:
            if self.wall is None:
                self.wall = proposed_wall(self.quilt.state, self._asked, self._found)
            else:
                self.wall.lay(self._found.laying)
        self.show()

    def _tell_how(self) -> None:
        how = self._wanted.words(self.quilt.state)
        stop = "looking for better: enter stops" if self._is_looking else "y has it"
        self.tell(f"{how}; {stop}.")

    # -- keys ----------------------------------------------------------------------

    def action_stop(self) -> None:
        """Stop looking for better ones, or go on."""
        if self._is_looking:
            self._stop()
            self._show_found()
            self._tell_how()
        elif self._found is not None:
            self._go_on()

    def action_another(self) -> None:
        """Begin from another beginning."""
        self._want(replace(self._wanted, seed=self._wanted.seed + 1))

    def action_points(self) -> None:
        """Whether like fabrics may meet at a point."""
        self._want(self._wanted.with_points_or_not())

    def action_stacks(self) -> None:
        """Whether units of one stack may lie side by side."""
        self._want(self._wanted.with_stacks_or_not())

    def action_spread(self) -> None:
        """Whether families and values are spread evenly."""
        self._want(replace(self._wanted, spread=not self._wanted.spread))

    def action_rim(self) -> None:
        """Keep a fabric off the rim, or none."""
        if self._wanted.rules.rim:
            self._want(self._wanted.with_rim(""))
        elif letter := fabric_around(self.quilt.state):
            self._want(self._wanted.with_rim(letter))
        else:
            self.ask_in_turn(self._which_rim())

    async def _which_rim(self) -> None:
        choices = [Choice(*one) for one in fabrics_around(self.quilt.state)]
        if not choices:
            self.tell("No fabric is said yet that could lie around the units.", refused=True)
            return
        title = f"Which fabric {around_words(self.quilt.state)}?"
        chosen = await self.app.push_screen_wait(ChoiceDialog(title, choices))
        if chosen is not None:
            self._want(self._wanted.with_rim(chosen))

    def action_which_plan(self) -> None:
        """Choose where light and dark shall lie."""
        self.ask_in_turn(self._which_plan())

    async def _which_plan(self) -> None:
        none = Choice("", "as it comes: nothing is asked of light and dark")
        choices = [none, *(Choice(plan, f"{plan}: {plan.words}") for plan in Plan)]
        title = "Where shall light and dark lie?"
        chosen = await self.app.push_screen_wait(
            ChoiceDialog(title, choices, self._wanted.plan or "")
        )
        if chosen is not None:
            self._want(replace(self._wanted, plan=Plan(chosen) if chosen else None))

    def action_accept(self) -> None:
        """Have this layout on the wall."""
        if self._asked is None or self._found is None:
            self.tell("There is no layout to accept yet.", refused=True)
            return
        self._stop()
        self.ask_in_turn(self._accept(self._asked, self._found))

    async def _accept(self, asked: ToPropose, found: Found) -> None:
        refusal = self._desk.attempt(accepting(asked, found))
        if refusal:
            self.tell(refusal, refused=True)
        else:
            self.dismiss(True)

    def action_photograph(self) -> None:
        """Read what lies there from a photograph instead."""
        self._stop()
        self.ask_in_turn(self._laid_by(photographed))

    def action_type(self) -> None:
        """Type what lies there instead."""
        self._stop()
        self.ask_in_turn(self._laid_by(type_rows))

    async def _laid_by(self, way: Callable[[Desk], Awaitable[bool]]) -> None:
        if await way(self._desk):
            self.dismiss(True)
        else:
            self._tell_how()

    def action_leave(self) -> None:
        """Show the wall again; else back, and nothing is changed."""
        if self.has_class(ALONE):
            self.action_alone()
            return
        self._stop()
        self.dismiss(False)
