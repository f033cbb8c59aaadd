"""Fabrics said in a few words, put among those of a quilt: "lights 60, mediums 70, darks 38"."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from msgspec.structs import replace

from sewalong.lengths.fault import quoted
from sewalong.quilt.choices import Fabric
from sewalong.quilt.letters import letter, number_of
from sewalong.quilt.refusal import NumbersFault
from sewalong.quilt.rules import by_letter
from sewalong.quilt.said_fabric import SaidFabric, said_fabric

LONGEST_SAID = 20_000
"""Characters: a line for each of all the fabrics there can be."""

_LAST = number_of("ZZ")


def fabrics_said(text: str, there: Sequence[Fabric] = ()) -> tuple[Fabric, ...]:
    """The fabrics `there`, with those that `text` says, in the order of their letters.

    Fabrics stand apart by commas, semicolons or lines; `said_fabric` reads each. One that has the
    letter or the name of a counted fabric changes it, with no squares it takes it out; any other is
    new, with the next letter. Raises NumbersFault, a plain sentence, for what is not clear.
    """
    if len(text) > LONGEST_SAID:
        raise NumbersFault(f"That is more than {LONGEST_SAID:,} letters. Say fewer at a time.")
    parts = [part for part in re.split(r"[,;\n]", text) if part.strip()]
    if not parts:
        raise NumbersFault(
            "Say a fabric by its name and how many squares of it there are, such as “lights 60” or "
            "“rust dots 4 #a0522d small print”."
        )
    fabrics = {fabric.letter: fabric for fabric in there}
    touched: set[str] = set()
    for said in (_named(said_fabric(part), fabrics) for part in parts):
        which = said.letter or _of_this_name(said, fabrics) or next_letter({*fabrics, *touched})
        if which in touched:
            raise NumbersFault(
                f"{quoted(said.words)} is said twice. Say it once, with all its squares."
            )
        touched.add(which)
        if said.squares:
            fabrics[which] = _with(said, fabrics.get(which), which)
        elif fabrics.pop(which, None) is None:
            raise NumbersFault(f"{quoted(said.words)} has no squares. Give 1 or more.")
    return in_order(fabrics.values())


def in_order(fabrics: Iterable[Fabric]) -> tuple[Fabric, ...]:
    """The fabrics as a quilt has them: A to Z, then AA."""
    return tuple(sorted(fabrics, key=lambda fabric: by_letter(fabric.letter)))


def next_letter(taken: Iterable[str]) -> str:
    """The letter behind all that are taken. Raises NumbersFault where two letters do not reach."""
    number = 1 + max(map(number_of, taken), default=-1)
    if number > _LAST:
        raise NumbersFault("No letter is left behind ZZ. Take fabrics out first.")
    return letter(number)


def _named(said: SaidFabric, there: Mapping[str, Fabric]) -> SaidFabric:
    """Two capitals that are no letter in use begin a name: “UK print”."""
    if said.letter is None or said.letter in there or len(said.letter) == 1:
        return said
    return replace(said, letter=None, name=f"{said.letter} {said.name}".strip())


def _of_this_name(said: SaidFabric, there: Mapping[str, Fabric]) -> str | None:
    """The letter of the counted fabric of this name; None where there is none."""
    called = [
        one.letter
        for one in there.values()
        if one.squares is not None and one.name.casefold() == said.name.casefold()
    ]
    if len(called) > 1:
        raise NumbersFault(
            f"{quoted(said.words)} may be {' or '.join(called)}. Write the letter in front."
        )
    return called[0] if called else None


def _with(said: SaidFabric, was: Fabric | None, which: str) -> Fabric:
    """The fabric with what is said of it in place of what was."""
    if was is not None and was.squares is None:
        raise NumbersFault(
            f"{which} is what the method calls {was.name} by. Leave the letter out, and it gets "
            "one of its own."
        )
    if was is None and not said.name:
        raise NumbersFault(f"{quoted(said.words)} has no name. Write one before the number.")
    fabric = was or Fabric(which, said.name)
    fabric = _coloured(said, fabric)
    if said.value:
        if fabric.colour:
            raise NumbersFault(
                f"{quoted(said.words)}: {which} {fabric.name} has a colour, which says how light "
                "it is. Leave the value out."
            )
        fabric = replace(fabric, value=said.value)
    return replace(
        fabric,
        name=said.name or fabric.name,
        squares=said.squares,
        kind=said.kind or fabric.kind,
    )


def _coloured(said: SaidFabric, fabric: Fabric) -> Fabric:
    """The fabric in the colours that are said; in that of its name where it has none yet."""
    by_name = None if said.value or fabric.value else said.named_colour
    ground = said.colour or fabric.colour or by_name
    if said.second and ground is None:
        raise NumbersFault(
            f"{quoted(said.words)} says a second colour and not the first. Say both."
        )
    if said.colour or said.second:
        return replace(fabric, colour=ground, second=said.second, share=said.share, value=None)
    return replace(fabric, colour=ground)
