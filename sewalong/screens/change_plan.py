"""The plan of a quilt under way, changed by the questions a new one begins with."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from sewalong.progress.acts.replanning import ChangePlan
from sewalong.quilt.beginning.filled_in import FilledIn
from sewalong.quilt.worksheet.basis import basis
from sewalong.quilt.worksheet.in_short import InShort, in_short
from sewalong.screens.answers import CHANGE, WALKING, AnswersScreen
from sewalong.screens.widgets.keys import Key, help_at, keys_with
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.plan_form import PlanForm

MADE_SO = Key(
    "plan.made_so",
    "m",
    "made_so",
    "made so already",
    "What is made already was made by the new plan; the plan had it wrong.",
    words="sewn already wrong plan correct",
)
KEYS = (
    CHANGE,
    Key("plan.have_it_so", "s", "have_it_so", "have it so", "Change the plan to this.", True),
    *WALKING,
    MADE_SO,
    Key("plan.leave", "escape", "leave", "leave it", "Leave the plan as it was.", True),
    help_at("plan"),
)

Carry = Callable[[ChangePlan], str | None]


class ChangePlanScreen(AnswersScreen[bool]):
    """Shows the plan as it stands and what would change; `carry` changes it, or says why not.

    The result is True where it was changed.
    """

    BINDINGS = [*(key.binding() for key in KEYS)]

    def __init__(self, quilt: OpenQuilt, carry: Carry) -> None:
        self._plan = PlanForm(quilt)
        self._carry = carry
        super().__init__(self._plan, quilt.state.quilt.name, "what shall it be?")
        self.keys = keys_with(quilt.preferences.keys, KEYS)

    def said_of(self, filled: FilledIn) -> tuple[InShort | None, Sequence[str]]:
        if filled.quilt is None:
            return None, ()
        short = in_short(basis(filled.quilt), filled.units)
        found = self._plan.would_change_to(filled.quilt)
        if not found.changes:
            return short, (*short.first, "Change what you like; what is sewn is held against it.")
        so = ("What is made already was made so.",) if self._plan.as_sewn else ()
        if found.refused and not so:
            so = (f"{MADE_SO.cap}: what is made already was made so.",)
        return short, (*so, *found.lines, *short.first[:2])

    def fixed(self, id: str) -> str:
        return self._plan.fixed.get(id, "")

    def left(self) -> None:
        self.dismiss(None)

    def action_made_so(self) -> None:
        """Say that what is made already was made by the new plan, or take that back."""
        if self.is_changing:
            return
        self._plan.as_sewn = not self._plan.as_sewn
        self._show_beside()

    def action_have_it_so(self) -> None:
        """Change the plan; a refusal is said and changes nothing."""
        if self.is_changing:
            return
        try:
            act = self._plan.act()
        except ValueError as refusal:
            self.tell(str(refusal), refused=True)
            return
        if refusal_said := self._carry(act):
            self.tell(f"Not done: {refusal_said}", refused=True)
            return
        self.dismiss(True)
