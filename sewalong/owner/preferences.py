"""What the owner prefers, checked; without a file everything is as usual."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct, field

from sewalong.lengths import Length, Unit

USUAL_KEYS: Mapping[str, str] = {
    "count": "space",
    "several": "enter",
    "undo": "u",
    "redo": "q",
    "stage": "o",
    "spoil": "s",
    "note": "n",
    "recount": "r",
    "find": "f",
    "put": "p",
    "machine": "m",
    "changed": "b",
    "unpick": "k",
    "target": "t",
    "where": "w",
    "measure": "i",
    "press": "d",
    "join": "j",
    "about": "y",
    "begun": "c",
    "tonight": "e",
    "pace": "g",
    "numbers": "h",
    "fabrics": "comma",
    "sets": "full_stop",
    "wall": "minus",
    "aside": "a",
    "elsewhere": "z",
    "brought": "plus",
    "look": "l",
    "far": "v",
    "close": "x",
    "help": "question_mark",
    "leave": "escape",
}
"""What can be done by a key at the sewing screen, and the key it usually has."""

GIVES_WAY: Mapping[str, str] = {
    "redo": "ctrl+y",
    "far": "",
    "fabrics": "",
    "sets": "",
    "wall": "",
    "brought": "",
}
"""What came when owners had keys of their own already: what she moved to its usual key has it.
Behind each the key it then has, empty for none."""

CAUTIONED = ("iron", "cutter", "needle", "pins")
"""What she can have a word of caution of her own for."""


class Preferences(Struct, frozen=True):
    """`unit` is worked in where no quilt says one; `session_minutes` is how long hers are.

    `needle_hours` and `stop_minutes` are hours sewn with a needle and minutes until a stop, 0 for
    never; `blade_inches` is how far a blade cuts, None to be learned from her changes. `cautions`
    are words of her own by what they are about (CAUTIONED), `keys` the keys of what she moved, by
    its name (USUAL_KEYS); a key is called as the terminal's library calls it. `ascii` is for a
    terminal that shows nothing else, `bell` for a sound when a chain or a stage is done.
    """

    unit: Unit | None = None
    session_minutes: int | None = None
    needle_hours: float | None = None
    stop_minutes: int | None = None
    blade_inches: Length | None = None
    ascii: bool = False
    bell: bool = False
    cautions: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    keys: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


AS_USUAL = Preferences()
