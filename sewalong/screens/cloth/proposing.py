"""Sets proposed all at once, better while they are watched, until they are accepted."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from sewalong.fabrics.sets.proposing import ENOUGH, Proposal, propose
from sewalong.fabrics.sets.rules import Rule, SetsRefused
from sewalong.progress.acts.sets import AcceptSets
from sewalong.progress.record.refused import Refused
from sewalong.progress.sets.holding import holding
from sewalong.progress.sets.what_to_propose import what_to_propose
from sewalong.quilt.refusal import NumbersFault
from sewalong.screens.cloth.sets_look import SetsLook, looking_keys, turning_keys
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog, Field, FormDialog
from sewalong.screens.widgets.keys import Key, help_at
from sewalong.service.set_looks import SetPage, page_of
from sewalong.wall.set_picture import Squares

RULES = tuple(Rule)

KEYS = (
    Key("proposing.accept", "y", "accept", "accept", "Have these sets.", True, ("space",),
        "yes take keep done"),
    Key("proposing.stop", "enter", "stop", "stop", "Stop looking for better ones, or go on.", True,
        words="enough go on look"),
    *turning_keys("proposing"),
    *(
        Key(f"proposing.rule{n}", str(n), f"rule({n})", rule.value,
            f"Choose them {rule.value}: {rule.words}", words="rule choose how")
        for n, rule in enumerate(RULES, start=1)
    ),
    Key("proposing.rule", "c", "which_rule", "rule", "Choose by what rule they are chosen.", True,
        words="by value colour light dark background scrappy how"),
    Key("proposing.seed", "n", "another", "another", "Begin anew from another beginning.", True,
        words="seed again shuffle different"),
    Key("proposing.lock", "l", "lock", "lock",
        "Keep this set while the others are proposed anew; again: no longer.", True,
        words="keep hold fix stay"),
    *looking_keys("proposing"),
    Key("proposing.leave", "escape", "leave", "back", "Back, and nothing is accepted.", True,
        ("full_stop",), "quit sew no"),
    help_at("proposing"),
)  # fmt: skip

GROUP = "proposing"

SHOWN_EVERY = 0.25
"""Seconds from one better proposal that is drawn to the next: own choice, so that each can be seen."""

REST = 0.002
"""Seconds left to keys after each look: about as long as it took."""


class ProposingScreen(SetsLook):
    """Proposes by a rule, and shows one set of what it found. True is what it is left with when
    they are accepted."""

    BINDINGS = [*(key.binding() for key in KEYS)]
    offered = KEYS
    looks_in_vain = 4 * ENOUGH
    """Looks that found nothing better after which it stops by itself."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._rule, self._background, self._seed = Rule.BY_VALUE, "", 1
        self._held: list[tuple[str, ...]] = []
        self._found: Proposal | None = None
        self._better: Iterator[Proposal] = iter(())
        self._place = 0
        self._is_looking = False

    def _page(self) -> SetPage | None:
        sets = self._sets
        if not sets:
            return None
        self._place %= len(sets)
        found = page_of(self.quilt.state, sets[self._place], len(sets), self._place + 1)
        words = self._found.words if self._found else ()
        return replace(
            found,
            title=f"{found.title}, locked" if self._is_locked else found.title,
            verdict=words[:2],
            facts=(*found.verdict, *found.facts, *words[2:]),
        )

    @property
    def _is_locked(self) -> bool:
        """Whether the set that is shown is: those that are come first. Sets of colour piles are often
        alike, so the squares do not tell."""
        return self._place < len(self._held)

    @property
    def _sets(self) -> Sequence[tuple[str, ...]]:
        return (*self._held, *(self._found.sets if self._found else ()))

    def _all_sets(self) -> Sequence[Squares]:
        return self._sets

    def on_mount(self) -> None:
        self.call_after_refresh(self._begin)

    async def show_anew(self) -> None:
        """Another window changed something: proposed anew of what there is now."""
        self._held.clear()
        self._begin()

    # -- looking for better ones -----------------------------------------------

    def _begin(self) -> None:
        """Propose from the beginning, in place of whatever is being looked for."""
        try:
            asked = what_to_propose(
                self.quilt.state, self._rule, background=self._background, seed=self._seed
            )
            self._better = propose(holding(asked, self._held))
        except (Refused, SetsRefused, NumbersFault) as refused:
            self._stop()
            self._found = None
            self.show()
            self.tell(str(refused), refused=True)
            return
        self._go_on()

    def _go_on(self) -> None:
        self._is_looking = True
        self.run_worker(self._look(), group=GROUP, exclusive=True)
        self._tell_how()

    def _stop(self) -> None:
        self._is_looking = False
        self.workers.cancel_group(self, GROUP)

    async def _look(self) -> None:
        """Look for better ones, a little at a time, so that no key waits."""
        drawn, in_vain, is_drawn = 0.0, 0, True
        for proposal in self._better:
            is_better = proposal is not self._found
            self._found = proposal
            in_vain, is_drawn = (0, False) if is_better else (in_vain + 1, is_drawn)
            if not is_drawn and time.monotonic() > drawn + SHOWN_EVERY:
                self.show()
                drawn, is_drawn = time.monotonic(), True
            if in_vain >= self.looks_in_vain:
                break
            await asyncio.sleep(REST)
        self._is_looking = False
        self.show()
        self._tell_how()

    def _tell_how(self) -> None:
        how = f"Chosen {self._rule}"
        if self._background:
            how = f"{how}, {self._background}"
        stop = "looking for better: enter stops" if self._is_looking else "y has them"
        self.tell(f"{how}; {stop}.")

    # -- keys ------------------------------------------------------------------

    def action_turn(self, step: int) -> None:
        """Go to another set, round and round."""
        self._place += step
        self.show()

    def action_stop(self) -> None:
        """Stop looking for better ones, or go on."""
        if self._is_looking:
            self._stop()
            self.show()
            self._tell_how()
        elif self._found is not None:
            self._go_on()

    def action_another(self) -> None:
        """Begin from another beginning; what is locked stays."""
        self._seed += 1
        self._begin()

    def action_lock(self) -> None:
        """Keep this set while the others are proposed anew, or no longer."""
        if not self._sets:
            self.tell("There is no set to lock.", refused=True)
            return
        self._place %= len(self._sets)
        self._stop()
        if self._is_locked:
            del self._held[self._place]
            self._found = None
        elif self._found is not None:
            rest = list(self._found.sets)
            self._held.append(rest.pop(self._place - len(self._held)))
            self._place = len(self._held) - 1
            self._found = replace(self._found, sets=tuple(rest))
        self._begin()

    def action_rule(self, number: int) -> None:
        """Choose them by this rule."""
        self.ask_in_turn(self._by(RULES[number - 1]))

    def action_which_rule(self) -> None:
        """Choose the rule by its words."""
        self.ask_in_turn(self._which_rule())

    async def _which_rule(self) -> None:
        choices = [Choice(rule, f"{rule.value}: {rule.words}") for rule in RULES]
        chosen = await self.app.push_screen_wait(
            ChoiceDialog("By what are they chosen?", choices, self._rule)
        )
        if chosen is not None:
            await self._by(Rule(chosen))

    async def _by(self, rule: Rule) -> None:
        background: list[str] = [""]
        if rule is Rule.ONE_BACKGROUND:
            field = (Field("background", "A fabric, a pile or a colour", prose=True),)
            hint = "It lies in every second place, such as: oat; or: lights; or: neutral."

            def keep(values: dict[str, str]) -> str | None:
                background[0] = values["background"].strip()
                return None if background[0] else "Say which, by letter or name."

            dialog = FormDialog("What lies behind?", field, keep, hint)
            if not await self.app.push_screen_wait(dialog):
                return
        self._rule, self._background = rule, background[0]
        self._begin()

    def action_accept(self) -> None:
        """Have these sets."""
        if not self._sets:
            self.tell("There are no sets to accept yet.", refused=True)
            return
        self._stop()
        self.ask_in_turn(self._accept())

    async def _accept(self) -> None:
        refusal = self._desk.attempt(AcceptSets(tuple(self._sets), self._rule.value))
        if refusal:
            self.tell(refusal, refused=True)
        else:
            self.dismiss(True)

    def action_leave(self) -> None:
        """Back, and nothing is accepted."""
        self._stop()
        self.dismiss(False)
