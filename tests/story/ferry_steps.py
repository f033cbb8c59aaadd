"""The invented story of a quilt of 84 squares, told in commands, evening by evening.

The story test looks at the quilt after every part of it; the demo quilt's history is the
same parts one after the other.
"""

from __future__ import annotations

from fractions import Fraction

from sewalong.progress.measuring.at_risk import at_risk
from sewalong.progress.record.settings import Settings
from tests.cli.diary import Diary
from tests.progress import every_act as c

PATCHWORK_FOOT = Settings(
    machine="the old black one",
    foot="patchwork foot, edge on the cloth",
    needle="80/12",
    stitch_length="2.2",
    thread="grey cotton 50",
)


def she_proves_it_on_one(diary: Diary) -> None:
    """Eight squares become one stack, pressed units, and one of them is measured."""
    diary.evening("2026-03-01", "14:40")
    diary.do(c.RecordSettings(PATCHWORK_FOOT), after=2)
    diary.count("pair", 4, each=0.5)
    diary.count("sew", 2, each=3)
    diary.count("press", 2, each=1)
    diary.do(c.Answer("iron", "yes"))
    diary.count("stack", 1, each=1)
    diary.count("sew-around", 1, each=2)
    diary.count("cut-twice", 1, each=2)
    diary.count("press-open", 4, each=0.6)
    diary.do(c.Answer("iron", "yes"))
    diary.do(c.Measure("unit", (Fraction(113, 16), Fraction(113, 16))), after=2)
    diary.do(c.PutPileAway("unit", "flat box"))
    diary.close("pair the other seventy-six")


def she_sews_twelve_and_measures_one(diary: Diary) -> None:
    """The rest is paired, twelve four-patches are sewn, the last is measured and right."""
    diary.evening("2026-03-03", "20:10")
    diary.count("pair", 20, 18, each=0.4)
    diary.count("sew", 6, 6, each=2.2)
    diary.do(c.Measure("four-patch", (Fraction(21, 2),)), after=2)
    diary.do(c.PutPileAway("four-patch", "tray by the window"))
    diary.do(c.NotePress("sew", "towards the red square"))
    diary.close()


def she_changes_the_foot(diary: Diary) -> None:
    """The zip foot was on for a cushion; another foot went on, and she goes on without a test."""
    diary.evening("2026-03-06", "19:50")
    diary.do(c.ChangeTool("foot"), after=3)
    diary.do(c.GoOn("sew"))


def she_sews_the_last_seven_and_measures(diary: Diary) -> None:
    """Seven four-patches with that foot; the one she measures is an eighth short."""
    diary.count("sew", 4, 3, each=2.1)
    diary.do(c.PutPileAway("four-patch", "blue bag", 7))
    diary.do(c.Measure("four-patch", (Fraction(83, 8),)), after=2)


def she_sews_them_again(diary: Diary) -> None:
    """The seven are unpicked and sewn again with the patchwork foot, and one is right."""
    diary.do(c.Unpick("sew", 7), after=25)
    diary.do(c.ChangeTool("foot"), after=2)
    diary.count("sew", 7, each=2.2)
    diary.do(c.Measure("four-patch", (Fraction(21, 2),)), after=2)
    doubtful = at_risk(diary.quilt.state, diary.quilt.record)
    assert doubtful is not None
    diary.do(c.SeeTo(doubtful.failed.seq))
    diary.do(c.WriteNote("The cushion's foot looks like the patchwork foot. It is not."))
    diary.close()


def she_stacks_and_sews_around(diary: Diary) -> None:
    """Nineteen four-patches are pressed, nine stacks sewn; she stops before the diagonal cuts."""
    diary.evening("2026-03-10", "20:00")
    diary.count("press", 10, 9, each=0.7)
    diary.do(c.Answer("iron", "yes"))
    diary.count("stack", 9, each=0.8)
    diary.count("sew-around", 5, 4, each=1.7)
    diary.do(c.PutPileAway("sewn-stack", "blue tray"))
    diary.do(c.PutPileAway("pressed-four-patch", "blue tray, pinned to its rim"))
    diary.close("cut all nine in one go, then press open")


def she_cuts_and_spoils_two(diary: Diary) -> None:
    """All are cut and pressed open the same evening; two units scorch."""
    diary.evening("2026-03-13", "19:30")
    diary.do(c.ChangeTool("blade"), after=2)
    diary.count("cut-twice", 5, 4, each=1.2)
    diary.count("press-open", 18, 18, each=0.6)
    diary.do(c.Spoil("unit", 2, "scorched: the iron was set for linen"), after=2)
    diary.do(c.Answer("iron", "yes"))
    diary.do(c.PutPileAway("unit", "flat box"))
    diary.close("sew rows")


def three_weeks_later_four_are_missing(diary: Diary) -> None:
    """She counts before she sews: 34 in the flat box, and four are nowhere."""
    diary.evening("2026-04-03", "20:15")
    diary.do(c.Recount("unit", 34, how="missing"), after=4)
    diary.do(c.WriteNote("Looked in the tray, the blue bag and under the board."), after=10)
    diary.close("look for four units")


def they_turn_up_in_a_tin(diary: Diary) -> None:
    """Four units lay in the button tin."""
    diary.evening("2026-04-05", "15:00")
    diary.do(c.Recount("unit", 4, how="found", place="button tin"))


def she_takes_a_smaller_layout(diary: Diary) -> None:
    """Thirty-eight units are not forty: six by six, two spare."""
    diary.do(c.ChangeTarget(6, 6), after=5)


def she_sews_the_rows(diary: Diary) -> None:
    """Six rows, every other one pressed the other way, tagged."""
    diary.do(c.NotePress("sew-rows", "odd rows towards the edge with the tape, even rows away"))
    diary.count("sew-rows", 1, 2, 1, 2, each=10)
    diary.do(c.PutPileAway("row", "over the chair, tags on"))
    diary.close("join in pairs", iron="yes")


def she_joins_them_in_pairs(diary: Diary) -> None:
    """By their tags: pairs, then the pairs."""
    diary.evening("2026-04-08", "19:40")
    for first, second in ((1, 2), (3, 4), (5, 6), (3, 2), (4, 5)):
        diary.do(c.JoinRows(first, second), after=9)
    diary.close("cut the slate border to the measured middle", pins="did not look")


def ferry_steps(diary: Diary) -> None:
    """The whole story."""
    she_proves_it_on_one(diary)
    she_sews_twelve_and_measures_one(diary)
    she_changes_the_foot(diary)
    she_sews_the_last_seven_and_measures(diary)
    she_sews_them_again(diary)
    she_stacks_and_sews_around(diary)
    she_cuts_and_spoils_two(diary)
    three_weeks_later_four_are_missing(diary)
    they_turn_up_in_a_tin(diary)
    she_takes_a_smaller_layout(diary)
    she_sews_the_rows(diary)
    she_joins_them_in_pairs(diary)
