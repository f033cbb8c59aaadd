"""One command, as data: its words, its arguments, and where its work is done."""

from __future__ import annotations

from msgspec import Struct

from sewalong.cli.registry.argument import Argument


class Command(Struct, frozen=True):
    """`help` is one line for lists; `about` says more; `example` is a line to type.

    `run` names the function that does it ("module:function"), loaded only when wanted.
    `json` is false for the few commands that tell nothing themselves.
    """

    name: str
    group: str
    help: str
    run: str
    example: str
    arguments: tuple[Argument, ...] = ()
    about: str = ""
    json: bool = True
