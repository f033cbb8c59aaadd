"""The file of preferences as it is written: a model for each table, its keys, and what each may hold."""

from fractions import Fraction
from typing import Annotated

from msgspec import Struct, defstruct

from sewalong.lengths import Unit
from sewalong.owner.key_names import key_named
from sewalong.owner.preferences import CAUTIONED, USUAL_KEYS
from sewalong.quilt import rules
from sewalong.quilt.file import values
from sewalong.quilt.file.toml_errors import Decimals

MOST_KEYS = 4
"""Keys that do one thing: from memory, a pedal, a number pad and a key for either hand."""

MOST_WORDS = 3
"""Lines of her own at a caution, so that the program's still stand on one screen below them."""

MOST_HOURS = 1000
"""Hours of a needle: from memory far more than any lasts, so more is a slip of the hand."""


def _yes_or_no(value: object) -> bool:
    if not isinstance(value, bool):
        raise ValueError("This is either true or false, without quotes.")
    return value


def _minutes(value: object) -> int:
    return rules.whole(value, 24 * 60)


def _minutes_or_never(value: object) -> int:
    return 0 if value == 0 and not isinstance(value, bool) else _minutes(value)


def _hours_or_never(value: object) -> float:
    number = float(value.written) if isinstance(value, Decimals) else value
    if (
        isinstance(number, bool)
        or not isinstance(number, int | float)
        or not 0 <= number <= MOST_HOURS
    ):
        raise ValueError(f"This must be a number of hours from 0 to {MOST_HOURS:,}; 0 for never.")
    return float(number)


def _keys(value: object) -> tuple[str, ...]:
    wanted = value if isinstance(value, list) else [value]
    if not 1 <= len(wanted) <= MOST_KEYS:
        raise ValueError(f'Give from 1 to {MOST_KEYS} keys, such as ["space", "f13"].')
    return tuple(dict.fromkeys(map(key_named, wanted)))


def _words(value: object) -> tuple[str, ...]:
    wanted = value if isinstance(value, list) else [value]
    if not 1 <= len(wanted) <= MOST_WORDS:
        raise ValueError(f"Give from 1 to {MOST_WORDS} lines of words.")
    return tuple(rules.a_name(one) for one in wanted)


Words = Annotated[tuple[str, ...] | None, _words]
KeysOf = Annotated[tuple[str, ...] | None, _keys]

Cautions = defstruct("Cautions", [(name, Words, None) for name in CAUTIONED], frozen=True)
Keys = defstruct("Keys", [(name, KeysOf, None) for name in USUAL_KEYS], frozen=True)


class Wear(Struct, frozen=True):
    """[wear]: after how long she looks at a needle and a blade, and gets up."""

    needle_hours: Annotated[float | None, _hours_or_never] = None
    blade: Annotated[Fraction | None, values.length] = None
    stop_minutes: Annotated[int | None, _minutes_or_never] = None


class PreferencesFile(Struct, frozen=True):
    """The whole file."""

    unit: Annotated[Unit | None, rules.owner_unit] = None
    session: Annotated[int | None, _minutes] = None
    ascii: Annotated[bool, _yes_or_no] = False
    bell: Annotated[bool, _yes_or_no] = False
    wear: Wear | None = None
    cautions: Cautions | None = None  # type: ignore[valid-type]
    keys: Keys | None = None  # type: ignore[valid-type]
