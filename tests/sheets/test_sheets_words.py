"""What stands on the pages: every count a box, every row a card, every line a number."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import timedelta
from xml.etree.ElementTree import Element

import pytest
from hypothesis import given, settings
from msgspec import structs

from sewalong.progress.plan.plan import plan
from sewalong.progress.record.route import JOIN_ROWS
from sewalong.progress.safety.cautions import GENERAL
from sewalong.quilt.quilt import Quilt
from sewalong.quilt.worksheet.cut_list import RULE
from sewalong.service.sheets import contents_of, top_of
from sewalong.sheets.booklet import booklet
from tests.progress.wandering import Ask, histories, small_quilt, wander
from tests.sheets.conforming import called, faults, parsed, text_of
from tests.sheets.paper_quilts import STATES, contents, page, parsed_page


def part(quilt: str, id: str) -> Element:
    """One part of the pages of a quilt."""
    root = parsed_page(quilt)
    return next(one for one in root.iter() if called(one) == "section" and one.get("id") == id)


def those(within: Element, tag: str, class_: str = "") -> list[Element]:
    """The elements of a kind within another."""
    return [
        one
        for one in within.iter()
        if called(one) == tag and (not class_ or one.get("class") == class_)
    ]


def lines(within: Element) -> list[str]:
    """Its paragraphs, as they are read."""
    return [text_of(one) for one in those(within, "p")]


@pytest.mark.parametrize("quilt", ["begun, two places", "on point", "sashed", "web"])
def test_every_stage_with_something_to_do_has_a_box_for_each(quilt: str) -> None:
    numbered = enumerate(contents(STATES[quilt]).stages, start=1)
    listed = [(number, one) for number, one in numbered if one.to_do]
    articles = those(part(quilt, "stages"), "article")
    for article, (number, stage) in zip(articles, listed, strict=True):
        assert text_of(those(article, "h3")[0]) == f"{number}. {stage.label}"
        assert len(those(article, "span", "box")) == stage.to_do
        said = lines(article)
        assert said[0].startswith(f"At the {stage.station}. {stage.done}; ")
        assert said[0].endswith(f"{stage.counts.count(stage.to_do)} to do.")
        assert stage.do in said
        assert f"Check: {stage.check}" in said
        cautions = those(article, "div", "caution")
        assert len(cautions) == (stage.caution is not None)
        if stage.caution is not None:
            assert [text_of(one) for one in those(cautions[0], "li")] == [*stage.caution.lines]
            assert lines(cautions[0]) == [f"Caution: {stage.caution.title}", GENERAL]


def test_the_numbers_behind_the_groups_count_on() -> None:
    article = those(part("not begun", "stages"), "article")[0]
    assert [text_of(one) for one in those(article, "b")] == ["5", "10", "15", "20"]


@pytest.mark.parametrize(
    ("to_do", "words"),
    [(200, ""), (225, "Each box is 5 pairs."), (338, "Each box is 5 pairs; the last is 3.")],
)
def test_where_a_box_is_several_it_says_how_many(to_do: int, words: str) -> None:
    whole = contents(STATES["many rows"])
    stage = structs.replace(whole.stages[0], to_do=to_do)
    assert stage.label == "pair"
    root = parsed(booklet(structs.replace(whole, stages=(stage,)), "stages"))
    said = [line for line in lines(root) if line.startswith("Each box")]
    assert said == ([words] if words else [])


def test_stages_that_are_done_are_only_named() -> None:
    section = part("a stage done", "stages")
    said = lines(section)
    assert "Done: 1. pair." in said
    assert next(text_of(one) for one in those(section, "h3")) == "2. sew"
    assert "such as: sewalong count sew 5" in said[0]
    assert not [one for one in lines(part("not begun", "stages")) if one.startswith("Done")]


def test_where_every_stage_is_done_there_is_nothing_to_tick() -> None:
    whole = contents(STATES["one row"])
    done = tuple(structs.replace(stage, to_do=0) for stage in whole.stages)
    root = parsed(booklet(structs.replace(whole, stages=done), "stages"))
    assert list(faults(root)) == []
    assert not those(root, "span")
    assert "Every stage is done." in lines(root)
    assert not those(root, "code")


@pytest.mark.parametrize(
    "quilt", ["not begun", "laid, two rows sewn", "laid, on point", "laid, empty places"]
)
def test_a_card_says_three_times_which_edge_is_up(quilt: str) -> None:
    found = contents(STATES[quilt])
    cards = those(part(quilt, "rows"), "article", "card")
    for card, row in zip(cards, found.rows, strict=True):
        said = lines(card)
        assert (said[0], said[-1]) == (
            f"▲ This edge up: {row.up}",
            f"This edge down: {row.down}",
        )
        assert those(card, "p")[0].get("class") == "up"
        (tag,) = those(card, "h3", "tag")
        assert text_of(tag) == f"R{row.number}"
        assert row.press in said
        assert f"{row.row}: {row.holds}{', sewn' if row.is_sewn else ''}" in said
        if row.first or row.last:
            assert {f"First unit: {row.first}", f"Last unit: {row.last}"} <= set(said)
        else:
            assert "First unit:  last: " in said
        assert len(those(card, "span", "blank")) == (not row.first) + (not row.last)
        assert len(those(card, "figure")) == bool(found.layout)


@pytest.mark.parametrize(("quilt", "first"), [("laid", "begins"), ("laid, on point", "ends")])
def test_a_row_of_the_layout_is_read_place_by_place(quilt: str, first: str) -> None:
    """On point, its edge towards row 1 up, a row begins at the far end (plane geometry)."""
    articles = those(part(quilt, "layout"), "article")
    for article, row in zip(articles, contents(STATES[quilt]).layout, strict=True):
        assert text_of(those(article, "h3")[0]) == row.label
        assert [text_of(one) for one in those(article, "li")] == [*row.places]
        ends = [text_of(one) for one in those(article, "span")]
        assert ends[0] == f"{first} here"
        assert set(ends) == {"begins here", "ends here"}


@pytest.mark.parametrize("quilt", ["sets", "one set"])
def test_the_set_list_has_every_fabric_of_every_set(quilt: str) -> None:
    rows = those(part(quilt, "sets"), "tr")
    listed = contents(STATES[quilt]).sets
    assert [text_of(cell) for cell in rows[0]] == ["laid", "set", "front", "back"]
    for row, one in zip(rows[1:], listed, strict=True):
        assert text_of(row[1]) == ", ".join(filter(None, (str(one.number), one.standing)))
        assert [text_of(cell) for cell in row[2:]] == [", ".join(part) for _, part in one.groups]
        assert len(those(row, "span", "box")) == 1


def test_the_lists_have_every_line_with_a_box_and_the_rule_without() -> None:
    section = part("sashed", "cloth")
    wanted = [line for one in contents(STATES["sashed"]).cloth for line in one.lines]
    rows = [row for table in those(section, "tbody") for row in table]
    assert [tuple(text_of(cell) for cell in row[1:]) for row in rows] == [
        (line.label, line.text, line.reason) for line in wanted if line.text != RULE
    ]
    assert all(len(those(row, "span", "box")) == 1 for row in rows)
    assert f"{RULE[0].upper()}{RULE[1:]}." in lines(section)


def test_a_label_has_quilt_place_piles_and_the_next_step() -> None:
    tray, rest = those(part("begun, two places", "labels"), "article")
    assert text_of(those(tray, "h3")[0]) == "test quilt"
    assert lines(tray)[0] == "1 of 2"
    assert "Place: blue tray" in lines(tray)
    assert [text_of(one) for one in those(tray, "li")] == ["6 four-patches"]
    assert "Next: press, 6 pressed four-patches" in lines(tray)
    assert len(those(rest, "span", "blank")) == 1, "its place can be written in"


@pytest.mark.parametrize("quilt", STATES)
def test_the_first_page_names_all_that_shows(quilt: str) -> None:
    top = top_of(STATES[quilt])
    section = part(quilt, "top")
    names = [text_of(one).strip() for one in those(section, "li")]
    assert names == ([] if top is None else [*top.names.values()])
    assert len(those(section, "figure")) == (top is not None)


def test_a_fault_of_the_record_is_said_and_nothing_where_there_is_none() -> None:
    whole = contents(STATES["sets"])
    for notice, said in (("", []), ("The record is damaged.", ["The record is damaged."])):
        root = parsed(booklet(structs.replace(whole, notice=notice)))
        head = next(one for one in root.iter() if called(one) == "header")
        assert [text_of(one) for one in those(head, "p", "caution")] == said


def test_what_is_shown_is_said() -> None:
    for quilt, words in (
        ("not begun", "the kinds of unit are shown by turns"),
        ("fabrics, no sets", "the kinds of unit are shown by turns"),
        ("sets", "With the sets that are accepted"),
        ("laid", "As it is laid on the wall."),
        ("too small for its seams", "too small for their seams"),
    ):
        assert any(words in line for line in lines(part(quilt, "top"))), quilt


@pytest.mark.parametrize("unit", ["in", "cm"])
def test_lengths_are_in_the_owners_unit(unit: str) -> None:
    text = text_of(parsed(page(STATES["centimetres" if unit == "cm" else "not begun"], "cloth")))
    assert re.search(rf"\d {unit}\b", text)
    assert not re.search(rf"\d {'cm' if unit == 'in' else 'in'}\b", text)


@settings(max_examples=25, deadline=None)
@given(small_quilt, histories)
def test_after_any_history_there_are_sheets(quilt: Quilt, history: Sequence[Ask]) -> None:
    for step in wander(quilt, history):
        state, at = step.after, step.at
    found = contents_of(state, top_of(state), at + timedelta(days=1))
    assert list(faults(parsed(booklet(found)))) == []
    assert sum(one.to_do for one in found.stages) == sum(line.to_do for line in plan(state).lines)
    assert (not found.rows) == (JOIN_ROWS in state.done and not plan(state).line(JOIN_ROWS).to_do)
