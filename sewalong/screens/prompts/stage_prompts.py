"""Asks about where to go: another stage, another layout, rows joined, laid aside or done.

Each function puts its dialogs up one after the other and carries out one act. A refusal
shows in the dialog, which stays; leaving with escape changes nothing.
"""

from __future__ import annotations

from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.acts.counting import Count, Unpick
from sewalong.progress.acts.joining import JoinRows
from sewalong.progress.acts.standing import LayAside, MarkDone, PickUp
from sewalong.progress.acts.steering import ChangeTarget, ChooseStage
from sewalong.progress.joining.begun_text import HOW_TO_SAY, read_begun
from sewalong.progress.joining.next_joins import joining
from sewalong.progress.joining.orientation_checks import before_the_next
from sewalong.progress.joining.row_tags import read_label, row_label
from sewalong.progress.plan.plan import StageLine
from sewalong.progress.record.events.counting import can_be_unpicked, still_whole
from sewalong.progress.record.route import JOIN_ROWS
from sewalong.progress.record.state import Standing
from sewalong.progress.resuming.resume_facts import rows_begun_in_words
from sewalong.quilt.quilt import Target
from sewalong.screens.prompts.common import whole
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog, Field, FormDialog


async def other_stage(desk: Desk) -> None:
    """Choose the stage to work at."""
    now = desk.outcome.plan
    suggested = now.suggestion.stage if now.suggestion else None
    choices = [
        Choice(
            line.stage.id,
            f"{line.stage.label}: {_how_it_stands(line)}"
            + ("  (suggested)" if line.stage.id == suggested else ""),
        )
        for line in now.lines
    ]
    dialog = ChoiceDialog("Work at which stage?", choices, suggested)
    stage = await desk.app.push_screen_wait(dialog)
    if stage is not None:
        desk.attempt(ChooseStage(stage))


def _how_it_stands(line: StageLine) -> str:
    if line.to_do:
        return f"{line.to_do} to go, {line.ready or 'none'} ready"
    done = "done" if line.done else "not needed"
    return f"{done}, {line.ready} more could be made" if line.ready else done


async def unpick(desk: Desk) -> None:
    """Take something apart again."""
    state = desk.quilt.state
    choices = [
        Choice(line.stage.id, _how_many_to_unpick(line, still_whole(state, line.stage)))
        for line in desk.outcome.plan.lines
        if line.done and can_be_unpicked(state, line.stage)
    ]
    if not choices:
        desk.tell(
            "There is nothing now that can be unpicked. If a pile is another than it says, recount "
            "it.",
            refused=True,
        )
        return
    dialog = ChoiceDialog(
        "Unpick the work of which stage?", choices, desk.outcome.hand.line.stage.id
    )
    stage = await desk.app.push_screen_wait(dialog)
    if stage is None:
        return
    counts = desk.outcome.plan.line(stage).stage.counts

    def carry_out(values: dict[str, str]) -> str | None:
        return desk.attempt(Unpick(stage, whole(values["n"])))

    hint = "For pieces really taken apart. A miscount is better undone."
    lines = (Field("n", f"How many {counts.many}?", "1"),)
    await desk.app.push_screen_wait(FormDialog("Unpick", lines, carry_out, hint))


def _how_many_to_unpick(line: StageLine, whole: int) -> str:
    done = f"{line.stage.label}: {line.done} done"
    return done if whole == line.done else f"{done}, {whole} can be unpicked"


async def target(desk: Desk) -> None:
    """Change the rows and columns wanted."""
    now = desk.quilt.state.target

    def carry_out(values: dict[str, str]) -> str | None:
        rows, columns = whole(values["rows"]), whole(values["columns"])
        if Target(rows, columns) == now:
            desk.tell(f"The target is still {now}.")
            return None
        return desk.attempt(ChangeTarget(rows, columns))

    lines = (
        Field("rows", "Rows (down)", str(now.rows)),
        Field("columns", "Columns (across)", str(now.columns)),
    )
    possible = desk.outcome.plan.units.possible
    hint = f"What there is makes {possible} units in all. Nothing already counted is lost."
    await desk.app.push_screen_wait(FormDialog("Target", lines, carry_out, hint))


async def join(desk: Desk) -> None:
    """Join two neighbouring rows by their tags; which come next is offered. With neither tag the
    seam is counted and nobody can say any more which are left."""
    state = desk.quilt.state
    found = joining(state)

    def carry_out(values: dict[str, str]) -> str | None:
        if not any(tag.strip() for tag in values.values()):
            return desk.count(Count(JOIN_ROWS))
        return desk.count(JoinRows(read_label(values["first"]), read_label(values["second"])))

    offered = found.joins[0] if found.joins else None
    lines = (
        Field("first", "One row's tag", row_label(offered.first) if offered else ""),
        Field("second", "Its neighbour's tag", row_label(offered.second) if offered else ""),
    )
    without = "Clear both tags to count a seam without them."
    hint = " ".join([*found.lines[:2], before_the_next(state, JOIN_ROWS), without])
    await desk.app.push_screen_wait(FormDialog("Join two rows", lines, carry_out, hint))


async def begun(desk: Desk) -> None:
    """Write down what is sewn of rows that are not whole yet."""

    def carry_out(values: dict[str, str]) -> str | None:
        return desk.count(BeginRows(read_begun(values["sewn"])))

    lines = (Field("sewn", "What lies sewn together now, all in all?", prose=True),)
    hint = f"Write {HOW_TO_SAY}. {rows_begun_in_words(desk.quilt.state)}".strip()
    await desk.app.push_screen_wait(
        FormDialog("Rows begun", lines, carry_out, hint, words_ahead=True)
    )


async def aside(desk: Desk) -> None:
    """Lay the quilt aside, pick it up again, or mark it done."""
    choices: tuple[Choice, ...]
    if desk.quilt.state.standing is Standing.IN_PROGRESS:
        choices = (Choice("aside", "lay it aside for now"), Choice("done", "mark it done"))
    else:
        choices = (Choice("up", "pick it up again"),)
    chosen = await desk.app.push_screen_wait(ChoiceDialog("This quilt", choices))
    if chosen == "done":
        desk.attempt(MarkDone())
    elif chosen == "up":
        desk.attempt(PickUp())
    elif chosen == "aside":

        def carry_out(values: dict[str, str]) -> str | None:
            return desk.attempt(LayAside(values["reason"]))

        lines = (Field("reason", "Why? What are you waiting for?", prose=True),)
        await desk.app.push_screen_wait(FormDialog("Lay aside", lines, carry_out))
