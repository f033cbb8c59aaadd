"""Which command a line means, and what to say of a word that is none."""

from __future__ import annotations

from sewalong.cli.frame.errors import CommandError
from sewalong.cli.registry import index

TYPE_CHECKING = False  # as typing has it, which takes longer to import than this file
if TYPE_CHECKING:
    from sewalong.cli.registry.command import Command

RECKON = "reckon"


def chosen(argv: list[str]) -> tuple[Command, list[str]]:
    """The command that `argv` begins with, and the words behind its name.

    Raises CommandError, which names the right place or the nearest, for a word that is none.
    """
    word, *behind = argv
    if word == RECKON:
        # An option such as --json may stand before what is to be reckoned.
        at = next((at for at, word in enumerate(behind) if not word.startswith("-")), None)
        if at is not None:
            return _reckoner(behind[at:]), behind[:at] + behind[at + 1 :]
    command = index.command(word)
    if command is None:
        raise CommandError(_not_a_command(argv))
    return command, behind


def _reckoner(words: list[str]) -> Command:
    name = index.reckoned_as(words[0])
    if name is not None:
        return index.reckoner(name)
    said = f"“{words[0][:40]}” is nothing that can be reckoned."
    hint = _nearest(words[0], _reckoned()) or "All that can be: sewalong reckon"
    raise CommandError(_several(words) or f"{said} {hint}")


def _not_a_command(words: list[str]) -> str:
    word = words[0]
    if word.startswith("-"):
        return (
            f"“{word[:40]}” is not understood here. Put a name of several words in quotes. "
            "See: sewalong --help"
        )
    name = index.reckoned_as(word)
    if name is not None:
        return f"“{word}” is worked out by reckon. Type: sewalong reckon {name}"
    known = {name: name for names in index.COMMANDS.values() for name in names}
    hint = _nearest(word, {"help": "help", **_reckoned(), **known}) or "See: sewalong --help"
    return _several(words) or f"There is no command “{word[:40]}”. {hint}"


def _several(words: list[str]) -> str | None:
    """What to say of a word that means several things; the next word may tell which."""
    if words[0] not in index.SEVERAL:
        return None
    name = index.reckoned_as(words[1]) if len(words) > 1 else None
    if name is not None:
        return f"“{words[0]}” is worked out by reckon. Type: sewalong reckon {name}"
    *names, last = index.SEVERAL[words[0]]
    return (
        f"“{words[0]}” is worked out by reckon, one thing at a time. "
        f"Type: sewalong reckon {', '.join(names)} or {last}"
    )


def _reckoned() -> dict[str, str]:
    """What to type for each name of what `reckon` works out."""
    return {name: f"reckon {name}" for names in index.RECKONED.values() for name in names}


def _nearest(word: str, known: dict[str, str]) -> str | None:
    # Imported here: only a word that is mistyped needs it.
    from difflib import get_close_matches

    near = get_close_matches(word, known, n=1)
    return f"Did you mean {known[near[0]]}?" if near else None
