"""The sheets of a quilt as one page of HTML that needs no other file and runs nothing.

One file and not one for each part: it is opened, printed and sent once, and what of it is wanted
again can be written by itself.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from sewalong.sheets.cloth_pages import cloth_pages
from sewalong.sheets.contents import PARTS, Contents
from sewalong.sheets.element import Element, el, page_text
from sewalong.sheets.label_pages import label_pages
from sewalong.sheets.layout_pages import layout_pages
from sewalong.sheets.marks import name
from sewalong.sheets.row_pages import row_pages
from sewalong.sheets.set_pages import set_pages
from sewalong.sheets.stage_pages import stage_pages
from sewalong.sheets.style import STYLE
from sewalong.sheets.top_page import top_page


def booklet(contents: Contents, only: str = "") -> str:
    """The document: every part there is something to say in, or `only` that one of PARTS."""
    wanted = (only,) if only else PARTS
    parts = [_PARTS[id](contents) for id in wanted if contents.has(id)]
    notice = (el("p", contents.notice, class_="caution"),) if contents.notice else ()
    head = el(
        "header",
        el("h1", name(contents.quilt)),
        el("p", f"As of {contents.as_of}."),
        *notice,
    )
    return page_text(
        el(
            "html",
            el(
                "head",
                el("meta", charset="utf-8"),
                el("meta", name="viewport", content="width=device-width"),
                el("title", f"{contents.quilt}: sheets"),
                el("style", STYLE),
            ),
            el("body", head, el("main", *parts)),
            lang="en",
        )
    )


_PARTS: Mapping[str, Callable[[Contents], Element]] = {
    "top": top_page,
    "stages": lambda one: stage_pages(one.stages),
    "layout": lambda one: layout_pages(one.layout),
    "rows": lambda one: row_pages(one.quilt, one.rows, one.layout),
    "sets": lambda one: set_pages(one.sets),
    "cloth": lambda one: cloth_pages(one.cloth),
    "labels": lambda one: label_pages(one.quilt, one.as_of, one.labels),
}
