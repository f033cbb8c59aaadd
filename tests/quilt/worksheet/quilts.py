"""Quilts to work numbers out for, as a file says them."""

from __future__ import annotations

from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.quilt import Quilt

# Common practice: 168 five-inch squares, stacked four-patches, nine by nine, two borders.
COMMON = """\
name = "Harbour lights"
method = "stacked-four-patch"

[squares]
size = "5"
packs = 4
in_a_pack = 42

[layout]
rows = 9
columns = 9

[[border]]
cut = "2 1/2"
cloth = "cream linen"

[[border]]
cut = "5"
cloth = "indigo print"

[finishing]
stages = ["layer", "quilt", "bind"]
"""


def common(more: str = "") -> Quilt:
    """The quilt of common practice, with `more` at the end of its file."""
    return read_quilt(COMMON + more)


def plain(method: str, squares: str, rows: int = 4, columns: int = 4, more: str = "") -> Quilt:
    """A quilt of `method` with no borders; `squares` is what it begins with, as TOML."""
    return read_quilt(
        f'name = "Test"\nmethod = "{method}"\n{squares}\n'
        f"[layout]\nrows = {rows}\ncolumns = {columns}\n{more}"
    )
