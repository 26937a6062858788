"""The order of milestones with the least weighted waiting, beside every sequence of batches."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import permutations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.work import waiting
from paradestate.core.work.bound import MOST_BY_SETS
from paradestate.core.work.waiting import Share, Waiting, best_order, waiting_of

Stand = tuple[str, frozenset[int], int]
"""Kind, the milestones that wait for it, minutes."""


def share(kind: str, *of: int, minutes: Fraction | int) -> Share:
    return Share(kind=kind, of=frozenset(of), minutes=Fraction(minutes))


def problem(*shares: Share, weights: Sequence[Fraction | int], set_up: int = 0) -> Waiting:
    return Waiting(shares=shares, weights=tuple(map(Fraction, weights)), set_up=Fraction(set_up))


def of_stands(stands: Sequence[Stand], *, weights: Sequence[int], set_up: int) -> Waiting:
    return problem(
        *(share(kind, *of, minutes=minutes) for kind, of, minutes in stands),
        weights=weights,
        set_up=set_up,
    )


def batches_of(stands: Sequence[Stand]) -> Iterator[list[list[Stand]]]:
    """Every way to cut a sequence of stands into batches of one kind."""
    for joined in product((False, True), repeat=len(stands) - 1):
        batches = [[stands[0]]]
        for stand, is_joined in zip(stands[1:], joined, strict=True):
            if is_joined and stand[0] == batches[-1][-1][0]:
                batches[-1].append(stand)
            elif not is_joined:
                batches.append([stand])
            else:
                break
        else:
            yield batches


def plainly(stands: Sequence[Stand], *, weights: Sequence[int], set_up: int) -> int:
    """The least waiting over every sequence of single stands, however it is cut into batches."""
    return min(
        waiting_with(batches, weights=weights, set_up=set_up)
        for sequence in permutations(stands)
        for batches in batches_of(sequence)
    )


def waiting_with(batches: Sequence[list[Stand]], *, weights: Sequence[int], set_up: int) -> int:
    clock, ends = 0, [0] * len(weights)
    for batch in batches:
        clock += set_up + sum(minutes for _, _, minutes in batch)
        for each in {each for _, of, _ in batch for each in of}:
            ends[each] = clock
    return sum(weight * end for weight, end in zip(weights, ends, strict=True))


@st.composite
def small(draw: st.DrawFn) -> tuple[list[Stand], list[int], int]:
    milestones = draw(st.integers(1, 3))
    stand = st.tuples(
        st.sampled_from("ab"),
        st.frozensets(st.integers(0, milestones - 1), min_size=1),
        st.integers(1, 5),
    )
    stands = draw(st.lists(stand, min_size=1, max_size=5))
    weights = draw(st.lists(st.integers(1, 3), min_size=milestones, max_size=milestones))
    return stands, weights, draw(st.integers(0, 4))


@settings(max_examples=60, deadline=None)
@given(small())
def test_no_sequence_of_batches_waits_less(case: tuple[list[Stand], list[int], int]) -> None:
    stands, weights, set_up = case
    found = best_order(of_stands(stands, weights=weights, set_up=set_up))
    assert found.waiting == plainly(stands, weights=weights, set_up=set_up)
    assert found.is_proved


@st.composite
def many(draw: st.DrawFn) -> Waiting:
    milestones = draw(st.integers(4, 5))
    shares = draw(
        st.lists(
            st.builds(
                Share,
                kind=st.sampled_from("abcd"),
                of=st.frozensets(st.integers(0, milestones - 1), min_size=1),
                minutes=st.fractions(Fraction(1, 4), 6, max_denominator=4),
            ),
            min_size=1,
            max_size=10,
        )
    )
    weights = st.fractions(Fraction(1, 2), 3, max_denominator=3)
    return Waiting(
        shares=tuple(shares),
        weights=tuple(draw(st.lists(weights, min_size=milestones, max_size=milestones))),
        set_up=draw(st.sampled_from((Fraction(0), Fraction(1, 2), Fraction(3)))),
    )


@settings(max_examples=40, deadline=None)
@given(many())
def test_of_all_orders_it_is_the_best_and_of_equal_ones_the_owners(case: Waiting) -> None:
    """Every order of the milestones is tried; `min` keeps the first, the nearest to the owner's."""
    every = permutations(range(len(case.weights)))
    waiting_, order = min((waiting_of(case, order), order) for order in every)
    found = best_order(case)
    assert (found.waiting, found.order, found.is_proved) == (waiting_, order, True)


def test_the_smaller_force_comes_first_and_the_whole_one_after_it() -> None:
    """The check value of section 3.15: 19 hours of 34.5, whatever the owner's order."""
    shares = (share("rifle", 0, 1, minutes=19 * 60), share("rest", 0, minutes=930))
    found = best_order(problem(*shares, weights=(1, 1)))
    assert found.order == (1, 0)
    assert found.waiting == 19 * 60 + Fraction(69, 2) * 60


def test_a_weight_may_turn_the_order_round() -> None:
    shares = (share("a", 0, minutes=10), share("b", 1, minutes=12))
    assert best_order(problem(*shares, weights=(1, 1))).order == (0, 1)
    assert best_order(problem(*shares, weights=(1, 2))).order == (1, 0)


def test_later_work_of_a_kind_is_done_early_where_that_saves_more_than_it_delays() -> None:
    """Two of one minute each, a set-up of 10: together they delay the first milestone by one."""
    shares = (share("a", 0, 1, minutes=1), share("a", 1, minutes=1), share("b", 1, minutes=5))
    found = best_order(problem(*shares, weights=(1, 1), set_up=10))
    assert found.stretch == {("a", 0): 0, ("a", 1): 0, ("b", 1): 1}
    assert found.waiting == 12 + 27
    found = best_order(problem(*shares, weights=(20, 1), set_up=10))
    assert found.stretch == {("a", 0): 0, ("a", 1): 1, ("b", 1): 1}
    assert found.waiting == 20 * 11 + 37


def test_where_a_set_up_saves_as_much_as_it_delays_the_batch_is_done_at_once() -> None:
    shares = (share("a", 0, 1, minutes=1), share("a", 1, minutes=10))
    found = best_order(problem(*shares, weights=(1, 1), set_up=10))
    assert found.stretch == {("a", 0): 0, ("a", 1): 0}


def test_nothing_to_put_in_order_waits_for_nothing() -> None:
    found = best_order(problem(weights=()))
    assert found.order == ()
    assert found.waiting == found.least == 0
    assert best_order(problem(weights=(1, 2), set_up=3)).order == (0, 1)


def far_apart(number: int) -> Waiting:
    """Milestones that share work of each kind two by two, so that set-ups matter."""
    shares = [
        share(f"kind {each % 3}", each, (each + 1) % number, minutes=3 + each % 5)
        for each in range(number)
    ]
    return problem(*shares, weights=[1 + each % 4 for each in range(number)], set_up=7)


def test_a_search_that_ends_early_says_how_much_better_an_order_may_be(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    whole = best_order(far_apart(7))
    monkeypatch.setattr(waiting, "MOST_TRIED", 3)
    found = best_order(far_apart(7))
    assert not found.is_proved
    assert found.least <= whole.waiting <= found.waiting


def test_of_very_many_milestones_the_order_found_lies_above_its_bound() -> None:
    found = best_order(far_apart(14))
    assert sorted(found.order) == list(range(14))
    assert found.least <= found.waiting == waiting_of(far_apart(14), found.order)


def test_very_many_milestones_that_share_nothing_are_in_the_proven_order() -> None:
    """Smith's rule: by minutes over weight."""
    shares = [share(str(each), each, minutes=20 - each) for each in range(15)]
    found = best_order(problem(*shares, weights=[1] * 15))
    assert found.order == tuple(reversed(range(15)))
    assert found.is_proved


@st.composite
def some_are_due(draw: st.DrawFn) -> Waiting:
    case = draw(many())
    due = st.dictionaries(
        st.integers(0, len(case.weights) - 1),
        st.fractions(0, 12, max_denominator=3),
        min_size=1,
        max_size=3,
    )
    return replace(case, due=draw(due), set_up=Fraction(0))


def late_of(case: Waiting, order: Sequence[int]) -> Fraction:
    """Work is done when the first that waits for it comes; lateness milestone by milestone."""
    done: set[int] = set()
    late, clock = Fraction(0), Fraction(0)
    for each in order:
        for place, one in enumerate(case.shares):
            if each in one.of and place not in done:
                done.add(place)
                clock += one.minutes
        late += case.weights[each] * max(Fraction(0), clock - case.due.get(each, clock))
    return late


@settings(max_examples=40, deadline=None)
@given(some_are_due())
def test_no_order_is_less_late_and_of_those_as_late_none_waits_less(case: Waiting) -> None:
    every = permutations(range(len(case.weights)))
    late, waited, order = min((late_of(case, o), waiting_of(case, o), o) for o in every)
    found = best_order(case)
    assert (found.late, found.waiting, found.order) == (late, waited, order)
    assert found.is_proved


def test_what_is_due_comes_first_although_it_waits_for_more_work() -> None:
    shares = (share("a", 0, minutes=10), share("b", 1, minutes=12))
    found = best_order(replace(problem(*shares, weights=(1, 1)), due={1: Fraction(15)}))
    assert (found.order, found.late) == ((1, 0), Fraction(0))
    vain = best_order(replace(problem(*shares, weights=(1, 1), set_up=3), due={1: Fraction(14)}))
    assert (vain.order, vain.late) == ((1, 0), Fraction(1))


def test_of_very_many_milestones_those_that_are_due_are_sought_too() -> None:
    number = MOST_BY_SETS + 1
    shares = [share(str(each), each, minutes=1 + each) for each in range(number)]
    case = problem(*shares, weights=[1] * number)
    found = best_order(replace(case, due={number - 1: Fraction(number)}))
    assert (found.order[0], found.late) == (number - 1, Fraction(0))


def test_lateness_that_nobody_proved_the_least_is_not_said_to_be(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(waiting, "MOST_TRIED", 0)
    shares = (share("a", 0, 1, minutes=9), share("b", 0, minutes=1), share("a", 1, 2, minutes=9))
    case = problem(*shares, share("b", 2, minutes=2), weights=(1, 1, 1), set_up=9)
    found = best_order(replace(case, due={0: Fraction(1), 2: Fraction(2)}))
    assert (found.is_proved, found.least) == (False, Fraction(0))
