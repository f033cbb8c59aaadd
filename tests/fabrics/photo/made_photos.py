"""Photographs that are made, so that the truth is known: squares on a cloth, light, camera, file."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from importlib.resources import files
from io import BytesIO

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray
from PIL import Image, ImageFilter

from sewalong.fabrics.colours import Colour, parse_colour
from sewalong.fabrics.photo.linear_light import to_light

Field = NDArray[np.float64]
Print = Callable[[Field, Field], Field]
"""The linear light, n × 3, of a square at points u, v, each 0 to 1 over the square."""


def light_of(colour: str) -> Field:
    """Linear red, green and blue of "#rrggbb"."""
    parts: Colour = parse_colour(colour)
    return np.array([to_light(part) for part in (parts.red, parts.green, parts.blue)])


def solid(colour: str) -> Print:
    light = light_of(colour)
    return lambda u, v: np.broadcast_to(light, (*u.shape, 3))


def dots(ground: str, second: str, pitch: float, share: float) -> Print:
    """Round dots every `pitch` of the square's side, covering `share` of it."""
    one, other = light_of(ground), light_of(second)
    radius = np.sqrt(share / np.pi)

    def at(u: Field, v: Field) -> Field:
        away = np.hypot(u / pitch % 1 - 0.5, v / pitch % 1 - 0.5)
        seen: Field = np.where((away < radius)[..., None], other, one)
        return seen

    return at


def real_texture(name: str) -> NDArray[np.uint8]:
    """A grey photograph that scikit-image ships: "brick", "grass" or "gravel"."""
    with files("skimage").joinpath("data", f"{name}.png").open("rb") as file:
        return np.asarray(Image.open(file).convert("L"))


def texture(grey: NDArray[np.uint8], colour: str) -> Print:
    """A real grey picture, dyed: its light times this colour's."""
    light = np.array([to_light(part) for part in range(256)])[grey]
    light = light / light.mean() * 0.6
    dye = light_of(colour)
    high, wide = grey.shape

    def at(u: Field, v: Field) -> Field:
        row = np.clip((v * high).astype(int), 0, high - 1)
        column = np.clip((u * wide).astype(int), 0, wide - 1)
        seen: Field = np.minimum(light[row, column, None] * dye, 1)
        return seen

    return at


COLOURS = [
    "#a5532f",
    "#6a6f2c",
    "#e0b14a",
    "#2f4a7c",
    "#8c3b56",
    "#f4f0e6",
    "#4f7f82",
    "#1f2a38",
    "#c7786b",
    "#7d8f69",
    "#f0e2a0",
    "#5b4a72",
    "#b03a2e",
    "#93a8cd",
    "#3d5a40",
    "#e8a7c8",
    "#6b4b3a",
    "#9c8fb0",
    "#d58936",
    "#2b2b2b",
    "#a7d9a0",
]
"""Solids of an invented pack, any two of them well apart."""


def laid(rows: int, columns: int, *prints: Print) -> list[list[Print]]:
    """So many squares in rows: these prints, then solids of `COLOURS`, each once."""
    every = [*prints, *map(solid, COLOURS)]
    return [every[row * columns : (row + 1) * columns] for row in range(rows)]


Lamp = Callable[[Field, Field], Field]
"""How light falls: its share of the usual at columns u and rows v of the grid."""


def below(row: float, slope: float = 0.0, to: float = 0.6) -> Lamp:
    """An edge of shadow: below it, slanting along the rows, this share of the light is left."""
    return lambda u, v: np.where(v > row + slope * u, to, 1.0)


def lamp_at(column: float, row: float, strength: float, width: float) -> Lamp:
    """A lamp that glares at one point, so much above the other light."""
    return lambda u, v: 1 + strength * np.exp(-((u - column) ** 2 + (v - row) ** 2) / width)


def wild_blocks(rng: np.random.Generator) -> NDArray[np.uint8]:
    """Blocks of any colours, of any size, n × 3 parts of 255: a picture of nothing at all."""
    across, down, block = (int(side) for side in rng.integers([100, 100, 1], [240, 240, 60]))
    colours = rng.integers(0, 256, (down // block + 1, across // block + 1, 3))
    if rng.random() < 0.5:
        colours = np.where(
            colours[..., :1] > rng.integers(20, 235), colours[:1, :1], colours[-1:, -1:]
        )
    return np.kron(colours, np.ones((block, block, 1)))[:down, :across].astype(np.uint8)


def wild_corners(
    rng: np.random.Generator, pixels: NDArray[np.uint8], share: float
) -> list[tuple[float, float]] | None:
    """Four corners somewhere in a picture, for this share of all; none for the others."""
    if rng.random() >= share:
        return None
    down, across = pixels.shape[:2]
    whole = np.array([(0, 0), (across, 0), (across, down), (0, down)])
    return [(float(x), float(y)) for x, y in whole * rng.uniform(0.6, 1, (4, 2))]


class Scene(Struct, frozen=True, kw_only=True):
    """Squares laid on a cloth, and how they are photographed.

    `turned` in degrees, `askew` how much narrower the far side looks, `fall_off` the share of
    light lost towards the end of each row, `noise` in parts of 255, `blur` in pixels, `jitter`
    the share of a step by which hands miss the place.
    """

    squares: Sequence[Sequence[Print]]
    ground: str = "#c9c4ba"
    size: tuple[int, int] = (1000, 860)
    side: float = 0.88
    margin: float = 0.6
    turned: float = 0.0
    askew: float = 0.0
    fall_off: float = 0.0
    lamp: Lamp | None = None
    noise: float = 0.0
    blur: float = 0.0
    jitter: float = 0.0

    def to_grid(self, x: Field, y: Field) -> tuple[Field, Field]:
        """Column and row, from 0 at the middle of the first square, of points of the picture."""
        rows, columns = len(self.squares), len(self.squares[0])
        wide, high = self.size
        step = min(
            wide / (columns + 2 * self.margin - 0.12), high / (rows + 2 * self.margin - 0.12)
        )
        u, v = (x - wide / 2) / step, (y - high / 2) / step
        far = 1 + self.askew * v / rows
        u, v = u / far, v / far
        angle = np.radians(self.turned)
        u, v = u * np.cos(angle) + v * np.sin(angle), v * np.cos(angle) - u * np.sin(angle)
        return u + (columns - 1) / 2, v + (rows - 1) / 2

    def point(self, column: float, row: float) -> tuple[float, float]:
        """Where a point of the grid is in the picture, to the pixel."""
        wide, high = self.size
        x, y = np.meshgrid(np.arange(wide) + 0.5, np.arange(high) + 0.5)
        u, v = self.to_grid(x, y)
        nearest = int(np.argmin((u - column) ** 2 + (v - row) ** 2))
        return float(x.flat[nearest]), float(y.flat[nearest])

    def corners(self) -> list[tuple[float, float]]:
        """The four corners of the squares, in the order in which they are given."""
        rows, columns = len(self.squares), len(self.squares[0])
        near, far, low = -self.side / 2, columns - 1 + self.side / 2, rows - 1 + self.side / 2
        return [self.point(*end) for end in ((near, near), (far, near), (far, low), (near, low))]

    def light(self) -> Field:
        """Linear light of each pixel, before noise: the mean of four points in it."""
        points = [(dx, dy) for dx in (0.25, 0.75) for dy in (0.25, 0.75)]
        total: Field = np.sum([self._sampled(dx, dy) for dx, dy in points], axis=0)
        return total / len(points)

    def _sampled(self, dx: float, dy: float) -> Field:
        wide, high = self.size
        u, v = self.to_grid(*np.meshgrid(np.arange(wide) + dx, np.arange(high) + dy))
        seen = np.broadcast_to(light_of(self.ground), (*u.shape, 3)).copy()
        rows, columns = len(self.squares), len(self.squares[0])
        missed = np.random.default_rng(7).uniform(-self.jitter, self.jitter, (2, rows, columns))
        column = np.clip(np.rint(u), 0, columns - 1).astype(int)
        row = np.clip(np.rint(v), 0, rows - 1).astype(int)
        across = (u - column - missed[0][row, column]) / self.side + 0.5
        along = (v - row - missed[1][row, column]) / self.side + 0.5
        inside = (across >= 0) & (across < 1) & (along >= 0) & (along < 1)
        cell = np.where(inside, row * columns + column, -1)
        for number in range(rows * columns):
            here = cell == number
            seen[here] = self.squares[number // columns][number % columns](
                across[here], along[here]
            )
        light = 1 - self.fall_off * u / max(columns - 1, 1)
        if self.lamp is not None:
            light = light * self.lamp(u, v)
        return seen * light[..., None]

    def image(self) -> Image.Image:
        """The picture that the camera takes."""
        light = np.clip(self.light(), 0, 1)
        share = np.where(light <= 0.0031308, light * 12.92, 1.055 * light ** (1 / 2.4) - 0.055)
        rng = np.random.default_rng(11)
        parts = share * 255 + rng.normal(0, self.noise, share.shape) * (self.noise > 0)
        image = Image.fromarray(np.clip(np.rint(parts), 0, 255).astype(np.uint8))
        return image.filter(ImageFilter.GaussianBlur(self.blur)) if self.blur else image

    def file(self, format: str = "PNG", **options: object) -> bytes:
        """The picture as a file."""
        return file_of(self.image(), format, **options)


def file_of(image: Image.Image, format: str = "PNG", **options: object) -> bytes:
    file = BytesIO()
    image.save(file, format, **options)
    return file.getvalue()
