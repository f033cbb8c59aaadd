"""Piles: spoiled, found, bought, counted by hand, put away."""

from __future__ import annotations

from tests.progress import every_act as c
from tests.story.twins.histories import IN_TWO_PLACES, PAIRED, SAT_DOWN, SEWN
from tests.story.twins.twin import Case, Key, fill, pick, press


def _recount(what: str, n: int, says: str, how: str = "") -> Case:
    """The twenty pairs counted by hand; `says` is the line that is chosen for the difference."""
    chosen: tuple[Key, ...] = (pick(says),) if says else ()
    return Case(
        f"recount: {what}",
        c.Recount,
        (press("r"), pick("pairs: 12"), fill(str(n)), *chosen),
        (f"recount pair {n}{f' --as {how}' if how else ''}",),
        ("recounted",),
        (*PAIRED, c.Count("sew", 4)),
    )


PILES = (
    Case(
        "spoil",
        c.Spoil,
        (press("s"), pick("pairs: 20"), fill("2", "cut askew")),
        ("spoil pair 2 --reason 'cut askew'",),
        ("spoiled",),
        PAIRED,
    ),
    Case(
        "find",
        c.Find,
        (press("f"), pick("squares: 8"), pick("found again"), fill("3")),
        ("find square 3",),
        ("found",),
        PAIRED,
    ),
    Case(
        "buy",
        c.Find,
        (press("f"), pick("squares: 8"), pick("bought, or cut new"), fill("16")),
        ("find square 16 --bought",),
        ("found",),
        PAIRED,
    ),
    _recount("as recorded", 12, ""),
    _recount("fewer, and it stands", 9, "just take the new count"),
    _recount("more, and it stands", 14, "just take the new count"),
    _recount("counted wrongly where they are made", 14, "a miscount", "made"),
    _recount("never made", 11, "a miscount", "made"),
    _recount("found again", 15, "found again", "found"),
    _recount("lost for good", 10, "lost for good", "lost"),
    _recount("spoiled", 10, "spoiled", "spoiled"),
    _recount("made, but not found", 10, "but not found", "missing"),
    Case(
        "recount at a place",
        c.Recount,
        (press("r"), pick("pairs: 20"), pick("tin"), fill("13"), pick("lost for good")),
        ("recount pair 13 --place tin --as lost",),
        ("recounted",),
        IN_TWO_PLACES,
    ),
    Case(
        "put a pile away",
        c.PutPileAway,
        (press("p"), pick("four-patches: 8"), fill("tray by the window", None)),
        ("put-away four-patch tray by the window",),
        ("put away",),
        SEWN,
    ),
    Case(
        "put a part of a pile away",
        c.PutPileAway,
        (press("p"), pick("four-patches: 8"), fill("tray", "3")),
        ("put-away four-patch tray --part 3",),
        ("put away",),
        SEWN,
    ),
    Case(
        "made elsewhere, in a place",
        c.CountElsewhere,
        (press("plus"), pick("sew: 10 can be"), fill("2", "blue bag", "Jo")),
        ("count sew 2 --place 'Blue bag' --by Jo",),
        ("made elsewhere",),
        IN_TWO_PLACES,
    ),
    Case(
        "write a note",
        c.WriteNote,
        (press("n"), fill("blue frays, hold it by the middle")),
        ("note blue frays, hold it by the middle",),
        ("noted",),
        SAT_DOWN,
    ),
    Case(
        "note how seams are pressed",
        c.NotePress,
        (press("d"), fill("towards the darker cloth")),
        ("press sew towards the darker cloth",),
        ("press noted",),
        PAIRED,
    ),
)
