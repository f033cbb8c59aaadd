"""A quilt as plain values that JSON can hold, exactly, and back again.

    {"name": "Harbour lights", "method": "stacked-four-patch", "unit": "inch", "seam": "1/4",
     "starts": [{"pile": "square", "size": "5", "count": 168, "packs": 4, "length": null}],
     "target": {"rows": 9, "columns": 9},
     "borders": [{"cut": "5/2", "cloth": "cream linen"}],
     "finishing": ["layer", "quilt", "bind"], "notes": "",
     "fabrics": [{"letter": "A", "name": "indigo print", "colour": "#243b6b"}],
     "choices": {"usable": "42", "spool_metres": 500}}

Lengths are fractions of an inch in lowest terms, as text. Every key is there, null for None; only
`fabrics`, `choices` and all in it, and `colour` are left out where nothing was given, so that
quilts kept before these were known read on as they are.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from typing import TypeVar

from sewalong.lengths import LONGEST, Length
from sewalong.lengths.fault import quoted
from sewalong.quilt import rules
from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target

_FRACTION = re.compile(r"[1-9][0-9]{0,199}(?:/[1-9][0-9]{0,199})?")
_T = TypeVar("_T")
_U = TypeVar("_U")


def quilt_to_dict(quilt: Quilt) -> dict[str, object]:
    """`quilt` as a dictionary of text, whole numbers, lists and dictionaries."""
    plain: dict[str, object] = {
        "name": quilt.name,
        "method": quilt.method_id,
        "unit": quilt.unit.value,
        "seam": str(quilt.seam),
        "starts": [
            {
                "pile": start.pile,
                "size": str(start.size),
                "count": start.count,
                "packs": start.packs,
                "length": None if start.length is None else str(start.length),
            }
            for start in quilt.starts
        ],
        "target": {"rows": quilt.target.rows, "columns": quilt.target.columns},
        "borders": [
            {"cut": str(border.cut), "cloth": border.cloth, **_colour(border.colour)}
            for border in quilt.borders
        ],
        "finishing": list(quilt.finishing),
        "notes": quilt.notes,
    }
    if quilt.fabrics:
        plain["fabrics"] = [
            {"letter": fabric.letter, "name": fabric.name, **_colour(fabric.colour)}
            for fabric in quilt.fabrics
        ]
    given = {
        key: str(value) if isinstance(value, Fraction) else value
        for key in _CHOICES
        if (value := getattr(quilt.choices, key)) != getattr(_USUAL, key)
    }
    if given:
        plain["choices"] = given
    return plain


def _colour(colour: str | None) -> dict[str, str]:
    return {} if colour is None else {"colour": colour}


def quilt_from_dict(plain: object) -> Quilt:
    """The quilt that `quilt_to_dict` gave as `plain`, exactly.

    The method need not be one that this version knows. Raises ValueError with a sentence that
    names the key for anything that `quilt_to_dict` does not write.
    """
    quilt = _Table(
        "",
        plain,
        "name method unit seam starts target borders finishing notes",
        "fabrics choices",
    )
    target = _Table("target", quilt.of("target", _anything), "rows columns")
    starts = tuple(_start(table) for table in quilt.tables("starts", _START))
    if not starts:
        raise ValueError("starts: a quilt begins with at least one pile.")
    if len({start.pile for start in starts}) < len(starts):
        raise ValueError("starts: a pile is listed twice.")
    borders = quilt.tables("borders", "cut cloth", "colour")
    if len(borders) > rules.MOST_BORDERS:
        raise ValueError(f"borders: a quilt has at most {rules.MOST_BORDERS}.")
    return Quilt(
        name=quilt.of("name", rules.a_name),
        method_id=quilt.of("method", rules.a_name),
        unit=quilt.of("unit", rules.owner_unit),
        seam=quilt.of("seam", _length),
        starts=starts,
        target=Target(target.of("rows", _rows), target.of("columns", _rows)),
        borders=tuple(
            Border(
                border.of("cut", _length),
                border.of("cloth", rules.a_name),
                border.either("colour", _written_colour, None),
            )
            for border in borders
        ),
        finishing=quilt.of("finishing", _finishing),
        notes=quilt.of("notes", rules.notes),
        fabrics=_fabrics(quilt),
        choices=_choices(quilt),
    )


_START = "pile size count packs length"
_USUAL = Choices()


class _Table:
    """One dictionary with the keys it should have, and perhaps those it `may_have`, and no other.

    `place` names it in sentences.
    """

    def __init__(self, place: str, plain: object, keys: str, may_have: str = "") -> None:
        self.place = place
        if not isinstance(plain, dict):
            raise ValueError(f"{place or 'quilt'}: this must be a table of keys and values.")
        for key in keys.split():
            if key not in plain:
                raise ValueError(f"{self._named(key)}: this is missing.")
        for key in plain:
            if key not in (*keys.split(), *may_have.split()):
                raise ValueError(f"{place or 'quilt'}: the key {quoted(str(key))} is not known.")
        self.plain: dict[str, object] = plain

    def of(self, key: str, rule: Callable[[object], _T]) -> _T:
        """What stands under `key`, put to `rule`."""
        try:
            return rule(self.plain[key])
        except ValueError as error:
            raise ValueError(f"{self._named(key)}: {error}") from None

    def either(self, key: str, rule: Callable[[object], _T], usual: _U) -> _T | _U:
        """The same, or `usual` when the key is not there."""
        return self.of(key, rule) if key in self.plain else usual

    def tables(self, key: str, keys: str, may_have: str = "") -> list[_Table]:
        """The dictionaries listed under `key`, each with these keys."""
        listed = self.of(key, _a_list)
        place = self._named(key)
        return [
            _Table(f"{place}[{index + 1}]", one, keys, may_have) for index, one in enumerate(listed)
        ]

    def _named(self, key: str) -> str:
        return f"{self.place}.{key}" if self.place else key


def _start(table: _Table) -> StartPile:
    return StartPile(
        pile=table.of("pile", rules.a_name),
        size=table.of("size", _length),
        count=table.of("count", _pieces),
        packs=table.of("packs", _pieces_or_none),
        length=table.of("length", _length_or_none),
    )


def _fabrics(quilt: _Table) -> tuple[Fabric, ...]:
    tables = quilt.tables("fabrics", "letter name", "colour") if "fabrics" in quilt.plain else []
    fabrics = tuple(
        Fabric(
            fabric.of("letter", rules.letter),
            fabric.of("name", rules.a_name),
            fabric.either("colour", _written_colour, None),
        )
        for fabric in tables
    )
    letters = [fabric.letter for fabric in fabrics]
    if letters != sorted(set(letters)):
        raise ValueError("fabrics: the letters must each be there once, in order.")
    return fabrics


def _choices(quilt: _Table) -> Choices:
    if "choices" not in quilt.plain:
        return _USUAL
    table = _Table("choices", quilt.plain["choices"], "", " ".join(_CHOICES))
    return Choices(**{key: table.of(key, _CHOICES[key]) for key in table.plain})  # type: ignore[arg-type]


def _anything(value: object) -> object:
    return value


def _a_list(value: object) -> list[object]:
    if not isinstance(value, list):
        raise ValueError("This must be a list.")
    return value


def _written_colour(value: object) -> str:
    """A colour in small letters, as it is written here."""
    colour = rules.colour(value)
    if colour != value:
        raise ValueError(f'This must be in small letters: "{colour}".')
    return colour


def _length(value: object) -> Length:
    if not isinstance(value, str) or _FRACTION.fullmatch(value) is None:
        raise ValueError('This must be a fraction of an inch as text, such as "5/2".')
    length = Fraction(value)
    if str(length) != value:
        raise ValueError(f'This must be in lowest terms: "{length}".')
    if length > LONGEST:
        raise ValueError(f"This is longer than {LONGEST} in.")
    return length


def _allowance(value: object) -> Length:
    return Fraction(0) if value == "0" else _length(value)


def _length_or_none(value: object) -> Length | None:
    return None if value is None else _length(value)


def _finishing(value: object) -> tuple[str, ...]:
    """In the order they are listed, so that nothing changes on the way."""
    in_working_order = rules.finishing(value)
    return tuple(sorted(in_working_order, key=_a_list(value).index))


def _pieces(value: object) -> int:
    return rules.whole(value, rules.MOST_PIECES)


def _pieces_or_none(value: object) -> int | None:
    return None if value is None else _pieces(value)


def _rows(value: object) -> int:
    return rules.whole(value, rules.MOST_ROWS)


_CHOICES: dict[str, Callable[[object], object]] = {
    "usable": _length,
    "margin": _allowance,
    "binding": _length,
    "binding_ends": _allowance,
    "joins": rules.joins,
    "corners": rules.corners,
    "spool_metres": rules.metres,
    "bobbin_metres": rules.metres,
    "own_seam": _length,
}
"""The keys of Choices, each with what it may hold."""
