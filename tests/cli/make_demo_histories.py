"""Writes the histories of the demo quilts: run `PYTHONPATH=. python tests/cli/make_demo_histories.py`.

Invented evenings, carried out by the program's own commands, so that every history is one
that could have happened. A test holds the files in `demo_projects` to what this gives.
"""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from sewalong.progress.acts.begun import BeginRows
from sewalong.progress.acts.counting import Count
from sewalong.progress.acts.notes import WriteNote
from sewalong.progress.acts.piles import Find, PutPileAway, Spoil
from sewalong.progress.acts.recounting import Recount
from sewalong.progress.acts.said import Answer
from sewalong.progress.acts.seam import ChangeTool, RecordSettings
from sewalong.progress.acts.sets import AcceptSets, MarkSet, SwapSquares
from sewalong.progress.acts.standing import LayAside
from sewalong.progress.acts.undoing import Undo
from sewalong.progress.acts.wall import LayWall, LockPlaces, SwapPlaces
from sewalong.progress.record.settings import Settings
from sewalong.progress.record.wall import LaidUnit
from sewalong.service.demo_quilts import demo_folder
from sewalong.store.archive import to_text
from sewalong.store.library import Library
from tests.cli.diary import Diary
from tests.story.ferry_steps import ferry_steps


def lantern_walk(diary: Diary) -> None:
    """In the middle: five sessions, a spoiled four-patch, a miscount taken back."""
    diary.evening("2026-02-06", "20:05")
    diary.do(WriteNote("Navy always face down, warm colour on top."))
    diary.count("pair", 14, 16, 12, each=0.4)
    diary.do(
        RecordSettings(
            Settings(
                machine="the green one",
                foot="patchwork foot, edge on the cloth",
                needle="80/12",
                needle_position="two clicks towards the foot's edge",
                stitch_length="2.2",
                thread="grey cotton 50",
                proof="three strips 1 1/2 in wide came out at 3 1/2 in",
            )
        ),
        after=9,
    )
    diary.count("sew", 4, 6, each=2)
    diary.do(PutPileAway("square", "shoe box with the moon on it"))
    diary.close("pair the rest while the film is on")

    diary.evening("2026-02-08", "15:30")
    diary.count("pair", 20, 18, each=0.4)
    diary.count("sew", 8, each=2)
    diary.do(Count("sew", 12), after=3)
    diary.do(Undo())
    diary.do(Count("sew", 2))
    diary.do(WriteNote("I typed 12 for 2. Say the number aloud before pressing enter."))
    diary.do(PutPileAway("pair", "clipped in tens, on the hook"))
    diary.close()

    diary.evening("2026-02-13", "19:40")
    diary.do(ChangeTool("needle"))
    diary.count("sew", 6, 6, 6, each=2)
    diary.count("press", 12, 11, each=0.7)
    diary.do(Answer("iron", "yes"))
    diary.do(Spoil("four-patch", 1, "scorched: the mustard print is not all cotton"), after=4)
    diary.do(PutPileAway("pressed-four-patch", "flat in the cake tin"))
    diary.close("lower heat for the mustard print")

    diary.evening("2026-02-15", "14:10")
    diary.count("press", 14, each=0.7)
    diary.do(Answer("iron", "yes"))
    diary.count("stack", 8, 8, each=0.8)
    diary.count("sew-around", 4, 3, each=1.6)
    diary.do(PutPileAway("stack", "blue tray, pins in"))
    diary.close("seven stacks sewn, go on around")

    diary.evening("2026-02-20", "20:20")
    diary.count("sew-around", 2, each=1.6)
    diary.do(ChangeTool("blade"))
    diary.count("cut-twice", 3, 3, each=1.2)
    diary.do(WriteNote("Cut near the window; the lamp throws the ruler's edge double."))
    diary.count("press-open", 10, each=0.5)
    diary.do(Answer("iron", "yes"))
    diary.do(PutPileAway("sewn-stack", "blue tray, front half"))
    diary.do(PutPileAway("cut-unit", "paper bag in the blue tray"))
    diary.do(PutPileAway("unit", "flat under the big ruler"))
    diary.close("press open the 14 in the paper bag first", pins="did not look")


def cornflower_field(diary: Diary) -> None:
    """Some progress in centimetres: two sessions, one square lost and the pile recounted."""
    diary.evening("2026-04-18", "10:15")
    diary.count("pair", 25, 25, each=0.3)
    diary.do(Recount("square", 9), after=4)
    diary.do(WriteNote("One blue square is gone; the cat sits on what is left."))
    diary.count("mark", 20, 20, each=0.3)
    diary.do(PutPileAway("square", "top drawer"))
    diary.do(PutPileAway("marked-pair", "in the lid, lines up"))
    diary.close()

    diary.evening("2026-04-21", "20:30")
    diary.do(
        RecordSettings(
            Settings(
                machine="the small one",
                foot="narrow foot",
                needle_position="centre",
                stitch_length="2.4",
                thread="white",
                proof="seam of 7.5 mm measured at both ends",
            )
        )
    )
    diary.count("sew-both-sides", 10, 12, each=0.9)
    diary.count("cut-once", 9, each=0.4)
    diary.do(PutPileAway("cut-unit", "cake tin"))
    diary.close("sew the other eighteen, then cut")


def russet_rows(diary: Diary) -> None:
    """Nearly a top, one unit short, laid aside until more cloth is there."""
    diary.evening("2026-01-04", "14:00")
    diary.count("pair", 13, 13, each=0.4)
    diary.count("sew-around", 13, 13, each=1.1)
    diary.do(PutPileAway("sewn-pair", "basket"))
    diary.close()

    diary.evening("2026-01-10", "19:00")
    diary.count("cut-twice", 8, 9, 9, each=0.8)
    diary.do(Spoil("cut-unit", 4, "one pair cut off the crossing"), after=2)
    diary.count("press-open", 40, each=0.4)
    diary.do(Answer("iron", "yes"))
    diary.close("60 cut units to press")

    diary.evening("2026-01-11", "15:00")
    diary.count("press-open", 30, 30, each=0.4)
    diary.do(Answer("iron", "yes"))
    diary.do(Find("unit", 1, "found"), after=2)
    diary.do(WriteNote("The unit from behind the board is the test one; it is good enough."))
    diary.do(Spoil("unit", 2, "stretched along the bias, no longer square"), after=2)
    diary.close()

    diary.evening("2026-01-17", "13:30")
    diary.count("sew-rows", 2, 3, 4, each=9)
    diary.close("pin row tags before joining")

    diary.evening("2026-01-18", "14:00")
    diary.count("join-rows", 2, 3, each=10)
    diary.do(PutPileAway("row", "rolled on the tube, row 1 outside"))
    diary.do(PutPileAway("unit", "envelope pinned to row 9"))
    diary.close()
    diary.do(LayAside("one unit short: waiting for two more squares of the green check"))


ORCHARD_SETS = (
    "HOFKGNBP", "GMEPALFI", "DLBMCJAI", "HOGNEKFP", "CIAJELDM", "GPFOEKHN",
    "FMCIGLEP", "ALCJEMDI", "BNAJHODK", "DJCNBOHK", "HKGNBOFP", "BICLDMAJ",
)  # fmt: skip
"""Twelve sets of eight, light on dark, as the program once proposed them."""


def orchard_gate(diary: Diary) -> None:
    """Sets chosen before sewing: one opened, four sewn, two in stacks, one nearly paired; squares
    swapped, one set skipped."""
    sets = tuple(tuple(one) for one in ORCHARD_SETS)
    diary.evening("2026-03-06", "19:30")
    diary.do(AcceptSets(sets, "light on dark"))
    diary.do(WriteNote("The sixteen piles lie on the long shelf, light ones by the window."))
    diary.do(MarkSet(12, "skipped"), after=3)
    diary.do(SwapSquares(2, 3, 3, 1), after=4)
    diary.count("pair", *[4] * 5, each=0.6)
    diary.do(PutPileAway("pair", "clipped by set, in the bread tin"))
    diary.close("sew them in the order they lie")

    diary.evening("2026-03-07", "15:00")
    diary.do(
        RecordSettings(
            Settings(
                machine="the travelling one",
                foot="patchwork foot, guide on the cloth",
                needle="75/11",
                stitch_length="2.0",
                thread="oat cotton 50",
                proof="two strips 2 in wide came out at 3 1/2 in",
            )
        )
    )
    diary.count("sew", 4, 4, 2, each=2)
    diary.count("press", 10, each=0.7)
    diary.do(Answer("iron", "yes"))
    diary.count("stack", 5, each=0.8)
    diary.count("sew-around", 5, each=1.6)
    diary.count("cut-twice", 1, each=1.2)
    diary.count("press-open", 4, each=0.5)
    diary.do(Answer("iron", "yes"))
    diary.do(PutPileAway("unit", "flat in the atlas"))
    diary.close()

    diary.evening("2026-03-14", "20:10")
    diary.count("pair", 4, 4, 3, each=0.6)
    diary.count("sew", 4, each=2)
    diary.count("press", 4, each=0.7)
    diary.do(Answer("iron", "yes"))
    diary.count("stack", 2, each=0.8)
    diary.do(PutPileAway("pair", "bread tin"))
    diary.do(PutPileAway("stack", "pinned, on the atlas"))
    diary.do(WriteNote("Set 7 looked dull as squares and sings as a stack. Trust the picture."))
    diary.close("one pair of set 8 is still to lay; cut the four sewn stacks")


SIGNAL_SETS = (
    "AIHNCMFO", "ALCIFOHM", "DNGPEKBJ", "DNGKEPBJ", "BLDKGJEP", "DNEPBKGJ", "FLAOHMCI",
    "DKGLBPEJ", "AMCIFOHN", "GJBPENDK", "HLFMCIAO", "CMHIFOAN", "HIAOCLFM", "DLEPGKBJ",
)  # fmt: skip
"""Fourteen sets of eight, light on dark, as the program once proposed them."""

SIGNAL_ROWS = (
    "23c 46d 38a 2b 29a 12d 8c 40a",
    "51b 31d 42c 37c 25a 11d 18d 44d",
    "53a 3a 30b 48b 15a 43c 7b 27a",
    "0c 17d 34d 16c 45d 20c 28d 32c",
    "10b 6c 14a 5c 9c 36d 47c 52c",
    "35a 54a 33c 21c 39c 24d 22a 1d",
    "55c 49d 19d 41c 50b 13c 26d 4c",
)
"""Its units without a touch, spread evenly, as the program once proposed them: the number of each
in order of making, from 0, and its quarter turns from a for none."""


def signal_garden(diary: Diary) -> None:
    """A layout on the wall: all units sewn, one moved and two locked there, three rows sewn and five
    units of the fourth."""
    diary.evening("2026-01-16", "19:10")
    diary.do(AcceptSets(tuple(tuple(one) for one in SIGNAL_SETS), "light on dark"))
    diary.count("pair", *[4] * 7, each=0.6)
    diary.close("the other seven sets lie in the order of the list")
    diary.evening("2026-01-17", "14:00")
    diary.count("pair", *[4] * 7, each=0.6)
    diary.do(
        RecordSettings(
            Settings(
                machine="the one from the attic",
                foot="patchwork foot",
                needle="80/12",
                stitch_length="2.1",
                thread="sand cotton 50",
                proof="three strips 2 in wide came out at 5 in",
            )
        )
    )
    diary.count("sew", *[4] * 7, each=2)
    diary.close()
    diary.evening("2026-01-23", "20:00")
    diary.count("press", 14, 14, each=0.6)
    diary.do(Answer("iron", "yes"))
    diary.count("stack", 14, each=0.8)
    diary.count("sew-around", 7, 7, each=1.6)
    diary.close("cut by daylight")
    diary.evening("2026-01-25", "11:00")
    diary.do(ChangeTool("blade"))
    diary.count("cut-twice", 7, 7, each=1.2)
    diary.count("press-open", 28, 28, each=0.4)
    diary.do(Answer("iron", "yes"))
    diary.do(PutPileAway("unit", "by set, in fourteen envelopes"))
    diary.close("lay them out in the box room")

    diary.evening("2026-02-01", "15:00")
    units = tuple(
        LaidUnit(number, unit, tuple(squares))
        for number, squares in enumerate(SIGNAL_SETS, start=1)
        for unit in range(4)
    )
    rows = tuple(
        tuple((int(one[:-1]), "abcd".index(one[-1])) for one in row.split()) for row in SIGNAL_ROWS
    )
    diary.do(LayWall(units, rows))
    diary.do(WriteNote("Looked at it from the ladder. The two red ones may stay where they are."))
    diary.do(LockPlaces(((2, 4), (6, 3))), after=5)
    diary.do(SwapPlaces(5, 3, 7, 7), after=4)
    diary.do(PutPileAway("unit", "on the floor of the box room, door shut"))
    diary.close("pick the rows up from the top, tag on the first unit")
    diary.evening("2026-02-08", "16:20")
    diary.count("sew-rows", 1, 1, each=9)
    diary.do(Answer("iron", "yes"))
    diary.do(PutPileAway("row", "rolled in the blue towel, row 1 inside"))
    diary.close()
    diary.evening("2026-02-13", "20:30")
    diary.count("sew-rows", 1, each=10)
    diary.do(BeginRows(((1, 5),)), after=6)
    diary.do(
        WriteNote("The cat was in the box room. Rows 5 to 7 are in three envelopes, not in order.")
    )
    diary.close("three more units finish row 4")


HISTORIES: dict[str, tuple[str, Callable[[Diary], None]]] = {
    "lantern-walk": ("2026-02-06T19:50:00+01:00", lantern_walk),
    "cornflower-field": ("2026-04-18T10:00:00+01:00", cornflower_field),
    "russet-rows": ("2026-01-04T13:50:00+01:00", russet_rows),
    "orchard-gate": ("2026-03-06T19:10:00+01:00", orchard_gate),
    "signal-garden": ("2026-01-16T18:50:00+01:00", signal_garden),
    "ferry-steps": ("2026-03-01T14:30:00+01:00", ferry_steps),
}


def history(name: str) -> str:
    """The text of the history file of the demo quilt `name`."""
    begun, evenings = HISTORIES[name]
    with tempfile.TemporaryDirectory() as folder:
        started = datetime.fromisoformat(begun)
        library = Library(Path(folder) / "quilts.db", started)
        try:
            diary = Diary(name, library, started)
            evenings(diary)
            return to_text(library.load(diary.quilt.entry))
        finally:
            library.close()


def main() -> None:
    """Write all histories beside their quilt files."""
    for name in HISTORIES:
        (demo_folder() / f"{name}.history.json").write_text(history(name), encoding="utf-8")


if __name__ == "__main__":
    main()
