"""What is asked to begin a quilt, in order; a few of the questions follow from the method."""

from __future__ import annotations

from msgspec import Struct

from sewalong.piecing.definition import Definition

METHOD = "method"
SIZE = "size"
LENGTH = "length"
COUNT = "count"
SEAM = "seam"
TRIM = "trim"
SETTING = "setting"
LAYOUT = "layout"
BORDERS = "borders"
FINISHING = "finishing"
FABRICS = "fabrics"
NAME = "name"

COUNT_OF = "count "
"""What the question for how many of a further pile begins with; the pile follows."""


class Question(Struct, frozen=True):
    """One question: `label` names it in the form, `ask` is asked in plain lines, and `how` says how
    an answer is written."""

    id: str
    label: str
    ask: str
    how: str


def questions(written: Definition) -> tuple[Question, ...]:
    """The questions for a quilt by this method, in the order they are asked."""
    first, *others = written.starts
    many = written.noun(first.pile).many
    side = "width" if first.strip else "size"
    return (
        _METHOD,
        Question(SIZE, many, f"The {side} the {many} are cut at?", "A length, such as 5 in."),
        *((_LENGTH,) if first.strip else ()),
        Question(COUNT, "how many", f"How many {many} are there?", _HOW_MANY),
        *(_count_of(written, start.pile) for start in others),
        *_THE_REST,
        *(() if first.strip else (_FABRICS,)),
        _NAME,
    )


def _count_of(written: Definition, pile: str) -> Question:
    many = written.noun(pile).many
    return Question(f"{COUNT_OF}{pile}", many, f"How many {many} are there?", _HOW_MANY)


_HOW_MANY = "168, or packs such as 4 packs of 42. Count one: packs differ."

_METHOD = Question(
    METHOD,
    "method",
    "By which method?",
    "Its name or its number in the list, or a method file of your own, such as my-method.toml.",
)
_LENGTH = Question(
    LENGTH,
    "strip length",
    "How much of a strip's length can be used?",
    "A length, such as 40 in: measure one between the selvedges.",
)
_THE_REST = (
    Question(SEAM, "seam", "The seam allowance?", "A length; 1/4 in is usual."),
    Question(
        TRIM,
        "trim",
        "To what size are units trimmed?",
        "A length, such as 5 3/4 in; or no, for units as the method gives them.",
    ),
    Question(
        SETTING,
        "setting",
        "How are the units set?",
        "Edge to edge, on point, or sashes 2 in, the width they are cut at; with sashes also frame "
        "and cornerstones.",
    ),
    Question(
        LAYOUT,
        "layout",
        "How many rows and columns?",
        "Rows × columns, such as 9 x 9; on point, the whole units along the edges. To sew it column "
        "by column: 9 x 9 as a web.",
    ),
    Question(
        BORDERS,
        "borders",
        "How wide are the borders cut?",
        "Widths, the inner one first, such as 2 1/2 in, 5 in; a name of the cloth may follow each. "
        "Or none.",
    ),
    Question(
        FINISHING,
        "finishing",
        "What is wanted after the top?",
        "Any of layer, quilt, bind; or none.",
    ),
)
_FABRICS = Question(
    FABRICS,
    "fabrics",
    "Which fabrics are there (none need be said)?",
    "Piles or fabrics with their squares, such as lights 60, mediums 70, darks 38; or none yet.",
)
_NAME = Question(NAME, "name", "What is the quilt called?", "A name of your own.")
