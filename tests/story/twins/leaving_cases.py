"""Another target, closing the session, laid aside, picked up, done."""

from __future__ import annotations

from tests.progress import every_act as c
from tests.story.twins.histories import AT_THE_IRON, DONE, LAID_ASIDE, PAIRED, SAT_DOWN, SEWN
from tests.story.twins.twin import Case, answer, fill, pick, press

LEAVING = (
    Case(
        "change the target",
        c.ChangeTarget,
        (press("t"), fill("4", "6")),
        ("target 4 6",),
        ("target changed",),
        SEWN,
    ),
    Case(
        "close, nothing was used",
        c.CloseSession,
        (press("x"), fill("pair the rest", None, None)),
        ("close --next 'pair the rest'",),
        ("session closed",),
        (c.Count("pair", 6),),
    ),
    Case(
        "close with answers, the next step and places",
        c.CloseSession,
        (press("x"), answer("y", "n"), fill("press on", "top drawer", None, "tray", "flat box")),
        (
            "close --answer iron=yes --answer machine=no --next 'press on' "
            "--put 'square=top drawer' --put four-patch=tray "
            "--put 'pressed four-patches=flat box'",
        ),
        ("put away", "put away", "put away", "session closed"),
        (*PAIRED, c.Count("sew", 9), c.Count("press", 4)),
    ),
    Case(
        "close, everything asked for and answered as it comes",
        c.CloseSession,
        (press("x"), answer("d", "y"), fill("press on", None, "tray", None)),
        ("close",),
        ("put away", "session closed"),
        AT_THE_IRON,
        typed="\ndid not look\nyes\n\ntray\n\npress on\n",
    ),
    Case(
        "close, the next step and the places as they are offered",
        c.CloseSession,
        (press("x"), fill(None, None, None)),
        ("close",),
        ("session closed",),
        (c.Count("pair", 6), c.PutPileAway("pair", "tin")),
        typed="\n\n\n\n",
    ),
    Case(
        "lay aside",
        c.LayAside,
        (press("a"), pick("lay it aside"), fill("no backing yet")),
        ("lay-aside --reason 'no backing yet'",),
        ("laid aside",),
        PAIRED,
    ),
    Case(
        "lay aside without a reason",
        c.LayAside,
        (press("a"), pick("lay it aside"), fill(None)),
        ("lay-aside",),
        ("laid aside",),
        SAT_DOWN,
    ),
    *(
        Case(
            f"pick up what was {what}",
            c.PickUp,
            (press("a"), pick("pick it up again")),
            ("pick-up",),
            ("picked up",),
            history,
        )
        for what, history in (("laid aside", LAID_ASIDE), ("done", DONE))
    ),
    Case(
        "mark done",
        c.MarkDone,
        (press("a"), pick("mark it done")),
        ("done",),
        ("marked done",),
        PAIRED,
    ),
)
