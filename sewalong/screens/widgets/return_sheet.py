"""What a person coming back needs, on a screen of its own and over the sewing screen."""

from __future__ import annotations

from collections.abc import Iterator

from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.widget import Widget

from sewalong.progress.resuming.coming_back import AT_MOST, ComingBack, Facts
from sewalong.progress.resuming.concerns import Concern, Kind
from sewalong.screens.widgets.breakpoints import is_narrow, is_roomy
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.picture_view import PictureView

USUAL, LITTLE = (10, 5), (8, 4)
"""Columns and lines for the picture beside the first lines, by the room there is."""

BESIDE, BESIDES = 76, 5
"""Columns for the words beside a large picture, and lines of the screen that it leaves free."""


class Fact(Horizontal):
    """A label and a sentence."""

    def __init__(self, label: str, text: str | Content, *, classes: str = "") -> None:
        super().__init__(classes=f"fact {classes}")
        self._label = label
        self._text = text

    def compose(self) -> ComposeResult:
        yield Words(self._label, classes="fact-label")
        yield Words(self._text, classes="fact-text")


class ReturnSheet(Horizontal):
    """Shows one answer and is told which. The time left comes behind, as it takes longer to
    work out. `whole` adds the further concerns, the machine and the notes, which else are behind
    keys."""

    def __init__(self, back: ComingBack, *, whole: bool = False) -> None:
        super().__init__(classes="return-sheet")
        self._back = back
        self._whole = whole
        self.is_filled = False
        """Whether the time left was said, which comes last."""

    def compose(self) -> ComposeResult:
        back = self._back
        yield PictureView(classes="large-picture")
        with Vertical(classes="return-facts"):
            with Horizontal(classes="pick-up"):
                yield PictureView(classes="small-picture")
                with Vertical(classes="pick-up-words"):
                    yield from _pick_up(back)
            yield from _concerns(back.concerns, len(back.concerns) if self._whole else AT_MOST)
            if back.own_words:
                yield Fact("You wrote", back.own_words, classes="airy")
            if back.left:
                left = ", ".join(f"{label} {n}" for label, n in back.left)
                yield Fact("Left", left, classes="airy")
                yield Fact("", "", classes="time-left")
            if back.at_machine:
                yield from _facts(back.machine)
            yield from _piles(back)
            yield from _facts(tuple((label, " ".join(said)) for label, said in back.elsewhere))
            if self._whole:
                if not back.at_machine:
                    yield from _facts(back.machine)
                yield from _facts((("Last time", back.last_time.text), *back.notes))

    def say_time_left(self, lines: tuple[str, ...]) -> None:
        """Hours and sessions, once they are worked out."""
        self.is_filled = True
        self.call_after_refresh(self.set_apart)
        for fact in self.query(".time-left .fact-text").results(Words):
            fact.say("; ".join(lines))

    def set_apart(self) -> None:
        """Lines between the groups, where all of it has room then."""
        page = self.parent
        airy = len(self.query(".airy"))
        lines = self.size.height - (airy if self.has_class("set-apart") else 0)
        if isinstance(page, Widget):
            self.set_class(lines + airy <= page.size.height, "set-apart")

    def picture_room(self) -> tuple[PictureView, tuple[int, int]]:
        """Where the picture of the piece in hand stands, and columns and lines for it: beside all of
        it where there is room, else beside its first lines."""
        large, small = self.query(PictureView)
        roomy = is_roomy(self.screen) and not self._whole
        large.display, small.display = roomy, not roomy
        if roomy:
            width, height = self.app.size
            down = min(height - BESIDES, (width - BESIDE) // 2)
            return large, (2 * down, down)
        return small, LITTLE if is_narrow(self.screen) else USUAL


def _facts(facts: Facts) -> Iterator[Widget]:
    """A group of facts."""
    for place, one in enumerate(facts):
        yield Fact(*one, classes="" if place else "airy")


def _pick_up(back: ComingBack) -> Iterator[Words]:
    first = back.pick_up
    if first.stage:
        yield Words(f"{first.stage.upper()}  at the {first.station}", classes="pick-up-stage")
    yield Words(first.sentence, classes="pick-up-sentence")
    for text in (first.to_go, " ".join(back.begun)):
        if text:
            yield Words(text, classes="fact-line")


def _concerns(concerns: tuple[Concern, ...], most: int) -> Iterator[Widget]:
    """The worst of them, `most` at the most; how many more there are is said."""
    for place, one in enumerate(concerns[:most]):
        bold = "first" if one.kind <= Kind.AT_RISK else ""
        yield Fact(one.label, one.text, classes=f"{bold} {'' if place else 'begins'}")
    if len(concerns) > most:
        yield Fact("", f"{len(concerns) - most} more behind n, notes.")


def _piles(back: ComingBack) -> Iterator[Widget]:
    """A table: number, pile, place in her own words."""
    rows = back.other_piles
    digits = max((len(str(row.n)) for row in rows), default=0)
    widest = max((len(row.noun) for row in rows), default=0)
    if rows:
        yield Words("Also there", classes="pile-heading")
    for place, row in enumerate(rows):
        pile = Words(f"{row.n:>{digits}} {row.noun}", classes="pile")
        pile.styles.width = min(digits + widest + 3, 27)
        where = Words(
            row.place if row.place else Content.styled("nobody wrote down where", "$quiet"),
            classes="fact-text",
        )
        label = Words("" if place else "Also there", classes="fact-label")
        yield Horizontal(label, pile, where, classes=f"fact pile-row {'' if place else 'begins'}")
