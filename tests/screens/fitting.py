"""Whether all that a screen or dialog shows can be read: nothing cut off, hidden or out of reach."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from textual.containers import ScrollableContainer
from textual.screen import Screen
from textual.widget import Widget
from textual.widgets import Input, OptionList

from sewalong.screens.widgets.literal_text import Words

ROOM_TO_TYPE = 12
"""Columns that a line to fill in has at least: a length, a date or a few words can be seen."""


def faults_of(screen: Screen[Any]) -> list[str]:
    """What cannot be read on the screen in front as it is drawn now, in words; [] is well."""
    faults = [fault for widget in shown(screen) for fault in _faults(screen, widget)]
    if screen.max_scroll_y or screen.max_scroll_x:
        faults.append("the screen as a whole is larger than the terminal")
    return faults


def shown(screen: Screen[Any]) -> Iterator[Widget]:
    """Every widget that is to be seen."""
    for widget in screen.walk_children(Widget):
        if all(one.display for one in (widget, *widget.ancestors) if isinstance(one, Widget)):
            yield widget


def _faults(screen: Screen[Any], widget: Widget) -> Iterator[str]:
    if isinstance(widget, Words) and widget._said.plain.strip():
        yield from _of_words(widget)
        yield from _of_place(screen, widget, widget._said.plain)
    elif isinstance(widget, Input):
        yield from _of_place(screen, widget, f"the line {widget.id}")
        if widget.content_size.width < ROOM_TO_TYPE:
            yield f"no room to type in {widget.id}"
        if widget.has_focus and not _seen(screen, widget):
            yield f"what is typed into {widget.id} is out of sight"
    elif isinstance(widget, OptionList):
        yield from _of_options(screen, widget)
    elif isinstance(widget, ScrollableContainer) and widget.max_scroll_y:
        in_hand = list(widget.query(".here"))
        if not all(_seen(screen, one) for one in in_hand):
            yield f"what is in hand in {_name(widget)} is out of sight"
        if not (in_hand or hasattr(screen, "action_read") or _has_focus(screen, widget)):
            yield f"{_name(widget)} goes on below and no key leads there"


def _of_words(words: Words) -> Iterator[str]:
    width, height = words.content_size
    if not width:
        yield f"nothing is seen of {words._said.plain!r}"
    elif words.styles.text_overflow == "ellipsis":
        return  # a name of hers, shown to go on
    elif len(words._said.wrap(width)) > height:
        yield f"cut off below: {words._said.plain!r}"


def _of_place(screen: Screen[Any], widget: Widget, what: str) -> Iterator[str]:
    """Faults of where a text lies: beside the window it is seen through, or under a scroll bar."""
    place = screen._compositor.full_map.get(widget)
    if place is None:
        yield f"not drawn at all: {what!r}"
        return
    window = _scrolls(widget)
    if window is None:
        if not place.clip.contains_region(place.region):
            yield f"sticks out of its place: {what!r}"
        return
    seen = screen._compositor.full_map[window].region
    bar = window.scrollbar_size_vertical if window.show_vertical_scrollbar else 0
    if place.region.x < seen.x or place.region.right > seen.right - bar:
        yield f"cut off at the side or under the scroll bar: {what!r}"
    at_once = widget.styles.dock != "none" or widget.has_class("dialog-refusal")
    if at_once and not place.clip.intersection(seen).contains_region(place.region):
        yield f"has to be seen at once and is not: {what!r}"


def _of_options(screen: Screen[Any], options: OptionList) -> Iterator[str]:
    if options.option_count and options.content_size.height < 1:
        yield "no line of the list is seen"
    if options.highlighted is not None:
        line, first = options._index_to_line[options.highlighted], options.scroll_offset.y
        if not first <= line < first + options.size.height:
            yield "the marked line of the list is out of sight"
    if not _seen(screen, options):
        yield "the list is out of sight"


def _seen(screen: Screen[Any], widget: Widget) -> bool:
    place = screen._compositor.full_map.get(widget)
    return place is not None and bool(place.clip.intersection(place.region))


def _has_focus(screen: Screen[Any], widget: Widget) -> bool:
    focused = screen.focused
    return focused is not None and (focused is widget or widget in focused.ancestors)


def _scrolls(widget: Widget) -> ScrollableContainer | None:
    for one in widget.ancestors:
        if isinstance(one, ScrollableContainer):
            return one
    return None


def _name(widget: Widget) -> str:
    return str(widget.css_identifier_styled)
