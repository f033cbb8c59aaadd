"""A quilt as plain values or JSON, exactly, and back again; `stored_plan` says how it looks."""

from __future__ import annotations

from fractions import Fraction
from functools import reduce
from operator import getitem
from typing import Any

import msgspec
from msgspec import UNSET, UnsetType
from msgspec.structs import asdict

from sewalong.lengths.fault import quoted
from sewalong.misfit import dotted, misfit
from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.quilt import Border, Lot, Quilt, StartPile, Target
from sewalong.quilt.setting import Cornerstones, Sashing, SetOnPoint, Setting
from sewalong.quilt.size import Size
from sewalong.quilt.stored_plan import (
    ON_POINT,
    RULES,
    SASHED,
    StoredBorder,
    StoredChoices,
    StoredCornerstones,
    StoredFabric,
    StoredLot,
    StoredPlan,
    StoredSetting,
    StoredStart,
    StoredTarget,
    StoredTrim,
    check_plan,
    read_length,
)
from sewalong.quilt.web import ROWS

_USUAL = Choices()


def quilt_to_json(quilt: Quilt) -> bytes:
    """`quilt` as one line of JSON."""
    return msgspec.json.format(msgspec.json.encode(_stored(quilt), enc_hook=str), indent=0)


def quilt_to_dict(quilt: Quilt) -> dict[str, object]:
    """`quilt` as a dictionary of text, whole numbers, lists and dictionaries."""
    plain: dict[str, object] = msgspec.to_builtins(_stored(quilt), enc_hook=str)
    return plain


def quilt_from_json(text: bytes | str) -> Quilt:
    """The quilt that `quilt_to_json` gave as `text`, exactly.

    Raises as `quilt_from_dict` does, and ValueError for what is not JSON.
    """
    try:
        plain = msgspec.json.decode(text)
    except (msgspec.DecodeError, RecursionError) as error:
        raise ValueError(f"quilt: this is not JSON ({error}).") from None
    return quilt_from_dict(plain)


def quilt_from_dict(plain: object, *, checked: bool = True) -> Quilt:
    """The quilt that `quilt_to_dict` gave as `plain`, exactly.

    The method need not be one that this version knows. Raises ValueError with a sentence that
    names the key for anything that `quilt_to_dict` does not write; unless it is `checked`, values
    need only be of their kind.
    """
    try:
        stored = msgspec.convert(plain, StoredPlan, dec_hook=read_length)
    except msgspec.ValidationError as error:
        raise ValueError(_sentence(plain, error)) from None
    except UnicodeEncodeError:
        raise ValueError("quilt: there is half a character in it, which is no text.") from None
    if checked:
        check_plan(stored)
    return Quilt(
        name=stored.name,
        method_id=stored.method,
        unit=stored.unit,
        seam=stored.seam,
        starts=tuple(
            StartPile(
                start.pile,
                start.size,
                start.count,
                start.packs,
                start.length,
                tuple(Lot(lot.size, lot.count, lot.packs) for lot in start.lots or ()),
            )
            for start in stored.starts
        ),
        target=Target(stored.target.rows, stored.target.columns),
        borders=tuple(
            Border(border.cut, border.cloth, border.colour or None) for border in stored.borders
        ),
        finishing=tuple(stored.finishing),
        notes=stored.notes,
        fabrics=tuple(
            Fabric(**{key: said for key, said in asdict(fabric).items() if said is not UNSET})
            for fabric in stored.fabrics or ()
        ),
        choices=_choices(stored.choices),
        trim=Size(stored.trim.width, stored.trim.length) if stored.trim else None,
        setting=_setting(stored.setting),
        method_text="\n".join(stored.method_text) if stored.method_text else None,
        joined=stored.joined or ROWS,
    )


def _choices(stored: StoredChoices | UnsetType) -> Choices:
    if stored is UNSET:
        return _USUAL
    each = msgspec.structs.asdict(stored)
    return Choices(**{key: value for key, value in each.items() if value is not UNSET})


def _setting(stored: StoredSetting | UnsetType) -> Setting | None:
    if stored is UNSET:
        return None
    if stored.kind == ON_POINT:
        return SetOnPoint(stored.cloth, stored.colour or None, stored.larger or Fraction(0))
    assert stored.cut is not UNSET
    stones = stored.cornerstones
    return Sashing(
        stored.cut,
        stored.cloth,
        stored.colour or None,
        stored.frame is True,
        Cornerstones(stones.cloth, stones.colour or None) if stones else None,
    )


def _stored_setting(setting: Setting | None) -> StoredSetting | UnsetType:
    if setting is None:
        return UNSET
    if isinstance(setting, SetOnPoint):
        return StoredSetting(
            kind=ON_POINT,
            cloth=setting.cloth,
            larger=setting.larger or UNSET,
            colour=setting.colour or UNSET,
        )
    stones = setting.cornerstones
    return StoredSetting(
        kind=SASHED,
        cut=setting.cut,
        cloth=setting.cloth,
        frame=setting.frame,
        colour=setting.colour or UNSET,
        cornerstones=StoredCornerstones(stones.cloth, stones.colour or UNSET) if stones else UNSET,
    )


def _stored(quilt: Quilt) -> StoredPlan:
    usual, own = msgspec.structs.asdict(_USUAL), msgspec.structs.asdict(quilt.choices)
    given: dict[str, Any] = {key: value for key, value in own.items() if value != usual[key]}
    return StoredPlan(
        name=quilt.name,
        method=quilt.method_id,
        unit=quilt.unit,
        seam=quilt.seam,
        starts=[
            StoredStart(
                start.pile,
                start.size,
                start.count,
                start.packs,
                start.length,
                [StoredLot(lot.size, lot.count, lot.packs) for lot in start.lots] or UNSET,
            )
            for start in quilt.starts
        ],
        target=StoredTarget(quilt.target.rows, quilt.target.columns),
        borders=[
            StoredBorder(border.cut, border.cloth, border.colour or UNSET)
            for border in quilt.borders
        ],
        finishing=list(quilt.finishing),
        notes=quilt.notes,
        fabrics=[
            StoredFabric(**{key: said for key, said in asdict(fabric).items() if said is not None})
            for fabric in quilt.fabrics
        ]
        or UNSET,
        choices=StoredChoices(**given) if given else UNSET,
        trim=StoredTrim(quilt.trim.width, quilt.trim.length) if quilt.trim else UNSET,
        setting=_stored_setting(quilt.setting),
        method_text=UNSET if quilt.method_text is None else quilt.method_text.split("\n"),
        joined=quilt.joined if quilt.is_web else UNSET,
    )


def _sentence(plain: Any, error: msgspec.ValidationError) -> str:
    """What is wrong, the place first; in the words of the key's rule where there is one."""
    found = misfit(error)
    place = dotted(found.path) or "quilt"
    if found.missing is not None:
        return f"{dotted((*found.path, found.missing))}: this is missing."
    if found.unknown is not None:
        return f"{place}: the key {quoted(found.unknown)} is not known."
    # What is wrong with one finishing stage, or one line, is told of them all.
    listed = found.path[:1] in (("finishing",), ("method_text",))
    path = found.path[:1] if listed else found.path
    if path and path[-1] in RULES:
        try:
            RULES[str(path[-1])](reduce(getitem, path, plain))
        except ValueError as refusal:
            return f"{dotted(path)}: {refusal}"
    if found.why.startswith("Expected `object`"):
        return f"{place}: this must be a table of keys and values."
    if found.why.startswith("Expected `array`"):
        return f"{place}: This must be a list."
    return f"{place}: {found.why}"
