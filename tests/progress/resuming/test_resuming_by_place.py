"""What lies where and the next thing to do there, however the units are set."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from sewalong.progress.plan.plan import plan
from sewalong.progress.resuming.by_place import by_place, in_words
from sewalong.quilt.setting import Setting
from tests.progress import every_act as c
from tests.progress.building import a_quilt, play
from tests.progress.wandering import ON_POINT, SETTINGS


@pytest.mark.parametrize("setting", [None, *SETTINGS, ON_POINT])
def test_what_is_cut_out_of_whole_cloth_is_next_at_no_place(setting: Setting | None) -> None:
    quilt = replace(a_quilt("plain-squares", 40, 3, 3), setting=setting)
    state, _ = play(quilt, c.PutPileAway("square", "tin", 2))
    said = [line for at in by_place(state, plan(state)) for line in in_words(state, at)]
    assert said[0] == "tin: 2 squares"
    assert "not written down: 38 squares" in said
    assert not [line for line in said if "cut " in line]
