"""The stages as a tally for when the machine is off: a box to tick for each count that is left."""

from __future__ import annotations

from collections.abc import Sequence

from sewalong.progress.resuming.stage_list import ListedStage
from sewalong.progress.safety.cautions import GENERAL, Caution
from sewalong.sheets.element import Element, el
from sewalong.sheets.marks import box, labelled, part
from sewalong.sheets.tick_boxes import Group, TickBoxes, tick_boxes


def stage_pages(stages: Sequence[ListedStage]) -> Element:
    """Every stage with something to do, and in a line those that are done."""
    numbered = [*enumerate(stages, start=1)]
    left = [(number, stage) for number, stage in numbered if stage.to_do]
    done = ", ".join(f"{number}. {stage.label}" for number, stage in numbered if not stage.to_do)
    return part(
        "stages",
        "Stages, to tick off",
        _how(left[0][1]) if left else el("p", "Every stage is done."),
        *([labelled("Done", f"{done}.")] if done else ()),
        *(_stage(number, stage) for number, stage in left),
    )


def _how(stage: ListedStage) -> Element:
    """How it is ticked, and how what is ticked is counted later."""
    typed = f"sewalong count {stage.label.replace(' ', '-')} {min(5, stage.to_do)}"
    return el(
        "p",
        "Tick a box for each that is done. Later count what is ticked, such as: ",
        el("code", typed),
    )


def _stage(number: int, stage: ListedStage) -> Element:
    boxes = tick_boxes(stage.to_do)
    return el(
        "article",
        el("h3", f"{number}. {stage.label}"),
        el("p", f"At the {stage.station}. {stage.done}; {stage.counts.count(stage.to_do)} to do."),
        el("p", stage.do),
        labelled("Check", stage.check),
        *(labelled("Begun", fact) for fact in stage.begun),
        *(labelled("Press", rule) for rule in stage.press),
        *(() if stage.caution is None else (_caution(stage.caution),)),
        _boxes(boxes),
        *_what_a_box_is(stage, boxes),
        class_="stage",
    )


def _caution(caution: Caution) -> Element:
    return el(
        "div",
        el("p", el("strong", f"Caution: {caution.title}")),
        el("ul", *(el("li", line) for line in caution.lines)),
        el("p", GENERAL),
        class_="caution",
    )


def _boxes(boxes: TickBoxes) -> Element:
    return el("p", *(_group(group) for group in boxes.groups), class_="boxes")


def _group(group: Group) -> Element:
    ticks = (box() for _ in range(group.boxes))
    return el("span", *ticks, el("b", str(group.up_to)), class_="group")


def _what_a_box_is(stage: ListedStage, boxes: TickBoxes) -> tuple[Element, ...]:
    if boxes.each == 1:
        return ()
    last = "" if boxes.last == boxes.each else f"; the last is {boxes.last}"
    return (el("p", f"Each box is {stage.counts.count(boxes.each)}{last}."),)
