"""A diagnosis in words, for both faces: what to do, what was read, what it comes of, what tells."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.lengths import CENTIMETRE, Length, Unit
from sewalong.progress.measuring.causes.cause import Cause
from sewalong.progress.measuring.causes.evidence import Evidence
from sewalong.progress.measuring.causes.feet import Foot
from sewalong.progress.measuring.causes.further import Further, What
from sewalong.progress.measuring.causes.priors import Why
from sewalong.progress.measuring.decision import Decision, Do
from sewalong.progress.measuring.length_words import finely, plainly, told_apart
from sewalong.progress.measuring.projected_top import Outlook
from sewalong.progress.measuring.spread import Spread
from sewalong.progress.measuring.tape import near_enough
from sewalong.progress.measuring.verdict import Outcome, limit_for
from sewalong.progress.record.measurable import RATE_NOISE, Measured

AS_LIKELY = 2 / 3
"""A cause at least so likely as the likeliest is told as one of two. From memory."""

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def decision_said(
    decision: Decision, piece: Measured, readings: Sequence[Length], causes: Sequence[Cause],
    unit: Unit,
) -> str:  # fmt: skip
    """What to do, short."""
    which, where = _these(decision.places, readings, unit)
    match decision.do:
        case Do.GO_ON:
            return "Go on."
        case Do.EASE:
            return "Go on, and ease it in."
        case Do.BORDERS:
            return "Go on: cut the borders to the centre as it is."
        case Do.TRIM:
            assert decision.to is not None
            return f"Trim all to {finely(decision.to, unit)}."
        case Do.RESEW:
            return f"Stop and resew {which}{where}."
        case Do.REMAKE if piece.is_border:
            return f"Stop and cut {which} again{where}."
        case Do.REMAKE if piece.is_long and len(readings) == 1:
            return "Stop and look through its pieces."
        case Do.REMAKE if piece.is_long:
            return f"Stop and look through the pieces of {which}{where}."
        case Do.REMAKE:
            return f"Stop and make {which} again{where}."
        case Do.COUNT:
            what = "rows" if piece.kind == "column" else "pieces"
            of = "" if len(readings) == 1 else f" of {which}{where}"
            return f"Stop and count the {what}{of}."
        case Do.SORT:
            like = next(cause.like for cause in causes if cause.like)
            return f"Stop and look at {which}{where}: {_a(like)}?"
        case Do.SET_SEAM:
            return "Stop and set the seam."
        case Do.MEASURE:
            return f"Stop and {'sew another test' if piece.is_test else 'measure once more'}."


def _these(places: Sequence[int], readings: Sequence[Length], unit: Unit) -> tuple[str, str]:
    """ "it", "both", "all 4", "these two", and behind it ": readings 2 and 4 (5 3/4 in, 6 in)"
    where they are not all."""
    n = len(places)
    if n == len(readings):
        return ("it", "both")[n - 1] if n <= 2 else f"all {n}", ""
    read = ", ".join(plainly(readings[place], unit) for place in places)
    count = _NUMBERS[n] if n < len(_NUMBERS) else str(n)
    return f"{'this' if n == 1 else 'these'} {count}", f": {_readings(places)} ({read})"


def _readings(places: Sequence[int]) -> str:
    names = [str(place + 1) for place in places]
    if len(names) == 1:
        return f"reading {names[0]}"
    return f"readings {', '.join(names[:-1])} and {names[-1]}"


def reading_said(piece: Measured, apart: Spread, outcomes: Sequence[Outcome], unit: Unit) -> str:
    """What it should be and what it reads."""
    what = _first_upper(piece.words)
    off = piece.expected - apart.typical
    if all(one is Outcome.PASS for one in outcomes):
        should = f"{what} should be {plainly(piece.expected, unit)}"
        if piece.at_least is not None and off > near_enough(piece.expected):
            return f"{should}: right, it still trims to {plainly(piece.at_least, unit)}."
        return f"{should}: right."
    if abs(off) <= near_enough(piece.expected):
        return f"{what} should be {plainly(piece.expected, unit)}, and most are about that."
    expected, reads, much = told_apart(piece.expected, apart.typical, unit)
    return f"{what} should be {expected}, reads {reads}, {much} {'short' if off > 0 else 'over'}."


def outcome_said(piece: Measured, outcomes: Sequence[Outcome], decision: Decision) -> list[str]:
    """What becomes of pieces so far off, and the convention by which; nothing while it is not known
    what they are, or where trimming saves them."""
    wrong = [one for one in outcomes if one is not Outcome.PASS]
    looking = decision.do in (Do.COUNT, Do.SORT, Do.MEASURE)
    saved = decision.do is Do.TRIM and Outcome.REMAKE in wrong
    if piece.is_test or not wrong or looking or saved:
        return []
    rule = f"{float(limit_for(piece) * 100):.0f} % of its size"
    words = _LONG if piece.is_long else _PIECE
    if len(set(outcomes)) == 1:
        within = "Beyond" if wrong[0] is Outcome.REMAKE else "Within"
        return [f"{within} {rule}: {words[wrong[0]]}."]
    each = ", ".join(f"{outcomes.count(one)} {words[one]}" for one in Outcome if one in outcomes)
    return [f"Of {len(outcomes)}: {each} (up to {rule})."]


_PIECE = {Outcome.PASS: "right", Outcome.BLOCK: "block to shape", Outcome.REMAKE: "make again"}
_LONG = {Outcome.PASS: "right", Outcome.BLOCK: "can be eased", Outcome.REMAKE: "too much to ease"}


def causes_said(evidence: Evidence, causes: Sequence[Cause]) -> list[str]:
    """What it comes of, the likeliest first."""
    first, *others = causes
    if first.why is Why.OTHER:
        return ["No usual seam, count or cut does this. Measure one piece of it first."]
    said = [f"Likeliest: {cause_said(evidence, first)}."]
    while others and others[0].likely >= AS_LIKELY * first.likely:
        said.append(f"About as likely: {cause_said(evidence, others.pop(0))}.")
    if others:
        said.append(f"Or: {'; '.join(cause_said(evidence, one) for one in others)}.")
    return said


def cause_said(evidence: Evidence, cause: Cause) -> str:
    """One cause, without capital and full stop."""
    where = ""
    if len(cause.places) < len(evidence.readings):
        where = f"in {_readings(cause.places)}, "
    return where + _cause(evidence, cause)


def _cause(evidence: Evidence, cause: Cause) -> str:
    unit = evidence.unit
    match cause.why:
        case Why.WIDE | Why.NARROW:
            return seam_said(evidence, cause)
        case Why.MISSING | Why.TOO_MANY:
            assert cause.adds is not None
            count = "one piece" if cause.pieces == 1 else f"{cause.pieces} pieces"
            lack = "too few" if cause.why is Why.MISSING else "too many"
            each = plainly(cause.adds, unit)
            return f"{count} {lack} (each adds {each}; there should be {evidence.of})"
        case Why.MISCUT:
            return _miscut(evidence, cause)
        case Why.SWAPPED:
            return f"it is {_a(cause.like)}, by its size"
        case Why.STRETCHED:
            if cause.crosswise:
                return "the cloth was pulled longer the other way"
            return f"the cloth was pulled {_amount(-cause.short, unit)} longer"
        case Why.SLIP:
            edges = "to the seams, not to the raw edges"
            if evidence.slip is not None and evidence.slip > evidence.expected:
                edges = "to the raw edges, not to the seams"
            return f"it was measured {edges}"
        case _:
            return cause.why.value


def seam_said(evidence: Evidence, cause: Cause) -> str:
    """The seam by the name of the foot it is, else as the readings come to it, with its range."""
    unit, seam = evidence.unit, cause.named_seam
    assert seam is not None
    assert cause.least is not None
    assert cause.most is not None
    way = "wide" if cause.why is Why.WIDE else "narrow"
    meant, sewn = finely(evidence.seam, unit), finely(seam, unit)
    if cause.foot is not None:
        return f"seams of {foot_said(cause.foot, unit)}, each {finely(abs(seam - evidence.seam), unit)} too {way}"
    if meant == sewn:
        return f"every seam a hair too {way}, {finely(unit.finest * unit.length / 4, unit)} each"
    # The range ends a mark before the seam meant, for that one is ruled out.
    mark = unit.finest * unit.length
    ends = [max(cause.least, mark), cause.most]
    if cause.why is Why.WIDE:
        ends[0] = max(ends[0], evidence.seam + mark)
    else:
        ends[1] = min(ends[1], evidence.seam - mark)
    low, high = (finely(end, unit) for end in ends)
    between = "" if low == high else f" (from {low} to {high})"
    uneven = "uneven " if cause.uneven else ""
    return f"{uneven}seams too {way}, about {sewn}{between} instead of {meant}"


def foot_said(foot: Foot, unit: Unit) -> str:
    """A foot by the name it goes by: `3/8 in`, `7 mm`; no inch is told to who works in cm."""
    if foot.called_in is Unit.CM:
        return f"{round(foot.seam / CENTIMETRE * 10)} mm"
    return finely(foot.seam, unit)


def _miscut(evidence: Evidence, cause: Cause) -> str:
    assert cause.cut_short is not None
    size = "small" if cause.cut_short > 0 else "large"
    much = f"{_amount(cause.cut_short, evidence.unit)} too {size}"
    if abs(evidence.allowances) < RATE_NOISE:
        return f"cut or trimmed {much}"
    if cause.all_alike and not evidence.is_alone:
        return f"all pieces cut {much}"
    return f"one piece cut {much}"


def further_said(evidence: Evidence, found: Further | None) -> list[str]:
    """What to measure next, and what it tells."""
    if found is None:
        return []
    unit = evidence.unit
    first = found.answers[0]
    match found.what:
        case What.KIND:
            like = next(c.like for c, _ in found.answers if c.why is Why.SWAPPED)
            return [f"To tell: look whether it is {_a(like)}."]
        case What.EDGES:
            return ["To tell: measure once more between the right edges."]
        case What.PIECES:
            return [
                "To tell: measure its pieces one by one, seam to seam: only a mis-cut one differs."
            ]
        case What.COUNT:
            other = next(answer for _, answer in found.answers if answer != first[1])
            counts = " or ".join(str(int(n)) for n in sorted({first[1], other}))
            return [f"To tell: count the pieces. Are there {counts}?"]
        case What.ALLOWANCE:
            what = "one seam allowance at the back, stitches to raw edge"
        case What.OTHER_WAY:
            what = "the same the other way"
    by_words: dict[str, Cause] = {}
    for cause, answer in found.answers:
        by_words.setdefault(finely(answer, unit) if found.what is What.ALLOWANCE
                            else plainly(answer, unit), cause)  # fmt: skip
    answers = ", ".join(f"{words} if {_short(cause)}" for words, cause in by_words.items())
    return [f"To tell: measure {what}: {answers}."]


def _short(cause: Cause) -> str:
    return {
        Why.WIDE: "the seams are too wide",
        Why.NARROW: "the seams are too narrow",
        Why.MISSING: "a piece is missing",
        Why.TOO_MANY: "there is a piece too many",
        Why.MISCUT: "it is mis-cut",
        Why.SWAPPED: "it is another kind",
        Why.STRETCHED: "it is stretched",
        Why.SLIP: "it was measured to other edges",
    }.get(cause.why, "it is none of these")


def outlook_said(right: Outlook | None, same: Outlook | None, unit: Unit) -> list[str]:
    """What row and top come to, where that is another than planned."""
    said = []
    if right is not None and right.row_loses:
        said.append(
            f"If all are like it, a row of {right.in_row} comes to {plainly(right.row, unit)} "
            f"({_change(right.row_loses, unit)}) and the top to {right.top.show(unit)}."
        )
    if same is not None and same.row_loses and (right is None or same.row != right.row):
        said.append(
            f"If every seam goes on so, the row comes to {plainly(same.row, unit)} "
            f"({_change(same.row_loses, unit)}) and the top to {same.top.show(unit)}."
        )
    return said


def spread_said(readings: Sequence[Length], apart: Spread, unit: Unit) -> list[str]:
    """How far several readings lie apart."""
    if len(readings) < 2 or apart.apart == 0:
        return []
    small, large, much = told_apart(apart.smallest, apart.largest, unit)
    return [f"{len(readings)} readings from {small} to {large}, {much} apart."]


def _change(lost: Length, unit: Unit) -> str:
    return f"{plainly(abs(lost), unit)} {'less' if lost > 0 else 'more'}"


def _amount(length: Length, unit: Unit) -> str:
    """A difference to a sixteenth or a millimetre, finer where it is less."""
    text = plainly(abs(length), unit)
    return finely(abs(length), unit) if text.startswith("less") else text


def _a(noun: str) -> str:
    return f"{'an' if noun[:1] in 'aeiou' and not noun.startswith('unit') else 'a'} {noun}"


def _first_upper(text: str) -> str:
    return text[:1].upper() + text[1:]
