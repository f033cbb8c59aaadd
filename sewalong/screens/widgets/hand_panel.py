"""The stage in hand: its name, the number to go, its picture, what it takes and makes, the tip."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical

from sewalong.progress.joining.current_stage import InHand
from sewalong.progress.plan.plan import Plan, out_of
from sewalong.screens.widgets.big_number import NUMBER_LINES, BigNumber
from sewalong.screens.widgets.keys import Key, cap_of
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.picture_view import PictureView


class HandPanel(Vertical):
    """Shows one stage and is told which; the picture is given to it apart. It names `keys`."""

    def __init__(
        self, hand: InHand, now: Plan, do: str, keys: tuple[Key, ...], *, scale: int, id: str
    ) -> None:
        super().__init__(id=id)
        self._keys = keys
        self._texts = self._said(hand, now, do)
        self._number = BigNumber(hand.line.to_do, scale, id="number")

    def compose(self) -> ComposeResult:
        yield Words(self._texts["stage"], id="stage")
        with Horizontal(id="head"):
            yield self._number
            yield PictureView(id="picture")
        for name in ("noun", "flow", "do", "check"):
            yield Words(self._texts[name], id=name)

    def show(self, hand: InHand, now: Plan, do: str, *, scale: int) -> None:
        """Draw the stage in hand; at `scale` 2 the number is twice as large.

        `do` says what to do there, with the sizes of the quilt.
        """
        self._number.number, self._number.scale = hand.line.to_do, scale
        for name, text in self._said(hand, now, do).items():
            self.query_one(f"#{name}", Words).say(text)

    def _said(self, hand: InHand, now: Plan, do: str) -> dict[str, str]:
        """What each of its lines says, by the line's id."""
        stage, other = hand.line.stage, f"Press {cap_of('stage', self._keys)} for another"
        done = f"Press {cap_of('aside', self._keys)} to mark the quilt done."
        return {
            "stage": f"{stage.label.upper()}  at the {stage.station.value}",
            "noun": f"Every stage is done. {done}" if now.complete else _noun(hand, other),
            "flow": _flow(hand, other),
            "do": do,
            "check": f"Check: {stage.check}",
        }


def picture_room(scale: int) -> tuple[int, int]:
    """Columns and lines for the picture beside a number of this scale: as high as it is."""
    return 2 * NUMBER_LINES * scale, NUMBER_LINES * scale


def _noun(hand: InHand, other: str) -> str:
    line = hand.line
    noun = line.stage.counts.of(line.to_do)
    if line.to_do == 0:
        return f"{noun} to go: this stage is done. {other}."
    return f"{noun} to go   {out_of(line.done, line.needed, 'done')}"


def _flow(hand: InHand, other: str) -> str:
    line = hand.line
    if not hand.makes:
        ready = "The top is ready for it."
        return ready if line.ready else f"The top is not ready yet. {other} stage."
    takes = f"Takes {hand.takes}, makes {hand.makes}."
    if line.from_cloth:
        return f"Cut from {hand.takes}, makes {hand.makes}."
    verb = "waits" if line.waiting == 1 else "wait"
    if line.to_do and not line.ready:
        few = f"{line.waiting} {verb}, too few" if line.waiting else "None wait"
        return f"{takes}\n{few}. {other} stage."
    waiting = f"{line.waiting_noun.count(line.waiting)} {verb}"
    return f"{takes}\n{waiting.capitalize()}."
