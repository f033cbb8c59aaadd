"""How much? Sizes, cloth, cut list, shopping, thread, and the layouts that would fit."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.style import Style
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from sewalong.progress.acts.act import Act
from sewalong.progress.acts.steering import ChangeTarget
from sewalong.progress.plan.plan import can_be_wanted, plan
from sewalong.progress.record.events.standing import must_be_in_progress
from sewalong.progress.record.refused import Refused
from sewalong.progress.record.state import Standing
from sewalong.quilt.worksheet.line import CANNOT_BE_HAD
from sewalong.quilt.worksheet.worksheet import LayoutLine, Section, Worksheet, worksheet
from sewalong.screens.following import FollowingScreen
from sewalong.screens.prompts.desk import Desk
from sewalong.screens.prompts.dialogs import LinesDialog
from sewalong.screens.widgets.breakpoints import is_narrow, mark_size
from sewalong.screens.widgets.keys import Key, help_at, keys_with, line_of
from sewalong.screens.widgets.lined_up import lined_up
from sewalong.screens.widgets.literal_text import Words
from sewalong.screens.widgets.picture_view import PictureView
from sewalong.screens.widgets.reasoned import ReasonedPage, ReasonedRow
from sewalong.service.open_quilt import OpenQuilt
from sewalong.wall.of_quilt import own_colours, picture_of_top

LAYOUTS = "layouts"
PAGES = {
    "sizes": "sizes",
    "rows": "row by row",
    "cloth": "cloth",
    "cut-list": "cut list",
    "shopping": "shopping",
    "thread": "thread",
    LAYOUTS: "layouts",
}
"""What each section is called in the line of pages; the top in colour comes after them."""

THE_TOP = "the top"
BESIDE = 120
"""Columns from which the top is drawn beside every page, not only on its own."""

KEYS = (
    *(
        Key(f"numbers.page{n}", str(n), f"page({n})", name, f"Turn to {name}.", words="page")
        for n, name in enumerate((*PAGES.values(), THE_TOP), 1)
    ),
    Key("numbers.next", "right", "turn(1)", "next page", "The next page.", True, ("tab",)),
    Key(
        "numbers.before",
        "left",
        "turn(-1)",
        "page before",
        "The page before.",
        False,
        ("shift+tab",),
    ),
    Key(
        "numbers.why",
        "enter",
        "why",
        "why",
        "What the marked number comes from.",
        True,
        words="reason explain how rounded",
    ),
    Key(
        "numbers.plan",
        "c",
        "change_plan",
        "change the plan",
        "Change the plan by the questions a quilt begins with.",
        True,
        words="alter edit other size borders seam squares layout rename",
    ),
    Key("numbers.leave", "escape", "leave", "back", "Back to sewing.", True, ("h",), "quit sew"),
    help_at("numbers"),
)

NO_BREAK = "\N{NO-BREAK SPACE}"

Attempt = Callable[[Act], str | None]
"""Carries an act out, or says why not."""


class WorksheetScreen(FollowingScreen[None]):
    """One section at a time. `attempt` changes the target or the plan, or says why it can't be."""

    CSS_PATH = ["lists.tcss", "facts.tcss", "reasoned.tcss", "worksheet.tcss"]
    BINDINGS = [
        *(key.binding() for key in KEYS),
    ]

    def __init__(self, quilt: OpenQuilt, attempt: Attempt) -> None:
        super().__init__(quilt)
        self._attempt = attempt
        self._page = 0
        self.keys = keys_with(quilt.preferences.keys, KEYS)
        self._numbers = self._worked_out()

    def _worked_out(self) -> Worksheet:
        state = self.quilt.state
        now = plan(state)
        pieces = () if now.shortfall is None else now.shortfall.pieces
        short = {one.pile: one.count for one in pieces}
        return worksheet(state.quilt, state.target, have=now.units.possible, short=short)

    @property
    def layouts(self) -> tuple[LayoutLine, ...]:
        """The layouts that can be taken as the target, and the one that is."""
        state = self.quilt.state
        under_way = state.standing is Standing.IN_PROGRESS
        return tuple(
            one
            for one in self._numbers.layouts
            if one.current or (under_way and can_be_wanted(state, one.target))
        )

    def compose(self) -> ComposeResult:
        with Horizontal(id="top"):
            yield Words(self.quilt.state.quilt.name, id="top-name")
            yield Words("how much?", id="top-clock")
        yield Words(id="pages")
        yield Words(id="section-title")
        with Horizontal(id="numbers"):
            yield ReasonedPage(id="lines")
            yield OptionList(id="layouts")
            yield PictureView(id="top-picture")
        yield Words(id="message")
        yield Words(id="keys")

    async def on_mount(self) -> None:
        await self._show()
        self.follow()

    async def show_anew(self) -> None:
        """The same page with the numbers as they are now."""
        self._numbers = self._worked_out()
        self.query_one("#top-name", Words).say(self.quilt.state.quilt.name)
        await self._show(keep=True)

    def on_resize(self) -> None:
        mark_size(self)
        self.query_one("#keys", Words).say(line_of(self.app.size.width - 4, self.keys))
        self._show_picture()

    async def _show(self, *, keep: bool = False) -> None:
        sections = self._numbers.sections
        self.query_one("#pages", Words).say(_pages(sections, self._page))
        section = sections[self._page] if self._page < len(sections) else None
        title = section.title if section else f"The top, {self.quilt.state.target}"
        self.query_one("#section-title", Words).say(title)
        choosing = section is not None and section.id == LAYOUTS and bool(self._numbers.layouts)
        layouts = self.query_one("#layouts", OptionList)
        layouts.display = choosing
        self.query_one("#lines").display = section is not None and not choosing
        if choosing:
            self._fill_layouts(layouts)
        elif section is not None:
            await self._fill_lines(section, keep=keep)
        self._show_picture()

    async def _fill_lines(self, section: Section, *, keep: bool) -> None:
        lines = self.query_one("#lines", ReasonedPage)
        await lines.put(_rows(section, narrow=is_narrow(self)), keep=keep)
        lines.focus()

    def _fill_layouts(self, layouts: OptionList) -> None:
        layouts.clear_options()
        for line in _layout_lines(self.layouts, self.quilt):
            layouts.add_option(Option(Content(line)))
        layouts.highlighted = 0
        layouts.focus()
        hidden = len(self._numbers.layouts) - len(self.layouts)
        others = f" {hidden} more would contradict what is sewn." if hidden else ""
        said = f"Enter makes the marked layout the target.{others}"
        self.query_one("#message", Words).say(said)

    def _show_picture(self) -> None:
        view = self.query_one("#top-picture", PictureView)
        own_page = self._page == len(self._numbers.sections)
        width, height = self.app.size
        view.display = own_page or width >= BESIDE
        if view.display:
            state = self.quilt.state
            room = (width - 6 if own_page else width // 3, height - 8)
            picture = picture_of_top(state.quilt, state.target, *room)
            view.show(picture, own_colours(state.quilt))
            if own_page:
                part = "; part of it is shown" if picture and not picture.is_whole else ""
                self.query_one("#section-title", Words).say(f"The top, {state.target}{part}")

    async def action_page(self, number: int) -> None:
        """Go to a page by its number."""
        self._page = min(number, len(self._numbers.sections) + 1) - 1
        self.query_one("#message", Words).say("")
        await self._show()

    async def action_turn(self, step: int) -> None:
        """Go to the next page, or the one before."""
        await self.action_page((self._page + step) % (len(self._numbers.sections) + 1) + 1)

    async def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Make the layout the target; a refusal says why and changes nothing."""
        event.stop()
        layout = self.layouts[event.option_index]
        if layout.current:
            self.query_one("#message", Words).say(f"{layout.target} is the target.")
            return
        target = layout.target
        refusal = self._attempt(ChangeTarget(target.rows, target.columns))
        if refusal is None:
            await self.bring_up_to_date()
        said = f"Not done: {refusal}" if refusal else f"The target is now {layout.target}."
        self.query_one("#message", Words).say(said)

    def action_why(self) -> None:
        """What the marked number comes from."""
        page = self.query_one("#lines", ReasonedPage)
        if page.display:
            page.ask()

    def on_reasoned_page_asked(self, event: ReasonedPage.Asked) -> None:
        """The reasons behind a number, in a dialog."""
        event.stop()
        if event.row.why:
            self.app.push_screen(LinesDialog(event.row.of, event.row.why))
        else:
            self.query_one("#message", Words).say("Nothing more stands behind this one.")

    def action_change_plan(self) -> None:
        """Change the plan by the questions a quilt begins with."""
        # Loaded only for whoever changes one.
        from sewalong.screens.change_plan import ChangePlanScreen

        try:
            must_be_in_progress(self.quilt.state)
            screen = ChangePlanScreen(self.quilt, self._attempt)
        except (Refused, *CANNOT_BE_HAD) as refusal:
            self.query_one("#message", Words).say(str(refusal))
            return
        self.app.push_screen(screen, self._plan_changed)

    async def _plan_changed(self, changed: bool | None) -> None:
        if changed:
            await self.bring_up_to_date()
            self.query_one("#message", Words).say("The plan is changed. Undo takes it back.")

    def action_leave(self) -> None:
        """Back to sewing."""
        self.dismiss(None)


def _pages(sections: tuple[Section, ...], page: int) -> Content:
    names = [*(PAGES.get(section.id, section.title) for section in sections), THE_TOP]
    parts: list[Content] = []
    for place, name in enumerate(names):
        style = "bold $number underline" if place == page else "$quiet"
        text = f"{place + 1} {name}".replace(" ", NO_BREAK)
        turns = Style.from_meta({"@click": f"screen.page({place + 1})"})
        parts += [Content.styled(text, style).stylize(turns), Content("  ")]
    return Content.assemble(*parts)


def _layout_lines(layouts: Sequence[LayoutLine], quilt: OpenQuilt) -> Iterator[str]:
    """Rows and columns, what the top finishes at, and what is over or short."""
    sizes = lined_up([layout.size.show(quilt.state.quilt.unit) for layout in layouts])
    widest = max(map(len, sizes), default=0)
    for layout, size in zip(layouts, sizes, strict=True):
        mark = "> now" if layout.current else "     "
        over = f"{layout.spare:>4} spare" if layout.spare else ""
        lacking = f"{layout.short:>4} short" if layout.short else ""
        target = f"{layout.target.rows:>2} × {layout.target.columns:<2}"
        yield f"{mark} {target}   {size:<{widest}} {over}{lacking}".rstrip()


def _rows(section: Section, *, narrow: bool) -> list[ReasonedRow]:
    """Numbers below one another, where a line has room for one whole."""
    numbers = [line.number for line in section.lines]
    shown = numbers if narrow else lined_up(numbers)
    return [
        ReasonedRow(
            Words(line.label, classes="number-label"),
            Words(number, classes="fact-text"),
            of=f"{line.label[:1].upper()}{line.label[1:]}: {line.number}",
            why=line.why,
        )
        for line, number in zip(section.lines, shown, strict=True)
    ]


async def how_much(desk: Desk) -> None:
    """The numbers of the quilt. They are worked out only when asked for."""
    await desk.app.push_screen_wait(WorksheetScreen(desk.quilt, desk.attempt))
