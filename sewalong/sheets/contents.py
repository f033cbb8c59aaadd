"""What the sheets of a quilt say: words, numbers and one drawing, not yet on a page."""

from __future__ import annotations

from msgspec import Struct

from sewalong.progress.joining.row_cards import RowCard
from sewalong.progress.resuming.box_labels import BoxLabel
from sewalong.progress.resuming.stage_list import ListedStage
from sewalong.progress.sets.set_list import ListedSet
from sewalong.quilt.worksheet.line import Section

PARTS = ("top", "stages", "layout", "rows", "sets", "cloth", "labels")
"""What can be printed by itself, in the order in which it is bound."""


class TopOnPaper(Struct, frozen=True):
    """The top as an SVG element, and what it shows: with which fabrics, or why there is none.
    `legend` has the colour ("#rrggbb") and the name of all that shows."""

    svg: str
    words: str
    legend: tuple[tuple[str, str], ...] = ()


class LaidRow(Struct, frozen=True):
    """A row as it is laid: its tag, a line for each place in order, and its units as an SVG element,
    where the edge towards row 1 is up. `begins_first`: they are read from where the row begins."""

    label: str
    places: tuple[str, ...]
    svg: str
    begins_first: bool


class Contents(Struct, frozen=True):
    """`as_of` is the day and time of what it says, `facts` are a label and a text each, `notice`
    what is wrong with the record, empty for nothing. `layout` is empty where nothing is laid."""

    quilt: str
    as_of: str
    facts: tuple[tuple[str, str], ...]
    top: TopOnPaper
    stages: tuple[ListedStage, ...]
    layout: tuple[LaidRow, ...]
    rows: tuple[RowCard, ...]
    sets: tuple[ListedSet, ...]
    cloth: tuple[Section, ...]
    labels: tuple[BoxLabel, ...]
    notice: str = ""

    def has(self, part: str) -> bool:
        """Whether there is something to say in this one of PARTS."""
        lists = {
            "layout": self.layout,
            "rows": self.rows,
            "sets": self.sets,
            "labels": self.labels,
        }
        return part not in lists or bool(lists[part])
