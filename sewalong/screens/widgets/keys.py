"""Every key of the sewing screen in one place: bindings, key line and help are made from it."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace
from textual.binding import Binding

from sewalong.owner.key_names import cap
from sewalong.owner.preferences import GIVES_WAY


class Key(Struct, frozen=True):
    """One key and what it does. `id` names it for remapping; `shown` puts it in the key line.

    `others` are further keys that do the same, where the owner gave it several. `words` are what
    somebody may type in the help who looks for it and does not know what it is called here.
    """

    id: str
    key: str
    action: str
    short: str
    help: str
    shown: bool = False
    others: tuple[str, ...] = ()
    words: str = ""

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
    Key(
        "sew.count",
        "space",
        "count_one",
        "count 1",
        "Count one at the stage in hand.",
        True,
        words="done finished one more tally",
    ),
    Key(
        "sew.several",
        "enter",
        "count_typed",
        "count typed",
        "Type a number, then enter: count that many.",
        words="number many batch count",
    ),
    Key(
        "sew.undo",
        "u",
        "undo",
        "undo",
        "Take back the last thing recorded; press again for the one before. ctrl+z does so too.",
        True,
        words="take back mistake wrong oops revert",
    ),
    Key(
        "sew.stage",
        "o",
        "ask('stage')",
        "other stage",
        "Choose another stage to work at.",
        True,
        words="step other next work at go to",
    ),
    Key(
        "sew.redo",
        "q",
        "redo",
        "put back",
        "Put back what was undone last. ctrl+y does so too.",
        words="redo again undo back forward",
    ),
    Key(
        "sew.spoil",
        "s",
        "ask('spoil')",
        "spoil",
        "Set spoiled pieces aside, with the reason.",
        True,
        words="ruined wrong cut lost damaged waste torn mistake",
    ),
    Key(
        "sew.note",
        "n",
        "ask('note')",
        "note",
        "Write a note for yourself.",
        words="write remember reminder text",
    ),
    Key(
        "sew.recount",
        "r",
        "ask('recount')",
        "recount",
        "Count a pile by hand; your count stands and the difference is kept.",
        words="count again check by hand wrong number correct lost",
    ),
    Key(
        "sew.find",
        "f",
        "ask('find')",
        "found or bought",
        "Add pieces found again, bought or cut new.",
        words="found bought cut new squares more pieces add",
    ),
    Key(
        "sew.put",
        "p",
        "ask('put')",
        "put away",
        "Say where a pile lies.",
        words="place where box bag tin tray store",
    ),
    Key(
        "sew.machine",
        "m",
        "ask('machine')",
        "machine settings",
        "Write down machine, foot, needle, thread and how they were tested.",
        words="needle foot thread stitch length tension settings test seam proof",
    ),
    Key(
        "sew.changed",
        "b",
        "ask('changed')",
        "changed",
        "A new blade, needle, foot or bobbin; or the bobbin ran out.",
        words="needle blade foot bobbin new thread ran out",
    ),
    Key(
        "sew.unpick",
        "k",
        "ask('unpick')",
        "unpick",
        "Pieces were taken apart again; they go back to their pile.",
        words="seam ripper take apart rip undo sewing",
    ),
    Key(
        "sew.target",
        "t",
        "ask('target')",
        "target",
        "Change the rows and columns wanted.",
        words="rows columns layout size bigger smaller plan",
    ),
    Key(
        "sew.where",
        "w",
        "ask('where')",
        "where was I",
        "The facts for coming back: piles, places, settings, notes.",
        words="resume come back places piles last time",
    ),
    Key(
        "sew.far",
        "v",
        "far_view",
        "far view",
        "The number, the stage and what is said as large as the window; again for near.",
        words="large big across the room distance zoom",
    ),
    Key(
        "sew.measure",
        "i",
        "ask('measure')",
        "measure",
        "Measure a piece: what the tape says and what it means.",
        words="tape ruler size too small too big seam allowance wrong width",
    ),
    Key(
        "sew.press",
        "d",
        "ask('press')",
        "press direction",
        "Which way the seams here are pressed, in words.",
        words="iron seam direction open nest",
    ),
    Key(
        "sew.join",
        "j",
        "ask('join')",
        "join rows",
        "Join two rows by their numbers; only neighbours are joined.",
        words="rows neighbours sew together top",
    ),
    Key(
        "sew.about",
        "y",
        "ask('about')",
        "about this stage",
        "All there is to know at this stage: what to look at, pressing, easing, the bobbin.",
        words="tips pressing easing bias bobbin thread look at",
    ),
    Key(
        "sew.begun",
        "c",
        "ask('begun')",
        "row begun",
        "A row is not whole yet: write down what is sewn of it; with units on the wall, the row in "
        "hand, one key a square.",
        words="half a row part row not whole in hand next unit read aloud place square",
    ),
    Key(
        "sew.tonight",
        "e",
        "ask('tonight')",
        "tonight",
        "What fits into this evening, ending at a good place to stop.",
        words="evening time minutes plan stop how long",
    ),
    Key(
        "sew.pace",
        "g",
        "pace",
        "how is it going",
        "Sessions, pace, what took the time, what is left.",
        words="time hours forecast left speed sessions date deadline",
    ),
    Key(
        "sew.numbers",
        "h",
        "ask('numbers')",
        "how much",
        "Sizes, cloth, cut list, thread, other layouts.",
        words="size yardage fabric cloth cutting thread backing batting binding layouts worksheet",
    ),
    Key(
        "sew.fabrics",
        "comma",
        "ask('fabrics')",
        "fabrics",
        "Fabrics by value and colour: say them, photograph them, see what is possible.",
        words="cloth colour value light dark contrast print swatch photograph piles",
    ),
    Key(
        "sew.sets",
        "full_stop",
        "ask('sets')",
        "sets",
        "Sets of squares: proposed, looked at, swapped, and the units they will give.",
        words="set stack squares pairing propose contrast which fabrics lost order picture",
    ),
    Key(
        "sew.wall",
        "minus",
        "ask('wall')",
        "wall",
        "The wall: where each unit goes, proposed, looked at, swapped and turned.",
        words="layout lay arrange units places rows touch next to floor swap turn",
    ),
    Key(
        "sew.aside",
        "a",
        "ask('aside')",
        "lay aside",
        "Lay the quilt aside, or mark it done.",
        words="pause give up finish done complete put by",
    ),
    Key(
        "sew.elsewhere",
        "z",
        "ask('elsewhere')",
        "write elsewhere",
        "Write the whole quilt to a file, such as when the disk takes nothing more.",
        words="save export backup file copy disk",
    ),
    Key(
        "sew.brought",
        "plus",
        "ask('brought')",
        "made elsewhere",
        "Somebody else sewed, or you did elsewhere: how many, at which stage, where, by whom.",
        words="friend sister two people share brought back count from elsewhere number helper",
    ),
    Key(
        "sew.look",
        "l",
        "app.toggle_look",
        "light or dark",
        "Change between lamplight and daylight colours.",
        words="colours theme dark light lamplight daylight",
    ),
    Key(
        "sew.close",
        "x",
        "close_session",
        "end session",
        "Close the session: what to check, what comes next.",
        True,
        words="stop finish put away done for today quit end",
    ),
    Key(
        "sew.help",
        "question_mark",
        "help",
        "all keys",
        "All keys and what they do.",
        True,
        words="keys search",
    ),
    Key(
        "sew.leave",
        "escape",
        "leave",
        "all quilts",
        "Clear a typed number; else back to all quilts. The session stays open.",
        words="back quit list other quilt",
    ),
)


HELP = Key("help", "question_mark", "help", "help", "All keys and what they do.", True)


def help_at(screen: str) -> Key:
    """The key of the help, at the screen whose ids begin with `screen`."""
    return replace(HELP, id=f"{screen}.help")


def keys_with(
    moved: Mapping[str, tuple[str, ...]], keys: tuple[Key, ...] = SEWING_KEYS
) -> tuple[Key, ...]:
    """The keys of a screen, those that the owner moved where she put them.

    `moved` is by name, as at the sewing screen: the id without its screen. Of other screens only
    the help moves with it, where its new key is free there.
    """
    found = []
    taken = {one for others in moved.values() for one in others}
    for key in keys:
        screen, _, name = key.id.partition(".")
        if name in GIVES_WAY and name not in moved and key.key in taken:
            if instead := GIVES_WAY[name]:
                found.append(replace(key, key=instead))
            continue
        usual = {one.key for one in keys if one.id != key.id}
        wanted = moved.get(name, (key.key,))
        if screen != "sew" and (name != "help" or usual.intersection(wanted)):
            wanted = (key.key, *key.others)
        first, *others = wanted
        found.append(replace(key, key=first, others=tuple(others)))
    return tuple(found)


def cap_of(name: str, keys: tuple[Key, ...]) -> str:
    """What stands on the key of the sewing screen called `name`: its id without its screen."""
    return next(key.cap for key in keys if key.id == f"sew.{name}")


def keys_of(name: str, keys: tuple[Key, ...]) -> tuple[str, ...]:
    """The keys of the sewing screen called `name`, as the terminal's library calls them."""
    return next((key.key, *key.others) for key in keys if key.id == f"sew.{name}")


def line_of(width: int, keys: tuple[Key, ...]) -> str:
    """The keys of a screen that are `shown`, as many as fit whole in `width` columns.

    The last two, how to leave and the help, are there always.
    """
    *caps, leave, all_keys = (f"{key.cap} {key.short}" for key in keys if key.shown)
    while caps and len(KEY_GAP.join([*caps, leave, all_keys])) > width:
        caps.pop()
    return KEY_GAP.join([*caps, leave, all_keys])


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
