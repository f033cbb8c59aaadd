"""Drafts: whole on disk, for their owner alone, read within bounds, set aside where damaged."""

from __future__ import annotations

import os
import stat
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sewalong.lengths import Unit
from sewalong.quilt.beginning.answers import LONGEST_ANSWER, Answers
from sewalong.service.listing import drafts_in
from sewalong.store.drafts import LONGEST_DRAFT, MOST_DRAFTS, Draft, Drafts, new_key
from sewalong.store.faults import StoreFault

EVENING = datetime(2026, 11, 2, 20, 15, tzinfo=UTC)


def a_draft(key: str = "one", at: datetime = EVENING, **said: str) -> Draft:
    return Draft(key, at, Answers(Unit.CM, said))


def lies_at(home: Path, key: str = "one") -> Path:
    return home / "drafts" / f"{key}.json"


def test_a_draft_is_kept_as_it_is_and_read_again(tmp_path: Path) -> None:
    drafts = Drafts(str(tmp_path))
    kept = a_draft(size="12 cm", name="Über „Tische“ [red]")
    drafts.keep(kept)
    assert drafts.all() == ((kept,), "")
    assert drafts_in(str(tmp_path)) == ((kept,), "")
    again = a_draft(at=EVENING + timedelta(hours=1), size="13 cm")
    drafts.keep(again)
    assert drafts.all() == ((again,), "")


def test_only_its_owner_can_read_it(tmp_path: Path) -> None:
    Drafts(str(tmp_path)).keep(a_draft())
    assert stat.S_IMODE(lies_at(tmp_path).stat().st_mode) == 0o600
    assert stat.S_IMODE((tmp_path / "drafts").stat().st_mode) == 0o700
    assert os.listdir(tmp_path / "drafts") == ["one.json"], "nothing half written lies beside it"


def test_the_one_kept_last_comes_first(tmp_path: Path) -> None:
    drafts = Drafts(str(tmp_path))
    for key, hours in (("a", 1), ("b", 3), ("c", 2)):
        drafts.keep(a_draft(key, EVENING + timedelta(hours=hours)))
    assert [one.key for one in drafts.all()[0]] == ["b", "c", "a"]


def test_one_thrown_away_is_gone_and_that_again_is_no_fault(tmp_path: Path) -> None:
    drafts = Drafts(str(tmp_path))
    drafts.keep(a_draft())
    drafts.throw_away("one")
    drafts.throw_away("one")
    assert drafts.all() == ((), "")


def test_looking_writes_nothing(tmp_path: Path) -> None:
    assert Drafts(str(tmp_path / "home")).all() == ((), "")
    assert drafts_in(str(tmp_path / "home")) == ((), "")
    assert not (tmp_path / "home").exists()


@pytest.mark.parametrize(
    "damaged",
    [
        b"",
        b"{",
        b"\xff\xfe",
        b"[]",
        b'{"at": "2026-11-02T20:15:00Z", "unit": "inch"}',
        b'{"at": "2026-11-02T20:15:00Z", "unit": "ell", "said": {}}',
        b'{"at": "2026-11-02T20:15:00", "unit": "inch", "said": {}}',
        b'{"at": "2026-11-02T20:15:00Z", "unit": "inch", "said": {"size": 5}}',
        b'{"at": "2026-11-02T20:15:00Z", "unit": "inch", "said": {}, "more": 1}',
        b'{"at": "2026-11-02T20:15:00Z", "unit": "inch", "said": {"a": "%s"}}'
        % (b"x" * (LONGEST_ANSWER + 1)),
        b" " * (LONGEST_DRAFT + 1),
        b"[" * 10_000,
    ],
)
def test_a_damaged_one_is_said_and_set_aside(tmp_path: Path, damaged: bytes) -> None:
    drafts = Drafts(str(tmp_path))
    drafts.keep(a_draft("good"))
    lies_at(tmp_path).write_bytes(damaged)
    found, said = drafts.all()
    assert [one.key for one in found] == ["good"]
    assert said.startswith("A draft could not be read and is set aside as ")
    aside = Path(f"{lies_at(tmp_path)}.damaged")
    assert aside.read_bytes() == damaged
    assert drafts.all()[1] == "", "it is said once"
    lies_at(tmp_path).write_bytes(damaged)
    drafts.all()
    assert Path(f"{lies_at(tmp_path)}-2.damaged").exists(), "none is written over another"


def test_what_is_no_file_is_left_where_it_is(tmp_path: Path) -> None:
    lies_at(tmp_path).mkdir(parents=True)
    found, said = Drafts(str(tmp_path)).all()
    assert found == ()
    assert "is not a file" in said
    assert lies_at(tmp_path).is_dir()


def test_no_more_than_so_many_are_kept(tmp_path: Path) -> None:
    drafts = Drafts(str(tmp_path))
    for n in range(MOST_DRAFTS):
        drafts.keep(a_draft(str(n)))
    drafts.keep(a_draft("0", size="5"))
    with pytest.raises(StoreFault, match="throw one away"):
        drafts.keep(a_draft("more"))


def test_a_place_that_takes_nothing_is_said(tmp_path: Path) -> None:
    (tmp_path / "drafts").write_text("a file where the folder should be")
    with pytest.raises(StoreFault):
        Drafts(str(tmp_path)).keep(a_draft())


def test_no_two_have_one_key() -> None:
    assert len({new_key() for _ in range(100)}) == 100


@given(said=st.dictionaries(st.text(max_size=20), st.text(max_size=LONGEST_ANSWER), max_size=20))
def test_whatever_was_answered_is_read_again(
    tmp_path_factory: pytest.TempPathFactory, said: dict[str, str]
) -> None:
    drafts = Drafts(str(tmp_path_factory.mktemp("home")))
    kept = Draft("one", EVENING, Answers(Unit.INCH, said))
    drafts.keep(kept)
    assert drafts.all() == ((kept,), "")
