"""Elements of a page, written as HTML (WHATWG): all text in them is escaped, whoever wrote it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape

from msgspec import Struct

_EMPTY = ("meta",)
"""Elements that hold nothing and have no end tag. Source: HTML, "Void elements"."""

_HARMFUL = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff"
    + "".join(f"{chr(0x10000 * n + 0xFFFE)}{chr(0x10000 * n + 0xFFFF)}" for n in range(1, 17))
    + "]"
)
"""What no page may hold (HTML, "Text": control characters, surrogates, noncharacters), and marks
that turn all writing round that comes after them."""

_STRANGE = "\ufffd"


class Svg(Struct, frozen=True):
    """A drawing as `wall.drawing.svg` wrote it, which escapes what it is given."""

    markup: str


class Element(Struct, frozen=True):
    """`tag` and `attributes` are this program's own words; what is in the values and in texts may
    be anybody's."""

    tag: str
    children: tuple[Element | Svg | str, ...] = ()
    attributes: tuple[tuple[str, str], ...] = ()


Node = Element | Svg | str


def el(tag: str, *children: Node, **attributes: str) -> Element:
    """An element; `class_` is the attribute "class", `aria_label` is "aria-label"."""
    named = ((name.rstrip("_").replace("_", "-"), value) for name, value in attributes.items())
    return Element(tag, children, tuple(named))


def page_text(root: Element) -> str:
    """The whole document, its doctype first, with nothing in it that a page may not hold."""
    text = f"<!DOCTYPE html>\n{''.join(_written(root))}\n"
    return _HARMFUL.sub(_STRANGE, text)


def _written(node: Node) -> Iterator[str]:
    if isinstance(node, str):
        yield escape(node, quote=False)
        return
    if isinstance(node, Svg):
        yield node.markup
        return
    named = "".join(f' {name}="{escape(value)}"' for name, value in node.attributes)
    yield f"<{node.tag}{named}>"
    if node.tag in _EMPTY:
        return
    for child in node.children:
        yield from _written(child)
    yield f"</{node.tag}>"
