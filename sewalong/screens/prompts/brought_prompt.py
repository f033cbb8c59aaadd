"""Asks how many were made elsewhere: at which stage, where, and by whom."""

from __future__ import annotations

from sewalong.progress.acts.elsewhere import CountElsewhere
from sewalong.progress.measuring.by_others import person_meant, seam_to_test
from sewalong.progress.record.events.elsewhere import why_not_there
from sewalong.screens.prompts.common import whole
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog, Field, FormDialog


async def brought(desk: Desk) -> None:
    """Take in a count from elsewhere. Nothing of it is the owner's own sewing."""
    choices = [
        Choice(line.stage.id, f"{line.stage.label}: {line.ready} can be")
        for line in desk.outcome.plan.lines
        if line.ready
    ]
    if not choices:
        desk.tell("Nothing is there that could have been sewn elsewhere.", refused=True)
        return
    stage = await desk.app.push_screen_wait(
        ChoiceDialog("Which stage was done elsewhere?", choices)
    )
    if stage is None:
        return
    found = desk.outcome.plan.line(stage).stage
    state, counts = desk.quilt.state, found.counts

    def carry_out(values: dict[str, str]) -> str | None:
        act = CountElsewhere(stage, whole(values["n"]), values["there"], values["by"])
        refusal = desk.attempt(act)
        by = person_meant(desk.quilt.state, values["by"].strip())
        if refusal is None and (owed := seam_to_test(desk.quilt.state, stage, by)):
            desk.tell(f"{desk.outcome.words} {owed}")
        return refusal

    known = [one for one in state.elsewhere if one and not why_not_there(state, found, one)]
    place = known[-1] if known else ""
    lines = (
        Field("n", f"How many {counts.many}?"),
        Field("there", "Where, as piles were put there? Empty: nobody knows", place, prose=True),
        Field("by", "Who? Empty: not said", state.elsewhere.get(place, ""), prose=True),
    )
    hint = "It counts as done; your time and your seam stay out of it."
    await desk.app.push_screen_wait(FormDialog("Made elsewhere", lines, carry_out, hint))
