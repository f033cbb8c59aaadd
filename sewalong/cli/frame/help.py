"""Help on the whole program: what is used weekly, on one screen, and all there is, by group."""

from __future__ import annotations

from collections.abc import Iterable

from sewalong.cli.registry import index
from sewalong.cli.registry.command import Command

_NOTICE = """\
Cautions about iron, cutter and needle are general safety information only: the
makers' instructions, local rules and qualified help come first.
"""


def weekly() -> str:
    """What fits a screen of 24 lines of 80."""
    listed = _listed(one for name in index.WEEKLY if (one := index.command(name)))
    return (
        "sewalong is a companion for piecing a patchwork top in batches, over many\n"
        "sessions. Alone it opens the quilt last touched. Used every week:\n\n"
        f"{listed}\n\n"
        "All there is: sewalong help all. More on one: sewalong help COMMAND.\n\n"
        f"{_NOTICE}"
    )


def everything() -> str:
    """Every command and all that `reckon` works out, by group."""
    groups: dict[str, list[Command]] = {}
    for one in (*index.commands(), *index.reckoners()):
        groups.setdefault(one.group, []).append(one)
    told = "\n\n".join(f"{group}:\n{_listed(members)}" for group, members in groups.items())
    return (
        "usage: sewalong [COMMAND] …\n\n"
        f"{told}\n\n"
        "More on one: sewalong help COMMAND. Which version this is: sewalong --version.\n\n"
        f"{_NOTICE}"
    )


def _listed(commands: Iterable[Command]) -> str:
    members = list(commands)
    width = max(len(one.name) for one in members)
    return "\n".join(f"  {one.name:<{width}}  {one.help}" for one in members)
