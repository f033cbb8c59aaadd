"""Asks about piles: spoiled, counted by hand, found or bought, put away."""

from __future__ import annotations

from sewalong.progress.acts.piles import Find, PutPileAway, Spoil
from sewalong.progress.acts.recounting import Recount
from sewalong.progress.record.events.piles import HowFound, beside_the_pile
from sewalong.progress.record.on_the_top import loose
from sewalong.progress.record.recount_rules import (
    Accepted,
    ToCount,
    recorded_there,
    to_count,
    ways,
)
from sewalong.progress.record.refused import Refused
from sewalong.progress.sets.finding import known_sets_lie_in
from sewalong.quilt.quilt import Quilt
from sewalong.screens.prompts.common import which_pile, whole
from sewalong.screens.prompts.desk import Asker, Desk
from sewalong.screens.prompts.dialogs import Choice, ChoiceDialog, Field, FormDialog


async def spoil(desk: Desk) -> None:
    """Set spoiled pieces aside, with the reason."""
    pile = await which_pile(desk, "Spoiled pieces of which pile?", loose)
    if pile is None:
        return
    state = desk.quilt.state
    noun = state.route.piles[pile].noun

    def carry_out(values: dict[str, str]) -> str | None:
        of_set = values.get("set", "").strip()
        number = whole(of_set) if of_set else 0
        try:
            fabric = _fabric(state.quilt, values.get("fabric", "").strip())
        except Refused as refused:
            return str(refused)
        return desk.attempt(Spoil(pile, whole(values["n"]), values["reason"], number, fabric))

    lines = [
        Field("n", f"How many {noun.many}?", "1"),
        Field("reason", "What happened?", prose=True),
    ]
    if known_sets_lie_in(state, pile):
        lines.append(Field("set", "Of which set? Leave it empty if you don't know."))
    if state.sets.sets:
        lines.append(Field("fabric", "Of which fabric? Leave it empty if you don't know."))
    await desk.app.push_screen_wait(FormDialog(f"Spoiled {noun.many}", tuple(lines), carry_out))


def _fabric(quilt: Quilt, typed: str) -> str:
    """The letter of the fabric meant, empty where none was typed."""
    if not typed:
        return ""
    from sewalong.progress.sets.read_squares import fabric_typed  # colours take long to load

    return fabric_typed(quilt, typed)


_ACCEPTED_AS: dict[Accepted, str] = {
    "stands": "just take the new count",
    "made": "a miscount where they are made: put that right",
    "found": "found again",
    "lost": "lost for good",
    "spoiled": "spoiled",
    "missing": "made, but not found",
}


async def recount(desk: Desk) -> None:
    """Count a pile by hand, place by place; then say what the difference is."""
    pile = await which_pile(desk, "Recount which pile?")
    if pile is None:
        return
    count = await _which_place(desk, to_count(desk.quilt.state, pile))
    if count is not None:
        await count_by_hand(desk, count)


async def count_by_hand(desk: Asker, count: ToCount) -> bool:
    """Ask for one number, then what the difference is; False when it was left."""
    state, pile = desk.quilt.state, count.pile
    noun = state.route.piles[pile].noun
    counted: list[int] = []

    def take(values: dict[str, str]) -> str | None:
        counted[:] = [whole(values["n"])]
        return None

    there = f" – {count.place} –" if count.place else ""
    said = "nothing sure" if count.recorded is None else noun.count(count.recorded)
    lines = (Field("n", f"Count the {noun.many}{there} by hand. How many are there?"),)
    hint = f"The record says {said}. Your count stands.{beside_the_pile(state, pile)}"
    form = FormDialog(f"Recount {noun.many}", lines, take, hint)
    if not await desk.app.push_screen_wait(form) or not counted:
        return False
    how = await _accepted_as(desk, count, counted[0])
    if how is None:
        return False
    desk.attempt(Recount(pile, counted[0], how, count.place))
    return True


async def _which_place(desk: Desk, counts: tuple[ToCount, ...]) -> ToCount | None:
    if len(counts) == 1:
        return counts[0]
    choices = [Choice(str(i), count.place) for i, count in enumerate(counts)]
    chosen = await desk.app.push_screen_wait(ChoiceDialog("Counting which place?", choices))
    return None if chosen is None else counts[int(chosen)]


async def _accepted_as(desk: Asker, count: ToCount, counted: int) -> Accepted | None:
    """What the difference is: asked only when there is one and it can be said in several ways."""
    state = desk.quilt.state
    recorded = recorded_there(state, count.pile, counted, "stands", count.place)
    difference = counted - recorded
    can_be = ways(state, count.pile, difference)
    if len(can_be) == 1:
        return can_be[0]
    noun = state.route.piles[count.pile].noun
    more = "more" if difference > 0 else "fewer"
    title = f"{abs(difference)} {noun.of(abs(difference))} {more} than recorded. What are they?"
    choices = [Choice(how, _ACCEPTED_AS[how]) for how in can_be]
    chosen = await desk.app.push_screen_wait(ChoiceDialog(title, choices))
    return next((how for how in can_be if how == chosen), None)


async def find(desk: Desk) -> None:
    """Add pieces found or bought."""
    pile = await which_pile(desk, "More pieces for which pile?")
    if pile is None:
        return
    ways = (Choice("found", "found again"), Choice("bought", "bought, or cut new"))
    how = await desk.app.push_screen_wait(ChoiceDialog("How did they come?", ways))
    if how is None:
        return
    bought: HowFound = "bought" if how == "bought" else "found"
    noun = desk.quilt.state.route.piles[pile].noun

    def carry_out(values: dict[str, str]) -> str | None:
        return desk.attempt(Find(pile, whole(values["n"]), bought))

    lines = (Field("n", f"How many {noun.many}?"),)
    await desk.app.push_screen_wait(FormDialog(f"More {noun.many}", lines, carry_out))


async def put_away(desk: Desk) -> None:
    """Say where a pile lies, or a part of it."""
    pile = await which_pile(desk, "Put away which pile?", lambda state, id: state.piles[id])
    if pile is None:
        return
    state = desk.quilt.state
    noun = state.route.piles[pile].noun

    def carry_out(values: dict[str, str]) -> str | None:
        part = whole(values["n"]) if values["n"].strip() else None
        return desk.attempt(PutPileAway(pile, values["place"], part))

    last = next(iter(state.places.get(pile, {})), "")
    lines = (
        Field("place", "Where? A box, a drawer, a bag with a name", last, prose=True),
        Field("n", f"How many of the {noun.count(state.piles[pile])}? Empty: all"),
    )
    await desk.app.push_screen_wait(FormDialog(f"Put away {noun.many}", lines, carry_out))
