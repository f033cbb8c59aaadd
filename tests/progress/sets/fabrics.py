"""A quilt with fabrics of an invented line, and sets of them."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.quilt.choices import Fabric
from sewalong.quilt.quilt import Quilt
from tests.progress.building import a_quilt

NAMES = (
    "chalk", "oat", "shell", "butter", "rust dots", "moss", "pine sprig", "navy", "plum", "coal",
    "slate", "cocoa",
)  # fmt: skip


def with_fabrics(method_id: str = "stacked-four-patch", each: int = 8, pieces: int = 96) -> Quilt:
    """A quilt of `pieces` squares, of twelve fabrics A to L with `each` squares."""
    fabrics = tuple(
        Fabric(chr(ord("A") + place), name, f"#{20 * place + 10:02x}6040", squares=each)
        for place, name in enumerate(NAMES)
    )
    return replace(a_quilt(method_id, pieces, 2, 2), fabrics=fabrics)


def sets_of(size: int, n: int) -> tuple[tuple[str, ...], ...]:
    """`n` sets of `size` squares, dealt out in turn from the twelve fabrics."""
    letters = [chr(ord("A") + place % len(NAMES)) for place in range(size * n)]
    return tuple(tuple(letters[first : first + size]) for first in range(0, size * n, size))
