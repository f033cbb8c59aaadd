"""Answers in the words a person uses, and back: each text written here is read here again."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec.structs import asdict

from sewalong.lengths import Length, LengthFault, Unit, parse
from sewalong.quilt.beginning.answers import LONGEST_ANSWER
from sewalong.quilt.choices import Fabric
from sewalong.quilt.file.writer import written_length
from sewalong.quilt.quilt import Border, Quilt, StartPile, Target
from sewalong.quilt.setting import Sashing
from sewalong.quilt.web import ROWS, WEB

NONE = "none"
NONE_YET = "none yet"
AS_THEY_ARE = "as they are"
"""Stands for fabrics that are too many for one answer."""
EDGE_TO_EDGE = "edge to edge"
ON_POINT = "on point"
NOT_TRIMMED = "not trimmed"
ON_THE_MARKS = "on the marks"
"""Trimmed to the largest size on the marks of a ruler, as methods with a trim stage do."""
SASHES = "sashes"
FRAME = "frame"
CORNERSTONES = "cornerstones"

_NOTHING = ("none", NONE_YET, "no", "nothing", "0", "-", NOT_TRIMMED, ON_THE_MARKS)
_STRAIGHT = (EDGE_TO_EDGE, "straight", *_NOTHING)
_COUNT = r"([0-9]{1,9})(?: *(?:packs? of|packs?|of|x|×|\*) *([0-9]{1,9}))?"
_LAYOUT = r"([0-9]{1,9}) *(?:x|×|\*|by|rows? of|of) *([0-9]{1,9})"
_TOGETHER = r"(.*[0-9]),? +(?:(as a web)|row by row|by rows)"
_BETWEEN = r" *; *| *, +| *,$| +and +"
"""Between the parts of an answer. A comma within a number is a decimal one."""


def is_nothing(text: str) -> bool:
    """Whether an answer says that there is to be none."""
    return text.strip().casefold() in _NOTHING


def parts_of(text: str) -> list[str]:
    """The parts of an answer that lists several things."""
    return [part for part in re.split(_BETWEEN, text.strip()) if part]


def read_count(text: str) -> dict[str, int]:
    """`168`, or `4 packs of 42`, as the keys of a quilt file. Raises ValueError."""
    found = re.fullmatch(_COUNT, text.strip(), re.IGNORECASE)
    if found is None:
        raise ValueError(
            "Write how many there are, such as 168, or packs and how many are in one, such as "
            "4 packs of 42."
        )
    first, second = found.groups()
    if second is None:
        return {"count": int(first)}
    return {"packs": int(first), "in_a_pack": int(second)}


def count_text(start: StartPile) -> str:
    """How many pieces of a pile there are, as it is answered."""
    packs = start.packs
    if packs is None or start.count % packs:
        return str(start.count)
    return packs_text(packs, start.count // packs)


def packs_text(packs: int, in_a_pack: int) -> str:
    """`4 packs of 42`."""
    return f"{packs} {'pack' if packs == 1 else 'packs'} of {in_a_pack}"


def read_layout(text: str) -> dict[str, int]:
    """`9 x 9`, `9 rows of 9`, as the keys of a quilt file. Raises ValueError."""
    found = re.fullmatch(_LAYOUT, text.strip(), re.IGNORECASE)
    if found is None:
        raise ValueError("Write rows and columns, such as 9 x 9.")
    rows, columns = map(int, found.groups())
    return {"rows": rows, "columns": columns}


def read_put_together(text: str) -> dict[str, int | str]:
    """The same with `as a web` or `row by row` behind it, or neither. Raises ValueError."""
    found = re.fullmatch(_TOGETHER, text.strip(), re.IGNORECASE)
    if found is None:
        return {**read_layout(text)}
    return {**read_layout(found[1]), "joined": WEB if found[2] else ROWS}


def layout_text(target: Target, *, as_web: bool) -> str:
    """A layout as it is answered."""
    return f"{target} as a web" if as_web else str(target)


def length_text(length: Length, unit: Unit) -> str:
    """A length exactly, with its unit."""
    return f"{written_length(length, unit)} {unit.symbol}"


def trim_text(quilt: Quilt) -> str:
    """What units are trimmed to, as it is answered."""
    trim, unit = quilt.trim, quilt.unit
    if trim is None:
        return NOT_TRIMMED if quilt.written_method.trim_stage is None else ON_THE_MARKS
    width, length = length_text(trim.width, unit), length_text(trim.length, unit)
    return width if width == length else f"{width} x {length}"


def read_borders(text: str, unit: Unit) -> list[dict[str, str]]:
    """`2 1/2 in, 5 in navy`: each `cut`, and its `cloth` where a name follows.

    What is no length stays in `cut`, for whoever reads lengths to say so.
    """
    return [] if is_nothing(text) else [_border(part, unit) for part in parts_of(text)]


def _border(part: str, unit: Unit) -> dict[str, str]:
    words = part.split(" ")
    for n in range(len(words), 0, -1):
        cut, cloth = " ".join(words[:n]), " ".join(words[n:]).strip()
        if _is_length(cut, unit):
            return {"cut": cut, "cloth": cloth} if cloth else {"cut": cut}
    return {"cut": part}


def _is_length(text: str, unit: Unit) -> bool:
    try:
        parse(text, unit)
    except LengthFault:
        return False
    return True


def borders_text(quilt: Quilt) -> str:
    """The borders as they are answered; a name that would not be read as one is left off."""
    usual = usual_cloths(len(quilt.borders))
    texts = [
        _border_text(border, usual[place], quilt.unit) for place, border in enumerate(quilt.borders)
    ]
    return ", ".join(texts) or NONE


def _border_text(border: Border, usual: str, unit: Unit) -> str:
    cut = length_text(border.cut, unit)
    named = {"cut": cut, "cloth": border.cloth}
    text = f"{cut} {border.cloth}"
    return text if border.cloth != usual and read_borders(text, unit) == [named] else cut


def usual_cloths(count: int) -> tuple[str, ...]:
    """What so many borders' cloths are called until they are named."""
    if count < 2:
        return ("border",) * count
    return ("inner border", *(f"border {n}" for n in range(2, count)), "outer border")


def read_setting(text: str) -> dict[str, object]:
    """`edge to edge`, `on point`, or `sashes 2 in, frame, cornerstones`, as the keys of [setting]
    but those of cloth. Raises ValueError."""
    said = " ".join(text.casefold().split())
    if said in _STRAIGHT:
        return {}
    if said == ON_POINT:
        return {"kind": "on point"}
    first, *others = parts_of(said) or [""]
    found = re.fullmatch(r"sash(?:es|ed|ing)? *(.*)", first)
    if found is None or not set(others) <= {FRAME, "a frame", CORNERSTONES}:
        raise ValueError(
            "Write edge to edge, on point, or sashes and the width they are cut at, such as "
            "sashes 2 in, frame, cornerstones."
        )
    keys: dict[str, object] = {"kind": "sashed"}
    if found[1]:
        keys["sash"] = found[1]
    if {FRAME, "a frame"} & set(others):
        keys["frame"] = True
    return {**keys, "cornerstones": True} if CORNERSTONES in others else keys


def setting_text(quilt: Quilt) -> str:
    """How the units are set, as it is answered."""
    if isinstance(quilt.setting, Sashing):
        sashing = quilt.setting
        stones = sashing.cornerstones is not None
        return sashes_text(sashing.cut, quilt.unit, frame=sashing.frame, cornerstones=stones)
    return EDGE_TO_EDGE if quilt.setting is None else ON_POINT


def sashes_text(cut: Length, unit: Unit, *, frame: bool = False, cornerstones: bool = False) -> str:
    """Sashes cut so wide, as they are answered."""
    more = [word for word, there in ((FRAME, frame), (CORNERSTONES, cornerstones)) if there]
    return ", ".join([f"{SASHES} {length_text(cut, unit)}", *more])


def read_finishing(text: str) -> list[str]:
    """The stages an answer lists, none for `none`."""
    return [] if is_nothing(text) else [part.casefold() for part in parts_of(text)]


def finishing_text(stages: tuple[str, ...]) -> str:
    """The stages after the top, as they are answered."""
    return ", ".join(stages) or NONE


def read_fabrics(text: str, others: Sequence[Fabric]) -> list[dict[str, object]]:
    """The fabrics an answer says, beside `others` that the method calls so, as the tables of a quilt
    file. Raises ValueError."""
    from sewalong.quilt.fabrics_said import fabrics_said  # colours are read there

    found = () if is_nothing(text) else fabrics_said(text, others)
    return [
        {key: said for key, said in asdict(fabric).items() if said is not None}
        for fabric in found
        if fabric.squares is not None
    ]


def fabrics_answer(quilt: Quilt) -> str:
    """The counted fabrics as they are answered; so many that one answer cannot say them are said
    to stay."""
    fabrics = quilt.counted_fabrics
    if not fabrics:
        return NONE_YET
    from sewalong.quilt.fabrics_text import fabrics_text

    text = fabrics_text(fabrics, quilt.named_fabrics)
    if text is not None and len(text) <= LONGEST_ANSWER:
        return text
    return f"{len(fabrics)} fabrics, {AS_THEY_ARE}"
