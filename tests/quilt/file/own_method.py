"""A method of a maker's own, invented for tests: two squares joined, two such turned and joined."""

from __future__ import annotations

from sewalong.quilt.file.faults import Fault, MethodFileFaults
from sewalong.quilt.file.method_file import read_method

OWN = """\
# Invented for tests.
id = "turned-twos"
name = "Turned twos"
about = "Two squares make a two-patch; two of those, one turned, make a unit."

[[piles]]
id = "square"
noun = ["square", "squares"]
start = true

[[piles]]
id = "two"
noun = ["two-patch", "two-patches"]

[[piles]]
id = "four"
noun = ["unpressed four", "unpressed fours"]

[[piles]]
id = "unit"
noun = ["unit", "units"]

[[stages]]
id = "sew-twos"
label = "sew twos"
station = "machine"
hazards = ["needle"]
makes = "two"
minutes = 0.5
do = "Join two squares, right sides together."
check = "edges level"
operations = ["take square", "take square", "join in a row"]

[[stages]]
id = "sew-fours"
label = "sew fours"
station = "machine"
hazards = ["needle", "pins"]
makes = "four"
counts = "unit"
minutes = 0.75
do = "Turn one of two two-patches round and join them, seams nested."
check = "seams meet in the middle"
operations = ["take two", "take two", "turn last half way", "join in a column"]

[[stages]]
id = "press"
label = "press"
station = "iron"
hazards = ["iron"]
makes = "unit"
minutes = 0.5
do = "Press the last seam to one side, up and down."
check = "flat, no tuck"
operations = ["take four"]
"""


def line_of(text: str, part: str) -> int:
    """The line that `part`, which stands in `text` once, begins on."""
    assert text.count(part) == 1, f"{part!r} stands {text.count(part)} times there"
    return text[: text.index(part)].count("\n") + 1


def changed(text: str, old: str, new: str) -> str:
    """`text` with `new` for `old`, which stands in it once."""
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times there"
    return text.replace(old, new)


def method_faults(text: str) -> tuple[Fault, ...]:
    """Every fault of a method file; none when it is right."""
    try:
        read_method("own.toml", text)
    except MethodFileFaults as error:
        return error.faults
    return ()
