"""What holds after any history whatever: conservation, replay, undo, a plan that agrees."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from sewalong.piecing.method import Method, Stage
from sewalong.progress.acts.decide import decide
from sewalong.progress.plan.plan import plan
from sewalong.progress.record.auditing.audit import audit
from sewalong.progress.record.begun_rows import units_in
from sewalong.progress.record.events import every_kind as e
from sewalong.progress.record.events.counting import can_be_unpicked
from sewalong.progress.record.events.undoing import undone_in
from sewalong.progress.record.fold import fold
from sewalong.progress.record.rows_sewn import rows_wanted
from sewalong.progress.record.state import Standing, State
from sewalong.quilt.quilt import Quilt, Target
from tests.progress import every_act as c
from tests.progress.building import EVENING, MINUTE, Record, a_quilt, do, everything, opening, play
from tests.progress.wandering import Ask, histories, small_quilt, wander

a_while = settings(max_examples=40, deadline=None)


def what_undo_must_restore(state: State) -> tuple[object, ...]:
    """Everything but the sessions, the cautions read and the numbers of the record."""
    return (
        dict(state.piles),
        dict(state.done),
        {pile: n for pile, n in state.spoiled.items() if n},
        {pile: n for pile, n in state.found.items() if n},
        {pile: n for pile, n in state.recounted.items() if n},
        state.spoilage,
        state.target,
        state.route,
        state.where,
        dict(state.places),
        dict(state.missing),
        dict(state.press),
        dict(state.changed),
        state.joints,
        state.begun,
        state.checks,
        state.notes,
        state.settings,
        state.settings_at,
        state.blade_changed,
        state.standing,
        state.aside_reason,
    )


def seams_in(state: State) -> int:
    """Seams between the units of the pieces begun, each over a sash where there are sashes."""
    return sum(n * (units - 1) for n, units in state.begun)


def worth(method: Method, columns: int) -> dict[str, Fraction]:
    """Start pieces in one piece of every pile, with `columns` units in a row."""
    pieces = dict.fromkeys(method.starts, Fraction(1))
    for stage in method.stages:
        taken = sum((pieces[t.pile] * t.count for t in stage.takes), Fraction(0))
        pieces[stage.makes.pile] = taken / stage.makes.count
    pieces["row"] = pieces[method.unit] * columns
    pieces["set-unit"] = pieces["web-unit"] = pieces[method.unit]
    pieces["web-row"] = 2 * pieces[method.unit]
    # What lies between the units is cut from cloth that nobody counted.
    return pieces | dict.fromkeys(BETWEEN, Fraction(0))


BETWEEN = (
    *("standing-sash", "lying-sash", "long-sash", "cornerstone", "sash-row"),
    *("side-triangle", "corner-triangle", "set-side"),
)


@a_while
@given(small_quilt, histories)
def test_every_pile_is_what_opened_was_made_found_and_recounted_less_taken_and_spoiled(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    """Made and taken as the stages were when they were counted: rows can be of other columns."""
    sewn = Counter(opening(quilt).piles)
    for step in wander(quilt, history):
        state = step.after
        for was, now_wanted in zip(step.before.quilt.starts, state.quilt.starts, strict=True):
            sewn[was.pile] += now_wanted.count - was.count
        for stage in step.before.route.stages:
            if stage.id not in state.done:
                continue  # another layout has no such stage
            n = state.done[stage.id] - step.before.done[stage.id]
            if isinstance(stage, Stage):
                sewn[stage.makes.pile] += n * stage.makes.count
            for taken in stage.takes:
                sewn[taken.pile] -= n * taken.count
        sewn[quilt.method.unit] += units_in(step.before.begun) - units_in(state.begun)
        if step.before.quilt.sashing is not None:
            sewn["standing-sash"] += seams_in(step.before) - seams_in(state)
        for pile, now in state.piles.items():
            said = state.found.get(pile, 0) + state.recounted.get(pile, 0)
            assert sewn[pile] + said - state.spoiled.get(pile, 0) == now


@a_while
@given(small_quilt, histories)
def test_no_square_comes_or_goes_unsaid(quilt: Quilt, history: Sequence[Ask]) -> None:
    """Counted in start pieces, straight from the events: what the tallies say is not used."""
    record = Record(quilt)
    state = opening(quilt)
    for step in wander(quilt, history, record):
        if step.after.quilt.method != quilt.method:
            # Another seam gives another number of pieces of a strip: what was cut before is worth
            # other parts of one than what is cut from now on.
            del record[len(record) - len(step.new) :]
            break
        state = step.after
    pieces = worth(quilt.method, quilt.target.columns)
    undone = undone_in(record)
    there = sum((pieces[pile] * n for pile, n in opening(quilt).piles.items()), Fraction(0))
    for recorded in record:
        if recorded.seq in undone:
            continue
        match recorded.event:
            case e.Found(pile=pile, n=n):
                there += pieces[pile] * n
            case e.Spoiled(pile=pile, n=n):
                there -= pieces[pile] * n
            case e.Recounted(how="made"):
                pass
            case e.Recounted(pile=pile, recorded=was, counted=is_now):
                there += pieces[pile] * (is_now - was)
            case e.TargetChanged(columns=columns):
                pieces = worth(quilt.method, columns)
            case e.PlanChanged(was=was_planned, now=planned):
                for start in planned.get("starts", ()):
                    there += pieces[start["pile"]] * start["count"]
                for start in was_planned.get("starts", ()):
                    there -= pieces[start["pile"]] * start["count"]
                if "target" in planned:
                    pieces = worth(quilt.method, planned["target"]["columns"])
    held = pieces[quilt.method.unit] * units_in(state.begun)
    assert sum(pieces[pile] * n for pile, n in state.piles.items()) + held == there


@a_while
@given(small_quilt, histories)
def test_no_pile_and_no_stage_falls_below_nothing(quilt: Quilt, history: Sequence[Ask]) -> None:
    for step in wander(quilt, history):
        state = step.after
        assert min(state.piles.values()) >= 0
        assert min(state.done.values()) >= 0
        if "row" in state.route.piles and state.done.get("join-rows"):
            assert state.piles["row"] > state.done["join-rows"]
        for top in state.route.of_the_top:
            assert state.done[top.id] <= top.steps
        for earlier, later in zip(state.route.of_the_top, state.route.of_the_top[1:], strict=False):
            if (earlier.id, later.id) == ("add-sashes", "join-rows"):
                assert state.done[later.id] <= state.done[earlier.id]
            else:
                assert state.done[earlier.id] == earlier.steps or not state.done[later.id]


@a_while
@given(small_quilt, histories)
def test_no_place_holds_more_than_the_pile_and_nothing_is_missing_that_was_not(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    for step in wander(quilt, history):
        state = step.after
        for pile, places in state.places.items():
            assert sum(held or 0 for held in places.values()) <= state.piles[pile]
            assert state.where[pile]
        assert min(state.missing.values(), default=1) >= 1


@a_while
@given(small_quilt, histories)
def test_rows_joined_by_number_are_neighbours_joined_once_and_never_more_than_the_seams(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    for step in wander(quilt, history):
        joints = step.after.joints
        assert len(set(joints)) == len(joints) <= step.after.done.get("join-rows", 0)
        assert all(
            second == first + 1 <= rows_wanted(step.after) and first >= 1
            for first, second in joints
        )


@a_while
@given(small_quilt, histories)
def test_replaying_the_record_gives_the_state_reached_step_by_step(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    record = Record(quilt)
    for step in wander(quilt, history, record):
        assert fold(quilt, record) == step.after
    assert [r.seq for r in record] == list(range(1, len(record) + 1))
    assert audit(quilt, record) is None


@a_while
@given(small_quilt, histories)
def test_a_refusal_is_one_sentence_and_changes_nothing(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    for step in wander(quilt, history):
        if step.refused is not None:
            assert step.after is step.before
            assert step.refused.endswith((".", "?"))


@a_while
@given(small_quilt, histories)
def test_undo_restores_what_was_before_the_last_thing_done(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    record = Record(quilt)
    for step in wander(quilt, history, record):
        if any(r.event.undoable for r in step.new):
            undone = do(step.after, record.copy(), c.Undo(), step.at)
            assert what_undo_must_restore(undone) == what_undo_must_restore(step.before)


@a_while
@given(small_quilt, histories)
def test_undoing_again_and_again_leads_back_to_the_beginning(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    record = Record(quilt)
    state, at = opening(quilt), None
    for step in wander(quilt, history, record):
        state, at = step.after, step.at
    assert at is not None
    while state.last_act:
        at += MINUTE
        state = do(state, record, c.Undo(), at)
    assert what_undo_must_restore(state) == what_undo_must_restore(opening(quilt))
    assert [r.seq for r in record] == list(range(1, len(record) + 1))


@a_while
@given(small_quilt, histories, st.data())
def test_what_was_undone_is_put_back_as_it_was_step_by_step(
    quilt: Quilt, history: Sequence[Ask], data: st.DataObject
) -> None:
    """So many undone in a row and as many put back, and between them what is no act: a closing."""
    record = Record(quilt)
    state, at = opening(quilt), EVENING
    for step in wander(quilt, history, record):
        state, at = step.after, step.at
    before: list[State] = []
    for _ in range(data.draw(st.integers(1, 12), "undone")):
        if state.last_act:
            before.append(state)
            state = do(state, record, c.Undo(), at)
    if state.session is not None and data.draw(st.booleans(), "closed between"):
        all_off = dict.fromkeys(("iron", "blade", "machine", "pins"), "yes")
        state = do(state, record, c.CloseSession(all_off), at)
    while before:
        state = do(state, record, c.Redo(), at)
        was = before.pop()
        assert what_undo_must_restore(state) == what_undo_must_restore(was)
        assert state.last_act == was.last_act
    assert audit(quilt, record) is None
    assert state == fold(quilt, record)


@a_while
@given(small_quilt, histories)
def test_putting_back_and_undoing_it_again_are_each_others_opposite(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    record = Record(quilt)
    for step in wander(quilt, [*history, *[Ask("undo", 0, 0, 1)] * 3], record):
        if step.after.last_undone:
            so_far = record.copy()
            back = do(step.after, so_far, c.Redo(), step.at)
            again = do(back, so_far, c.Undo(), step.at)
            assert what_undo_must_restore(again) == what_undo_must_restore(step.after)
            assert again.last_undone == step.after.last_undone
            assert audit(quilt, so_far) is None


@a_while
@given(small_quilt, histories)
def test_whatever_is_done_ends_what_can_be_put_back(quilt: Quilt, history: Sequence[Ask]) -> None:
    for step in wander(quilt, history):
        if any(one.event.undoable for one in step.new):
            assert step.after.last_undone == ()
        elif not isinstance(step.command, c.Undo | c.Redo):
            assert step.after.last_undone == step.before.last_undone


def units_forward(state: State) -> int:
    """Units there would be if all that lies there were simply sewn through to the end.

    Right for methods in which no pile is wanted by two stages, and never too many.
    """
    stock = dict(state.piles)
    for stage in state.quilt.method.stages:
        n = min(stock[t.pile] // t.count for t in stage.takes)
        for t in stage.takes:
            stock[t.pile] -= n * t.count
        stock[stage.makes.pile] += n * stage.makes.count
    in_rows = stock.get("set-unit", 0) + stock.get("row", 0) * state.target.columns
    in_rows += 2 * stock.get("web-row", 0) + stock.get("web-unit", 0)
    return stock[state.quilt.method.unit] + in_rows + units_in(state.begun)


def one_road(method: Method) -> bool:
    """Whether no pile is wanted by two stages."""
    wanted = [t.pile for stage in method.stages for t in stage.takes]
    return len(wanted) == len(set(wanted))


@a_while
@given(small_quilt, histories)
def test_looking_backward_and_sewing_forward_agree_on_the_units_there_can_be(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    for step in wander(quilt, history):
        now = plan(step.after)
        forward = units_forward(step.after)
        assert now.units.possible >= forward
        if one_road(quilt.method):
            assert now.units.possible == forward
        assert (now.shortfall is None) == (now.units.possible >= step.after.units_wanted)
        assert now.units.spare == max(0, now.units.possible - step.after.units_wanted)
        assert now.units.to_go == max(0, step.after.units_wanted - now.units.made)


@a_while
@given(small_quilt, histories)
def test_a_shortfall_says_exactly_what_would_mend_it(quilt: Quilt, history: Sequence[Ask]) -> None:
    so_far = Record(quilt)
    for step in wander(quilt, history, so_far):
        state = step.after
        short = plan(state).shortfall
        if short is None or state.standing is not Standing.IN_PROGRESS:
            continue
        assert short.pieces
        assert short.units > 0
        record = so_far.copy()
        for bought in short.pieces:
            one_less = state
            if bought.count > 1:
                one_less = do(state, record.copy(), c.Find(bought.pile, bought.count - 1), step.at)
            assert plan(one_less).shortfall is not None
        for bought in short.pieces:
            state = do(state, record, c.Find(bought.pile, bought.count, "bought"), step.at)
        mended = plan(state)
        assert mended.shortfall is None
        assert mended.units.spare == short.spare_after
        for layout in short.layouts:
            assert step.after.quilt.units_for(layout) <= plan(step.after).units.possible
            assert layout != state.target


@a_while
@given(small_quilt, histories)
def test_the_suggestion_can_be_followed_and_is_needed(quilt: Quilt, history: Sequence[Ask]) -> None:
    for step in wander(quilt, history):
        state = step.after
        now = plan(state)
        possible = [line for line in now.lines if line.to_do and line.ready]
        if now.suggestion is None:
            assert not possible or state.standing is not Standing.IN_PROGRESS
        else:
            line = now.line(now.suggestion.stage)
            assert line.to_do > 0
            assert line.ready > 0
            assert line.waiting > 0
            decide(state, c.ReadCaution(line.stage.id), step.at)


@a_while
@given(small_quilt, histories)
def test_no_layout_offered_and_nothing_offered_for_unpicking_is_refused(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    for step in wander(quilt, history):
        state, now = step.after, plan(step.after)
        if state.standing is not Standing.IN_PROGRESS:
            continue
        for layout in now.shortfall.layouts if now.shortfall else ():
            decide(state, c.ChangeTarget(layout.rows, layout.columns), step.at)
        for line in now.lines:
            if can_be_unpicked(state, line.stage):
                decide(state, c.Unpick(line.stage.id, 1), step.at)


def test_a_layout_with_fewer_rows_than_are_joined_by_number_is_not_offered() -> None:
    quilt = a_quilt(rows=9, columns=1, pieces=24)
    three_rows = [*everything(quilt), c.Count("sew-rows", 3), c.Spoil("unit", 4, "coffee")]
    apart = plan(play(quilt, *three_rows)[0]).shortfall
    joined = plan(play(quilt, *three_rows, c.JoinRows(8, 9))[0]).shortfall
    assert apart is not None
    assert joined is not None
    assert apart.layouts == (Target(8, 1),)
    assert joined.layouts == ()


@a_while
@given(small_quilt, histories)
def test_the_plan_is_complete_exactly_when_nothing_is_left_to_do(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    for step in wander(quilt, history):
        now = plan(step.after)
        assert now.complete == (not any(line.to_do for line in now.lines))
        assert now.complete == (now.work_done == 1)
        assert 0 <= now.work_done <= 1
        if now.complete:
            assert now.units.to_go == 0
            assert now.shortfall is None
            assert now.suggestion is None
        for line in now.lines:
            assert line.needed >= line.to_do >= 0


@a_while
@given(small_quilt, histories)
def test_counting_what_is_needed_never_lowers_the_work_done(
    quilt: Quilt, history: Sequence[Ask]
) -> None:
    for step in wander(quilt, history):
        if not isinstance(step.command, c.Count) or step.refused is not None:
            continue
        before, after = plan(step.before), plan(step.after)
        if step.command.n <= before.line(step.command.stage).to_do:
            assert after.work_done > before.work_done
            line = after.line(step.command.stage)
            assert line.to_do == before.line(step.command.stage).to_do - step.command.n
            assert line.needed == before.line(step.command.stage).needed


@a_while
@given(small_quilt)
def test_following_the_suggestions_completes_the_quilt_or_ends_at_the_shortfall(
    quilt: Quilt,
) -> None:
    short = plan(opening(quilt)).shortfall
    end = opening(quilt)
    for step in wander(quilt, [Ask("count on as suggested", 0, 0, 1)] * 40):
        assert step.refused is None or step.caution_first
        end = step.after
    now = plan(end)
    assert now.complete == (short is None)
    assert now.shortfall == short or short is not None
    if now.complete:
        for line in now.lines:
            assert line.needed == line.done


@a_while
@given(small_quilt, st.integers(1, 5))
def test_what_is_needed_from_nothing_is_the_target_brought_back_through_the_stages(
    quilt: Quilt, columns: int
) -> None:
    """Each stage needs the counts its taker needs, rounded up: worked out here again."""
    now = plan(opening(quilt))
    wanted = {"row": quilt.target.rows}
    if quilt.is_on_point:
        # By hand: whole ones along the edges and those between; a triangle for each gap in an edge.
        rows, across = quilt.target.rows, quilt.target.columns
        units = rows * across + (rows - 1) * (across - 1)
        wanted = {"set-unit": units, "set-side": 2 * (rows - 1) + 2 * (across - 1)}
    if quilt.is_web:
        # Every row begins with two units, and all others are sewn on one by one.
        rows, across = quilt.target.rows, quilt.target.columns
        wanted = {"web-row": rows, "web-unit": rows * across - 2 * rows}
    for top in opening(quilt).route.of_the_top:
        wanted |= {t.pile: top.steps * t.count for t in top.takes}
    for stage in reversed(opening(quilt).route.of_pieces):
        assert isinstance(stage, Stage)
        counts = -(-wanted.get(stage.makes.pile, 0) // stage.makes.count)
        assert now.line(stage.id).needed == counts
        for t in stage.takes:
            wanted[t.pile] = wanted.get(t.pile, 0) + counts * t.count
