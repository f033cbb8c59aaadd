"""The longer asks of the sewing screen: which pile, how many, why, where.

Each function puts its dialogs up one after the other and carries out one command. A
refusal shows in the dialog, which stays; leaving with escape changes nothing.
"""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING, Literal

from sewalong.progress import commands as c
from sewalong.progress.closing import questions
from sewalong.progress.events import Settings
from sewalong.progress.plan import StageLine
from sewalong.progress.returning import next_thing
from sewalong.progress.road import ROW
from sewalong.progress.state import Standing
from sewalong.screens.dialogs import Choice, ChoiceDialog, Field, FormDialog, QuestionDialog
from sewalong.screens.returning import FactsDialog

if TYPE_CHECKING:
    from sewalong.quilt.quilt import Target
    from sewalong.screens.sewing import SewingScreen

NOT_A_NUMBER = "Write a whole number, such as 4."


def _whole(text: str) -> int | None:
    text = text.strip()
    return int(text) if text.isascii() and text.isdigit() and len(text) <= 6 else None


async def _pile(screen: SewingScreen, title: str, *, only_full: bool = False) -> str | None:
    state = screen.quilt.state
    choices = [
        Choice(id, f"{pile.noun.many}: {state.piles[id]}{_place(state.places.get(id))}")
        for id, pile in state.road.piles.items()
        if state.piles[id] or not only_full
    ]
    if not choices:
        screen.tell("Every pile is empty.", refused=True)
        return None
    return await screen.app.push_screen_wait(ChoiceDialog(title, choices, _waiting_pile(screen)))


def _place(place: str | None) -> str:
    return f", in {place}" if place else ""


def _waiting_pile(screen: SewingScreen) -> str | None:
    stage = screen.hand.line.stage
    takes = getattr(stage, "takes", ())
    return takes[0].pile if takes else ROW.id


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
        screen.attempt(c.ChooseStage(stage))


def _how_it_stands(line: StageLine) -> str:
    if line.to_do:
        return f"{line.to_do} to go, {line.ready or 'none'} ready"
    done = "done" if line.done else "not needed"
    return f"{done}, {line.ready} more could be made" if line.ready else done


async def spoil(screen: SewingScreen) -> None:
    """Set spoiled pieces aside, with the reason."""
    pile = await _pile(screen, "Spoiled pieces of which pile?", only_full=True)
    if pile is None:
        return
    noun = screen.quilt.state.road.piles[pile].noun

    def carry_out(values: dict[str, str]) -> str | None:
        n = _whole(values["n"])
        if n is None:
            return NOT_A_NUMBER
        return screen.attempt(c.Spoil(pile, n, values["reason"]))

    lines = (Field("n", f"How many {noun.many}?", "1"), Field("reason", "What happened?"))
    await screen.app.push_screen_wait(FormDialog(f"Spoiled {noun.many}", lines, carry_out))


async def recount(screen: SewingScreen) -> None:
    """Count a pile by hand."""
    pile = await _pile(screen, "Recount which pile?")
    if pile is None:
        return
    noun = screen.quilt.state.road.piles[pile].noun
    recorded = screen.quilt.state.piles[pile]

    def carry_out(values: dict[str, str]) -> str | None:
        n = _whole(values["n"])
        return NOT_A_NUMBER if n is None else screen.attempt(c.Recount(pile, n))

    lines = (Field("n", f"Count the {noun.many} by hand. How many are there?"),)
    hint = f"The record says {noun.count(recorded)}. Your count stands."
    await screen.app.push_screen_wait(FormDialog(f"Recount {noun.many}", lines, carry_out, hint))


async def find(screen: SewingScreen) -> None:
    """Add pieces found or bought."""
    pile = await _pile(screen, "More pieces for which pile?")
    if pile is None:
        return
    ways = (Choice("found", "found again"), Choice("bought", "bought, or cut new"))
    how = await screen.app.push_screen_wait(ChoiceDialog("How did they come?", ways))
    if how is None:
        return
    bought: Literal["found", "bought"] = "bought" if how == "bought" else "found"
    noun = screen.quilt.state.road.piles[pile].noun

    def carry_out(values: dict[str, str]) -> str | None:
        n = _whole(values["n"])
        return NOT_A_NUMBER if n is None else screen.attempt(c.Find(pile, n, bought))

    lines = (Field("n", f"How many {noun.many}?"),)
    await screen.app.push_screen_wait(FormDialog(f"More {noun.many}", lines, carry_out))


async def put_away(screen: SewingScreen) -> None:
    """Say where a pile lies."""
    pile = await _pile(screen, "Put away which pile?", only_full=True)
    if pile is None:
        return
    state = screen.quilt.state
    noun = state.road.piles[pile].noun

    def carry_out(values: dict[str, str]) -> str | None:
        return screen.attempt(c.PutPileAway(pile, values["place"]))

    lines = (
        Field("place", "Where? A box, a drawer, a bag with a name", state.places.get(pile, "")),
    )
    await screen.app.push_screen_wait(FormDialog(f"Put away {noun.many}", lines, carry_out))


async def note(screen: SewingScreen) -> None:
    """Write a note."""

    def carry_out(values: dict[str, str]) -> str | None:
        return screen.attempt(c.WriteNote(values["text"]))

    hint = "Say why as well as what: a bare number is not believed a year later."
    lines = (Field("text", "Note"),)
    await screen.app.push_screen_wait(FormDialog("A note for yourself", lines, carry_out, hint))


_SETTING_LABELS = {
    "machine": "Machine",
    "foot": "Foot",
    "needle": "Needle (kind and size)",
    "needle_position": "Needle position",
    "stitch_length": "Stitch length",
    "thread": "Thread",
    "proof": "What proved it? (3 strips came to …)",
}


async def settings(screen: SewingScreen) -> None:
    """Write down the machine's settings and the test that proved them."""
    known = screen.quilt.state.settings or Settings()
    lines = [
        Field(field.name, _SETTING_LABELS[field.name], getattr(known, field.name))
        for field in fields(Settings)
    ]

    def carry_out(values: dict[str, str]) -> str | None:
        return screen.attempt(c.RecordSettings(Settings(**values)))

    await screen.app.push_screen_wait(FormDialog("Machine settings", lines, carry_out))


async def changed(screen: SewingScreen) -> None:
    """A new blade or needle."""
    tools = (Choice("blade", "a new blade in the cutter"), Choice("needle", "a new needle"))
    tool = await screen.app.push_screen_wait(ChoiceDialog("What was changed?", tools))
    if tool is not None:
        screen.attempt(c.ChangeTool("blade" if tool == "blade" else "needle"))


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
        n = _whole(values["n"])
        return NOT_A_NUMBER if n is None else screen.attempt(c.Unpick(stage, n))

    hint = "For pieces really taken apart. A miscount is better undone with u."
    lines = (Field("n", f"How many {counts.many}?", "1"),)
    await screen.app.push_screen_wait(FormDialog("Unpick", lines, carry_out, hint))


async def target(screen: SewingScreen) -> None:
    """Change the rows and columns wanted."""
    now = screen.quilt.state.target

    def carry_out(values: dict[str, str]) -> str | None:
        rows, columns = _whole(values["rows"]), _whole(values["columns"])
        if rows is None or columns is None:
            return NOT_A_NUMBER
        return screen.attempt(c.ChangeTarget(rows, columns))

    lines = (
        Field("rows", "Rows (down)", str(now.rows)),
        Field("columns", "Columns (across)", str(now.columns)),
    )
    possible = screen.plan.units.possible
    hint = f"What there is makes {possible} units in all. Nothing already counted is lost."
    await screen.app.push_screen_wait(FormDialog("Target", lines, carry_out, hint))


async def how_much(screen: SewingScreen) -> None:
    """The numbers of the quilt. They are worked out only when asked for."""
    from sewalong.screens.numbers import NumbersScreen

    def carry_out(layout: Target) -> str | None:
        return screen.attempt(c.ChangeTarget(layout.rows, layout.columns))

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
        screen.attempt(c.MarkDone())
    elif chosen == "up":
        screen.attempt(c.PickUp())
    elif chosen == "aside":

        def carry_out(values: dict[str, str]) -> str | None:
            return screen.attempt(c.LayAside(values["reason"]))

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

    def carry_out(values: dict[str, str]) -> str | None:
        return screen.attempt(c.CloseSession(answers, values["next"]), say=False)

    line = screen.hand.line
    offered = next_thing(line) if line.to_do else ""
    lines = (Field("next", "Next time, first of all:", offered),)
    closed = await screen.app.push_screen_wait(FormDialog("Close the session", lines, carry_out))
    if not closed:
        screen.tell("The session stays open.")
    return bool(closed)
