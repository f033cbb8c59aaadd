"""What is said to be known of sets is true, whatever is done to the piles.

The oracle is a table with real pieces on it, each of known squares, on which somebody sews, unpicks,
spoils and finds by chance, and looks at the cloth where the program cannot.
"""

from __future__ import annotations

from random import Random

import pytest

from sewalong.piecing.method import Stage, Station
from sewalong.progress.record.fold import fold
from sewalong.progress.record.state import State
from sewalong.progress.sets.finding import sets_with
from sewalong.progress.sets.in_hand import set_in_hand
from sewalong.progress.sets.known_units import units_known, units_unknown
from sewalong.quilt.set_shape import SetShape, set_shape
from tests.progress import every_act as c
from tests.progress.building import Record, go_on, play
from tests.progress.sets.fabrics import sets_of, with_fabrics

Held = tuple[int, int] | None
"""A real piece: its set and its number in the set, None for one of no set."""

METHODS = ("stacked-four-patch", "paired-squares", "hourglass", "nine-patch", "nine-patch-quartered",
           "half-square-eight", "half-square-two", "four-patch")  # fmt: skip


def shape_of(method: str) -> SetShape:
    shape = set_shape(with_fabrics(method))
    assert shape is not None
    return shape


@pytest.mark.parametrize("method", METHODS)
def test_every_unit_of_every_set_is_known_once_all_is_counted(method: str) -> None:
    quilt, shape = with_fabrics(method), shape_of(method)
    sets = sets_of(len(shape.places), 5)
    state, record = play(quilt, c.AcceptSets(sets, "by value"))
    assert state.sets.order(shape.pile) == (1, 2, 3, 4, 5)
    for stage in quilt.method.stages:
        for number in range(1, 6):
            for count in range(len(shape.runs[stage.id])):
                found = set_in_hand(state, stage.id)
                assert found is not None
                assert found.sure
                assert (found.number, found.count) == (number, count + 1)
                assert found.laid.squares == sets[number - 1]
                state = go_on(state, record, c.Count(stage.id))
    known = units_known(state)
    assert [(one.laid.number, one.unit) for one in known] == [
        (number, unit) for number in range(1, 6) for unit in range(shape.units)
    ]
    assert all(one.sure for one in known)
    assert not units_unknown(state)


def test_the_second_four_patch_of_a_stack_lies_on_the_first() -> None:
    state, _ = play(with_fabrics(), c.AcceptSets(sets_of(8, 2)), c.Count("pair", 4),
                    c.Count("sew", 2), c.Count("press", 2))  # fmt: skip
    found = set_in_hand(state, "stack")
    assert found is not None
    assert found.pieces == (("A", "B", "C", "D"), ("E", "F", "G", "H"))


def test_what_was_begun_before_there_were_sets_is_not_known() -> None:
    state, record = play(with_fabrics(), c.Count("pair", 3), c.AcceptSets(sets_of(8, 2)))
    assert set_in_hand(state, "sew") is None
    state = go_on(state, record, c.Count("pair", 4))
    # Three old pairs lie first: one four-patch of two of them, then an old pair before set 1.
    state = go_on(state, record, c.Count("sew"))
    found = set_in_hand(state, "sew")
    assert found is not None
    assert found.number == 1
    assert found.pieces == (("A", "B"), ("C", "D"))


def test_a_lost_order_is_found_by_two_fabrics_and_taken_in_hand() -> None:
    quilt = with_fabrics()
    state, record = play(
        quilt, c.AcceptSets(sets_of(8, 6)), c.Count("pair", 24), c.Count("sew", 12)
    )
    (first, *_) = sets_with(state, ("I", "J"))
    assert (first.laid.number, first.piles, first.together) == (2, (("four-patch", 2),), True)
    state = go_on(state, record, c.TakeUp("press", 5))
    found = set_in_hand(state, "press")
    assert found is not None
    assert (found.number, found.sure) == (5, True)
    state = go_on(state, record, c.Undo())
    found = set_in_hand(state, "press")
    assert found is not None
    assert found.number == 1


def test_one_gone_and_nobody_said_which_makes_its_pile_doubtful_and_no_other() -> None:
    state, record = play(with_fabrics(), c.AcceptSets(sets_of(8, 3)), c.Count("pair", 12),
                         c.Count("sew", 2), c.Spoil("pair", 1, "frayed"))  # fmt: skip
    found = set_in_hand(state, "sew")
    assert found is not None
    assert not found.sure
    found = set_in_hand(state, "press")
    assert found is not None
    assert found.sure
    state = go_on(state, record, c.TakeUp("sew", 2))
    found = set_in_hand(state, "sew")
    assert found is not None
    assert (found.number, found.sure) == (2, True)


def test_of_a_spoiled_piece_of_a_known_set_its_squares_are_not_known_any_more() -> None:
    state, record = play(with_fabrics(), c.AcceptSets(sets_of(8, 3)), c.Count("pair", 12),
                         c.Count("sew", 6), c.Spoil("four-patch", 1, "burnt", set=2))  # fmt: skip
    # Both four-patches of it lie there, so nobody knows which is left.
    assert state.sets.sets[2].lost == tuple(range(8))
    state = go_on(state, record, c.LayOwn(2, tuple("CDEFGHIJ")))
    assert state.sets.sets[2].lost == ()
    assert {letter: n for letter, n in state.sets.gone.items() if n} == dict.fromkeys("ABCD", 1)


def test_of_a_spoiled_piece_with_this_fabric_only_its_own_squares_are_lost() -> None:
    state, _ = play(with_fabrics(), c.AcceptSets(sets_of(8, 3)), c.Count("pair", 12),
                    c.Spoil("pair", 1, "torn", set=1, fabric="B"))  # fmt: skip
    assert state.sets.sets[1].lost == (0, 1), "A and B, which are its first pair"


def test_where_more_are_spoiled_than_are_known_to_be_of_a_set_the_others_may_be_any() -> None:
    state, _ = play(with_fabrics(), c.AcceptSets(sets_of(8, 3)), c.Count("pair", 12),
                    c.Count("sew", 6), c.Spoil("four-patch", 3, "burnt", set=2))  # fmt: skip
    assert len([one for one in state.sets.lying["four-patch"] if one.set == 2]) == 0
    assert [one.sure for one in state.sets.lying["four-patch"]] == [False] * 4


@pytest.mark.parametrize(
    "seed", [*range(4), *(pytest.param(seed, marks=pytest.mark.long) for seed in range(4, 24))]
)
@pytest.mark.parametrize("method", ["stacked-four-patch", "hourglass", "nine-patch"])
def test_whatever_is_done_what_is_said_to_be_sure_is_true(method: str, seed: int) -> None:
    quilt, shape = with_fabrics(method), shape_of(method)
    chance = Random(seed)
    size = len(shape.places)
    state, record = play(quilt, c.AcceptSets(sets_of(size, 96 // size - 1)))
    table = Table(shape, state, chance)
    for _ in range(60):
        state = table.one_thing(state, record)
        table.holds_to(state)
    assert fold(quilt, record) == state


class Table:
    """Real pieces: each is its pile's name for it within a set, (set, index), or None for one that
    is of no set. Somebody takes what the program names; where it names none, what lies first."""

    def __init__(self, shape: SetShape, state: State, chance: Random) -> None:
        self.shape, self.chance = shape, chance
        self.piles: dict[str, list[Held]] = {pile.id: [] for pile in state.quilt.method.piles}
        places = range(len(shape.places))
        self.piles[shape.pile] = [(n, i) for n in state.sets.sets for i in places]
        self.piles[shape.pile] += [None] * (state.piles[shape.pile] - len(self.piles[shape.pile]))

    def one_thing(self, state: State, record: Record) -> State:
        stages = state.quilt.method.stages
        stage = self.chance.choice(stages)
        ready = min(state.piles[t.pile] // t.count for t in stage.takes)
        thing = self.chance.choice(["count"] * 6 + ["unpick", "spoil", "spoil it", "find"])
        if thing == "count" and ready:
            for _ in range(self.chance.randint(1, ready)):
                state = self.count(stage, state, record)
            return state
        if thing == "unpick" and ready and stage.station is not Station.MAT:
            before = {pile: list(there) for pile, there in self.piles.items()}
            state = self.count(stage, state, record)
            self.piles = before
            return go_on(state, record, c.Unpick(stage.id, 1))
        pile = self.chance.choice(stages).makes.pile
        there = self.piles[pile]
        if thing == "find":
            there.append(None)
            return go_on(state, record, c.Find(pile, 1))
        if thing.startswith("spoil") and there:
            spoiled = there.pop(self.chance.randrange(len(there)))
            of = spoiled[0] if thing == "spoil it" and spoiled else 0
            known = {one.set for one in state.sets.lying[pile]}
            return go_on(state, record, c.Spoil(pile, 1, "torn", set=of if of in known else 0))
        return state

    def count(self, stage: Stage, state: State, record: Record) -> State:
        named = set_in_hand(state, stage.id)
        taken: list[Held] = []
        for wanted in stage.takes:
            there = self.piles[wanted.pile]
            mine = self._named(stage, named.number, named.count, wanted.pile) if named else []
            # Somebody looks at the cloth: what is named and there is taken, then what is nobody's.
            order: list[Held] = [one for one in mine if one in there]
            order += [one for one in there if one is None]
            order += [one for one in there if one is not None and one not in mine]
            if named is None:
                order = list(there)
            for one in order[: wanted.count]:
                there.remove(one)
                taken.append(one)
        self.piles[stage.makes.pile] += self._become(state, stage, taken)
        return go_on(state, record, c.Count(stage.id))

    def _named(self, stage: Stage, number: int, count: int, pile: str) -> list[tuple[int, int]]:
        run = self.shape.runs[stage.id][count - 1]
        return [(number, index) for at, index in run.takes if at == pile]

    def _become(self, state: State, stage: Stage, taken: list[Held]) -> list[Held]:
        """What comes of the pieces: that of a set where all are of one run of it, but for squares
        of which it was said that they are gone."""
        known = [one for one in taken if one is not None]
        sets = {number for number, _ in known}
        if len(sets) == 1:
            (number,) = sets
            indexes = {index for _, index in known}
            lost = state.sets.sets[number].lost
            for run in self.shape.runs[stage.id]:
                lacking = [one for one in run.takes if one[1] not in indexes]
                gone = all(at in lost for one in lacking for at in self.shape.squares_of[one])
                if len(lacking) == len(taken) - len(known) and gone:
                    return [(number, index) for _, index in run.makes]
        return [None] * stage.makes.count

    def holds_to(self, state: State) -> None:
        """What is sure in the record lies on the table, but for pieces said to be lost."""
        for pile, pieces in state.sets.lying.items():
            there = self.piles[pile]
            if pile != state.quilt.method.unit:
                assert len(there) == state.piles[pile]
            for one in pieces:
                laid = state.sets.sets.get(one.set)
                held = self.shape.squares_of.get((pile, one.index), ())
                if laid is not None and one.sure and not set(held).issubset(laid.lost):
                    assert (one.set, one.index) in there, (pile, one)
