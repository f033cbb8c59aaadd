"""The summary beside the record: what the list shows, never trusted over the record."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings

from sewalong.cli.frame.context import Context
from sewalong.cli.frame.run import run
from sewalong.progress.safety.cautions import CautionFirst
from sewalong.quilt.quilt import Quilt
from sewalong.service import summing_up
from sewalong.service.acting import do, sit_down
from sewalong.service.listing import summary
from sewalong.service.open_quilt import OpenQuilt
from sewalong.service.summary import Summary
from sewalong.service.summing_up import worked_out
from sewalong.store.library import Library
from sewalong.store.shelved import Shelved
from tests.progress import every_act as c
from tests.progress.wandering import Ask, as_command, histories, small_quilt
from tests.screens.sewing_room import MINUTE, StandingClock, put_on_shelf
from tests.service.opened_quilt import a_library, a_window, write
from tests.story.twins.histories import PAIRED


def entry_of(library: Library) -> Shelved:
    """The one quilt there is, as the list reads it."""
    (entry,) = library.entries()
    return entry


def kept(entry: Shelved) -> Summary:
    """What is kept beside the record."""
    return msgspec.json.decode(entry.summary, type=Summary)


@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
@given(small_quilt, histories)
def test_after_every_act_what_is_kept_is_what_the_record_says(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    with TemporaryDirectory() as folder:
        path, clock = Path(folder) / "quilts.db", StandingClock()
        put_on_shelf(path, clock, quilt=quilt)
        with a_library(path) as library:
            open_now = OpenQuilt(library, entry_of(library), clock)
            for ask in history:
                clock.forward(ask.minutes * MINUTE)
                if carried_out(open_now, as_command(ask, open_now.state)):
                    entry = entry_of(library)
                    assert kept(entry) == worked_out(library, entry)[0]


def carried_out(quilt: OpenQuilt, act: c.Act) -> bool:
    """Whether the act gave an event; a caution that is due is read first."""
    try:
        return bool(do(quilt, act).recorded)
    except CautionFirst as due:
        do(quilt, c.ReadCaution(due.stage))
        return carried_out(quilt, act)
    except c.Refused:
        return False


WRONG = '{"standing":"done","work_done":1.0,"next_stage":null,"label":null,"pick_up":"done"}'


@pytest.mark.parametrize(
    ("change", "values"),
    [
        pytest.param("UPDATE summary SET version = '0.0', body = ?", (WRONG,), id="version"),
        pytest.param("UPDATE summary SET seq = seq - 1, body = ?", (WRONG,), id="stamp before"),
        pytest.param("UPDATE summary SET seq = seq + 1, body = ?", (WRONG,), id="stamp after"),
        pytest.param("UPDATE summary SET body = ?", ("half a lett",), id="rubbish"),
        pytest.param("UPDATE summary SET body = ?", ('{"standing":7}',), id="of another shape"),
        pytest.param("UPDATE summary SET body = ?", ("",), id="empty"),
        pytest.param("DELETE FROM summary", (), id="none"),
    ],
)
def test_what_is_of_no_use_is_worked_out_anew_and_kept(
    tmp_path: Path, change: str, values: tuple[str, ...]
) -> None:
    with a_window(tmp_path, *PAIRED) as window:
        do(window.quilt, c.WriteNote("lamp on"))
        right = kept(entry_of(window.library))
        write(window.path, change, *values)
        assert summary(window.library, entry_of(window.library)) == right
        assert kept(entry_of(window.library)) == right


def test_a_summary_that_was_overtaken_by_the_record_is_not_shown(tmp_path: Path) -> None:
    """As an older sewalong writes it, which keeps no summary."""
    with a_window(tmp_path, *PAIRED) as window:
        do(window.quilt, c.WriteNote("lamp on"))
        before = summary(window.library, entry_of(window.library))
        window.quilt.do(c.Count("pair", 2))
        after = summary(window.library, entry_of(window.library))
        assert "20 pairs wait" in before.pick_up
        assert "22 pairs wait" in after.pick_up
        assert after == worked_out(window.library, entry_of(window.library))[0]


def test_opening_and_counting_on_look_at_the_record_and_not_at_the_summary(tmp_path: Path) -> None:
    with a_window(tmp_path, *PAIRED) as window:
        do(window.quilt, c.Count("pair"))
        write(window.path, "UPDATE summary SET body = ?", WRONG)
        quilt = OpenQuilt(window.library, entry_of(window.library), window.clock)
        assert quilt.state == window.quilt.state
        do(quilt, c.Count("pair"))
        assert kept(entry_of(window.library)).standing == "in progress"


def test_a_quilt_nothing_happened_to_is_summed_up_too(tmp_path: Path) -> None:
    with a_window(tmp_path) as window:
        found = summary(window.library, entry_of(window.library))
        assert (found.standing, found.work_done, found.next_stage) == ("in progress", 0, "pair")
        assert kept(entry_of(window.library)) == found


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("SEWALONG_HOME", str(tmp_path))
    return tmp_path


@pytest.mark.parametrize(
    "acts",
    [
        pytest.param((c.Count("pair"),), id="a count"),
        pytest.param((c.Count("pair"), c.Undo()), id="an undo"),
        pytest.param((c.CloseSession(),), id="closing"),
        pytest.param((c.LayAside("no backing yet"),), id="laying aside"),
    ],
)
def test_the_list_reads_it_without_the_record(
    home: Path,
    acts: tuple[c.Act, ...],
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    with a_window(home, *PAIRED) as window:
        for act in acts:
            do(window.quilt, act)
        expected = worked_out(window.library, entry_of(window.library))[0]
    said = listed(monkeypatch, capsys, window.clock)
    assert f"Work done: {expected.work_done:.0%}." in said
    assert expected.standing in said


def test_after_sitting_down_the_list_still_reads_it_without_the_record(
    home: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    with a_window(home, *PAIRED) as window:
        sit_down(window.quilt)
        sit_down(window.quilt)
    assert "Work done:" in listed(monkeypatch, capsys, window.clock)


def listed(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], clock: StandingClock
) -> str:
    """What `list` prints, in a program in which no record can be read and nothing be folded."""

    def never(*_: object) -> None:
        raise AssertionError("the record was read")

    with monkeypatch.context() as patch:
        patch.setattr(Library, "load", never)
        patch.setattr(summing_up, "fold", never)
        assert run(["list"], Context(clock, interactive=False)) == 0
    return capsys.readouterr().out
