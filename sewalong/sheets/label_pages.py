"""Labels for the boxes and bags in which the piles lie."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.resuming.box_labels import BoxLabel
from sewalong.sheets.element import Element, el
from sewalong.sheets.marks import blank, labelled, name, part


def label_pages(quilt: str, as_of: str, labels: Sequence[BoxLabel]) -> Element:
    """A label for each place, to be cut out."""
    return part(
        "labels",
        "Box labels",
        el("p", "Tick a box in as you open it."),
        el("div", *(_label(quilt, as_of, label) for label in labels), class_="cards"),
    )


def _label(quilt: str, as_of: str, label: BoxLabel) -> Element:
    return el(
        "article",
        el("h3", name(quilt)),
        el("p", f"{label.number} of {label.of}", class_="of"),
        labelled("Place", name(label.place) if label.place else blank()),
        el("ul", *(el("li", one) for one in label.holds)),
        *((labelled("Next", label.next),) if label.next else ()),
        el("p", f"as of {as_of}"),
        class_="card",
    )
