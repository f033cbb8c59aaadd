"""Counting, taking apart, the empty bobbin, joining rows, and the question about the iron."""

from __future__ import annotations

from tests.progress import every_act as c
from tests.story.twins.histories import (
    AT_THE_IRON,
    FOOT_CHANGED,
    PAIRED,
    PROVED,
    ROWS,
    SAT_DOWN,
    SEWN,
)
from tests.story.twins.twin import (
    Case,
    answer,
    fill,
    leave_the_question,
    pick,
    press,
    read_the_caution,
)

COUNTING = (
    Case(
        "count one",
        c.Count,
        (press("space"),),
        ("count pair",),
        ("counted",),
        SAT_DOWN,
    ),
    Case(
        "count several",
        c.Count,
        (press("1", "2", "enter"),),
        ("count pair 12",),
        ("counted",),
        SAT_DOWN,
    ),
    Case(
        "count, the caution read with an option",
        c.Count,
        (press("3", "enter"), read_the_caution),
        ("count sew 3 --caution-read",),
        ("caution read", "went on", "counted"),
        PAIRED,
    ),
    Case(
        "count, the caution read by enter",
        c.Count,
        (press("3", "enter"), read_the_caution),
        ("count sew 3",),
        ("caution read", "went on", "counted"),
        PAIRED,
        typed="\n",
    ),
    Case(
        "count on with a seam that is not proved",
        c.Count,
        (press("space"),),
        ("count sew",),
        ("went on", "counted"),
        FOOT_CHANGED,
    ),
    Case(
        "go on by a command of its own and count",
        c.GoOn,
        (press("space"),),
        ("go-on sew", "count sew"),
        ("went on", "counted"),
        FOOT_CHANGED,
        by_key=c.Count,
    ),
    Case(
        "count on with a seam that is spoken of after the question about the iron",
        c.Count,
        (press("o"), pick("sew: 6 to go"), answer("y"), press("space")),
        ("stage sew", "answer iron yes", "count sew"),
        ("stage chosen", "answered", "went on", "counted"),
        (*PROVED, c.Count("press", 2), c.ChangeTool("foot")),
    ),
    Case(
        "count on with the question about the iron left open",
        c.Count,
        (press("o"), pick("sew: 6 to go"), leave_the_question, press("space")),
        ("stage sew", "count sew"),
        ("stage chosen", "counted"),
        (*PROVED, c.Count("press", 2), c.ChangeTool("foot")),
    ),
    Case(
        "unpick",
        c.Unpick,
        (press("k"), pick("sew: 8 done"), fill("2")),
        ("unpick sew 2",),
        ("unpicked",),
        SEWN,
    ),
    Case(
        "the bobbin ran out",
        c.BobbinEmpty,
        (press("b"), pick("the bobbin ran out"), pick("sew"), fill("3")),
        ("bobbin sew 3",),
        ("bobbin ran out",),
        SEWN,
    ),
    Case(
        "join two rows",
        c.JoinRows,
        (press("j"), fill("R3", "R2")),
        ("join R3 R2",),
        ("went on", "rows joined"),
        ROWS,
    ),
    Case(
        "join two rows, the caution read",
        c.JoinRows,
        (press("j"), fill("R1", "R2"), read_the_caution),
        ("join R1 R2 --caution-read",),
        ("caution read", "went on", "rows joined"),
        (*ROWS, c.CloseSession(dict.fromkeys(("iron", "blade", "machine", "pins"), "yes"))),
    ),
    *(
        Case(
            f"answer about the iron: {said}",
            c.Answer,
            (press("o"), pick("stack: 5 to go"), answer(key)),
            ("stage stack", f"answer iron {said}"),
            ("stage chosen", "answered"),
            AT_THE_IRON,
        )
        for key, said in (("y", "yes"), ("n", "no"), ("d", "did not look"))
    ),
    Case(
        "choose a stage",
        c.ChooseStage,
        (press("o"), pick("sew: 10 to go")),
        ("stage sew",),
        ("stage chosen",),
        (c.Count("pair", 6),),
    ),
)
