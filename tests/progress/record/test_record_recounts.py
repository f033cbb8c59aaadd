"""Counting what is there: by pile and by place, and what the difference is said to be."""

from __future__ import annotations

import pytest

from sewalong.progress.plan.plan import plan
from sewalong.progress.record.joined_rows import joined, unnumbered
from sewalong.progress.record.recount_rules import Accepted, ToCount, can_be_made, to_count, ways
from sewalong.progress.record.state import State
from sewalong.progress.resuming.coming_back import coming_back, facts
from tests.progress import every_act as c
from tests.progress.building import EVENING, Record, a_quilt, everything, go_on, play, refusal

QUILT = a_quilt()
FOUR_ROWS = a_quilt("plain-squares", 16, 4, 4)


def last(state: State, record: Record) -> str:
    return record[-1].event.words(state, record)


def after_recount(counted: int, how: Accepted) -> tuple[State, Record]:
    """60 of 84 pairs sewn into four-patches, which are then counted."""
    return play(
        QUILT, c.Count("pair", 84), c.Count("sew", 30), c.Recount("four-patch", counted, how)
    )


def test_a_plain_recount_stands_and_the_difference_is_kept() -> None:
    state, record = after_recount(28, "stands")
    assert (state.piles["four-patch"], state.recounted) == (28, {"four-patch": -2})
    assert last(state, record) == "Recounted the four-patches: 28, 2 fewer than recorded."


def test_more_made_than_counted_puts_the_stage_right() -> None:
    state, record = after_recount(33, "made")
    assert (state.piles["four-patch"], state.done["sew"]) == (33, 33)
    assert state.piles["pair"] == 84 - 66
    assert state.recounted.get("four-patch", 0) == 0
    assert last(state, record).endswith("3 more than recorded; made but not counted.")


def test_fewer_made_than_counted_gives_the_pieces_back() -> None:
    state, record = after_recount(27, "made")
    assert (state.piles["four-patch"], state.done["sew"], state.piles["pair"]) == (27, 27, 30)
    assert last(state, record).endswith("27, 3 fewer than recorded, never made.")


def test_what_was_found_lost_or_spoiled_goes_where_it_belongs() -> None:
    assert after_recount(31, "found")[0].found == {"four-patch": 1}
    spoiled = after_recount(29, "spoiled")[0]
    assert (spoiled.spoiled, spoiled.spoilage[0].n) == ({"four-patch": 1}, 1)
    lost = after_recount(29, "lost")[0]
    assert (lost.recounted, lost.missing) == ({"four-patch": -1}, {})


def test_missing_pieces_are_a_pile_of_their_own_until_found() -> None:
    state, record = after_recount(26, "missing")
    assert (state.piles["four-patch"], state.missing) == (26, {"four-patch": 4})
    assert last(state, record).endswith("4 fewer than recorded; made, but not found.")
    worries = [
        text for label, text in facts(coming_back(state, record, EVENING)) if label == "Missing"
    ]
    assert worries == ["4 four-patches made, but not found (today)."]
    state = go_on(state, record, c.Find("four-patch", 3))
    assert (state.missing, state.piles["four-patch"]) == ({"four-patch": 1}, 29)
    state = go_on(state, record, c.Find("four-patch", 2))
    assert (state.missing, state.piles["four-patch"]) == ({}, 31)


def test_pieces_bought_are_not_the_missing_ones() -> None:
    state, record = after_recount(26, "missing")
    assert go_on(state, record, c.Find("four-patch", 4, "bought")).missing == {"four-patch": 4}


def test_a_recount_that_finds_more_finds_the_missing_first() -> None:
    state, record = after_recount(26, "missing")
    state = go_on(state, record, c.Recount("four-patch", 29))
    assert state.missing == {"four-patch": 1}


def test_what_is_missing_can_be_given_up() -> None:
    state, record = after_recount(26, "missing")
    state = go_on(state, record, c.Recount("four-patch", 26, "lost"))
    assert (state.missing, state.piles["four-patch"]) == ({}, 26)
    assert "what was missing is given up" in last(state, record)
    assert go_on(state, record, c.Undo()).missing == {"four-patch": 4}


def test_a_shortfall_says_to_look_for_the_missing_first() -> None:
    quilt = a_quilt(pieces=16, rows=2, columns=4)
    state, record = play(quilt, *everything(quilt, "cut-twice"))
    state = go_on(state, record, c.Recount("cut-unit", 4, "missing"))
    assert plan(state).shortfall is not None
    said = [text for _, text in facts(coming_back(state, record, EVENING))]
    assert "Look for what is missing first: 4 cut units made, but not found." in said


REFUSED: list[tuple[c.Recount, str]] = [
    (c.Recount("four-patch", 29, "found"), "so none were found"),
    (c.Recount("four-patch", 31, "lost"), "so none are lost"),
    (c.Recount("four-patch", 31, "missing"), "so none are missing"),
    (c.Recount("four-patch", 90, "made"), "only enough for 12 waits there"),
    (c.Recount("square", 4, "made"), "Squares are not made here"),
    (c.Recount("cut-unit", 2, "made"), "2 cut units cannot be made: each stack gives 4."),
    (c.Recount("four-patch", 43, "made"), "13 four-patches cannot have been made at sew: only"),
    (c.Recount("stack", 1, "made"), "1 stack cannot have been made at stack: nothing waits there."),
    (c.Recount("square", 1, "made"), "Say found or lost instead."),
    (c.Recount("four-patch", -1), "A recount is a number from 0"),
]


@pytest.mark.parametrize(("command", "why"), REFUSED, ids=[why for _, why in REFUSED])
def test_a_difference_that_cannot_be_that_is_refused(command: c.Recount, why: str) -> None:
    state, _ = play(QUILT, c.Count("pair", 84), c.Count("sew", 30))
    assert why in refusal(state, command)


def test_only_the_ways_that_can_be_are_offered() -> None:
    state, _ = play(QUILT, c.Count("pair", 84), c.Count("sew", 30))
    assert ways(state, "four-patch", 0) == ("stands",)
    assert ways(state, "four-patch", 2) == ("stands", "made", "found")
    assert ways(state, "four-patch", 13) == ("stands", "found")
    assert ways(state, "four-patch", -2) == ("stands", "made", "lost", "spoiled", "missing")
    assert ways(state, "square", -2) == ("stands", "lost", "spoiled", "missing")


def in_two_places() -> tuple[State, Record]:
    return play(
        QUILT,
        c.Count("pair", 52),
        c.PutPileAway("pair", "tin", 40),
        c.PutPileAway("pair", "blue bag", 12),
    )


def test_a_pile_in_several_places_says_how_many_lie_where() -> None:
    state, record = in_two_places()
    assert state.where == {"pair": "tin (40), blue bag (12)"}
    assert last(state, record) == "Put 12 pairs away: blue bag."
    assert dict(state.places["pair"]) == {"tin": 40, "blue bag": 12}


def test_what_comes_later_is_not_claimed_to_lie_there() -> None:
    state, record = in_two_places()
    state = go_on(state, record, c.Count("pair", 3))
    assert state.where["pair"] == "tin (40), blue bag (12), 3 not written down"


def test_once_pieces_are_taken_nobody_knows_from_which_place() -> None:
    state, record = in_two_places()
    state = go_on(state, record, c.Count("sew", 2))
    assert state.where["pair"] == "tin (some), blue bag (some)"
    assert [one.recorded for one in to_count(state, "pair")] == [None, None]


def test_the_whole_pile_put_away_lies_in_one_place_again() -> None:
    state, record = in_two_places()
    assert go_on(state, record, c.PutPileAway("pair", "box")).where == {"pair": "box"}


def test_only_one_place_is_counted_and_only_it_changes() -> None:
    state, record = in_two_places()
    state = go_on(state, record, c.Recount("pair", 9, "missing", "blue bag"))
    assert (state.piles["pair"], state.missing) == (49, {"pair": 3})
    assert dict(state.places["pair"]) == {"tin": 40, "blue bag": 9}
    assert last(state, record).startswith("Recounted the pairs – blue bag: 9, 3 fewer")


def test_counting_place_after_place_brings_the_difference_to_light_at_the_last() -> None:
    state, record = in_two_places()
    state = go_on(state, record, c.Count("sew", 2), c.Recount("pair", 37, "stands", "tin"))
    assert (state.piles["pair"], state.recounted.get("pair", 0)) == (48, 0)
    assert [(one.place, one.recorded) for one in to_count(state, "pair")] == [
        ("tin", 37),
        ("blue bag", 11),
    ]
    state = go_on(state, record, c.Recount("pair", 10, "stands", "blue bag"))
    assert (state.piles["pair"], state.recounted["pair"]) == (47, -1)


def test_what_is_found_in_a_tin_nobody_knew_of_is_added() -> None:
    state, record = in_two_places()
    state = go_on(state, record, c.Recount("pair", 4, "found", "cake tin"))
    assert (state.piles["pair"], state.found) == (56, {"pair": 4})
    assert state.where["pair"] == "tin (40), blue bag (12), cake tin (4)"


def test_more_than_there_is_cannot_be_put_away() -> None:
    state, _ = in_two_places()
    assert refusal(state, c.PutPileAway("pair", "box", 53)).startswith("Only 52 pairs lie there")


def four_rows() -> tuple[State, Record]:
    return play(FOUR_ROWS, c.Count("square-up", 16), c.Count("sew-rows", 4))


def test_rows_are_joined_by_their_numbers_in_either_order() -> None:
    state, record = four_rows()
    state = go_on(state, record, c.JoinRows(2, 1), c.JoinRows(3, 4))
    assert state.joints == ((1, 2), (3, 4))
    assert state.done["join-rows"] == 2
    assert joined(state, 4, 3)
    assert not joined(state, 2, 3)
    assert last(state, record) == "Joined rows 3 and 4."


def test_rows_that_are_no_neighbours_or_joined_already_are_refused() -> None:
    state, record = four_rows()
    state = go_on(state, record, c.JoinRows(1, 2))
    assert refusal(state, c.JoinRows(1, 3)) == (
        "Rows 1 and 3 are not neighbours. Nothing was counted. Row 1 goes to 2, row 3 to 2 or 4. "
        "Read both tags again, the right way up."
    )
    assert refusal(state, c.JoinRows(2, 1)).startswith("Rows 1 and 2 are joined already.")
    assert refusal(state, c.JoinRows(4, 9)).startswith("There is no row 9: the rows are numbered")
    assert refusal(state, c.JoinRows(2, 2)).startswith("Rows 2 and 2 are not neighbours.")


def test_seams_counted_without_numbers_mix_with_numbered_ones() -> None:
    state, record = four_rows()
    state = go_on(state, record, c.Count("join-rows"), c.JoinRows(3, 4))
    assert (state.done["join-rows"], unnumbered(state)) == (2, 1)
    state = go_on(state, record, c.Unpick("join-rows"))
    assert (state.joints, unnumbered(state)) == (((3, 4),), 0)
    state = go_on(state, record, c.Unpick("join-rows"))
    assert (state.joints, state.done["join-rows"]) == ((), 0)


def test_no_more_seams_than_rows_allow_can_be_joined_by_number() -> None:
    state, record = four_rows()
    state = go_on(state, record, c.Count("join-rows", 2), c.JoinRows(1, 2))
    assert "is done" in refusal(state, c.JoinRows(2, 3))


def test_a_target_with_fewer_rows_than_are_joined_by_number_is_refused() -> None:
    state, record = four_rows()
    state = go_on(state, record, c.JoinRows(3, 4))
    assert refusal(state, c.ChangeTarget(3, 4)).startswith("Rows 3 and 4 are joined already.")


def test_an_empty_bobbin_puts_the_count_right_as_one_event_that_can_be_undone() -> None:
    state, record = play(QUILT, c.Count("pair", 84), c.Count("sew", 30), c.BobbinEmpty("sew", 10))
    assert (state.done["sew"], state.piles["four-patch"], state.piles["pair"]) == (20, 20, 44)
    assert state.changed["bobbin"] == record[-1].event.at
    assert last(state, record) == (
        "The bobbin was empty: the last 10 four-patches at sew not sewn after all. "
        "A full one went in."
    )
    back = go_on(state, record, c.Undo())
    assert (back.done["sew"], back.piles["pair"], back.changed) == (30, 24, {})


def test_q173_ten_minutes_of_thirty_fed_unsewn_are_a_third_of_the_run() -> None:
    """midnightcrafts.net, Chain piecing blooper: 120 blocks, 10 of 30 minutes unsewn."""
    quilt = a_quilt("four-patch", 240, 5, 6)
    unsewn = 120 * 10 // 30
    first = quilt.method.stages[1].id
    state, record = play(quilt, c.Count(quilt.method.stages[0].id, 120), c.Count(first, 120))
    state = go_on(state, record, c.BobbinEmpty(first, unsewn))
    assert (state.done[first], unsewn) == (80, 40)


def test_a_bobbin_runs_out_only_where_something_is_sewn_and_only_of_what_lies_there() -> None:
    state, _ = play(QUILT, c.Count("pair", 84), c.Count("sew", 3), c.Count("press", 2))
    assert refusal(state, c.BobbinEmpty("press", 1)).startswith("No bobbin runs out at press.")
    assert refusal(state, c.BobbinEmpty("sew", 2)).startswith("Only 1 four-patch from sew lies")


def test_no_more_is_said_to_be_made_than_could_have_been() -> None:
    state, _ = play(QUILT, c.Count("pair", 84), c.Count("sew", 30))

    def can(pile: str, *differences: int) -> list[bool]:
        return [can_be_made(state, pile, difference) for difference in differences]

    assert can("four-patch", 12, 13, -30, -31) == [True, False, True, False]
    assert can("pressed-four-patch", 1, 30, 31, -1) == [True, True, False, False]
    assert can("stack", 1, -1) == [False, False]
    assert can("cut-unit", 2, -2) == [False, False]
    assert can("square", 1, -1) == [False, False]


def test_only_pieces_that_turn_up_are_of_the_missing_ones() -> None:
    state, record = after_recount(26, "missing")
    others: list[tuple[int, Accepted, int]] = [
        (25, "stands", 4),
        (27, "made", 4),
        (25, "spoiled", 4),
        (25, "lost", 0),
        (28, "stands", 2),
        (28, "found", 2),
    ]
    for counted, how, missing in others:
        after = go_on(state, record.copy(), c.Recount("four-patch", counted, how))
        assert after.missing.get("four-patch", 0) == missing


def test_a_pile_in_one_place_is_counted_as_the_pile_it_is() -> None:
    state, _ = play(QUILT, c.PutPileAway("square", "tin", 40))
    assert to_count(state, "square") == (ToCount("square", "", 168),)


def test_what_was_found_here_was_never_made_here() -> None:
    state, _ = play(QUILT, c.Find("stack", 3))
    assert refusal(state, c.Recount("stack", 2, "made")) == (
        "Only 0 stacks counted at stack so far. Say lost, spoiled or missing instead."
    )
