"""Every longer ask of the sewing screen by its name: a key's action is `ask('name')`."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from typing import TYPE_CHECKING

from sewalong.screens.prompts import machine_prompts as asking_machine
from sewalong.screens.prompts import pile_prompts as asking_piles
from sewalong.screens.prompts import stage_prompts as asking

if TYPE_CHECKING:
    from sewalong.screens.sewing import SewingScreen

ASKS: Mapping[str, Callable[[SewingScreen], Awaitable[None]]] = {
    "stage": asking.other_stage,
    "spoil": asking_piles.spoil,
    "recount": asking_piles.recount,
    "find": asking_piles.find,
    "put": asking_piles.put_away,
    "note": asking.note,
    "unpick": asking.unpick,
    "machine": asking_machine.settings,
    "changed": asking_machine.changed,
    "measure": asking_machine.measure,
    "press": asking_machine.press_direction,
    "target": asking.target,
    "join": asking.join,
    "numbers": asking.how_much,
    "tonight": asking.tonight,
    "where": asking.where,
    "aside": asking.aside,
}
