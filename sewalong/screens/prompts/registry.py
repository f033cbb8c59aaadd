"""Every longer ask of the sewing screen by its name: a key's action is `ask('name')`.

Here is only where each stands; its file is loaded when it is first asked.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from importlib import import_module

from sewalong.screens.prompts.desk import Desk

ASKS: Mapping[str, str] = {
    "stage": "stage_prompts:other_stage",
    "unpick": "stage_prompts:unpick",
    "target": "stage_prompts:target",
    "join": "stage_prompts:join",
    "aside": "stage_prompts:aside",
    "spoil": "pile_prompts:spoil",
    "recount": "pile_prompts:recount",
    "find": "pile_prompts:find",
    "put": "pile_prompts:put_away",
    "note": "note_prompts:note",
    "press": "note_prompts:press_direction",
    "machine": "machine_prompts:settings",
    "changed": "machine_prompts:changed",
    "measure": "machine_prompts:measure",
    "numbers": "looking_prompts:how_much",
    "tonight": "looking_prompts:tonight",
    "where": "looking_prompts:where",
}


def ask(name: str) -> Callable[[Desk], Awaitable[None]]:
    """The function that asks `name`; raises KeyError for none."""
    file, function = ASKS[name].split(":")
    found: Callable[[Desk], Awaitable[None]] = getattr(
        import_module(f"sewalong.screens.prompts.{file}"), function
    )
    return found
