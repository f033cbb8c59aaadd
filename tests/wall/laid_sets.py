"""An invented quilt with fabrics and sets, for the tests of their pictures."""

from __future__ import annotations

from msgspec.structs import replace

from sewalong.quilt.choices import Fabric
from sewalong.quilt.letters import letter
from sewalong.quilt.quilt import Quilt
from sewalong.wall.set_picture import Squares
from tests.progress.building import a_quilt


def colour(number: int) -> str:
    """A colour no other fabric has."""
    return f"#{(97 * number + 40) % 256:02x}{(53 * number + 90) % 256:02x}{(5 * number) % 256:02x}"


FABRICS = tuple(
    Fabric(letter(n), f"cloth {n}", colour=colour(n), squares=12, kind="solid") for n in range(30)
)


def a_set(number: int, places: int) -> Squares:
    """Fabrics of one set, none of them twice."""
    return tuple(FABRICS[(places * number + n) % len(FABRICS)].letter for n in range(places))


def a_quilt_with_fabrics(
    method: str = "stacked-four-patch", rows: int = 3, columns: int = 4, borders: int = 0
) -> Quilt:
    """A quilt of 40 squares and 30 fabrics."""
    return replace(a_quilt(method, 40, rows, columns, borders=borders), fabrics=FABRICS)
