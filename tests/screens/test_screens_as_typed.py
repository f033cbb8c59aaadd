"""What the owner wrote is shown letter for letter, whatever it looks like to a markup."""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace

from sewalong.progress.record.settings import Settings
from sewalong.quilt.file.method_file import read_method
from sewalong.screens.quilts import QuiltsScreen
from sewalong.screens.sewing import SewingScreen
from tests.progress import every_act as c
from tests.quilt.file.own_method import OWN, changed
from tests.screens.choosing import choose
from tests.screens.sewing_room import (
    DAY,
    StandingClock,
    a_quilt,
    at_sewing,
    put_on_shelf,
    the_app,
)

ODD = ("[red]", "[/]", "[b]x[/b]", "$primary", "{x}", r"\[a]", "[@click=app.quit]y")


async def test_the_names_of_quilts_show_as_typed(tmp_path: Path) -> None:
    path, clock = tmp_path / "quilts.db", StandingClock()
    keys = [put_on_shelf(path, clock, c.OpenSession(), quilt=a_quilt(f"My {o}")) for o in ODD]
    async with the_app(path, clock, keys[0]) as room:
        await room.screen_is(SewingScreen)
        await room.sees(f"My {ODD[0]} 0 of 20 units")
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        await room.sees(*(f"My {odd} today" for odd in ODD))


async def test_notes_places_and_reasons_show_as_typed(tmp_path: Path) -> None:
    async with at_sewing(tmp_path / "quilts.db") as room:
        await room.press("n")
        await room.sees("A note for yourself")
        await room.write("mend [red] and [/]")
        await room.press("enter")
        await room.sees("Noted: mend [red] and [/]")
        await room.press("p")
        await choose(room, "squares: 48")
        await room.write("[/] tin [red]")
        await room.press("enter", "enter")
        await room.sees("Put the squares away: [/] tin [red].")
        await room.press("s")
        await choose(room, "squares: 48 – [/] tin [red]")
        await room.press("enter")
        await room.write("[/b] torn")
        await room.press("enter")
        await room.sees("Spoiled 1 square: [/b] torn.")
        await room.press("u")
        await room.sees("Undone: spoiled 1 square: [/b] torn.")


async def test_the_facts_show_as_typed(tmp_path: Path) -> None:
    spoken: list[c.Act] = [
        c.WriteNote("[red] note [/]"),
        c.PutPileAway("square", "[bold] box"),
        c.Spoil("square", 1, "[/] slipped"),
        c.RecordSettings(Settings(foot="[1/4]", proof="[/] three strips")),
    ]
    async with at_sewing(tmp_path / "quilts.db", *spoken) as room:
        await room.press("w")
        await room.sees("squares – [bold] box –")
        # The rest goes on below.
        await room.press("end")
        await room.sees("[red] note [/]", "[/] slipped", "foot [1/4]", "[/] three strips")


async def test_a_cloth_and_the_reason_for_laying_aside_show_as_typed(tmp_path: Path) -> None:
    path, clock = tmp_path / "quilts.db", StandingClock()
    quilt = a_quilt(borders=("[red] linen [/]",))
    key = put_on_shelf(path, clock, c.OpenSession(), c.ChooseStage("add-borders"), quilt=quilt)
    async with the_app(path, clock, key) as room:
        await room.screen_is(SewingScreen)
        await room.sees("Border “[red] linen [/]”")
        await room.press("a")
        await choose(room, "lay it aside")
        await room.write("[/] no [blue]")
        await room.press("enter")
        await room.sees("Laid aside: [/] no [blue].")
        await room.press("escape")
        await room.screen_is(QuiltsScreen)
        await room.sees("laid aside: [/] no [blue]")


async def test_an_own_next_step_shows_as_typed_on_coming_back(tmp_path: Path) -> None:
    path, clock = tmp_path / "quilts.db", StandingClock()
    said = c.CloseSession({}, "[/] pair the [red]")
    key = put_on_shelf(path, clock, c.OpenSession(), c.Count("pair", 1), said)
    clock.forward(9 * DAY)
    async with the_app(path, clock, key) as room:
        await room.sees("You wrote [/] pair the [red]")


async def test_the_words_of_a_method_of_ones_own_show_as_typed(tmp_path: Path) -> None:
    text = OWN
    for old, new in (
        ('name = "Turned twos"', 'name = "[red]Twos[/]"'),
        ('label = "sew twos"', 'label = "[b]sew[/b]"'),
        ('["square", "squares"]', '["[/] bit", "[/] bits"]'),
        ('["two-patch", "two-patches"]', '["$primary", "[red]"]'),
        ("Join two squares, right sides together.", "[@click=app.quit]Join[/] two."),
        ('check = "edges level"', 'check = "[/b] level"'),
    ):
        text = changed(text, old, new)
    read_method("own.toml", text)
    quilt = replace(a_quilt("Own"), method_id="turned-twos", method_text=text)
    path, clock = tmp_path / "quilts.db", StandingClock()
    key = put_on_shelf(path, clock, c.OpenSession(), quilt=quilt)
    async with the_app(path, clock, key) as room:
        await room.screen_is(SewingScreen)
        await room.sees("[B]SEW[/B]", "2 [/] bits", "[@click=app.quit]Join[/] two.", "[/b] level")
        await room.press("s")
        await room.sees("[/] bits: 48")
        await room.press("escape")
        await room.press("o")
        await room.sees("[b]sew[/b]")
        await room.press("escape")
        await room.press("space")
        await room.press("enter")
        await room.sees("Counted 1 $primary at [b]sew[/b].")
        await room.press("w")
        await room.sees("[b]sew[/b]")
