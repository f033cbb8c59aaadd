"""All that is known of one fabric, in words."""

from __future__ import annotations

from collections.abc import Iterator

from sewalong.fabrics.swatch import Swatch
from sewalong.quilt.worksheet.line import plural


def swatch_words(swatch: Swatch) -> str:
    """ "B rust dots: 4 squares, small print, #a0522d from afar, medium (value 43), orange." """
    return f"{swatch.called}: {', '.join(_known(swatch))}."


def _known(swatch: Swatch) -> Iterator[str]:
    yield plural(swatch.squares, "square")
    if swatch.kind:
        yield swatch.kind
    if swatch.colour:
        yield f"{swatch.colour} from afar"
    if swatch.value is None:
        yield "value not known"
    elif swatch.colour:
        yield f"{swatch.word} (value {swatch.value:.0f} of 100)"
    else:
        yield f"{swatch.word} as you said"
        yield "colour not known"
    if swatch.family:
        yield swatch.family
