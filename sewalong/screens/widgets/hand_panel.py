"""The stage in hand: its name, the number to go, its picture, what waits, what to do and check."""

from __future__ import annotations

from msgspec import Struct
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.strip import Strip

from sewalong.progress.joining.current_stage import InHand
from sewalong.progress.plan.plan import out_of
from sewalong.screens.widgets.big_number import BigText
from sewalong.screens.widgets.hand_words import HandWords, facts_fitted, fitted
from sewalong.screens.widgets.keys import Key, cap_of
from sewalong.screens.widgets.lines_view import LinesView
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.screens.widgets.sewing_layout import SewingLayout


class Saying(Struct, frozen=True):
    """What is said of a stage beside what its plan says: see `HandWords`."""

    do: str
    which: str = ""
    ruler: str = ""
    then: str = ""


class Shown(Struct, frozen=True):
    """The stage in hand and how it is laid out; of a quilt that `is_done` the `facts`, one each."""

    hand: InHand
    saying: Saying
    layout: SewingLayout
    is_done: bool = False
    facts: tuple[str, ...] = ()


class HandText(LinesView):
    """The texts below the number, fitted into whatever room there is: those of a stage, or the
    facts of a quilt that is done."""

    def __init__(self, words: HandWords | tuple[str, ...], caption_at: int, *, id: str) -> None:
        super().__init__(id=id)
        self._words = words
        self._caption_at = caption_at
        self._fitted_to = (0, 0)

    def show(self, words: HandWords | tuple[str, ...], caption_at: int) -> None:
        """Show these words; a caption stands from column `caption_at`."""
        if (words, caption_at) == (self._words, self._caption_at):
            return
        self._words, self._caption_at = words, caption_at
        if self._fitted_to == self.size:
            self.show_lines(self._fitted())
        else:
            # Not on the screen now: fitted when it is drawn next, whatever its room then.
            self._fitted_to = (0, 0)

    def render_line(self, y: int) -> Strip:
        if self._fitted_to != self.size:
            self._fitted_to = (self.size.width, self.size.height)
            self._lines = self._fitted()
        return super().render_line(y)

    def _fitted(self) -> list[Content]:
        if isinstance(self._words, HandWords):
            return fitted(self._words, *self.size, self._caption_at)
        return facts_fitted(self._words, *self.size)


class HandPanel(Vertical):
    """Shows one stage and is told which; the picture is given to it apart. It names `keys`."""

    def __init__(self, keys: tuple[Key, ...], shown: Shown, *, id: str) -> None:
        super().__init__(id=id)
        self._keys = keys
        self._first = shown

    def compose(self) -> ComposeResult:
        shown = self._first
        yield Words(stage_name(shown), id="stage")
        with Horizontal(id="head"):
            yield BigText(str(shown.hand.line.to_do), shown.layout.dot, id="number")
            yield PictureView(id="picture")
        yield HandText(self._words(shown, ""), shown.layout.caption_at, id="texts")

    def show(self, shown: Shown, caption: str) -> None:
        """Draw the stage in hand, or the quilt that is done; `caption` says what the picture shows."""
        self.query_one("#stage", Words).say(stage_name(shown))
        # As high as it is laid out, whichever picture stands in it.
        layout = shown.layout
        room = layout.whole_picture if shown.is_done else layout.picture
        self.query_one("#head").styles.height = room[1]
        number = self.query_one("#number", BigText)
        number.display = not shown.is_done
        number.show(str(shown.hand.line.to_do), shown.layout.dot, room=shown.layout.number)
        self.query_one(HandText).show(self._words(shown, caption), shown.layout.caption_at)

    def _words(self, shown: Shown, caption: str) -> HandWords | tuple[str, ...]:
        return shown.facts if shown.is_done else words_of(shown, self._keys, caption)


def words_of(shown: Shown, keys: tuple[Key, ...], caption: str = "") -> HandWords:
    """All that is said of the stage in hand; `keys` are named in it."""
    hand, saying = shown.hand, shown.saying
    other = f"Press {cap_of('stage', keys)} for another"
    return HandWords(
        noun=_noun(hand, other),
        caption=caption,
        waits=_waits(hand, other),
        place=hand.where,
        flow=_flow(hand),
        which=saying.which,
        do=saying.do,
        ruler=f"Ruler: {saying.ruler}." if saying.ruler else "",
        check=f"Check: {hand.line.stage.check}",
        then=saying.then,
        more=f"{cap_of('about', keys)}: all of it",
    )


def stage_name(shown: Shown) -> str:
    """ "CUT TWICE  at the cutting mat", and of a quilt that is done that it is."""
    if shown.is_done:
        return "DONE"
    stage = shown.hand.line.stage
    return f"{stage.label.upper()}  at the {stage.station.value}"


def _noun(hand: InHand, other: str) -> str:
    line = hand.line
    noun = line.stage.counts.of(line.to_do)
    if line.to_do == 0:
        return f"{noun} to go: this stage is done. {other}."
    return f"{noun} to go   {out_of(line.done, line.needed, 'done')}"


def _flow(hand: InHand) -> str:
    if not hand.makes:
        return "The top is ready for it." if hand.line.to_do and hand.line.ready else ""
    verb = "Cut from" if hand.line.from_cloth else "Takes"
    return f"{verb} {hand.takes}, makes {hand.makes}."


def _waits(hand: InHand, other: str) -> str:
    """What waits for the stage, without the stop at its end; empty for what is cut from cloth."""
    line = hand.line
    if not hand.makes:
        not_ready = line.to_do and not line.ready
        return f"The top is not ready yet. {other} stage" if not_ready else ""
    if line.from_cloth:
        return ""
    verb = "waits" if line.waiting == 1 else "wait"
    if line.to_do and not line.ready:
        few = f"{line.waiting} {verb}, too few" if line.waiting else "None wait"
        return f"{few}. {other} stage"
    return f"{line.waiting_noun.count(line.waiting).capitalize()} {verb}"
