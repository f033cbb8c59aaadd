"""Quilts that are not begun yet: the answers so far, a small file each in the folder of the record.

A draft that cannot be read is said and set aside under another name; it never stops anything.
"""

# Annotations are not postponed here: msgspec would compile each of them when it first reads.

import os
from contextlib import suppress
from datetime import datetime
from typing import Annotated

import msgspec
from msgspec import Meta, Struct

from sewalong.lengths import Unit
from sewalong.quilt.beginning.answers import LONGEST_ANSWER, Answers
from sewalong.store.bounded import TooLong, read_at_most
from sewalong.store.faults import StoreFault
from sewalong.store.home import DRAFT, DRAFTS
from sewalong.store.writing import free_name, make_folder, write_whole

MOST_DRAFTS = 50
"""Drafts that are kept: a person has a few, and each is read whenever they are listed."""

LONGEST_DRAFT = 60_000
"""Bytes of a draft: every answer as long as it may be, in letters of four bytes."""

ASIDE = ".damaged"

_Id = Annotated[str, Meta(max_length=100)]
_Text = Annotated[str, Meta(max_length=LONGEST_ANSWER)]
_Said = Annotated[dict[_Id, _Text], Meta(max_length=40)]


class KeptDraft(Struct, frozen=True, forbid_unknown_fields=True):
    """A draft as it is written."""

    at: datetime
    unit: Unit
    said: _Said


class Draft(Struct, frozen=True):
    """The answers so far, and when the last of them was given. `key` names it."""

    key: str
    at: datetime
    answers: Answers


class Drafts:
    """The drafts beside one record. Nothing is written until one is kept."""

    def __init__(self, folder: str) -> None:
        """`folder` is that of the record."""
        self._folder = os.path.join(folder, DRAFTS)

    def keep(self, draft: Draft) -> None:
        """Write a draft whole, in place of what it was. Raises StoreFault."""
        path = self._path(draft.key)
        if not os.path.exists(path) and len(self._keys()) >= MOST_DRAFTS:
            raise StoreFault(
                f"There are {MOST_DRAFTS} drafts already. Begin one, or throw one away, to keep "
                "another."
            )
        kept = KeptDraft(draft.at, draft.answers.unit, dict(draft.answers.said))
        try:
            make_folder(self._folder)
        except OSError as error:
            raise StoreFault(
                f"The folder {self._folder} cannot be made ({error.strerror})."
            ) from error
        write_whole(path, msgspec.json.encode(kept).decode())

    def throw_away(self, key: str) -> None:
        """Take a draft away; one that is gone already is no fault. Raises StoreFault."""
        try:
            os.unlink(self._path(key))
        except FileNotFoundError:
            return
        except OSError as error:
            raise StoreFault(f"The draft cannot be taken away ({error.strerror}).") from error

    def all(self) -> tuple[tuple[Draft, ...], str]:
        """Every draft, the last kept first, and what to say of those that could not be read; empty
        where all could."""
        found: list[Draft] = []
        wrong: list[str] = []
        for key in self._keys():
            try:
                found.append(self._read(key))
            except StoreFault as fault:
                wrong.append(str(fault))
        return tuple(sorted(found, key=lambda one: one.at, reverse=True)), " ".join(wrong)

    def _read(self, key: str) -> Draft:
        path = self._path(key)
        try:
            kept = msgspec.json.decode(read_at_most(path, LONGEST_DRAFT), type=KeptDraft)
            if kept.at.tzinfo is None:
                raise ValueError("a time without its offset")
        except (TooLong, ValueError) as error:
            raise StoreFault(f"A draft could not be read{_set_aside(path)}.") from error
        return Draft(key, kept.at, Answers(kept.unit, kept.said))

    def _keys(self) -> list[str]:
        try:
            names = sorted(os.listdir(self._folder))
        except OSError:
            return []
        return [name.removesuffix(DRAFT) for name in names if name.endswith(DRAFT)][:MOST_DRAFTS]

    def _path(self, key: str) -> str:
        return os.path.join(self._folder, f"{key}{DRAFT}")


def _set_aside(path: str) -> str:
    """Move what cannot be read out of the way; in words where to, if that could be done."""
    aside = free_name(path, ASIDE)
    with suppress(OSError):
        os.replace(path, aside)
        return f" and is set aside as {aside}"
    return ""


def new_key() -> str:
    """A key no other draft has."""
    from secrets import token_hex  # only who begins one needs it

    return token_hex(8)
