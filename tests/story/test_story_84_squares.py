"""A quilt of 84 squares lives through it all, told from the first proof to the joined rows.

The evenings are in `ferry_steps`, as commands; here the quilt is looked at after each.
Numbers are worked out by hand from the method: eight squares make two four-patches, those one stack,
and the stack four units.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

import pytest

from sewalong.progress.acts.joining import JoinRows
from sewalong.progress.joining.next_joins import joining
from sewalong.progress.measuring import proof as proofs
from sewalong.progress.measuring.at_risk import at_risk
from sewalong.progress.measuring.diagnosis import diagnose
from sewalong.progress.pace.by_date import Verdict, by_date
from sewalong.progress.pace.forecast import Forecast
from sewalong.progress.pace.hours_ahead import Hours
from sewalong.progress.pace.tonight import tonight
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import State
from sewalong.progress.resuming.coming_back import coming_back, in_lines
from sewalong.progress.resuming.resume_facts import was_away
from sewalong.quilt.quilt import Target
from sewalong.service.demo_quilts import demo_folder
from sewalong.store.archive import to_text
from sewalong.store.library import Library
from tests.cli.diary import Diary
from tests.progress.pace.evenings import forecast_of
from tests.story import ferry_steps as she

BEGUN = datetime.fromisoformat("2026-03-01T14:30:00+01:00")


def hours(left: Forecast) -> Hours:
    """All that is left, measured and guessed."""
    assert left.in_all is not None
    return left.in_all


def width(left: Forecast) -> float:
    return hours(left).high / hours(left).low


@dataclass
class Story:
    """The diary, and what is asked of the quilt between its pages."""

    diary: Diary

    @property
    def state(self) -> State:
        return self.diary.quilt.state

    def piles(self) -> dict[str, int]:
        return {pile: n for pile, n in self.state.piles.items() if n}

    def proof(self) -> proofs.Proof:
        return proofs.proof(self.state, self.diary.time)

    def forecast(self) -> Forecast:
        return forecast_of(self.state, self.diary.quilt.record, self.diary.time)

    def to_do(self) -> dict[str, int]:
        return {one.pace.stage.id: one.to_do for one in self.forecast().stages}

    def seams_at_risk(self) -> dict[str, int]:
        found = at_risk(self.state, self.diary.quilt.record)
        return {} if found is None else {one.stage: one.n for one in found.stages}


@pytest.fixture
def library(tmp_path: Path) -> Iterator[Library]:
    library = Library(tmp_path / "quilts.db", BEGUN)
    yield library
    library.close()


def test_a_quilt_of_84_squares_lives_through_it_all(library: Library) -> None:
    diary = Diary("ferry-steps", library, BEGUN)
    quilt = Story(diary)

    # Before the first stitch: 84 squares, 5 × 8 wanted, ten stacks for forty units.
    assert quilt.piles() == {"square": 84}
    assert quilt.proof().standing is proofs.ProofStanding.NEVER
    assert "Test it on one first" in quilt.proof().say
    assert "not all 84 pieces" in quilt.proof().say
    at_first = quilt.forecast()
    assert not at_first.own_sessions
    assert quilt.to_do() == {
        "pair": 40, "sew": 20, "press": 20, "stack": 10, "sew-around": 10, "cut-twice": 10,
        "press-open": 40, "sew-rows": 5, "join-rows": 4, "add-borders": 4,
    }  # fmt: skip
    assert {"sew rows", "join rows", "add borders"} <= set(at_first.not_begun)

    # One stack is taken through; a unit measures 7 1/16, right as near as a tape is read.
    she.she_proves_it_on_one(diary)
    assert quilt.piles() == {"square": 76, "unit": 4}
    assert quilt.proof().standing is proofs.ProofStanding.FRESH
    proved_with = quilt.proof().last
    assert proved_with is not None
    assert proved_with.settings == she.PATCHWORK_FOOT
    assert quilt.proof().say == ""
    after_one = quilt.forecast()
    assert after_one.own_sessions
    assert after_one.not_begun == ("sew rows", "join rows", "add borders")
    assert width(after_one) < width(at_first)

    # Twelve four-patches, the last one measured and right.
    she.she_sews_twelve_and_measures_one(diary)
    assert quilt.piles() == {"pair": 14, "four-patch": 12, "unit": 4}
    assert quilt.proof().standing is proofs.ProofStanding.FRESH
    assert quilt.state.press["sew"] == "towards the red square"
    after_twelve = quilt.forecast()
    assert hours(after_twelve).middle < hours(after_one).middle
    assert after_twelve.spent > after_one.spent

    # Another foot makes the proof stale. It is said once; she goes on, and that is kept.
    she.she_changes_the_foot(diary)
    assert quilt.proof().standing is proofs.ProofStanding.STALE
    assert quilt.proof().why == "another foot went on"
    assert quilt.proof().went_on
    assert quilt.proof().say == ""
    assert quilt.to_do()["sew"] == 6

    # Seven more, and the one measured is an eighth short: 1/16 too wide at each allowance.
    she.she_sews_the_last_seven_and_measures(diary)
    failed = quilt.state.checks[-1]
    assert not failed.passed
    found = diagnose(diary.quilt.state.quilt, quilt.state.target, failed.piece, failed.readings)
    assert "Likeliest: seams of 5/16 in, each 1/16 in too wide." in found.lines
    assert quilt.proof().standing is proofs.ProofStanding.FAILED

    # At risk are those seven of that evening and no others, and they are in the blue bag.
    assert quilt.seams_at_risk() == {"sew": 7}
    doubtful = at_risk(quilt.state, diary.quilt.record)
    assert doubtful is not None
    assert [(then.session, then.n) for then in doubtful.stages[0].sewn] == [(3, 7)]
    assert doubtful.places == {"four-patch": "blue bag"}
    assert quilt.piles() == {"four-patch": 19, "unit": 4}
    assert "sew" not in quilt.to_do()

    # Unpicked, sewn again with the right foot, measured and right: proved and seen to.
    she.she_sews_them_again(diary)
    assert quilt.piles() == {"four-patch": 19, "unit": 4}
    assert quilt.state.done["sew"] == 21
    assert quilt.proof().standing is proofs.ProofStanding.FRESH
    doubtful = at_risk(quilt.state, diary.quilt.record)
    assert doubtful is not None
    assert doubtful.seen_to

    # Nine stacks are sewn around. What is cut in a short evening is opened in it too.
    she.she_stacks_and_sews_around(diary)
    assert quilt.piles() == {"pressed-four-patch": 1, "sewn-stack": 9, "unit": 4}
    assert quilt.to_do()["cut-twice"] == 9
    short = tonight(quilt.state, diary.quilt.record, diary.time, 10)
    cut, opened = short.steps
    assert (cut.stage, opened.stage) == ("cut-twice", "press-open")
    assert 0 < opened.n == 4 * cut.n < 36
    before_cutting = quilt.forecast()

    # Thirty-six more units, and two scorch: 38 cannot be 40, and it shows at once.
    she.she_cuts_and_spoils_two(diary)
    assert quilt.piles() == {"pressed-four-patch": 1, "unit": 38}
    assert quilt.state.spoiled == {"unit": 2}
    shortfall = plan(quilt.state).shortfall
    assert shortfall is not None
    assert shortfall.units == 2
    assert Target(6, 6) in shortfall.layouts
    assert quilt.to_do()["pair"] == 2
    after_cutting = quilt.forecast()
    assert hours(after_cutting).middle < hours(before_cutting).middle

    # Three weeks away. The screen of return comes first, with the machine and the places.
    diary.evening("2026-04-03", "20:10")
    assert was_away(quilt.state, diary.time)
    said = "\n".join(in_lines(coming_back(quilt.state, (), diary.time)))
    assert "21 days ago" in said
    assert "sew rows" in said
    assert "flat box" in said

    # She counts what matters next: 34, four fewer. They were made; nobody knows where they are.
    she.three_weeks_later_four_are_missing(diary)
    assert quilt.piles() == {"pressed-four-patch": 1, "unit": 34}
    assert quilt.state.missing == {"unit": 4}
    shortfall = plan(quilt.state).shortfall
    assert shortfall is not None
    assert shortfall.units == 6
    with_four_missing = quilt.forecast()
    assert quilt.to_do()["pair"] == 6
    assert hours(with_four_missing).middle > hours(after_cutting).middle

    # They lie in the button tin. Nothing is missing any more, and the piles say where.
    she.they_turn_up_in_a_tin(diary)
    assert quilt.state.missing == {}
    assert quilt.piles() == {"pressed-four-patch": 1, "unit": 38}
    assert quilt.state.places["unit"]["button tin"] == 4
    again = quilt.forecast()
    assert quilt.to_do()["pair"] == 2
    assert hours(again).middle < hours(with_four_missing).middle

    # Six by six instead: 36 of 38, two spare; no more units to make.
    she.she_takes_a_smaller_layout(diary)
    now = plan(quilt.state)
    assert now.shortfall is None
    assert (now.units.to_go, now.units.spare) == (0, 2)
    assert quilt.to_do() == {"sew-rows": 6, "join-rows": 5, "add-borders": 4}
    smaller = quilt.forecast()
    assert hours(smaller).middle < hours(again).middle
    in_time = by_date(smaller, diary.time.date(), datetime(2026, 5, 30).date())
    assert in_time.verdict in (Verdict.CAN, Verdict.NEEDS_MORE)
    too_late = by_date(smaller, diary.time.date(), diary.time.date())
    assert too_late.verdict is Verdict.DAY_HAS_COME

    # The rows are sewn, every other one pressed the other way.
    she.she_sews_the_rows(diary)
    assert quilt.piles() == {"pressed-four-patch": 1, "unit": 2, "row": 6}
    assert quilt.to_do() == {"join-rows": 5, "add-borders": 4}
    assert [(join.first, join.second) for join in joining(quilt.state).joins] == [
        (1, 2), (3, 4), (5, 6),
    ]  # fmt: skip

    # Rows 6 and 3 are refused, and so is 9, which is 6 upside down.
    for first, second in ((6, 3), (9, 5)):
        with pytest.raises(Refused):
            diary.quilt.do(JoinRows(first, second))

    # Joined in pairs by their tags; only the border is left, and the joining has its time.
    before_joining = quilt.forecast()
    she.she_joins_them_in_pairs(diary)
    assert quilt.state.done["join-rows"] == 5
    assert joining(quilt.state).pieces == ((1, 6),)
    assert joining(quilt.state).lines == ("All 6 rows are joined.",)
    at_last = quilt.forecast()
    assert quilt.to_do() == {"add-borders": 4}
    assert at_last.not_begun == ("add borders",)
    assert hours(at_last).high < hours(smaller).high
    assert at_last.spent > before_joining.spent + 0.5

    # The record holds together, and it is the history of the demo quilt.
    assert audit(diary.quilt.state.quilt, diary.quilt.record) is None
    kept = (demo_folder() / "ferry-steps.history.json").read_text("utf-8")
    assert json.loads(to_text(library.load(diary.quilt.entry))) == json.loads(kept)


def test_the_parts_together_are_the_whole_story(library: Library) -> None:
    """The demo plays all parts at once; the story plays them one by one."""
    diary = Diary("ferry-steps", library, BEGUN)
    she.ferry_steps(diary)
    state = diary.quilt.state
    assert state.target == Target(6, 6)
    assert state.done["join-rows"] == 5
    assert len(state.sessions) == 8
