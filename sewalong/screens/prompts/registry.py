"""Every longer ask of the sewing screen by its name: a key's action is `ask('name')`.

Here is only where each stands; its file is loaded when it is first asked.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from importlib import import_module

from sewalong.progress.record.events.standing import must_be_in_progress
from sewalong.progress.record.refused import Refused
from sewalong.screens.prompts.desk import Desk

ASKS: Mapping[str, str] = {
    "stage": "sewalong.screens.prompts.stage_prompts:other_stage",
    "unpick": "sewalong.screens.prompts.stage_prompts:unpick",
    "target": "sewalong.screens.prompts.stage_prompts:target",
    "join": "sewalong.screens.prompts.stage_prompts:join",
    "begun": "sewalong.screens.wall.begun:begun",
    "aside": "sewalong.screens.prompts.stage_prompts:aside",
    "spoil": "sewalong.screens.prompts.pile_prompts:spoil",
    "recount": "sewalong.screens.prompts.pile_prompts:recount",
    "find": "sewalong.screens.prompts.pile_prompts:find",
    "put": "sewalong.screens.prompts.pile_prompts:put_away",
    "note": "sewalong.screens.prompts.note_prompts:note",
    "press": "sewalong.screens.prompts.note_prompts:press_direction",
    "machine": "sewalong.screens.prompts.machine_prompts:settings",
    "changed": "sewalong.screens.prompts.machine_prompts:changed",
    "measure": "sewalong.screens.prompts.machine_prompts:measure",
    "numbers": "sewalong.screens.worksheet:how_much",
    "fabrics": "sewalong.screens.cloth.fabrics:fabrics",
    "sets": "sewalong.screens.cloth.sets:sets",
    "wall": "sewalong.screens.wall.wall:wall",
    "tonight": "sewalong.screens.prompts.looking_prompts:tonight",
    "elsewhere": "sewalong.screens.prompts.elsewhere_prompt:elsewhere",
    "brought": "sewalong.screens.prompts.brought_prompt:brought",
    "about": "sewalong.screens.prompts.looking_prompts:about_this_stage",
    "where": "sewalong.screens.prompts.looking_prompts:where",
}

ONLY_IN_PROGRESS = frozenset(
    ("stage", "unpick", "target", "begun", "join", "spoil", "recount", "find", "brought")
)
"""What cannot be answered for a quilt that is laid aside or done, and so is not asked."""


def ask(name: str) -> Callable[[Desk], Awaitable[None]]:
    """The function that asks `name`; raises KeyError for none."""
    file, function = ASKS[name].split(":")
    found: Callable[[Desk], Awaitable[None]] = getattr(import_module(file), function)
    return _in_progress(found) if name in ONLY_IN_PROGRESS else found


def _in_progress(asks: Callable[[Desk], Awaitable[None]]) -> Callable[[Desk], Awaitable[None]]:
    async def ask_or_say_why(desk: Desk) -> None:
        try:
            must_be_in_progress(desk.quilt.state)
        except Refused as refused:
            desk.tell(str(refused), refused=True)
            return
        await asks(desk)

    return ask_or_say_why
