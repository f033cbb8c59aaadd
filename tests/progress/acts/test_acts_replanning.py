"""The plan changes after the start: everything but the method, unless it contradicts what is sewn."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from sewalong.lengths import Unit
from sewalong.piecing.method_files import text_of
from sewalong.progress.record.events.every_kind import PlanChanged, Recorded
from sewalong.progress.record.events.replanning import planned
from sewalong.progress.record.fold import fold
from sewalong.progress.record.state import State
from sewalong.quilt.choices import Choices, Fabric
from sewalong.quilt.derived import derived
from sewalong.quilt.quilt import Border, Lot, Quilt, Target, pile_of_lots
from sewalong.quilt.size import Size
from sewalong.quilt.unit_size import decided_unit
from tests.progress import every_act as c
from tests.progress.building import EVENING, HOUR, Record, a_quilt, do, opening
from tests.progress.wandering import another_plan

QUILT = replace(
    a_quilt(pieces=64, rows=4, columns=4, borders=2, finishing=("layer", "quilt", "bind")),
    fabrics=(Fabric("A", "indigo print"),),
)
Change = Callable[[Quilt], Quilt]


def after(*acts: c.Act, quilt: Quilt = QUILT) -> tuple[State, Record]:
    """The quilt after these acts, cautions read on the way."""
    state, record = opening(quilt), Record(quilt)
    for act in acts:
        if isinstance(act, c.Count | c.JoinRows):
            state = do(state, record, c.ReadCaution(getattr(act, "stage", "join-rows")), EVENING)
        state = do(state, record, act, EVENING)
    return state, record


def change(state: State, record: Record, into: Change, *, as_sewn: bool = False) -> State:
    """The plan changed into what `into` makes of it."""
    was = planned(state)
    return do(state, record, c.ChangePlan(was, into(was), as_sewn), EVENING + HOUR)


def with_(**parts: object) -> Change:
    return lambda was: replace(was, **parts)


def with_cut(number: int, cut: Fraction) -> Change:
    def into(was: Quilt) -> Quilt:
        borders = list(was.borders)
        borders[number - 1] = replace(borders[number - 1], cut=cut)
        return replace(was, borders=tuple(borders))

    return into


def with_squares(*lots: Lot) -> Change:
    return with_(starts=(pile_of_lots("square", lots),))


PAIRED = (c.Count("pair", 20),)
PATCHED = (*PAIRED, c.Count("sew", 8))
TO_ROWS = (
    c.Count("pair", 32),
    c.Count("sew", 16),
    c.Count("press", 16),
    c.Count("stack", 8),
    c.Count("sew-around", 8),
    c.Count("cut-twice", 8),
    c.Count("press-open", 32),
    c.Count("sew-rows", 4),
)
JOINED = (*TO_ROWS, c.Count("join-rows", 3))
BORDERED = (*JOINED, c.Count("add-borders", 5))
LAYERED = (*JOINED, c.Count("add-borders", 8), c.Count("layer", 1))
BOUND = (*LAYERED, c.Count("quilt", 4), c.Count("bind", 1))

SAID: tuple[tuple[str, Change, str], ...] = (
    ("border", with_cut(2, Fraction(4)), "border 2: 3 in → 4 in"),
    ("seam", with_(seam=Fraction(3, 8)), "seam: 1/4 in → 3/8 in"),
    ("square size", with_squares(Lot(Fraction(39, 8), 64)), "squares: 5 in → 4 7/8 in"),
    ("more squares", with_squares(Lot(Fraction(5), 80)), "squares: 64 → 80"),
    (
        "squares of another size",
        with_squares(Lot(Fraction(5), 64), Lot(Fraction(9, 2), 12)),
        "12 squares of 4 1/2 in added",
    ),
    ("packs", with_squares(Lot(Fraction(5), 84, 2)), "squares: 64 → 84 in 2 packs"),
    ("one size of two", with_squares(Lot(Fraction(5), 60), Lot(Fraction(9, 2), 12)),
     "12 squares of 4 1/2 in added; squares of 5 in: 64 → 60"),
    ("trim", with_(trim=Size.square(Fraction(6))), "units trimmed to: as the method gives them → 6 in"),
    ("a border more", lambda was: replace(was, borders=(*was.borders, Border(Fraction(5, 2), "navy"))),
     "border 3 added: 2 1/2 in of navy"),
    ("a border less", lambda was: replace(was, borders=was.borders[:1]), "border 2 left out (3 in of plain)"),
    ("cloth of a border", lambda was: replace(was, borders=(Border(Fraction(3), "oat"), was.borders[1])),
     "cloth of border 1: plain → oat"),
    ("colour", lambda was: replace(was, borders=(replace(was.borders[0], colour="#f3ead8"), was.borders[1])),
     "colour of border 1: none → #f3ead8"),
    ("fabrics", with_(fabrics=(Fabric("A", "navy dot"),)), "fabric A: indigo print → navy dot"),
    ("a fabric named", with_(fabrics=(Fabric("A", "indigo print"), Fabric("B", "oat"))),
     "fabric B: no name → oat"),
    ("finishing", with_(finishing=("bind",)), "finishing: layer, quilt, bind → bind"),
    ("name", with_(name="Harbour lights"), "name: test quilt → Harbour lights"),
    ("layout", with_(target=Target(3, 5)), "layout: 4 × 4 → 3 × 5"),
    ("cloth", with_(choices=Choices(usable=Fraction(42))), "usable width of cloth: 40 in → 42 in"),
    ("binding", with_(choices=Choices(binding=Fraction(9, 4))), "binding strips: 2 1/2 in → 2 1/4 in"),
    ("corners", with_(choices=Choices(corners="mitred")), "border corners: sides first → mitred"),
    ("own seam", with_(choices=Choices(own_seam=Fraction(17, 64))), "her own seam: not said → 17/64 in"),
    ("unit", with_(unit=Unit.CM), "works in: inch → cm"),
    ("notes", with_(notes="For the\nsea room."), "notes written anew"),
)  # fmt: skip


@pytest.mark.parametrize(("what", "into", "said"), SAID, ids=[one[0] for one in SAID])
def test_a_change_is_one_event_in_words_and_all_follows_it(
    what: str, into: Change, said: str
) -> None:
    state, record = after()
    was = planned(state)
    state = change(state, record, into)
    assert planned(state) == into(was)
    (event,) = [one.event for one in record if one.event.kind == "plan changed"]
    assert event.words(state, record) == f"Plan changed: {said}."
    undone = do(state, record, c.Undo(), EVENING + HOUR)
    assert planned(undone) == was
    assert undone.piles == opening(QUILT).piles


@given(st.integers(0, 16), st.integers(-20, 20), st.booleans())
def test_any_change_gives_the_plan_asked_for_or_changes_nothing(
    place: int, n: int, sewn: bool
) -> None:
    state, record = after(*(PATCHED if sewn else ()))
    was = planned(state)
    wanted, known = another_plan(was, place, n), len(record)
    now = None
    with suppress(c.Refused):
        now = do(state, record, c.ChangePlan(was, wanted), EVENING + HOUR)
    if now is None:
        assert len(record) == known
        return
    assert planned(now) == wanted
    more = sum(start.count for start in wanted.starts) - sum(start.count for start in was.starts)
    assert now.piles["square"] == state.piles["square"] + more
    assert {k: v for k, v in now.piles.items() if v and k != "square"} == {
        k: v for k, v in state.piles.items() if v and k != "square"
    }


def test_the_words_of_an_old_change_stay_whatever_is_changed_later() -> None:
    """Parts of two times need not hold together: 2 in is no trim size once seams are 1 in."""
    state, record = after(quilt=replace(QUILT, trim=Size.square(Fraction(2))))
    state = change(state, record, with_(trim=Size.square(Fraction(4))))
    state = change(state, record, with_(seam=Fraction(1)))
    assert record[0].event.words(state, record) == "Plan changed: units trimmed to: 2 in → 4 in."


REFUSED: tuple[tuple[str, tuple[c.Act, ...], Change, str], ...] = (
    ("seam, four-patches sewn", PATCHED, with_(seam=Fraction(3, 8)),
     "8 four-patches are made already, for units of 6 3/8 in unfinished; by the new plan they would "
     "be 6 in. Take them apart first and count that as unpicked, or have all trimmed to 6 in or less "
     "in the same change, or say that they were made by the new plan from the first."),
    ("square size, pairs laid", PAIRED, with_squares(Lot(Fraction(9, 2), 64)),
     "20 pairs are made already, for units of 6 3/8 in unfinished; by the new plan they would be "
     "5 5/8 in."),
    ("seam, units cut", TO_ROWS[:-2], with_(seam=Fraction(3, 8)),
     "What is cut cannot be taken apart again: have all trimmed to 6 in or less"),
    ("seam, rows sewn", TO_ROWS, with_(seam=Fraction(3, 8)),
     "4 rows are sewn already with units of 6 3/8 in. Unpick them first, or keep that size."),
    ("trim, rows sewn", JOINED, with_(trim=Size.square(Fraction(6))),
     "That would have to be unpicked first: 3 seams at join rows, then 4 rows."),
    ("fewer squares than were used", PAIRED, with_squares(Lot(Fraction(5), 30)),
     "34 squares fewer cannot be: of the squares only 24 squares are left"),
    ("a square fewer than was used", (c.Count("pair", 32),), with_squares(Lot(Fraction(5), 63)),
     "1 square fewer cannot be: of the squares only 0 squares are left"),
    ("a sewn border's width", BORDERED, with_cut(1, Fraction(4)),
     "Border 1 is on the top already, 4 of its 4 sides. Unpick the last 5 sides first, or keep it at "
     "3 in."),
    ("a border begun", BORDERED, with_cut(2, Fraction(4)),
     "Border 2 is on the top already, 1 of its 4 sides. Unpick that side first, or keep it at 3 in."),
    ("a sewn border left out", BORDERED, lambda was: replace(was, borders=was.borders[:1]),
     "Border 2 is on the top already, 1 of its 4 sides. Unpick that side first, or keep it."),
    ("corners", BORDERED, with_(choices=Choices(corners="mitred")),
     "Borders are sewn on already with the corners “sides first”. Unpick their 5 sides first"),
    ("a border after layering", LAYERED,
     lambda was: replace(was, borders=(*was.borders, Border(Fraction(4), "navy"))),
     "The top has been through layer already, and a border is sewn on before that."),
    ("a finishing stage done", LAYERED, with_(finishing=("bind",)),
     "1 sandwich at layer is counted already. Unpick that first, or keep the stage."),
    ("binding", BOUND, with_(choices=Choices(binding=Fraction(9, 4))),
     "1 of 4 sides are bound already with the strips as they were."),
    ("layout, rows sewn", TO_ROWS, with_(target=Target(4, 3)), "4 rows of 4 are sewn already."),
    ("method", (), with_(method_id="hourglass"), "The method of a quilt under way stays as it is"),
    ("what its method says", (), with_(method_text=text_of("paired-squares")),
     "The method of a quilt under way stays as it is"),
    ("nothing", (), with_(), "The plan is so already. Nothing was changed."),
    ("a seam that leaves nothing", (), with_(seam=Fraction(3)), "seam"),
    ("a border no wider than its seams", (), with_cut(1, Fraction(1, 2)),
     "A border cut at 1/2 in is used up by its seam allowances."),
    ("a trim out of reach", (), with_(trim=Size.square(Fraction(9))), "short of 9 in"),
)  # fmt: skip


@pytest.mark.parametrize(("what", "acts", "into", "said"), REFUSED, ids=[one[0] for one in REFUSED])
def test_what_contradicts_what_is_sewn_is_refused_with_what_to_unpick(
    what: str, acts: tuple[c.Act, ...], into: Change, said: str
) -> None:
    state, record = after(*acts)
    known = len(record)
    with pytest.raises(c.Refused) as refused:
        change(state, record, into)
    assert said in str(refused.value)
    assert len(record) == known


ALLOWED: tuple[tuple[str, tuple[c.Act, ...], Change], ...] = (
    ("a seam, nothing sewn but laid", PAIRED, with_(seam=Fraction(3, 8))),
    ("larger squares beside, units under way", PATCHED,
     with_squares(Lot(Fraction(5), 64), Lot(Fraction(11, 2), 20))),
    ("a seam, all trimmed to what both reach", PATCHED,
     with_(seam=Fraction(3, 8), trim=Size.square(Fraction(6)))),
    ("corners, no border on", JOINED, with_(choices=Choices(corners="mitred"))),
    ("a border more, joined but not layered", JOINED,
     lambda was: replace(was, borders=(*was.borders, Border(Fraction(4), "navy")))),
    ("the border not begun", (*JOINED, c.Count("add-borders", 4)), with_cut(2, Fraction(4))),
    ("the cloth of a sewn border", BORDERED,
     lambda was: replace(was, borders=(Border(Fraction(3), "oat"), was.borders[1]))),
    ("a finishing stage not begun", LAYERED, with_(finishing=("layer", "quilt"))),
    ("the name when all is bound", BOUND, with_(name="Harbour lights")),
    ("margin when layered", LAYERED, with_(choices=Choices(margin=Fraction(3)))),
)  # fmt: skip


@pytest.mark.parametrize(("what", "acts", "into"), ALLOWED, ids=[one[0] for one in ALLOWED])
def test_what_contradicts_nothing_is_taken(
    what: str, acts: tuple[c.Act, ...], into: Change
) -> None:
    state, record = after(*acts)
    was = planned(state)
    now = change(state, record, into)
    assert planned(now) == into(was)
    assert now.done == {stage.id: state.done.get(stage.id, 0) for stage in now.route.stages}


def test_what_was_sewn_so_all_along_can_be_said() -> None:
    state, record = after(*TO_ROWS)
    now = change(state, record, with_(seam=Fraction(3, 8)), as_sewn=True)
    assert now.quilt.seam == Fraction(3, 8)
    said = record[-1].event.words(now, record)
    assert said == "Plan changed: seam: 1/4 in → 3/8 in. What is made already was made so."


def test_an_old_change_reads_on_whatever_the_rules_of_a_plan_have_become() -> None:
    """No quilt can be without a name today."""
    changed = PlanChanged(at=EVENING, session=0, was={"name": QUILT.name}, now={"name": ""})
    state = fold(QUILT, [Recorded(1, changed)])
    assert state.quilt == replace(QUILT, name="")
    assert changed.words(state, []) == "Plan changed: name: test quilt → ."


def test_a_seam_planned_anew_has_to_be_proved_anew() -> None:
    from sewalong.progress.measuring.proof import ProofStanding, proof

    quilt = derived(QUILT)
    four_patch = Fraction(str(quilt.piles["four-patch"].size[0]))
    state, record = after(*PATCHED, c.Measure("four-patch", (four_patch,)))
    assert proof(state, EVENING).standing is ProofStanding.FRESH
    state = change(state, record, with_(seam=Fraction(3, 8)), as_sewn=True)
    found = proof(state, EVENING)
    assert found.standing is ProofStanding.STALE
    assert found.why == "the plan has another seam"


def test_units_follow_the_smallest_squares() -> None:
    small = replace(QUILT, starts=(replace(QUILT.starts[0], size=Fraction(9, 2)),))
    state, record = after()
    state = change(state, record, with_squares(Lot(Fraction(5), 64), Lot(Fraction(9, 2), 12)))
    assert state.piles["square"] == 76
    unit = decided_unit(state.quilt, derived(state.quilt))
    assert unit == decided_unit(small, derived(small))


def test_a_change_from_a_plan_that_is_no_longer_so_is_refused() -> None:
    state, record = after()
    was = planned(state)
    state = change(state, record, with_cut(1, Fraction(4)))
    with pytest.raises(c.Refused, match="changed in another window"):
        do(state, record, c.ChangePlan(was, with_cut(1, Fraction(5))(was)), EVENING + HOUR)
