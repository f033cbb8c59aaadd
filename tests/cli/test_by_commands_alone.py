"""A whole quilt by plain commands alone, told what to do by nothing but what they print.

As with a screen reader: one line after the other, in order. What comes next is read off the line
that begins with "Next:", a caution is read before the count it is due at, and a refusal says how
many can be counted instead.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from msgspec.structs import replace

from sewalong.piecing.catalogue import method_ids
from sewalong.quilt.file.writer import quilt_file
from tests.cli.conftest import Desk
from tests.cli.test_one_fact_a_line import packed
from tests.fabrics.floor.made_floors import anyhow
from tests.fabrics.photo.made_photos import Scene, solid
from tests.progress.building import a_quilt, suited

NEXT = re.compile(r"^Next: (?P<stage>[^(]+) \([^)]*\): ")
TO_GO = re.compile(r"^(?:Next: .*: )?(?P<n>\d+) .* to go\.$")
ENOUGH = re.compile(r"(?:enough for|leave|[Oo]nly) (\d+)")
MOST_STEPS = 400

SETTINGS = {
    "straight": "",
    "sashed": '[setting]\nkind = "sashed"\nsash = "2"\ncloth = "oat"\nframe = true\n'
    'cornerstones = true\ncornerstone_cloth = "coral"\n',
    "on point": '[setting]\nkind = "on point"\ncloth = "grey"\n',
}


def lived_through(desk: Desk, until: str = "") -> list[str]:
    """Every count it took, from the first piece until nothing is next, or until that stage is."""
    counted: list[str] = []
    for _ in range(MOST_STEPS):
        lines = desk.ok("status").lines
        told = next((found for line in lines if (found := NEXT.match(line))), None)
        to_go = next((found for line in lines if (found := TO_GO.match(line))), None)
        if told is None or to_go is None:
            return counted
        stage, n = told["stage"].lower(), to_go["n"]
        if stage == until:
            return counted
        said = desk.run("count", stage, n)
        if "Caution" in said.err:
            said = desk.run("count", stage, n, "--caution-read")
        if said.status and (enough := ENOUGH.search(said.err)):
            n = enough[1]
            said = desk.run("count", stage, n, "--caution-read")
        assert said.status == 0, (stage, n, said.err)
        assert [trouble for line in (*lines, *said.lines) for trouble in packed(line)] == []
        counted.append(f"{stage} {n}")
    raise AssertionError(f"it never ends: {counted[-5:]}")


def test_a_web_is_made_by_what_is_printed(desk: Desk) -> None:
    quilt = replace(a_quilt("paired-squares", 40, 3, 4, borders=1), joined="web")
    desk.ok("start", desk.file("quilt.toml", quilt_file(quilt)))
    counted = lived_through(desk)
    assert any(line.startswith("sew web") for line in counted)
    desk.ok("done")


@pytest.mark.parametrize("setting", SETTINGS)
@pytest.mark.parametrize("method_id", method_ids())
def test_a_quilt_is_made_by_what_is_printed(desk: Desk, method_id: str, setting: str) -> None:
    quilt = suited(a_quilt(method_id, 90, 3, 2, borders=1, finishing=("layer", "quilt", "bind")))
    text = quilt_file(quilt) + "\n" + SETTINGS[setting]
    begun = desk.run("start", desk.file("quilt.toml", text))
    if begun.status and setting == "on point":
        assert "square" in begun.err, "only units that are square stand on a corner"
        return
    assert begun.status == 0, begun.err
    top = desk.ok("plan", "--told").lines
    assert any(line.startswith("Row") for line in top)
    assert any(line.startswith("Border 1, on all four sides: ") for line in top)
    lived_through(desk)
    lines = desk.ok("status").lines
    assert any(line.startswith("Mark the quilt done") for line in lines), lines
    desk.ok("done")
    assert any(line.endswith(": done.") for line in desk.ok("list").lines)


def test_a_newcomer_begins_stops_and_comes_back_weeks_later(desk: Desk) -> None:
    """The same as tests/story/test_newcomer.py, in plain lines: nothing else is known of it."""
    assert desk.run("list").lines == [
        "There is no quilt yet. Begin one by a few questions: sewalong new",
        "To look around first: sewalong demo",
    ]
    # The third question is how many there are; every other answer is the usual one.
    begun = desk.ok("new", "--plain", typed="\n\n24\n" + "\n" * 20)
    assert "24 squares make 12 units." in begun.out
    lived_through(desk, until="sew")
    desk.ok("spoil", "pair", "1", "--reason", "cut askew")
    desk.ok("undo")
    desk.ok("redo")
    desk.ok("undo")
    desk.ok("note", "the rain ones are bias")
    desk.ok("put-away", "pair", "shoe box")
    lived_through(desk, until="press open")
    desk.ok("count", "press open", "3", "--caution-read")
    answers = [f"--answer={thing}=yes" for thing in ("iron", "blade", "machine", "pins")]
    desk.ok("close", *answers, "--put", "cut-unit=paper bag", "--next", "the nine in the bag first")
    desk.wait(days=24)
    back = desk.ok("status").lines
    assert any("24 days" in line for line in back)
    assert any(line.startswith("Pick up the 9 cut units – paper bag") for line in back), back
    assert any("the nine in the bag first" in line for line in back)
    lived_through(desk)
    desk.ok("done")
    assert any(line.endswith(": done.") for line in desk.ok("list").lines)


MOVE = re.compile(
    r"^(?P<n>\d+)\. (?:Row (?P<row>\d+) place (?P<place>\d+)(?: with row (?P<row2>\d+) place (?P<place2>\d+))?)"
    r"(?:: turn it (?P<by>a quarter|half way round))?"
)
TURN = re.compile(
    r"^(?P<n>\d+)\. Turn (?P<which>the first|the second) (?P<by>a quarter|half way round)"
)
TOWARDS = {"towards the end of the row": 1, "towards the last row": 2, "towards the start of the row": 3}  # fmt: skip


def moves_read(lines: list[str]) -> Iterator[list[str]]:
    """What is to be typed for each move that is named, turned as its words say."""
    found: dict[str, dict[str, str | int | None]] = {}
    for line in lines:
        if turn := TURN.match(line):
            found[turn["n"]][turn["which"]] = quarters(line)
        elif move := MOVE.match(line):
            found[move["n"]] = {**move.groupdict(), "it": quarters(line) if move["by"] else 0}
    for one in found.values():
        at = f"{one['row']}.{one['place']}"
        if one["row2"] is None:
            yield ["turn", at, str(one["it"])]
        else:
            first, second = (one.get(which, 0) for which in ("the first", "the second"))
            yield ["swap", f"{at}/{first}", f"{one['row2']}.{one['place2']}/{second}"]


def quarters(line: str) -> int:
    """By how many quarters a line says to turn: half way round, or where the edge towards row 1 goes."""
    if "half way round" in line:
        return 2
    _, _, comes = line.partition(" comes ")
    return next(n for words, n in TOWARDS.items() if comes.startswith(words))


def test_a_wall_is_photographed_mended_sewn_and_laid_again_by_what_is_printed(desk: Desk) -> None:
    """Units laid anyhow and photographed, the moves made that are named, rows sewn over two evenings,
    the layout lost and read again, two rows exchanged with the press warned of."""
    floor = anyhow("stacked-four-patch", 5, 4, fabrics=24, seed=3)
    quilt = a_quilt("stacked-four-patch", 120, 5, 4)
    desk.ok("start", desk.file("quilt.toml", quilt_file(quilt)))
    prints = [solid(str(colour)) for colour in floor.colours.values()]
    pack = Scene(squares=[prints[row * 6 : row * 6 + 6] for row in range(4)], size=(800, 560))
    (desk.folder / "pack.png").write_bytes(pack.file())
    pack_read = (
        "fabrics",
        "--photo",
        str(desk.folder / "pack.png"),
        "--grid",
        "4x6",
        "--packs",
        "5",
    )
    desk.ok(*pack_read, "--keep")
    desk.ok("sets", "--seconds", "1", "--accept")
    for number, squares in floor.sets.items():
        desk.ok("sets", "--own", f"{number}: {' '.join(squares)}")
    lived_through(desk, until="sew rows")
    photo = desk.folder / "floor.png"
    photo.write_bytes(floor.scene(turned=2.0).file())
    said = desk.ok("wall", "--photo", str(photo), "--accept")
    assert "20 of 20 places are sure." in said.lines
    moves = [*moves_read(said.lines)]
    assert moves
    for words in moves:
        desk.ok("wall", *words)
    standing = desk.ok("wall").lines
    left = [line for line in said.lines if line.startswith("Still: ")]
    assert [line for line in standing if " meets row " in line] == [
        f"{line[7:8].upper()}{line[8:]}" for line in left
    ]
    # Two rows are sewn, and the next evening two more; what is sewn is said to stay.
    desk.ok("count", "sew rows", "2", "--caution-read")
    answers = [f"--answer={thing}=yes" for thing in ("iron", "blade", "machine", "pins")]
    desk.ok("close", *answers, "--next", "row 3")
    desk.wait(days=1)
    desk.ok("count", "sew rows", "2", "--caution-read")
    assert "is sewn to its row already" in desk.refused("wall", "swap", "1.1", "5.1").err
    again = desk.ok("wall", "--rebuild").lines
    places = [line for line in again if re.match(r"Row \d: place \d: unit \d of set \d", line)]
    assert len(places) == 20
    assert sum(line.endswith(", sewn.") for line in places) == 16
    warned = desk.refused("wall", "exchange", "R1", "R2")
    assert "ridge on ridge" in warned.err
    assert "--all-the-same" in warned.err
    row = [line.split(": ", 1)[1] for line in places if line.startswith("Row 1: ")]
    desk.ok("wall", "exchange", "R1", "R3", "--all-the-same")
    now = desk.ok("wall", "--row", "3").lines[1:]
    assert [line.lower() for line in now] == [line.lower() for line in row]
    for lines in (said.lines, standing, again):
        assert [trouble for line in lines for trouble in packed(line)] == []
    # Rather than press it all anew she takes the rows apart and sews the wall as a web.
    desk.ok("unpick", "sew rows", "4")
    desk.ok("alter", "--joined", "web")
    assert desk.ok("wall", "--row", "3").lines[1:] == [line.replace(", sewn", "") for line in now]
    counted = lived_through(desk)
    assert [line for line in counted if line.startswith("sew web")]
    desk.ok("done")
