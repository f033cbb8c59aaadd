"""Every key of the sewing screen in one place: bindings, key line and help are made from it."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace
from textual.binding import Binding

from sewalong.owner.key_names import cap


class Key(Struct, frozen=True):
    """One key and what it does. `id` names it for remapping; `shown` puts it in the key line.

    `others` are further keys that do the same, where the owner gave it several.
    """

    id: str
    key: str
    action: str
    short: str
    help: str
    shown: bool = False
    others: tuple[str, ...] = ()

    @property
    def cap(self) -> str:
        """What stands on the key."""
        return cap(self.key)

    @property
    def caps(self) -> str:
        """What stands on all keys that do this."""
        return " ".join(map(cap, (self.key, *self.others)))

    @property
    def keys(self) -> str:
        """All keys, in both cases of a letter: caps lock must not stop a count."""
        return ",".join(
            f"{key},{key.upper()}" if len(key) == 1 else key for key in (self.key, *self.others)
        )

    def binding(self) -> Binding:
        """The binding, as the screen is defined with it."""
        return Binding(
            self.keys, self.action, self.short, show=self.shown, id=self.id, tooltip=self.help
        )


SEWING_KEYS = (
    Key("sew.count", "space", "count_one", "count 1", "Count one at the stage in hand.", True),
    Key(
        "sew.several",
        "enter",
        "count_typed",
        "count typed",
        "Type a number, then enter: count that many.",
    ),
    Key(
        "sew.undo",
        "u",
        "undo",
        "undo",
        "Take back the last thing recorded; press again for the one before.",
        True,
    ),
    Key(
        "sew.redo",
        "q",
        "redo",
        "put back",
        "Put back what was undone last.",
    ),
    Key("sew.stage", "o", "ask('stage')", "other stage", "Choose another stage to work at.", True),
    Key(
        "sew.spoil",
        "s",
        "ask('spoil')",
        "spoil",
        "Set spoiled pieces aside, with the reason.",
        True,
    ),
    Key("sew.note", "n", "ask('note')", "note", "Write a note for yourself."),
    Key(
        "sew.recount",
        "r",
        "ask('recount')",
        "recount",
        "Count a pile by hand; your count stands and the difference is kept.",
    ),
    Key(
        "sew.find",
        "f",
        "ask('find')",
        "found or bought",
        "Add pieces found again, bought or cut new.",
    ),
    Key("sew.put", "p", "ask('put')", "put away", "Say where a pile lies."),
    Key(
        "sew.machine",
        "m",
        "ask('machine')",
        "machine settings",
        "Write down machine, foot, needle, thread and the test that proved them.",
    ),
    Key(
        "sew.changed",
        "b",
        "ask('changed')",
        "changed",
        "A new blade, needle, foot or bobbin; or the bobbin ran out.",
    ),
    Key(
        "sew.unpick",
        "k",
        "ask('unpick')",
        "unpick",
        "Pieces were taken apart again; they go back to their pile.",
    ),
    Key("sew.target", "t", "ask('target')", "target", "Change the rows and columns wanted."),
    Key(
        "sew.where",
        "w",
        "ask('where')",
        "where was I",
        "The facts for coming back: piles, places, settings, notes.",
    ),
    Key(
        "sew.measure",
        "i",
        "ask('measure')",
        "measure",
        "Measure a piece: what the tape says and what it means.",
    ),
    Key(
        "sew.press",
        "d",
        "ask('press')",
        "press direction",
        "Which way the seams here are pressed, in words.",
    ),
    Key(
        "sew.join",
        "j",
        "ask('join')",
        "join rows",
        "Join two rows by their numbers; only neighbours are joined.",
    ),
    Key(
        "sew.about",
        "y",
        "ask('about')",
        "about this stage",
        "All there is to know at this stage: what to look at, pressing, easing, the bobbin.",
    ),
    Key(
        "sew.begun",
        "c",
        "ask('begun')",
        "row begun",
        "A row is not whole yet: write down what is sewn of it, or of several.",
    ),
    Key(
        "sew.tonight",
        "e",
        "ask('tonight')",
        "tonight",
        "What fits into this evening, ending at a good place to stop.",
    ),
    Key(
        "sew.pace",
        "g",
        "pace",
        "how is it going",
        "Sessions, pace, what took the time, what is left.",
    ),
    Key(
        "sew.numbers",
        "h",
        "ask('numbers')",
        "how much",
        "Sizes, cloth, cut list, thread, other layouts.",
    ),
    Key("sew.aside", "a", "ask('aside')", "lay aside", "Lay the quilt aside, or mark it done."),
    Key(
        "sew.elsewhere",
        "z",
        "ask('elsewhere')",
        "write elsewhere",
        "Write the whole quilt to a file, such as when the disk takes nothing more.",
    ),
    Key(
        "sew.look",
        "l",
        "app.toggle_look",
        "light or dark",
        "Change between lamplight and daylight colours.",
    ),
    Key(
        "sew.close",
        "x",
        "close_session",
        "end session",
        "Close the session: what to check, what comes next.",
        True,
    ),
    Key("sew.help", "question_mark", "help", "all keys", "All keys and what they do.", True),
    Key(
        "sew.leave",
        "escape",
        "leave",
        "all quilts",
        "Clear a typed number; else back to all quilts. The session stays open.",
    ),
)


def keys_with(moved: Mapping[str, tuple[str, ...]]) -> tuple[Key, ...]:
    """The keys of the sewing screen, those that the owner moved where she put them.

    `moved` is by name: the id without its screen.
    """
    found = []
    for key in SEWING_KEYS:
        first, *others = moved.get(key.id.removeprefix("sew."), (key.key,))
        found.append(replace(key, key=first, others=tuple(others)))
    return tuple(found)


def cap_of(name: str, keys: tuple[Key, ...]) -> str:
    """What stands on the key of the sewing screen called `name`: its id without its screen."""
    return next(key.cap for key in keys if key.id == f"sew.{name}")


def keys_of(name: str, keys: tuple[Key, ...]) -> tuple[str, ...]:
    """The keys of the sewing screen called `name`, as the terminal's library calls them."""
    return next((key.key, *key.others) for key in keys if key.id == f"sew.{name}")


TYPED = "0-9 several"
KEY_GAP = "  "


def first_that_fits(width: int, *lines: str) -> str:
    """The first of `lines` that fits whole in `width` columns, else the last."""
    return next((line for line in lines if len(line) <= width), lines[-1])


def key_line(width: int, keys: tuple[Key, ...] = SEWING_KEYS) -> str:
    """The keys to show in `width` columns: as many as fit whole, all keys always last."""
    shown = {key.id: f"{key.cap} {key.short}" for key in keys if key.shown}
    last = shown["sew.help"]
    caps = [
        shown["sew.count"],
        shown["sew.undo"],
        TYPED,
        shown["sew.close"],
        shown["sew.stage"],
        shown["sew.spoil"],
    ]
    while caps and len(KEY_GAP.join([*caps, last])) > width:
        caps.pop()
    return KEY_GAP.join([*caps, last])
