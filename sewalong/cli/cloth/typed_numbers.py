"""Several numbers, or pairs of them, typed as one word of the line."""

from __future__ import annotations

import re

from sewalong.cli.frame.errors import CommandError


def several(typed: str, option: str) -> tuple[int, ...]:
    """ "5,6,7" or "5 6 7"; raises CommandError for what is none."""
    words = typed.replace(",", " ").split()
    if not all(re.fullmatch("[0-9]{1,6}", word, re.ASCII) for word in words):
        raise CommandError(f"{option} takes whole numbers, such as 5,6")
    return tuple(map(int, words))


def two_places(typed: str) -> tuple[int, int, int, int]:
    """ "7:2 9:5": set 7 place 2, and set 9 place 5. Raises CommandError for what is none."""
    number = "([0-9]{1,6})"
    place = rf"{number}\s*[:.·]\s*{number}"
    found = re.fullmatch(rf"\s*{place}[\s,]+{place}\s*", typed, re.ASCII)
    if found is None:
        raise CommandError(
            "--swap takes two squares, each as the set and the place in it: “7:2 9:5”"
        )
    first, first_place, other, other_place = map(int, found.groups())
    return first, first_place, other, other_place


def set_and_fabrics(typed: str) -> tuple[int, str]:
    """ "7: A B C D": the set, and its fabrics as they were typed. Raises CommandError for what is
    none."""
    number, colon, fabrics = typed.partition(":")
    if not colon or not re.fullmatch(r"\s*[0-9]{1,6}\s*", number, re.ASCII):
        raise CommandError("--own takes the set and its fabrics by place: “7: A B C D E F G H”")
    return int(number), fabrics
