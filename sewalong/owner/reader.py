"""The file of preferences, in TOML: every key may be left out, and so may the file.

unit = "cm"                   # to work in where no quilt says; else inch
session = 90                  # minutes of an evening of yours
ascii = true                  # only plain signs, for a terminal that shows no others
bell = true                   # a sound when a chain or a stage is done

[keys]                        # what you move; the names are those of `sewalong preferences`
count = ["space", "f13"]      # a foot pedal that sends f13
undo = "-"

[wear]
needle_hours = 6              # hours sewn until a new needle is due; 0 for never
blade = "900 in"              # how far a blade cuts; learned from your changes otherwise
stop_minutes = 40             # until a stop is offered; 0 for never

[cautions]                    # words of your own, shown before those of the program
cutter = "thumb off the edge!"
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import asdict

from sewalong.owner.models import PreferencesFile
from sewalong.owner.preferences import GIVES_WAY, USUAL_KEYS, Preferences
from sewalong.quilt.file.faults import FaultList
from sewalong.quilt.file.model_reader import read_as
from sewalong.quilt.file.toml_errors import decode, read_toml


def read_preferences(data: bytes) -> Preferences:
    """The preferences in the bytes of a file.

    Raises QuiltFileFaults with everything that is wrong with it, each with its key and line.
    """
    text = decode(data)
    faults = FaultList(text)
    written = read_as(PreferencesFile, read_toml(text), faults)
    keys = _given(written.keys)
    _check_clashes(keys, faults)
    faults.refuse_if_any()
    wear = written.wear
    return Preferences(
        unit=written.unit,
        session_minutes=written.session,
        ascii=written.ascii,
        bell=written.bell,
        needle_hours=wear.needle_hours if wear else None,
        stop_minutes=wear.stop_minutes if wear else None,
        blade_inches=wear.blade if wear else None,
        cautions=_given(written.cautions),
        keys=keys,
    )


def _given(table: Struct | None) -> dict[str, tuple[str, ...]]:
    """The keys of a table that were written, with what stands behind them."""
    if table is None:
        return {}
    return {name: value for name, value in asdict(table).items() if value is not None}


def _check_clashes(moved: dict[str, tuple[str, ...]], faults: FaultList) -> None:
    """No key does two things: neither two that were moved, nor one moved and one left as usual."""
    stay = [name for name in USUAL_KEYS if name not in moved and name not in GIVES_WAY]
    usual = {USUAL_KEYS[name]: name for name in stay}
    taken = dict(usual)
    for name, keys in moved.items():
        for key in keys:
            if key in taken:
                other = taken[key]
                stays = " as usual" if key in usual else ""
                faults.add(
                    ("keys", name),
                    f"This key does “{other}”{stays}. Choose another, or give “{other}” another.",
                )
            taken.setdefault(key, name)
