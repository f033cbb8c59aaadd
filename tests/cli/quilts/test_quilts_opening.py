"""Opening the app, and what happens where there is no terminal to open it in."""

from __future__ import annotations

import sys
from types import ModuleType
from typing import TYPE_CHECKING

import pytest

from sewalong.store.home import demo_record_path, record_path

if TYPE_CHECKING:
    from tests.cli.conftest import Desk

Opened = list[tuple[str, str | None, bool]]


@pytest.fixture
def app(monkeypatch: pytest.MonkeyPatch) -> Opened:
    """A stand-in for the app that notes what it was asked to open."""
    opened: Opened = []

    def run_app(
        path: str, quilt: str | None, demo: bool, asked: object = None, *, new: bool = False
    ) -> int:
        opened.append((path, quilt, demo))
        return 0

    module = ModuleType("sewalong.screens.app")
    module.run_app = run_app  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "sewalong.screens.app", module)
    return opened


def key(desk: Desk) -> str:
    """The key of the desk's one quilt; the app is told keys, not names."""
    (quilt,) = desk.ok("list", "--json").data["quilts"]
    return str(quilt["key"])


def test_alone_it_opens_the_quilt_last_touched(begun: Desk, app: Opened) -> None:
    begun.ok(typed="")
    assert app == [(record_path(), key(begun), False)]


def test_alone_with_no_quilt_it_says_how_to_begin(desk: Desk, app: Opened) -> None:
    assert len(desk.ok().lines) == 2
    assert "sewalong new" in desk.ok().out
    assert app == []


def test_alone_with_no_quilt_it_opens_the_empty_list_in_a_terminal(desk: Desk, app: Opened) -> None:
    """There n begins one."""
    desk.ok(typed="")
    assert app == [(record_path(), None, False)]


def test_a_quilt_is_opened_by_the_beginning_of_its_name(begun: Desk, app: Opened) -> None:
    begun.ok("open", "gate", typed="")
    assert app == [(record_path(), key(begun), False)]
    begun.refused("open", "roof", typed="")


def test_without_a_terminal_the_status_is_printed_instead(begun: Desk, app: Opened) -> None:
    for argv in ([], ["open"], ["open", "Gate Post"]):
        said = begun.ok(*argv)
        assert "needs a terminal" in said.err
        assert said.lines[0] == "This quilt: Gate Post"
    assert app == []


def test_naming_a_quilt_where_there_is_none_is_refused(desk: Desk) -> None:
    desk.refused("open", "Gate Post")


def test_a_demo_opens_among_the_demo_quilts(desk: Desk, app: Opened) -> None:
    desk.ok("demo", typed="")
    desk.ok("demo", "lantern", typed="")
    desk.ok("open", "--demo", "pebble", typed="")
    assert app == [
        (demo_record_path(), None, True),
        (demo_record_path(), "demo-lantern-walk", True),
        (demo_record_path(), "demo-pebble-path", True),
    ]


def test_the_exit_status_of_the_app_is_handed_on(
    begun: Desk, app: Opened, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys.modules["sewalong.screens.app"], "run_app", lambda *_, **__: 143)
    assert begun.run("open", typed="").status == 143
