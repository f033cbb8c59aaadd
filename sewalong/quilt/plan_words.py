"""What is different between two plans of one quilt, in words: "border 2: 5 in → 4 in"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import zip_longest

from sewalong.lengths import Length, as_given
from sewalong.piecing.method import Noun
from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.quilt import Border, Lot, Quilt
from sewalong.quilt.rules import by_letter
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint, Setting
from sewalong.quilt.size import Size

_Coloured = Border | Fabric | Sashing | Cornerstones | SetOnPoint

_OF_A_FABRIC = {
    "squares": "squares",
    "kind": "kind",
    "second": "second colour",
    "share": "share of the second colour",
    "value": "value",
}
"""What the keys of a fabric are called, name and colour aside."""

_CHOICES = {
    "usable": "usable width of cloth",
    "margin": "margin of back and batting, each side",
    "binding": "binding strips",
    "binding_ends": "added for the ends of the binding",
    "joins": "strips joined",
    "corners": "border corners",
    "spool_metres": "metres on a spool",
    "bobbin_metres": "metres on a bobbin",
    "own_seam": "her own seam",
}
"""Each of Choices as the log calls it."""


def differences(was: Quilt, now: Quilt) -> tuple[str, ...]:
    """Each thing that is different in `now`, in the order of a quilt file; lengths in its unit."""
    return tuple(_differences(was, now))


def _differences(was: Quilt, now: Quilt) -> Iterator[str]:
    yield from _changed("name", was.name, now.name)
    yield from _changed("works in", was.unit.value, now.unit.value)
    yield from _changed("seam", _long(was.seam, now), _long(now.seam, now))
    yield from _changed("units trimmed to", _trim(was.trim, now), _trim(now.trim, now))
    yield from _starts(was, now)
    yield from _changed("layout", str(was.target), str(now.target))
    yield from _setting(was.setting, now)
    yield from _changed("put together", _together(was), _together(now))
    yield from _borders(was, now)
    yield from _fabrics(was.fabrics, now.fabrics)
    yield from _choices(was.choices, now)
    yield from _changed("finishing", _listed(was.finishing), _listed(now.finishing))
    if was.notes != now.notes:
        yield "notes written anew" if now.notes else "notes taken out"


def _changed(what: str, was: str, now: str) -> Iterator[str]:
    if was != now:
        yield f"{what}: {was} → {now}"


def _long(length: Length | None, quilt: Quilt) -> str:
    """As it was typed, in the unit the quilt is worked in."""
    if length is None:
        return "not said"
    return as_given(length, quilt.unit) if length else "nothing"


def _trim(size: Size | None, quilt: Quilt) -> str:
    if size is None:
        return "as the method gives them"
    width, length = _long(size.width, quilt), _long(size.length, quilt)
    return width if size.width == size.length else f"{width} across × {length} down"


def _starts(was: Quilt, now: Quilt) -> Iterator[str]:
    for old, new in zip(was.starts, now.starts, strict=True):
        noun = now.method.pile(new.pile).noun
        yield from _changed(
            f"length of {noun.many}", _long(old.length, now), _long(new.length, now)
        )
        yield from _lots(noun, old.in_lots, new.in_lots, now)


def _lots(noun: Noun, was: Sequence[Lot], now: Sequence[Lot], quilt: Quilt) -> Iterator[str]:
    """Lots of one size are held against each other; one in the place of another was re-sized."""
    before, after = ({lot.size: lot for lot in lots} for lots in (was, now))
    gone = [size for size in before if size not in after]
    new = [size for size in after if size not in before]
    resized = dict(zip(new, gone, strict=False))
    for size, lot in after.items():
        old = before.get(size) or before.get(resized.get(size, size))
        if old is None:
            yield f"{noun.count(lot.count)} of {_long(size, quilt)} added"
            continue
        yield from _changed(noun.many, _long(old.size, quilt), _long(size, quilt))
        several = f" of {_long(size, quilt)}" if len(after) > 1 else ""
        yield from _changed(f"{noun.many}{several}", _count(old), _count(lot))
    for size in gone[len(new) :]:
        yield f"{noun.count(before[size].count)} of {_long(size, quilt)} left out"


def _count(lot: Lot) -> str:
    if lot.packs is None:
        return str(lot.count)
    packs = "1 pack" if lot.packs == 1 else f"{lot.packs} packs"
    return f"{lot.count} in {packs}"


def _setting(was: Setting | None, quilt: Quilt) -> Iterator[str]:
    now = quilt.setting
    if isinstance(was, SetOnPoint) and isinstance(now, SetOnPoint):
        yield from _changed("cloth of the triangles", was.cloth, now.cloth)
        yield from _changed("colour of the triangles", *_colours(was, now))
        yield from _changed("cut larger", _long(was.larger, quilt), _long(now.larger, quilt))
        return
    if not (isinstance(was, Sashing) and isinstance(now, Sashing)):
        yield from _changed(
            "units set", was.words if was else "straight", now.words if now else "straight"
        )
        return
    yield from _changed("sashes", _long(was.cut, quilt), _long(now.cut, quilt))
    yield from _changed("cloth of the sashes", was.cloth, now.cloth)
    yield from _changed("colour of the sashes", *_colours(was, now))
    yield from _changed("sashes around", _yes_or_no(was.frame), _yes_or_no(now.frame))
    yield from _cornerstones(was.cornerstones, now.cornerstones)


def _cornerstones(was: Cornerstones | None, now: Cornerstones | None) -> Iterator[str]:
    yield from _changed("cornerstones", was.cloth if was else "none", now.cloth if now else "none")
    if was is not None and now is not None:
        yield from _changed("colour of the cornerstones", *_colours(was, now))


def _yes_or_no(said: bool) -> str:
    return "yes" if said else "no"


def _together(quilt: Quilt) -> str:
    return "as a web" if quilt.is_web else "row by row"


def _borders(was: Quilt, now: Quilt) -> Iterator[str]:
    for number, (old, new) in enumerate(zip_longest(was.borders, now.borders), start=1):
        if new is None:
            yield f"border {number} left out ({_border(old, now)})"
        elif old is None:
            yield f"border {number} added: {_border(new, now)}"
        else:
            yield from _changed(f"border {number}", _long(old.cut, now), _long(new.cut, now))
            yield from _changed(f"cloth of border {number}", old.cloth, new.cloth)
            yield from _changed(f"colour of border {number}", *_colours(old, new))


def _border(border: Border, quilt: Quilt) -> str:
    return f"{_long(border.cut, quilt)} of {border.cloth}"


def _fabrics(was: Sequence[Fabric], now: Sequence[Fabric]) -> Iterator[str]:
    before = {fabric.letter: fabric for fabric in was}
    after = {fabric.letter: fabric for fabric in now}
    for letter in sorted(before | after, key=by_letter):
        old, new = before.get(letter), after.get(letter)
        what = f"fabric {letter}"
        if old is None and new and new.squares:
            yield f"{what} added: {new.name}, {_squares(new.squares)}"
            continue
        if new is None and old and old.squares:
            yield f"{what} taken out: {old.name}, {_squares(old.squares)}"
            continue
        yield from _changed(what, old.name if old else "no name", new.name if new else "no name")
        if old and new:
            yield from _changed(f"colour of {what}", *_colours(old, new))
            for key, said in _OF_A_FABRIC.items():
                was_so, is_so = (str(getattr(one, key) or "none") for one in (old, new))
                yield from _changed(f"{said} of {what}", was_so, is_so)


def _squares(count: int) -> str:
    return f"{count} square{'' if count == 1 else 's'}"


def _colours(was: _Coloured, now: _Coloured) -> tuple[str, str]:
    return was.colour or "none", now.colour or "none"


def _choices(was: Choices, now: Quilt) -> Iterator[str]:
    for key, what in _CHOICES.items():
        old, new = getattr(was, key), getattr(now.choices, key)
        if old != new:
            yield f"{what}: {_choice(old, now)} → {_choice(new, now)}"


def _choice(value: object, quilt: Quilt) -> str:
    if isinstance(value, str | int):
        return str(value)
    return _long(value if isinstance(value, Length) else None, quilt)


def _listed(finishing: Sequence[str]) -> str:
    return ", ".join(finishing) or "none"
