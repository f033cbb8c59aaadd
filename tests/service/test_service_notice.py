"""What is to be said once is recorded with the act it follows, and never said twice."""

from __future__ import annotations

from pathlib import Path

from sewalong.progress.record.events.said import Mentioned
from sewalong.service.acting import do, sit_down
from tests.progress import every_act as c
from tests.screens.sewing_room import a_quilt
from tests.service.opened_quilt import Window, a_window, another_window
from tests.story.twins.histories import FOOT_CHANGED, MEASURED_WRONG, PAIRED, PROVED

A_FOOT = "another foot went on"


def said(window: Window) -> list[str]:
    """What the record says was said, in order."""
    events = [recorded.event for recorded in window.quilt.record]
    return [event.what for event in events if isinstance(event, Mentioned)]


def test_it_is_recorded_with_the_act(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        outcome = do(window.quilt, c.WriteNote("zip sewn in"))
        assert outcome.notice is not None
        assert A_FOOT in outcome.notice.text
        assert [one.event.kind for one in outcome.recorded] == ["noted", "mentioned"]
        assert said(window) == [outcome.notice.mention]
        assert outcome.words == "Noted: zip sewn in"


def test_it_is_never_said_twice(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        texts = []
        for n in range(8):
            outcome = do(window.quilt, c.WriteNote(f"note {n}"))
            if outcome.notice is not None and outcome.notice.mention:
                texts.append(outcome.notice.text)
        assert len([text for text in texts if A_FOOT in text]) == 1
        assert len(set(said(window))) == len(said(window)) == len(texts)


def test_sitting_down_says_it_once(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        first, second = sit_down(window.quilt), sit_down(window.quilt)
        assert first.notice is not None
        assert A_FOOT in first.notice.text
        assert second.notice is None or second.notice.text != first.notice.text
        assert len(set(said(window))) == len(said(window))


def test_sitting_down_again_on_the_same_evening_opens_no_second_session(tmp_path: Path) -> None:
    with a_window(tmp_path) as window:
        assert sit_down(window.quilt).recorded[0].event.kind == "session opened"
        sit_down(window.quilt)
        assert len(window.quilt.state.sessions) == 1


def test_what_nobody_would_show_is_not_taken_for_said(tmp_path: Path) -> None:
    with a_window(tmp_path, *FOOT_CHANGED) as window:
        quiet = do(window.quilt, c.Recount("pair", 11), quietly=True)
        assert quiet.notice is None
        assert said(window) == []
        loud = do(window.quilt, c.WriteNote("one pair under the table"))
        assert loud.notice is not None
        assert A_FOOT in loud.notice.text


def test_beside_a_question_that_is_owed_it_is_not_taken_for_said(tmp_path: Path) -> None:
    """A command shows the question alone; what was never read is no reason to have gone on."""
    at_the_iron = (*PROVED, c.Count("press", 2), c.ChangeTool("foot"))
    with a_window(tmp_path, *at_the_iron) as window:
        left = do(window.quilt, c.ChooseStage("sew"))
        assert left.question is not None
        assert said(window) == []
        counted = do(window.quilt, c.Count("sew", caution_read=True))
        assert "went on" not in [one.event.kind for one in counted.recorded]
        answered = do(window.quilt, c.Answer("iron", "yes"))
        assert answered.notice is not None
        assert A_FOOT in answered.notice.text
        assert said(window) == [answered.notice.mention]


def test_sitting_down_beside_a_question_that_is_owed_nothing_is_taken_for_said(
    tmp_path: Path,
) -> None:
    at_the_iron = (*PROVED, c.Count("press", 2), c.ChangeTool("foot"), c.ChooseStage("sew"))
    with a_window(tmp_path, *at_the_iron) as window:
        down = sit_down(window.quilt)
        assert down.question is not None
        assert said(window) == []
        do(window.quilt, c.Answer("iron", "yes"), quietly=True)
        again = sit_down(window.quilt)
        assert again.notice is not None
        assert said(window) == [again.notice.mention]


def test_pieces_at_risk_are_said_until_they_are_seen_to(tmp_path: Path) -> None:
    with a_window(tmp_path, *MEASURED_WRONG) as window:
        for n in range(3):
            outcome = do(window.quilt, c.WriteNote(f"note {n}"))
            assert outcome.notice is not None
            assert outcome.notice.kind == "at risk"
        assert said(window) == []


def test_a_shortfall_is_said_when_it_comes_and_again_when_it_grows(tmp_path: Path) -> None:
    with a_window(tmp_path, *PAIRED, quilt=a_quilt(pieces=40)) as window:
        kinds = []
        for n in (1, 0, 4):
            act = c.Spoil("pair", n, "cut askew") if n else c.WriteNote("counted twice")
            outcome = do(window.quilt, act)
            kinds.append(outcome.notice.kind if outcome.notice else "")
            # Nothing is recorded a second time.
            assert len(set(said(window))) == len(said(window))
        assert kinds[0] == kinds[2] == "short"
        assert kinds[1] != "short"


def test_what_another_window_has_said_is_not_said_again(tmp_path: Path) -> None:
    with (
        a_window(tmp_path, *FOOT_CHANGED) as window,
        another_window(window.path, window.clock) as other,
    ):
        do(other.quilt, c.WriteNote("zip sewn in"))
        outcome = do(window.quilt, c.WriteNote("cushion done"))
        assert outcome.notice is None or A_FOOT not in outcome.notice.text
        assert len(set(said(window))) == len(said(window))
