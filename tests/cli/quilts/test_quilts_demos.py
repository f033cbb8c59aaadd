"""The demo quilts: invented, marked, moved in time, and never among the owner's."""

from __future__ import annotations

import importlib.util
import json
import tomllib
from datetime import datetime, timedelta
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING

import pytest
from msgspec.structs import replace

from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.events.every_kind import Recorded
from sewalong.service.demo_quilts import AGES, demo_folder, demo_names, read_demo, seed
from sewalong.store.archive import from_text
from sewalong.store.home import demo_record_path

if TYPE_CHECKING:
    from tests.cli.conftest import Desk

WITH_HISTORY = tuple(
    name for name in demo_names() if (demo_folder() / f"{name}.history.json").exists()
)


@pytest.fixture(scope="module")
def maker() -> ModuleType:
    """The script beside this test that writes the histories."""
    path = Path(__file__).parent.parent / "make_demo_histories.py"
    spec = importlib.util.spec_from_file_location("make_demo_histories", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_there_is_a_fresh_one_one_in_the_middle_and_one_in_centimetres() -> None:
    assert "pebble-path" in demo_names()
    assert "pebble-path" not in WITH_HISTORY
    assert set(WITH_HISTORY) == {
        "lantern-walk", "cornflower-field", "russet-rows", "ferry-steps", "orchard-gate",
        "signal-garden",
    }  # fmt: skip
    assert set(AGES) == set(demo_names())


@pytest.mark.parametrize("name", demo_names())
def test_a_demo_file_is_marked_as_invented_and_is_no_known_example(name: str) -> None:
    text = (demo_folder() / f"{name}.toml").read_text("utf-8")
    assert text.startswith("# Demo data: this quilt is invented.")
    content = tomllib.loads(text)
    assert content["name"].endswith(" (demo)")
    assert content["notes"].strip().startswith("Demo data, an invented quilt.")
    squares = content["squares"]
    assert squares.get("in_a_pack") != 42
    assert squares.get("count", squares.get("packs", 0) * squares.get("in_a_pack", 0)) != 168


@pytest.mark.parametrize("name", WITH_HISTORY)
def test_a_history_is_what_its_script_gives(name: str, maker: ModuleType) -> None:
    written = (demo_folder() / f"{name}.history.json").read_text("utf-8")
    assert json.loads(maker.history(name)) == json.loads(written)


@pytest.mark.parametrize("name", WITH_HISTORY)
def test_a_history_belongs_to_its_file_and_holds_together(name: str, desk: Desk) -> None:
    demo = read_demo(name, desk.now)
    archive = from_text((demo_folder() / f"{name}.history.json").read_text("utf-8"))
    assert archive.quilt == replace(demo.quilt, method_text=None)
    record = [Recorded(i, event) for i, event in enumerate(demo.events, start=1)]
    assert audit(demo.quilt, record) is None


@pytest.mark.parametrize("name", WITH_HISTORY)
def test_times_are_moved_but_the_gaps_between_them_stay(name: str, desk: Desk) -> None:
    demo = read_demo(name, desk.now)
    archive = from_text((demo_folder() / f"{name}.history.json").read_text("utf-8"))
    assert demo.events[-1].at == desk.now - AGES[name]
    shift = demo.events[0].at - archive.record[0].event.at
    assert all(
        moved.at - was.event.at == shift
        for moved, was in zip(demo.events, archive.record, strict=True)
    )
    assert demo.started == archive.started + shift


def test_the_one_in_the_middle_is_24_days_old_and_rich(desk: Desk) -> None:
    status = desk.ok("status", "Lantern", "--demo", "--json").data
    assert status["last_session"]["number"] >= 5
    assert status["places"]
    assert status["notes"]
    assert status["spoiled"]
    assert status["settings"]["proof"]
    log = desk.ok("log", "Lantern", "--demo", "--json").data["events"]
    assert any(event["undone"] for event in log)
    lines = desk.ok("status", "Lantern", "--demo").lines
    assert any(line.startswith("Last time: 24 days ago") for line in lines)


def test_one_demo_shows_a_shortfall_and_one_is_in_centimetres(desk: Desk) -> None:
    assert desk.ok("status", "Russet", "--demo", "--json").data["shortfall"]["units"] == 1
    exported = json.loads(desk.ok("export", "Cornflower", "-", "--demo").out)
    assert exported["quilt"]["unit"] == "cm"


def test_the_demos_never_touch_the_owners_record(begun: Desk) -> None:
    before = begun.record()
    begun.ok("demo", "--list")
    begun.ok("count", "pair", "2", "--demo", "--quilt", "Pebble")
    begun.ok("demo", "--afresh", "--list")
    assert begun.record() == before
    assert begun.ok("list", "--json").data["quilts"][0]["name"] == "Gate Post"


def test_demos_leave_no_record_of_the_owners_where_there_was_none(desk: Desk) -> None:
    desk.ok("demo", "--list")
    assert desk.record() is None
    assert "There is no quilt yet" in desk.ok("list").out


def test_seeding_again_changes_nothing_and_afresh_begins_again(desk: Desk) -> None:
    desk.ok("count", "pair", "2", "--demo", "--quilt", "Pebble")
    desk.wait(days=2)
    seed(demo_record_path(), desk.now)
    assert desk.ok("status", "Pebble", "--demo", "--json").data["piles"]["pair"] == 2
    desk.ok("demo", "--afresh", "--list")
    assert desk.ok("status", "Pebble", "--demo", "--json").data["piles"]["pair"] == 0
    (oldest,) = [
        quilt
        for quilt in desk.ok("demo", "--list", "--json").data["quilts"]
        if quilt["name"].startswith("Russet")
    ]
    assert datetime.fromisoformat(oldest["last_at"]) == desk.now - timedelta(days=51)


@pytest.mark.parametrize("left", [b"", b"S", b"Dear Ada, " * 999, None])
def test_a_demo_record_that_is_hurt_is_begun_afresh(desk: Desk, left: bytes | None) -> None:
    desk.ok("demo", "--list")
    record = Path(demo_record_path())
    whole = record.read_bytes()
    record.write_bytes(whole[:-4096] if left is None else left)
    for argv in (["demo", "--list"], ["status", "Pebble", "--demo"]):
        assert "sewalong demo --afresh" in desk.refused(*argv).err
    desk.ok("demo", "--afresh", "--list")
    desk.ok("count", "pair", "2", "--demo", "--quilt", "Pebble")


def test_an_unknown_demo_is_refused_and_the_others_named(desk: Desk) -> None:
    assert "Lantern Walk (demo)" in desk.refused("demo", "Moon").err


def test_the_demo_quilts_stand_in_the_order_they_were_last_touched(desk: Desk) -> None:
    listed = desk.ok("list", "--demo", "--json").data["quilts"]
    times = [one["last_at"] for one in listed]
    assert times == sorted(times, key=datetime.fromisoformat, reverse=True)
    assert len(listed) >= 5
