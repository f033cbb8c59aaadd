"""The longer asks of the sewing screen: stages, notes, the top, and closing.

Each function puts its dialogs up one after the other and carries out one command. A
refusal shows in the dialog, which stays; leaving with escape changes nothing. Asks about
piles stand in `asking_piles`, those about the machine in `asking_machine`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sewalong.progress.acts.counting import Unpick
from sewalong.progress.acts.joining import JoinRows
from sewalong.progress.acts.notes import WriteNote
from sewalong.progress.acts.piles import PutPileAway
from sewalong.progress.acts.sessions import CloseSession
from sewalong.progress.acts.standing import LayAside, MarkDone, PickUp
from sewalong.progress.acts.steering import ChangeTarget, ChooseStage
from sewalong.progress.joining.next_joins import joining
from sewalong.progress.joining.row_tags import read_label, row_label
from sewalong.progress.plan.plan import StageLine
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import Standing
from sewalong.progress.resuming.pause_note import pause_note
from sewalong.progress.safety.closing_questions import questions
from sewalong.screens.prompts.common import NOT_A_NUMBER, whole
from sewalong.screens.prompts.dialogs import (
    Choice,
    ChoiceDialog,
    Field,
    FormDialog,
    LinesDialog,
    QuestionDialog,
)
from sewalong.screens.returning import FactsDialog

if TYPE_CHECKING:
    from sewalong.quilt.quilt import Target
    from sewalong.screens.sewing import SewingScreen


async def other_stage(screen: SewingScreen) -> None:
    """Choose the stage to work at."""
    now = screen.plan
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
    stage = await screen.app.push_screen_wait(dialog)
    if stage is not None:
        screen.attempt(ChooseStage(stage))


def _how_it_stands(line: StageLine) -> str:
    if line.to_do:
        return f"{line.to_do} to go, {line.ready or 'none'} ready"
    done = "done" if line.done else "not needed"
    return f"{done}, {line.ready} more could be made" if line.ready else done


async def note(screen: SewingScreen) -> None:
    """Write a note."""

    def carry_out(values: dict[str, str]) -> str | None:
        return screen.attempt(WriteNote(values["text"]))

    hint = "Say why as well as what: a bare number is not believed a year later."
    lines = (Field("text", "Note"),)
    await screen.app.push_screen_wait(FormDialog("A note for yourself", lines, carry_out, hint))


async def unpick(screen: SewingScreen) -> None:
    """Take something apart again."""
    choices = [
        Choice(line.stage.id, f"{line.stage.label}: {line.done} done")
        for line in screen.plan.lines
        if line.done
    ]
    if not choices:
        screen.tell("Nothing has been sewn yet, so there is nothing to unpick.", refused=True)
        return
    dialog = ChoiceDialog("Unpick the work of which stage?", choices, screen.hand.line.stage.id)
    stage = await screen.app.push_screen_wait(dialog)
    if stage is None:
        return
    counts = screen.plan.line(stage).stage.counts

    def carry_out(values: dict[str, str]) -> str | None:
        n = whole(values["n"])
        return NOT_A_NUMBER if n is None else screen.attempt(Unpick(stage, n))

    hint = "For pieces really taken apart. A miscount is better undone with u."
    lines = (Field("n", f"How many {counts.many}?", "1"),)
    await screen.app.push_screen_wait(FormDialog("Unpick", lines, carry_out, hint))


async def target(screen: SewingScreen) -> None:
    """Change the rows and columns wanted."""
    now = screen.quilt.state.target

    def carry_out(values: dict[str, str]) -> str | None:
        rows, columns = whole(values["rows"]), whole(values["columns"])
        if rows is None or columns is None:
            return NOT_A_NUMBER
        return screen.attempt(ChangeTarget(rows, columns))

    lines = (
        Field("rows", "Rows (down)", str(now.rows)),
        Field("columns", "Columns (across)", str(now.columns)),
    )
    possible = screen.plan.units.possible
    hint = f"What there is makes {possible} units in all. Nothing already counted is lost."
    await screen.app.push_screen_wait(FormDialog("Target", lines, carry_out, hint))


async def join(screen: SewingScreen) -> None:
    """Join two neighbouring rows by their tags; which come next is offered."""
    found = joining(screen.quilt.state)

    def carry_out(values: dict[str, str]) -> str | None:
        try:
            first, second = read_label(values["first"]), read_label(values["second"])
        except Refused as refusal:
            return str(refusal)
        return screen.attempt(JoinRows(first, second))

    offered = found.joins[0] if found.joins else None
    lines = (
        Field("first", "One row's tag", row_label(offered.first) if offered else ""),
        Field("second", "Its neighbour's tag", row_label(offered.second) if offered else ""),
    )
    hint = " ".join([*found.lines[:2], "Read the tags before you pin."])
    await screen.app.push_screen_wait(FormDialog("Join two rows", lines, carry_out, hint))


async def tonight(screen: SewingScreen) -> None:
    """What fits into the time there is, ending at a good place to stop."""
    from sewalong.progress.pace.exclusions import LEAVE_OUT_WORDS, leave_out
    from sewalong.progress.pace.tonight import tonight as plan_tonight

    lines: list[str] = []

    def work_out(values: dict[str, str]) -> str | None:
        minutes = whole(values["minutes"])
        if not minutes:
            return "Write how many minutes there are, such as 45."
        try:
            left_out = leave_out(values["without"].replace(",", " ").split())
        except Refused as refusal:
            return str(refusal)
        quilt = screen.quilt
        found = plan_tonight(quilt.state, quilt.record, quilt.now(), minutes, left_out)
        lines[:] = [step.sentence for step in found.steps] + [found.ending]
        return None

    fields = (
        Field("minutes", "How many minutes are there?", "45"),
        Field("without", f"Without? ({', '.join(LEAVE_OUT_WORDS)}) Empty: nothing left out"),
    )
    if await screen.app.push_screen_wait(FormDialog("Tonight", fields, work_out)):
        await screen.app.push_screen_wait(LinesDialog("Tonight", lines))


async def how_much(screen: SewingScreen) -> None:
    """The numbers of the quilt. They are worked out only when asked for."""
    from sewalong.screens.worksheet import NumbersScreen

    def carry_out(layout: Target) -> str | None:
        return screen.attempt(ChangeTarget(layout.rows, layout.columns))

    await screen.app.push_screen_wait(NumbersScreen(screen.quilt, carry_out))


async def where(screen: SewingScreen) -> None:
    """Where was I?"""
    await screen.app.push_screen_wait(FactsDialog(screen.quilt))


async def aside(screen: SewingScreen) -> None:
    """Lay the quilt aside, pick it up again, or mark it done."""
    choices: tuple[Choice, ...]
    if screen.quilt.state.standing is Standing.IN_PROGRESS:
        choices = (Choice("aside", "lay it aside for now"), Choice("done", "mark it done"))
    else:
        choices = (Choice("up", "pick it up again"),)
    chosen = await screen.app.push_screen_wait(ChoiceDialog("This quilt", choices))
    if chosen == "done":
        screen.attempt(MarkDone())
    elif chosen == "up":
        screen.attempt(PickUp())
    elif chosen == "aside":

        def carry_out(values: dict[str, str]) -> str | None:
            return screen.attempt(LayAside(values["reason"]))

        lines = (Field("reason", "Why? What are you waiting for?"),)
        await screen.app.push_screen_wait(FormDialog("Lay aside", lines, carry_out))


async def close(screen: SewingScreen) -> bool:
    """Ask about each thing used, then for the next step, then close the session."""
    if screen.quilt.state.session is None:
        return True
    answers: dict[str, str] = {}
    asked = questions(screen.quilt.state)
    for place, question in enumerate(asked, start=1):
        dialog = QuestionDialog(question, f"Before you go ({place} of {len(asked)})")
        answer = await screen.app.push_screen_wait(dialog)
        if answer is None:
            screen.tell("The session stays open.")
            return False
        answers[question.id] = answer

    return await _pause(screen, answers)


async def _pause(screen: SewingScreen, answers: dict[str, str]) -> bool:
    """The pause note on one form: the next step, and a place for each pile that was touched."""
    quilt = screen.quilt
    note = pause_note(quilt.state, quilt.now(), screen.plan)

    def carry_out(values: dict[str, str]) -> str | None:
        for pile in note.piles:
            place = values[pile.pile].strip()
            if place and place != pile.offered:
                refusal = screen.attempt(PutPileAway(pile.pile, place), say=False)
                if refusal:
                    return refusal
        return screen.attempt(CloseSession(answers, values["next"]), say=False)

    fields = [
        Field("next", "Next time, first of all", note.next_step),
        *(
            Field(pile.pile, f"Where are the {pile.noun.count(pile.n)}?", pile.offered)
            for pile in note.piles
        ),
    ]
    hint = f"{note.stop.why} {note.stop.offer}".strip()
    closed = await screen.app.push_screen_wait(
        FormDialog("End the session", fields, carry_out, hint)
    )
    if not closed:
        screen.tell("The session stays open.")
    return bool(closed)
