"""The answers to the questions a quilt begins with, as she gave them."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace

from sewalong.lengths import Unit

LONGEST_ANSWER = 200
"""Characters of one answer: the name of a file may have as many, and nothing else needs more."""


class Answers(Struct, frozen=True):
    """`said` has the text of each answer by its question's id; what is not there is as usual.

    Lengths with no unit are in `unit`.
    """

    unit: Unit = Unit.INCH
    said: Mapping[str, str] = {}

    def answered(self, id: str, text: str) -> Answers:
        """The same with another answer to one question; an empty one is as usual again."""
        others = {key: said for key, said in self.said.items() if key != id}
        text = text.strip()
        return replace(self, said={**others, id: text} if text else others)
