"""How large what stands on the sewing screen is, in any window; and that nothing said moves it."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from textual.geometry import Region

from sewalong.quilt.quilt import Target
from sewalong.screens.widgets.block_letters import LINES, Dot, width_of
from sewalong.screens.widgets.far_view import SAID_LINES, SHARE, far_layout, large_lines
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.screens.widgets.sewing_layout import sewing_layout
from sewalong.screens.widgets.themes import DAYLIGHT, LAMPLIGHT
from tests.progress import every_act as c
from tests.screens.sewing_room import LARGE, SIZES, SMALL, Room, a_quilt, at_sewing, up_to

WINDOWS = st.tuples(st.integers(40, 260), st.integers(20, 90))
DIGITS = st.integers(1, 6)


@given(WINDOWS, DIGITS, st.integers(10, 30))
def test_everything_fits_beside_each_other_in_any_window(
    window: tuple[int, int], digits: int, route: int
) -> None:
    width, height = window
    layout = sewing_layout(width, height, digits, route)
    number = width_of("8" * digits, layout.dot)
    assert layout.number == number
    across = number + layout.gap + layout.picture[0]
    assert across + (layout.route + 2 if layout.route else 0) <= width - 2
    assert layout.picture[1] >= LINES * layout.dot.down
    assert layout.picture[1] + layout.texts[1] <= height - 5
    assert layout.texts[1] >= 7
    # The picture is never halved by a number of many digits.
    assert layout.picture[0] >= 2 * LINES or digits > 5
    if layout.top[0]:
        assert layout.top[0] == layout.route
        assert layout.top[1] + route <= height - 5


@given(WINDOWS, DIGITS)
def test_a_larger_window_has_no_smaller_number(window: tuple[int, int], digits: int) -> None:
    width, height = window
    here = sewing_layout(width, height, digits)
    higher = sewing_layout(width, height + 7, digits)
    assert higher.dot >= here.dot or higher.route > here.route
    # Wider, the route takes some of it at two widths: where it comes, and where it grows.
    if here.route and width >= 120:
        assert sewing_layout(width + 24, height, digits).dot >= here.dot


def test_the_number_grows_with_the_window() -> None:
    dots = [
        sewing_layout(*window, 2, 18).dot for window in ((80, 24), (120, 36), (160, 50), (200, 60))
    ]
    assert dots == [Dot(2, 1), Dot(6, 3), Dot(8, 4), Dot(10, 5)]
    tops = [sewing_layout(*window, 2, 18).top for window in ((80, 24), (120, 36), (160, 50))]
    assert tops == [(0, 0), (36, 11), (48, 25)]


@pytest.mark.parametrize(
    ("window", "picture", "texts", "of_the_done"),
    [
        # Of 80 × 24: 38 columns beside the route; 14 for two digits, 4 between.
        ((80, 24), (20, 5), (38, 11), (38, 14)),
        # One column; the facts of a quilt that is done take nine of its lines.
        ((40, 20), (22, 5), (38, 10), (38, 6)),
        # A square picture as high as there is room, never higher than half its columns.
        ((120, 36), (32, 15), (78, 13), (78, 26)),
        ((160, 50), (46, 23), (106, 19), (106, 40)),
    ],
)  # fmt: skip
def test_the_room_of_each_part(
    window: tuple[int, int],
    picture: tuple[int, int],
    texts: tuple[int, int],
    of_the_done: tuple[int, int],
) -> None:
    layout = sewing_layout(*window, 2, 18)
    assert (layout.picture, layout.texts, layout.whole_picture) == (picture, texts, of_the_done)


@given(WINDOWS, DIGITS, st.sampled_from(["mark", "press open", "sew both sides", "pair “x”"]))
def test_the_far_view_fits_any_window_and_the_number_has_its_share(
    window: tuple[int, int], digits: int, stage: str
) -> None:
    width, height = window
    layout = far_layout(width, height, digits, stage, "units to go")
    number = width_of("8" * digits, layout.number)
    high = LINES * layout.number.down
    for text, dot in ((stage, layout.stage), ("units to go", layout.noun)):
        if dot is not None:
            assert width_of(text, dot) <= width
    said = [layout.said] if layout.said is None else [layout.said] * SAID_LINES
    below = [layout.noun, layout.stage, *said]
    lines = sum(1 if dot is None else LINES * dot.down + 1 for dot in below)
    assert high + lines <= height
    if number <= width:
        larger = layout.number.down + 1
        as_wide = width_of("8" * digits, Dot(2 * larger, larger)) > width
        assert high >= SHARE * height or as_wide or high + 5 + lines > height


def test_what_is_said_takes_two_large_lines_or_is_printed_plainly() -> None:
    said = "Type how many, then enter. Space counts one."
    two = ["Type how many, then enter. Space counts", "one."]
    assert large_lines(said, Dot(1, 1), 160, 2) == (two, Dot(1, 1))
    # Too long for two lines of the larger letters, and smaller ones have room for more.
    lines, dot = large_lines(said, Dot(4, 2), 160, 2)
    assert (" ".join(lines), dot) == (said, Dot(2, 1))
    assert len(lines) == 3
    assert all(width_of(line, dot) <= 160 for line in lines)
    for text, size in ((said, None), ("Noted: 🧵", Dot(1, 1)), (said, Dot(1, 1))):
        assert large_lines(text, size, 60, 2)[0] == []


async def regions(room: Room) -> dict[str, Region]:
    """Where each part stands, the picture too."""
    await room.until(lambda: room.sewing.query_one("#picture").region.width > 0, "the picture")
    ids = ("#stage", "#number", "#picture", "#texts", "#route", "#keys", "#top-now")
    found = {id: room.sewing.query_one(id).region for id in ids}
    # Texts are fitted into their room from its top; only its end may be taken.
    return {
        id: region if id != "#texts" else region._replace(height=0) for id, region in found.items()
    }


@pytest.mark.parametrize("size", [*SIZES, (120, 36)], ids=["80x24", "40x20", "120x36"])
async def test_nothing_that_is_said_moves_anything_or_hides_the_check(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async with at_sewing(tmp_path / "quilts.db", *up_to("press"), size=size) as room:
        await room.sees("Check: flat, no tuck beside a seam")
        stood = await regions(room)
        for words in ("Short.", "A long refusal of several sentences. " * 4):
            room.sewing.tell(words, refused=True)
            await room.sees(f"Not done: {words.split('.')[0]}.")
            await room.pilot.pause()
            assert await regions(room) == stood
            await room.sees("Check: flat, no tuck beside a seam")
        room.sewing.tell("")
        await room.pilot.pause()
        assert await regions(room) == stood


async def test_counting_down_to_fewer_digits_moves_nothing(tmp_path: Path) -> None:
    quilt = a_quilt(target=Target(5, 5), pieces=60)
    async with at_sewing(tmp_path / "quilts.db", c.Count("pair", 18), quilt=quilt) as room:
        await room.sees("pairs to go 18 of 28 done")
        stood = await regions(room)
        await room.press("space")
        await room.sees("pairs to go 19 of 28 done")
        assert await regions(room) == stood


@pytest.mark.parametrize("size", SIZES, ids=["80x24", "40x20"])
async def test_four_digits_keep_the_picture(tmp_path: Path, size: tuple[int, int]) -> None:
    quilt = replace(a_quilt(pieces=9000), target=Target(50, 50))
    async with at_sewing(tmp_path / "quilts.db", quilt=quilt, size=size) as room:
        await room.sees("pairs to go 0 of 2500 done")
        picture = (await regions(room))["#picture"]
        assert (picture.width, picture.height) == (10, 5)
        assert room.sewing.region.contains_region(picture)


async def test_a_long_label_moves_no_column_of_the_route(tmp_path: Path) -> None:
    from tests.screens.test_screens_fit import with_the_longest_words

    async with at_sewing(tmp_path / "quilts.db", quilt=with_the_longest_words()) as room:
        route = room.sewing.query_one("#route").region
        lines = [line[route.x :] for line in room.lines[route.y : route.bottom]]
        head = next(line for line in lines if "waiting" in line)
        ends = {line.index("/") for line in lines if "/" in line and line.split()[-1].isdigit()}
        counts = [line for line in lines if "/" in line]
        assert len(counts) > 4
        assert all(
            len(line[: head.index("waiting")].rstrip()) == head.index("done") + 4 for line in counts
        )
        assert ends


def in_blocks(room: Room) -> int:
    """Lines of the screen with a block in them."""
    return sum("█" in line for line in room.lines)


async def test_the_far_view_counts_asks_and_says(tmp_path: Path) -> None:
    async with at_sewing(tmp_path / "quilts.db", *up_to("press"), size=LARGE) as room:
        near = room.text
        await room.press("v")
        await room.until(lambda: in_blocks(room) >= 15, "the large number")
        await room.sees("pressed four-patches to go")
        # The iron is hot: the caution comes first, over the far view too.
        await room.press("space")
        await room.sees("CAUTION Hot iron")
        await room.press("enter")
        await room.sees("Counted 1 pressed four-patch at press.")
        await room.press("4", "enter")
        await room.sees("Counted 4 pressed four-patches at press.")
        assert room.on_disk().done["press"] == 5
        await room.press("u")
        await room.sees("Undone: counted 4 pressed four-patches at press.")
        await room.press("7")
        await room.sees("7, then enter")
        await room.press("escape")
        assert room.sewing.has_class("far")
        await room.press("escape")
        await room.sees("9 four-patches wait.")
        assert near.splitlines()[4:9] != room.lines[4:9]
        await room.press("v", "v")
        await room.sees("9 four-patches wait.")


async def test_what_comes_next_is_said_when_it_is_near(tmp_path: Path) -> None:
    acts = (*up_to("press"), c.Count("press", 6))
    async with at_sewing(tmp_path / "quilts.db", *acts, size=(100, 30)) as room:
        await room.sees("pressed four-patches to go 6 of 10 done")
        assert "Then" not in room.text
        await room.press("space")
        await room.sees("7 of 10 done", "Then stack, at the table.")


async def test_done_is_done(tmp_path: Path) -> None:
    path = tmp_path / "quilts.db"
    top = (
        c.Count("cut-twice", 5), c.Count("press-open", 20), c.Answer("iron", "yes"),
        c.Count("sew-rows", 4), c.Count("join-rows", 3), c.Count("add-borders", 4),
        c.Count("layer", 1), c.Count("quilt", 4), c.Count("bind", 4),
    )  # fmt: skip
    notes = c.WriteNote("begun by the window"), c.WriteNote("given away")
    acts = (notes[0], *up_to("cut-twice"), *top, notes[1])
    for size in (LARGE, SMALL):
        home = path.with_name(f"{size[0]}.db")
        async with at_sewing(home, *acts, size=size) as room:
            await room.sees("DONE", "Every stage is done. Press a to mark the quilt done.")
            await room.sees("The top: 4 × 5, 20 units.", "Sewn: 1 session", "Dates: 4 Nov 2023.")
            await room.sees("First note: begun by the window", "Last note: given away")
            assert "not ready" not in room.text
            assert "█" not in room.text
            picture = (await regions(room))["#picture"]
            assert picture.height >= 5
            assert room.sewing.region.contains_region(picture)


async def test_a_picture_follows_the_look(tmp_path: Path) -> None:
    """The cut is drawn in the colour of the number, which is another in the other look."""
    async with at_sewing(tmp_path / "quilts.db", *up_to("cut-twice")) as room:
        await room.sees("CUT TWICE")

        def colours() -> set[str]:
            strips = room.sewing.query_one("#picture", PictureView)._strips
            styles = [one.style for strip in strips for one in strip if one.style]
            return {
                str(part.name) for style in styles for part in (style.color, style.bgcolor) if part
            }

        dark, light = (theme.variables["number"] for theme in (LAMPLIGHT, DAYLIGHT))
        await room.until(lambda: dark in colours(), "the colour of the look")
        await room.press("l")
        await room.until(lambda: light in colours(), "the colour of the other look")
        assert dark not in colours()
