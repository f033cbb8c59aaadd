"""What meets what? The sets she accepted, one at a time: looked at, swapped, laid otherwise."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.acts.sets import LayOwn, MarkSet, TakeUp
from sewalong.progress.record.refused import Refused
from sewalong.progress.sets.finding import sets_with
from sewalong.progress.sets.read_squares import squares_typed
from sewalong.progress.sets.swapping import OVER, Square
from sewalong.progress.sets.where_words import found_words
from sewalong.screens.cloth.sets_look import SetsLook, looking_keys, turning_keys
from sewalong.screens.over_sewing import undoing_keys
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import Field, FormDialog, LinesDialog
from sewalong.screens.widgets.keys import Key, help_at, keys_with
from sewalong.service.set_looks import (
    SetPage,
    all_laid,
    first_page,
    hold_back,
    lock,
    page,
    pages,
    swap,
    what_a_swap_does,
    why_no_sets,
)
from sewalong.wall.set_picture import Squares

KEYS = (
    *turning_keys("sets"),
    Key("sets.swap", "w", "swap", "swap", "Mark a square; at another, change the two.", True,
        words="exchange change trade two squares move"),
    Key("sets.skip", "k", "mark('skipped')", "skip", "Put this set behind all others.", True,
        words="later last not now"),
    Key("sets.own", "o", "own", "my own", "Lay this set of squares you choose.", True,
        words="lay choose type write"),
    Key("sets.anew", "r", "anew", "the rest anew",
        "Propose all sets anew that are not begun, locked or held back.", True,
        words="propose again another rule shuffle"),
    *looking_keys("sets"),
    Key("sets.find", "f", "find", "find", "Which set has these fabrics, and where it is.", True,
        words="lost which where search look for"),
    Key("sets.hold", "b", "hold", "hold back", "Hold this set back, or let it in again.", False,
        words="keep away not sew out"),
    Key("sets.take_up", "t", "take_up", "in hand",
        "This is the set in hand at the stage in hand, where the order was lost.", False,
        words="lost order take up this one"),
    Key("sets.lock", "l", "lock", "lock", "Keep this set when the rest is proposed anew; again: no "
        "longer.", False, words="keep fix stay"),
    *undoing_keys("sets"),
    Key("sets.leave", "escape", "leave", "back", "Let go of a marked square; else back to sewing.",
        True, ("full_stop",), "quit sew"),
    help_at("sets"),
)  # fmt: skip

NO_FABRICS = (
    "There are no fabrics yet to make sets of, and none need be: counting goes on without.",
    "{press} at the sewing screen and say which there are, such as lights 60, darks 60.",
)


class SetsScreen(SetsLook):
    """Every change is an act of its own, and undone like any."""

    BINDINGS = [*(key.binding() for key in KEYS)]
    offered = KEYS

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._number = first_page(self.quilt.state, desk.outcome.hand.line.stage.id)
        self._marked: Square | None = None

    def _page(self) -> SetPage | None:
        state = self.quilt.state
        if self._number not in pages(state):
            self._number = pages(state)[0]
        return page(state, self._number)

    def _all_sets(self) -> Sequence[Squares]:
        return [tuple(laid) for laid in all_laid(self.quilt.state)]

    def _mark(self, square: Square) -> str:
        return "* " if square == self._marked and square.number != OVER else ""

    async def show_anew(self) -> None:
        """The same set as it is now; a square marked is let go."""
        self._marked = None
        self.show()

    # -- looking ---------------------------------------------------------------

    def action_turn(self, step: int) -> None:
        """Go to another set, round and round; last comes what is over."""
        numbers = pages(self.quilt.state)
        self._go_to(numbers[(numbers.index(self._number) + step) % len(numbers)])

    def _go_to(self, number: int) -> None:
        self._number = number
        self.show()
        self.moved()

    def moved(self) -> None:
        """With a square marked, say what changing it for the one in hand does."""
        if self._marked is None:
            self.tell("")
        elif self.square is None or self.square == self._marked:
            self._say_marked(self._marked)
        else:
            self.tell(self._what_a_swap_does(self._marked, self.square))

    def _what_a_swap_does(self, one: Square, other: Square) -> str:
        try:
            does = what_a_swap_does(self.quilt.state, one, other)
        except Refused as refused:
            return str(refused)
        return f"{' '.join(does)} w changes them."

    def action_find(self) -> None:
        """Which set has these fabrics, and where it is."""
        self.ask_in_turn(self._find())

    async def _find(self) -> None:
        said: list[str] = []
        found: list[int] = []

        def look(values: dict[str, str]) -> str | None:
            state = self.quilt.state
            letters = squares_typed(state.quilt, values["fabrics"])
            said[:] = found_words(state, letters)
            found[:] = [one.laid.number for one in sets_with(state, letters)]
            return None

        line = (Field("fabrics", "Fabrics, by letter or name", prose=True),)
        hint = "Such as: rust dots, navy. Two that lie together find a lost set."
        dialog = FormDialog("Which set has these?", line, look, hint, words_ahead=True)
        if await self.app.push_screen_wait(dialog):
            await self.app.push_screen_wait(LinesDialog("Which set has these?", said))
            if found:
                self._go_to(found[0])

    # -- changing --------------------------------------------------------------

    def action_swap(self) -> None:
        """Mark the square in hand, or change it for the marked one."""
        here, marked = self.square, self._marked
        if here is None:
            self.tell("There is no square to mark.", refused=True)
        elif marked is None or here == marked:
            self._marked = here if marked is None else None
            self.show()
            self._say_marked(self._marked)
        else:
            self.carry_out(lambda: swap(self.quilt.state, marked, here))

    def _say_marked(self, square: Square | None) -> None:
        if square is None:
            self.tell("No square is marked any more.")
            return
        of = f"of set {square.number}" if square.number != OVER else "of those over"
        self.tell(
            f"Marked: {square.letter} {of}. Go to another square, in any set; w changes them."
        )

    def action_mark(self, mark: str) -> None:
        """Put this set behind all others."""
        if self._is_a_set():
            self.carry_out(lambda: MarkSet(self._number, "skipped"))

    def action_hold(self) -> None:
        """Hold this set back, or let it in again."""
        if self._is_a_set():
            self.carry_out(lambda: hold_back(self.quilt.state, self._number))

    def action_lock(self) -> None:
        """Lock this set, or unlock it."""
        if self._is_a_set():
            self.carry_out(lambda: lock(self.quilt.state, self._number))

    def action_take_up(self) -> None:
        """This set is the one in hand at the stage in hand."""
        if self._is_a_set():
            stage = self._desk.outcome.hand.line.stage.id
            self.carry_out(lambda: TakeUp(stage, self._number))

    def action_own(self) -> None:
        """Lay this set of squares she chooses."""
        if self._is_a_set():
            self.ask_in_turn(self._own())

    async def _own(self) -> None:
        number, state = self._number, self.quilt.state
        squares = state.sets.sets[number].squares

        def lay(values: dict[str, str]) -> str | None:
            laid = squares_typed(state.quilt, values["squares"])
            return self._desk.attempt(LayOwn(number, laid))

        line = (
            Field("squares", "Letters or names, in their order", ", ".join(squares), prose=True),
        )
        rows = ", then ".join(row.title for row in page(state, number).rows)
        hint = f"{len(squares)} squares: {rows}. Such as: A, rust dots, 2 x navy."
        dialog = FormDialog(f"Set {number}, your own", line, lay, hint)
        if await self.app.push_screen_wait(dialog):
            await self.done()

    def action_anew(self) -> None:
        """Propose anew all that are not begun, locked or held back."""
        self.ask_in_turn(self._anew())

    async def _anew(self) -> None:
        from sewalong.screens.cloth.proposing import ProposingScreen

        if await self.app.push_screen_wait(ProposingScreen(self._desk)):
            await self.done()

    def _is_a_set(self) -> bool:
        if self._number == OVER:
            self.tell("These are in no set. Go to a set first.", refused=True)
        return self._number != OVER

    def action_leave(self) -> None:
        """Let go of a marked square; else back to sewing."""
        if self._marked is not None:
            self._marked = None
            self.show()
            self._say_marked(None)
            return
        self.dismiss(True)


async def sets(desk: Desk) -> None:
    """The sets, proposed first where none are accepted. Loaded only when asked for."""
    state = desk.quilt.state
    why = why_no_sets(state)
    if why or not state.quilt.counted_fabrics:
        keys = keys_with(desk.quilt.preferences.keys)
        press = next((f"Press {key.cap}" for key in keys if key.id == "sew.fabrics"), "Go on")
        lines = (why,) if why else [line.format(press=press) for line in NO_FABRICS]
        await desk.app.push_screen_wait(LinesDialog("Sets of squares", lines))
        return
    if not state.sets.sets:
        from sewalong.screens.cloth.proposing import ProposingScreen

        if not await desk.app.push_screen_wait(ProposingScreen(desk)):
            return
    await desk.app.push_screen_wait(SetsScreen(desk))
