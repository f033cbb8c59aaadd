"""Every word a person may type, and the file of this folder in which its command stands.

Plain text and no more, so that looking a word up costs nothing: a command's own file is
imported when the command is run or its help is wanted.
"""

from __future__ import annotations

import importlib

from sewalong.cli.registry.light import load_msgspec

TYPE_CHECKING = False  # as typing has it, which takes longer to import than this file
if TYPE_CHECKING:
    from sewalong.cli.registry.command import Command

COMMANDS: dict[str, tuple[str, ...]] = {
    "beginning": ("new",),
    "opening": ("open", "demo", "completion"),
    "looking": ("list", "status", "places", "log"),
    "counting": ("count", "unpick", "undo", "redo", "close", "answer"),
    "piles": ("spoil", "find", "recount", "put-away"),
    "seam_and_rows": ("measure", "trim", "proof", "go-on", "bobbin", "press", "begun", "join"),
    "pacing": ("forecast", "tonight", "pace"),
    "writing_down": ("note", "settings", "changed", "preferences"),
    "where_to_go": ("stage", "target", "lay-aside", "pick-up", "done"),
    "planning": ("alter", "quilt-file"),
    "cloth": ("fabrics", "contrast", "sets"),
    "wall": ("wall",),
    "numbers": ("plan", "layouts", "size", "methods", "reckon"),
    "files": ("start", "check", "export", "sheets", "import"),
    "safekeeping": ("backup", "examine", "restore"),
}
"""By file, in the order a person meets them."""

RECKONED: dict[str, dict[str, tuple[str, ...]]] = {
    "reckon_cloth": {
        "squares": ("square", "pieces", "patches"),
        "strips": ("strip",),
        "fit": ("cuts",),
        "backing": ("back",),
        "batting": ("wadding",),
        "binding": ("bias",),
        "border": ("borders",),
        "thread": ("spools",),
        "packs": ("precuts",),
    },
    "reckon_tops": {
        "blocks": ("bed", "wanted"),
        "straight": ("edge-to-edge",),
        "sashing": ("sashed", "sashes", "cornerstones"),
        "on-point": ("setting-triangles", "diagonal"),
        "framed": ("around",),
        "border-length": ("border-lengths",),
        "pieced-border": ("spacers", "coping"),
    },
    "reckon_pieces": {
        "makes": ("yield",),
        "enlarge": ("double", "scaled"),
        "cut-up": ("recut", "resew"),
        "row": ("seam",),
        "ease": ("easing",),
        "shrunk": ("shrinkage", "undersized"),
        "scale": ("printed",),
        "together": ("two-people",),
        "weeks": ("days",),
    },
}
"""What `reckon` works out, by file; behind each its other names in the trade."""

SEVERAL: dict[str, tuple[str, ...]] = {
    "yardage": ("squares", "fit", "binding", "backing", "border", "batting", "thread"),
    "setting": ("straight", "sashing", "on-point", "framed"),
}
"""Words that may mean any of several things that `reckon` works out."""

WEEKLY = (
    "new", "status", "count", "undo", "recount", "spoil", "put-away", "measure", "join",
    "tonight", "note", "close", "plan", "reckon",
)  # fmt: skip
"""What is used every week, which `--help` and the README list."""


def command(name: str) -> Command | None:
    """The command called `name`, or None."""
    file = next((file for file, names in COMMANDS.items() if name in names), None)
    return None if file is None else _named(file, name)


def reckoned_as(word: str) -> str | None:
    """The name of what `reckon` works out under `word`, its name or another; or None."""
    for names in RECKONED.values():
        for name, others in names.items():
            if word == name or word in others:
                return name
    return None


def reckoner(name: str) -> Command:
    """The command that reckons `name`, one of the names in RECKONED."""
    return _named(next(file for file, names in RECKONED.items() if name in names), f"reckon {name}")


def commands() -> tuple[Command, ...]:
    """Every command, in order; what `reckon` works out is not among them."""
    return tuple(one for file in COMMANDS for one in _all_of(file))


def reckoners() -> tuple[Command, ...]:
    """Everything that `reckon` works out, in order."""
    return tuple(one for file in RECKONED for one in _all_of(file))


def _named(file: str, name: str) -> Command:
    return next(one for one in _all_of(file) if one.name == name)


def _all_of(file: str) -> tuple[Command, ...]:
    load_msgspec()
    found: tuple[Command, ...] = importlib.import_module(f"{__package__}.{file}").COMMANDS
    return found
