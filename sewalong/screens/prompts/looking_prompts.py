"""Looks that are loaded when first asked for: how much, where was I, tonight."""

from __future__ import annotations

from sewalong.progress.pace.exclusions import LEAVE_OUT_WORDS
from sewalong.screens.prompts.common import whole
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Field, FormDialog, LinesDialog
from sewalong.service.looks import about_stage
from sewalong.service.looks import tonight as evening


async def where(desk: Desk) -> None:
    """Where was I?"""
    from sewalong.screens.prompts.facts import FactsDialog

    await desk.app.push_screen_wait(FactsDialog(desk.quilt))


async def about_this_stage(desk: Desk) -> None:
    """All there is to know at the stage in hand."""
    stage = desk.outcome.hand.line.stage
    lines = [f"{label}: {text}" for label, text in about_stage(desk.quilt, stage)]
    await desk.app.push_screen_wait(LinesDialog(f"About {stage.label}", lines))


async def tonight(desk: Desk) -> None:
    """What fits into the time there is, ending at a good place to stop."""
    lines: list[str] = []

    def work_out(values: dict[str, str]) -> str | None:
        minutes = whole(values["minutes"])
        if not minutes:
            return "Write how many minutes there are, such as 45."
        found = evening(desk.quilt, minutes, values["without"].replace(",", " ").split())
        lines[:] = [step.sentence for step in found.steps] + [found.ending]
        return None

    fields = (
        Field("minutes", "How many minutes are there?", "45"),
        Field(
            "without",
            f"Without? ({', '.join(LEAVE_OUT_WORDS)}) Empty: nothing left out",
            prose=True,
        ),
    )
    if await desk.app.push_screen_wait(FormDialog("Tonight", fields, work_out)):
        await desk.app.push_screen_wait(LinesDialog("Tonight", lines))
