"""The wall drawn in cells, one place of it in hand; of a change only the lines it touches."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from itertools import groupby

from msgspec import Struct
from rich.segment import Segment
from rich.style import Style
from textual.geometry import Region
from textual.message import Message
from textual.strip import Strip
from textual.widget import Widget

from sewalong.fabrics.colours import Colour
from sewalong.screens.widgets.colour_block import shows_colours, texture
from sewalong.service.wall.drawn import Hung
from sewalong.wall.cells.picture import Cells, WallPicture, step
from sewalong.wall.cells.sections import Room
from sewalong.wall.cells.words import part_words
from sewalong.wall.keys import Key
from sewalong.wall.laying.laying import Put
from sewalong.wall.palette import colour_of
from sewalong.wall.picture import Picture
from sewalong.wall.textures import textures

RULER = 5
"""Columns before a row of cells: a mark, the number of the row, whether it is sewn, and a gap."""

HERE, HELD = "[]", "()"
"""Around the place in hand, and around the one that is picked up."""

SEWN, NOTHING, IN_ROW = "=", "·", ">"

STROKE = "╱"
"""On cloth of which only light or dark was said: no colour is known, and the grey stands for that."""

LETTERS_FROM = 8
"""Cells across a unit from which on letters stand in it unasked: with fewer they hide its cloth (own
choice)."""

_Cell = tuple[str, Style | None]


class Marks(Struct, frozen=True):
    """What is marked: the place that is `held`, and a sign for each of others, by their numbers."""

    held: int | None = None
    signs: Mapping[int, str] = {}


class WallSheet(Widget):
    """Shows as much of a wall as there is room for, around the place in hand."""

    DEFAULT_CSS = "WallSheet { width: 1fr; height: 1fr; }"

    class PartChanged(Message):
        """Another part of the wall is shown, or units of another size."""

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.at = 0
        """The number of the place in hand."""
        self.zoom = 0
        """How many sizes larger than the first in which units show what they are; below 0 all units,
        or more of them, as they are seen from afar."""
        self._hung: Hung | None = None
        self._puts: list[Put | None] = []
        self._colours: Mapping[Key, Colour] = {}
        self._picture: WallPicture | None = None
        self._marks = Marks()
        self._letters_from = LETTERS_FROM
        self._strips: dict[int, Strip] = {}

    def on_mount(self) -> None:
        self.app.theme_changed_signal.subscribe(self, lambda _: self._draw_lines())

    def on_resize(self) -> None:
        self._draw_all()

    # -- what is shown -------------------------------------------------------------

    def hang(self, hung: Hung, colours: Mapping[Key, Colour], *, letters_from: int) -> None:
        """Show this wall, with letters in units so many cells across and larger. What is shown
        already costs nothing, a few places that changed little."""
        alike = hung.alike(self._hung)
        self._letters_from, letters_before = letters_from, self._letters_from
        self._colours, colours_before = colours, self._colours
        changed = [
            number
            for number, (now, then) in enumerate(zip(hung.puts, self._puts, strict=False))
            if now != then
        ]
        self._hung, self._puts = hung, list(hung.puts)
        self.at = min(self.at, len(self._puts) - 1)
        if not alike or self._picture is None:
            self._draw_all()
            return
        if colours_before is not colours or letters_before != letters_from:
            self._draw_lines()
        for number in changed:
            self._draw_lines(self._picture.lay(number, hung.puts[number]))

    def mark(self, marks: Marks) -> None:
        """Mark these places."""
        before, self._marks = self._marks, marks
        places = {n for n, sign in before.signs.items() if marks.signs.get(n) != sign}
        places |= {n for n, sign in marks.signs.items() if before.signs.get(n) != sign}
        places |= {one.held for one in (before, marks) if one.held is not None}
        self._draw_places(places)

    def take(self, number: int) -> None:
        """Take another place in hand."""
        before, self.at = self.at, number
        picture = self._picture
        if picture is None or number not in picture.cells:
            self._draw_all()
        elif number != before:
            self._draw_places((before, number))
            if not picture.grid.on_point:
                self._draw_lines(range(-1, 0))

    def walk(self, across: int, down: int) -> int:
        """Take the place beside in hand, and return its number."""
        if self._hung is not None:
            self.take(step(self._hung.grid, self.at, across, down))
        return self.at

    def closer(self, by: int) -> None:
        """Show larger units, or smaller ones."""
        room = self._room()
        least = 0 if room.far_size() is None else -1
        self.zoom = max(least, min(self.zoom + by, len(room.sizes()) - 1))
        self._draw_all()

    @property
    def part(self) -> str:
        """Which part of the wall is shown, in words, and whether its units are seen from afar; empty
        for all of it with all patches."""
        if self._picture is None or self._hung is None:
            return ""
        afar = "each unit as from afar" if self._picture.stamps is self._hung.afar else ""
        return "; ".join(filter(None, (part_words(self._picture), afar)))

    # -- drawing -------------------------------------------------------------------

    def _room(self) -> Room:
        assert self._hung is not None
        ruled = not self._hung.grid.on_point
        across, down = self.size.width - (RULER if ruled else 0), self.size.height - ruled
        return self._hung.room(max(1, across), max(1, down))

    def _draw_all(self) -> None:
        if self._hung is None or not self.size.width or not self.size.height:
            return
        room, before = self._room(), self._picture
        stamps, size = self._hung.drawn(room, self.zoom)
        part = before.part if before and before.size == size else None
        self._picture = WallPicture(self._hung.grid, stamps, room, size, self.at, part)
        self._picture.lay_all(self._puts)
        self._draw_lines()
        if before is None or (before.part, before.room) != (self._picture.part, room):
            self.post_message(self.PartChanged())

    def _draw_places(self, numbers: Collection[int]) -> None:
        for number in numbers:
            cells = self._picture.cells.get(number) if self._picture else None
            if cells is not None:
                self._draw_lines(range(cells.y, cells.y + cells.down))

    def _draw_lines(self, lines: range | None = None) -> None:
        """Draw these lines of the picture anew, the one of numbers above it being -1; all for None."""
        if lines is None:
            self._strips.clear()
            self.refresh()
            return
        for line in lines:
            self._strips.pop(line + self._above, None)
        if lines:
            self.refresh(Region(0, lines.start + self._above, self.size.width, len(lines)))

    @property
    def _above(self) -> int:
        return 0 if self._picture is None or self._picture.grid.on_point else 1

    def render_line(self, y: int) -> Strip:
        if y not in self._strips:
            self._strips[y] = self._line(y)
        return self._strips[y]

    def _line(self, y: int) -> Strip:
        picture, at = self._picture, y - self._above
        segments: list[Segment] = []
        if picture is not None and at < picture.down:
            ruled = bool(self._above)
            if at < 0:
                segments = self._numbers(picture)
            else:
                before = [self._row_number(picture, at)] if ruled else []
                segments = [*before, *self._cells(picture, at)]
        strip = Strip(segments).apply_style(self.rich_style)
        return strip.adjust_cell_length(self.size.width, self.rich_style)

    def _ink(self, variable: str, *, bold: bool = False) -> Style:
        theme = self.app.current_theme
        return Style(color=theme.variables[variable], bgcolor=str(theme.background), bold=bold)

    def _row_number(self, picture: WallPicture, line: int) -> Segment:
        assert self._hung is not None
        row, within = divmod(line * 2, picture.pitch[1])
        middle = (picture.size.high // 2 - 1) // 2 * 2
        if within != middle:
            return Segment(" " * RULER)
        number = picture.part.rows.start + row + 1
        here = self._hung.grid.places[self.at][0] == number
        sewn = SEWN if number in self._hung.sewn else " "
        text = f"{IN_ROW if here else ' '}{number:>2}{sewn}"
        return Segment(
            f"{text:<{RULER}}"[:RULER], self._ink("number" if here else "quiet", bold=here)
        )

    def _numbers(self, picture: WallPicture) -> list[Segment]:
        """The numbers of the columns, as many as there is room for; that of the place in hand in any
        case."""
        assert self._hung is not None
        here = self._hung.grid.places[self.at][1] - 1
        line: list[_Cell] = [(" ", None)] * (RULER + picture.across)
        shown = list(picture.part.columns)
        for column in (here, shown[0], shown[-1], *shown):
            first = RULER + (column - picture.part.columns.start) * picture.pitch[0]
            text = str(column + 1)
            around = line[first - 1 : first + len(text) + 1]
            is_here = column == here
            if all(sign == " " for sign, _ in around) and first + len(text) <= len(line):
                ink = self._ink("number" if is_here else "quiet", bold=is_here)
                line[first : first + len(text)] = [(sign, ink) for sign in text]
        return _segments(line)

    def _cells(self, picture: WallPicture, y: int) -> list[Segment]:
        upper, lower = picture.pixels[2 * y], picture.pixels[2 * y + 1]
        coloured = shows_colours(self.app)
        if coloured:
            line = [self._coloured(a, b) for a, b in zip(upper, lower, strict=True)]
        else:
            line = [(sign, None) for sign in self._plain(tuple(upper), tuple(lower))]
        for number, cells in picture.cells.items():
            if cells.y <= y < cells.y + cells.down:
                self._write(
                    line,
                    number,
                    cells,
                    y,
                    letters=coloured and picture.size.wide >= self._letters_from,
                )
        return _segments(line)

    def _plain(self, upper: tuple[Key | None, ...], lower: tuple[Key | None, ...]) -> str:
        """A line without colours: letters for patches, and light and dark for units from afar."""
        assert self._hung is not None
        (text,) = textures(Picture((upper, lower)))
        light, pale = self._hung.lightness, self.app.current_theme.dark
        signs = (
            texture(light[key], pale_ink=pale) if key is not None and key in light else sign
            for key, sign in zip(upper, text, strict=True)
        )
        return "".join(signs)

    def _coloured(self, upper: Key | None, lower: Key | None) -> _Cell:
        if upper == lower:
            if upper is None:
                return " ", None
            strokes = self._hung.strokes.get(upper) if self._hung else None
            ground = self._colour(upper)
            return (
                (STROKE, Style(color=strokes, bgcolor=ground))
                if strokes
                else (" ", Style(bgcolor=ground))
            )
        if upper is None:
            return "▄", Style(color=self._colour(lower))
        return "▀", Style(color=self._colour(upper), bgcolor=self._colour(lower))

    def _colour(self, key: Key | None) -> str | None:
        return None if key is None else str(colour_of(key, self._colours))

    def _write(
        self, line: list[_Cell], number: int, cells: Cells, y: int, *, letters: bool
    ) -> None:
        """What stands on a place: letters, a sign, and the marks around the one in hand."""
        assert self._picture is not None
        middle = cells.middle
        if letters:
            ink = self._ink("quiet")
            for x, down, text in self._picture.letters.get(number, ()):
                if cells.y + down == y:
                    first = cells.x + x
                    line[first : first + len(text)] = [(sign, ink) for sign in text]
        if self._puts[number] is None and y == middle[1]:
            line[middle[0]] = (NOTHING, self._ink("quiet"))
        marked = self._ink("number", bold=True)
        if (sign := self._marks.signs.get(number)) is not None:
            x, down = middle if self._above == 0 else (cells.x, cells.y)
            if down == y:
                line[x] = (sign, marked)
        around = HERE if number == self.at else HELD if number == self._marks.held else ""
        if around and y == middle[1]:
            line[cells.x] = (around[0], marked)
            line[cells.x + cells.across - 1] = (around[1], marked)


def _segments(line: Sequence[_Cell]) -> list[Segment]:
    """Cells of one look are one segment."""
    return [
        Segment("".join(sign for sign, _ in cells), style)
        for style, cells in groupby(line, key=lambda cell: cell[1])
    ]
