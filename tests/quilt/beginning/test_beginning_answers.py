"""From answers to a quilt: whatever she answers is a quilt, or a fault with its own question."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.piecing.catalogue import method_ids, written_method
from sewalong.quilt.beginning.answers import LONGEST_ANSWER, Answers
from sewalong.quilt.beginning.filled_in import FilledIn, UnderWay, fill_in
from sewalong.quilt.beginning.offered import offered
from sewalong.quilt.beginning.questions import questions
from sewalong.quilt.choices import Fabric
from sewalong.quilt.fabrics_said import fabrics_said
from sewalong.quilt.file.reader import read_quilt
from sewalong.quilt.file.writer import quilt_file
from sewalong.quilt.layouts.yield_of_method import units_of
from sewalong.quilt.plan_faults import why_not_a_plan
from sewalong.quilt.quilt import Quilt, Target

COUNTS = ("168", "4 packs of 42", "1 pack of 22", "40", "8")


def quilt_of(**said: str) -> Quilt:
    """The quilt of these answers, which have no fault."""
    found = fill_in(Answers(said=said))
    assert found.quilt is not None, found.faults
    return found.quilt


def faults_of(**said: str) -> dict[str, str]:
    """The faults of these answers, by question."""
    return {row.question.id: row.fault for row in fill_in(Answers(said=said)).faults}


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("id", method_ids())
def test_every_method_is_a_quilt_with_nothing_else_said(id: str, unit: Unit) -> None:
    found = fill_in(Answers(unit, {"method": id}))
    quilt = found.quilt
    assert quilt is not None, found.faults
    assert quilt.unit is unit
    assert why_not_a_plan(quilt) == ""
    # None of the usual answers is one that would be refused, or leaves her short.
    wanted = quilt.units_for(quilt.target)
    assert found.units == units_of(quilt)
    assert found.units * 3 // 4 <= wanted <= found.units
    assert all(row.usual for row in found.rows if row.question.id != "method")


@pytest.mark.parametrize("count", COUNTS)
@pytest.mark.parametrize("id", method_ids())
def test_every_method_and_count_is_what_its_own_file_says(id: str, count: str) -> None:
    for unit in Unit:
        found = fill_in(Answers(unit, {"method": id, "count": count, "borders": "3, 4"}))
        assert found.quilt is not None, found.faults
        assert read_quilt(quilt_file(found.quilt)) == found.quilt


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("id", method_ids())
def test_what_stands_in_a_row_can_be_typed_there(id: str, unit: Unit) -> None:
    """Editing begins with the answer that stands there, so it must mean the same."""
    first = fill_in(Answers(unit, {"method": id, "setting": "sashes 3, frame, cornerstones"}))
    said = {row.question.id: row.text for row in first.rows}
    again = fill_in(Answers(unit, said))
    assert again.quilt == first.quilt
    assert [row.text for row in again.rows] == [row.text for row in first.rows]


def test_the_sketch() -> None:
    """168 squares of 5 in make 84 units by a 9 × 9 layout: eight squares make four units."""
    found = fill_in(Answers())
    texts = {row.question.label: row.text for row in found.rows}
    assert texts == {
        "method": "Stacked four-patch",
        "squares": "5 in",
        "how many": "4 packs of 42",
        "seam": "1/4 in",
        "trim": "not trimmed",
        "setting": "edge to edge",
        "layout": "9 × 9",
        "borders": "2 1/2 in, 5 in",
        "finishing": "layer, quilt, bind",
        "fabrics": "none yet",
        "name": "Stacked four-patch",
    }
    assert found.row("count").beside == "168 in all"
    assert found.row("layout").beside == "3 spare"
    assert found.units == 84


# -- what follows ------------------------------------------------------------


def test_a_layout_left_as_usual_follows_the_count() -> None:
    assert quilt_of(count="168").target == Target(9, 9)
    assert quilt_of(count="80").target == Target(6, 6)


def test_a_layout_she_chose_stays_and_says_that_it_is_short() -> None:
    found = fill_in(Answers(said={"count": "80", "layout": "9 x 9"}))
    assert found.quilt is not None
    assert found.quilt.target == Target(9, 9)
    assert found.row("layout").beside == "41 short"
    assert all(line.short == 0 for line in found.layouts if not line.current)
    assert any(line.target == Target(6, 6) for line in found.layouts)


def test_other_piles_follow_the_main_one_until_they_are_said() -> None:
    """One large square and four small ones make four geese; the small ones finish at half."""
    geese = quilt_of(method="flying-geese-four", size="7 1/4", count="10")
    # Common practice: 7 1/4 in and 3 7/8 in for geese that finish at 3 x 6 in.
    assert [(one.size, one.count) for one in geese.starts] == [
        (Fraction(29, 4), 10),
        (Fraction(31, 8), 40),
    ]
    said = {
        "method": "flying-geese-four",
        "size": "7 1/4",
        "count": "10",
        "count small-square": "20",
    }
    assert quilt_of(**said).starts[1].count == 20
    assert units_of(quilt_of(**said)) == 20


def test_a_method_is_found_by_its_name_too() -> None:
    assert quilt_of(method="  rail fence FROM strips").method_id == "rail-fence"


@pytest.mark.parametrize(
    ("said", "units"),
    [("edge to edge", 63), ("sashes 2 in", 63), ("on point", 7 * 9 + 6 * 8)],
)
def test_every_setting(said: str, units: int) -> None:
    quilt = quilt_of(setting=said, layout="7 x 9")
    assert quilt.units_for(quilt.target) == units


def test_sashes_with_all_that_may_go_with_them() -> None:
    sashing = quilt_of(setting="Sashed 2 1/2, a frame and cornerstones").sashing
    assert sashing is not None
    assert sashing.cut == Fraction(5, 2)
    assert sashing.frame
    assert sashing.cornerstones is not None


def test_borders_are_named_or_have_a_name_until_they_are() -> None:
    three = quilt_of(borders="2, 3 1/2 in cream linen; 6").borders
    assert [(one.cut, one.cloth) for one in three] == [
        (2, "inner border"),
        (Fraction(7, 2), "cream linen"),
        (6, "outer border"),
    ]
    assert quilt_of(borders="none").borders == ()


def test_a_comma_in_a_number_is_a_decimal_one() -> None:
    found = fill_in(Answers(Unit.CM, {"borders": "6,5, 12,5 cm"}))
    assert found.row("borders").text == "6.5 cm, 12.5 cm"


def test_a_name_that_is_taken_is_not_offered_and_refused() -> None:
    taken = {"Stacked four-patch", "Stacked four-patch 2"}
    assert fill_in(Answers(), is_taken=taken.__contains__).row("name").text == (
        "Stacked four-patch 3"
    )
    named = fill_in(Answers(said={"name": "Stacked four-patch"}), is_taken=taken.__contains__)
    assert "already" in named.row("name").fault


# -- faults ------------------------------------------------------------------


@pytest.mark.parametrize(
    ("id", "text", "word"),
    [
        ("method", "no such method", "nearest"),
        ("method", "mine.toml", "method file"),
        ("size", "five", "number"),
        ("size", "1/2", "1/2"),
        ("count", "many", "packs"),
        ("count", "0", "at least 1"),
        ("count", "300 packs of 300", "9,999"),
        ("seam", "3", "seam"),
        ("trim", "9", "short of"),
        ("setting", "sideways", "sashes"),
        ("setting", "sashes 1/4", "seam"),
        ("layout", "9", "rows and columns"),
        ("layout", "9 x 300", "200"),
        ("borders", "1/4", "seam"),
        ("borders", "wide", "number"),
        ("finishing", "wash", "finishing stage"),
        ("name", "\u2800", "seen"),
        ("name", "a\x07b", "control character"),
        ("name", "x" * (LONGEST_ANSWER + 1), "fewer"),
    ],
)  # fmt: skip
def test_a_fault_stands_at_its_question(id: str, text: str, word: str) -> None:
    found = faults_of(**{id: text})
    assert list(found) == [id]
    assert word in found[id]
    assert "[[" not in found[id]


def test_several_faults_are_said_at_once() -> None:
    assert set(faults_of(size="five", borders="wide", layout="9")) == {"size", "borders", "layout"}


def test_units_on_point_must_be_square() -> None:
    """Flying geese are twice as wide as high."""
    assert list(faults_of(method="flying-geese-four", setting="on point")) == ["setting"]


def test_a_method_file_of_her_own() -> None:
    text = "not = [ toml"
    found = fill_in(Answers(said={"method": "mine.toml"}), load=lambda name: text.encode())
    assert [row.question.id for row in found.faults] == ["method"]

    from sewalong.piecing.method_files import text_of

    own = (text_of("paired-squares") or "").replace('"paired-squares"', '"my-own"', 1)
    found = fill_in(Answers(said={"method": "mine.toml"}), load=lambda name: own.encode())
    assert found.quilt is not None
    assert found.quilt.method_id == "my-own"
    assert found.quilt.method_text == own


# -- whatever she answers ----------------------------------------------------

_lengths = st.one_of(
    st.sampled_from(["5", "5 in", "2 1/2", "12,7 cm", "½", "1/3", "0.3", "999", "1 mm", "-1", ""]),
    st.fractions(min_value=Fraction(1, 64), max_value=40, max_denominator=64).map(str),
)
_numbers = st.one_of(st.integers(0, 250), st.integers(0, 20_000)).map(str)
_counts = st.one_of(_numbers, st.tuples(_numbers, _numbers).map(" packs of ".join))
_settings = st.one_of(
    st.sampled_from(["on point", "edge to edge", "sashes", "sashes, cornerstones"]),
    _lengths.map(lambda cut: f"sashes {cut}, frame and cornerstones"),
)
_text = st.text(max_size=30)
_SAID = {
    "method": st.one_of(st.sampled_from(method_ids()), _text),
    "size": _lengths,
    "length": _lengths,
    "count": _counts,
    "count small-square": _counts,
    "count light-strip": _counts,
    "seam": _lengths,
    "trim": st.one_of(_lengths, st.tuples(_lengths, _lengths).map(" x ".join)),
    "setting": _settings,
    "layout": st.tuples(_numbers, _numbers).map(" x ".join),
    "borders": st.lists(st.tuples(_lengths, _text).map(" ".join), max_size=14).map(", ".join),
    "finishing": st.lists(st.sampled_from(["layer", "Quilt", "bind", "wash"])).map(", ".join),
    "name": _text,
}
_answers = st.fixed_dictionaries(
    {}, optional={id: st.one_of(said, said, _text) for id, said in _SAID.items()}
)


def is_whole(found: FilledIn) -> None:
    """A quilt that can be made, and written and read; or faults in sentences, at questions asked."""
    if found.quilt is None:
        assert found.faults
        for row in found.faults:
            assert row.fault[-1] in ".?" or "sewalong" in row.fault
        return
    assert not found.faults
    assert why_not_a_plan(found.quilt) == ""
    assert found.layouts[0].target == found.quilt.target


@settings(max_examples=300)
@given(st.sampled_from(Unit), _answers)
def test_whatever_is_answered_is_a_quilt_or_faults(unit: Unit, said: dict[str, str]) -> None:
    answers = Answers(unit)
    for id, text in said.items():
        answers = answers.answered(id, text)
    found = fill_in(answers)
    is_whole(found)
    asked = {row.question.id for row in found.rows}
    assert {row.question.id for row in found.faults} <= asked
    if found.quilt is not None:
        # What stands there means the same when it is typed.
        typed = {row.question.id: row.text for row in found.rows}
        assert fill_in(Answers(unit, typed)).quilt == found.quilt


# -- a quilt under way -------------------------------------------------------


def test_with_nothing_said_the_plan_stays_as_it_is() -> None:
    for id in method_ids():
        plan = quilt_of(method=id)
        found = fill_in(Answers(), under_way=UnderWay(plan, units_of(plan)))
        assert found.quilt == plan
        assert all(row.usual for row in found.rows)


def test_what_is_said_changes_that_and_nothing_else() -> None:
    plan = quilt_of(borders="2 navy, 4 cream")
    under_way = UnderWay(plan, 84)
    found = fill_in(Answers(said={"borders": "2, 3"}), under_way=under_way)
    assert found.quilt is not None
    assert [(str(one.cut), one.cloth) for one in found.quilt.borders] == [
        ("2", "navy"),
        ("3", "cream"),
    ]
    assert found.quilt.starts == plan.starts
    more = fill_in(Answers(said={"count": "200"}), under_way=UnderWay(plan, 80))
    # 32 squares more are 16 units more than the record says there will be.
    assert more.units == 96


def test_a_layout_can_be_a_web_and_stays_one_until_rows_are_said() -> None:
    web = quilt_of(layout="9 x 8 as a web")
    assert (web.target, web.is_web) == (Target(9, 8), True)
    shown = fill_in(Answers(said={"layout": "9 x 8, as a web"})).row("layout").text
    assert shown == "9 × 8 as a web"
    assert quilt_of(layout=shown) == web
    under_way = UnderWay(web, 84)
    for said, is_web in (("8 x 8", True), ("8 x 8 row by row", False), ("8 by 8 by rows", False)):
        found = fill_in(Answers(said={"layout": said}), under_way=under_way)
        assert found.quilt is not None
        assert (found.quilt.target, found.quilt.is_web) == (Target(8, 8), is_web)
    assert {one.text for one in offered(fill_in(Answers(), under_way=under_way), "layout")} >= {
        "9 × 8 as a web"
    }
    assert "9 × 8" in {one.text for one in offered(fill_in(Answers()), "layout")}


def test_a_web_that_cannot_be_is_the_fault_of_its_layout() -> None:
    why = faults_of(layout="9 x 8 as a web", setting="on point")
    assert list(why) == ["layout"]
    assert "Sew it row by row" in why["layout"]
    web = quilt_of(layout="9 x 8 as a web")
    sashed = fill_in(Answers(said={"setting": "sashes 2"}), under_way=UnderWay(web, 84))
    assert sashed.quilt is None
    assert [row.question.id for row in sashed.faults] == ["layout"]
    both = {"setting": "sashes 2", "layout": "9 x 8 row by row"}
    assert fill_in(Answers(said=both), under_way=UnderWay(web, 84)).quilt is not None


def test_the_method_of_a_quilt_under_way_stays() -> None:
    found = fill_in(Answers(said={"method": "hourglass"}), under_way=UnderWay(quilt_of(), 84))
    assert found.quilt is None
    assert "stays" in found.row("method").fault


@settings(max_examples=100)
@given(st.sampled_from(method_ids()), _answers)
def test_whatever_is_changed_is_a_plan_or_faults(id: str, said: dict[str, str]) -> None:
    plan = quilt_of(method=id)
    answers = Answers()
    for question, text in said.items():
        if question != "method":
            answers = answers.answered(question, text)
    found = fill_in(answers, under_way=UnderWay(plan, units_of(plan)))
    is_whole(found)


PILES = "lights 60, mediums 70, darks 38"


def test_fabrics_are_said_in_one_answer_and_shown_with_their_letters() -> None:
    found = fill_in(Answers(said={"fabrics": PILES}))
    row = found.row("fabrics")
    assert (row.text, row.beside) == ("A lights 60, B mediums 70, C darks 38", "168 squares")
    assert found.quilt is not None
    assert [one.value for one in found.quilt.counted_fabrics] == ["light", "medium", "dark"]
    assert fill_in(Answers(said={"fabrics": row.text})).quilt == found.quilt
    for none in ("none yet", "none", "0"):
        assert quilt_of(fabrics=none).fabrics == ()


def test_what_is_not_clear_of_fabrics_is_their_own_fault() -> None:
    for wrong in ("lights", "lights 60 70", "lights 0", "as they are"):
        assert list(faults_of(fabrics=wrong)) == ["fabrics"]


def test_strips_are_not_asked_for_fabrics() -> None:
    asked = {id: [one.id for one in questions(written_method(id))] for id in method_ids()}
    without = {id for id, ids in asked.items() if "fabrics" not in ids}
    assert without == {id for id in asked if written_method(id).starts[0].strip}


def test_another_answer_takes_the_place_of_her_fabrics_and_leaves_the_method_s_names() -> None:
    named = Fabric("A", "indigo print")
    plan = replace(quilt_of(), fabrics=(named, *fabrics_said("B lights 60, C darks 38")))
    under_way = UnderWay(plan, 84)
    assert fill_in(Answers(), under_way=under_way).row("fabrics").text == "B lights 60, C darks 38"
    found = fill_in(Answers(said={"fabrics": "C darks 40"}), under_way=under_way)
    assert found.quilt is not None
    assert [(one.letter, one.squares) for one in found.quilt.fabrics] == [("A", None), ("C", 40)]
    none = fill_in(Answers(said={"fabrics": "none"}), under_way=under_way)
    assert none.quilt is not None
    assert none.quilt.fabrics == (named,)


def test_more_fabrics_than_one_answer_can_say_stay_as_they_are() -> None:
    many = fabrics_said(", ".join(f"cloth {word} 4 #a0522d small print" for word in "abcdefghij"))
    under_way = UnderWay(replace(quilt_of(), fabrics=many), 84)
    row = fill_in(Answers(), under_way=under_way).row("fabrics")
    assert (row.text, row.beside) == ("10 fabrics, as they are", "40 squares")
    again = fill_in(Answers(said={"fabrics": row.text}), under_way=under_way)
    assert again.quilt == under_way.plan


def test_labels_fit_the_form() -> None:
    for id in method_ids():
        for question in questions(written_method(id)):
            assert len(question.label) <= 14
            assert question.ask.endswith("?")
