"""One argument of a command, as data; the parser turns it into its own terms."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

Kind = Literal["text", "whole", "path", "flag"]


class Argument(Struct, frozen=True):
    """`name` with dashes in front is an option, without them a place on the line.

    `kind` is what one word of it must be: readable text, a whole number, a path (whatever bytes
    it has), or nothing at all, for a flag. `nargs` is "?", "*" or "+" for any number of words
    but one. `repeated`: the option may be given again, and every time is kept. `dest` is the
    attribute it is kept under, if not its own name.
    """

    name: str
    help: str
    metavar: str | None = None
    kind: Kind = "text"
    nargs: Literal["?", "*", "+"] | None = None
    default: object = None
    choices: tuple[str, ...] | None = None
    required: bool = False
    repeated: bool = False
    dest: str | None = None


def flag(name: str, help: str) -> Argument:
    """`--NAME`, there or not."""
    return Argument(name, help, kind="flag")


def whole(name: str, help: str, *, metavar: str = "N", required: bool = False) -> Argument:
    """A whole number: `N`, or `--NAME N`."""
    return Argument(name, help, metavar, "whole", required=required)


def length(
    name: str, help: str, *, required: bool = False, repeated: bool = False, dest: str | None = None
) -> Argument:
    """`--NAME LENGTH`; the words of one length need no quotes.

    It is kept as text, since what a bare number means hangs on the unit.
    """
    return Argument(
        name, help, "LENGTH", nargs="+", required=required, repeated=repeated, dest=dest
    )


def size(name: str, help: str, *, required: bool = False, repeated: bool = False) -> Argument:
    """`--NAME ACROSS x DOWN`, or one length for a square; needs no quotes."""
    return Argument(name, help, "SIZE", nargs="+", required=required, repeated=repeated)
