"""Lower bounds on the weighted waiting, beside every order."""

from collections.abc import Sequence
from itertools import permutations

from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.work.bound import Item, Lateness, SetBound, shared_bound


def plainly(items: Sequence[Item], *, weights: Sequence[int], order: Sequence[int]) -> int:
    """The weighted waiting of an order, item by item."""
    done, clock, waiting = 0, 0, 0
    for each in order:
        clock += sum(item.minutes for item in items if item.of >> each & 1 and not item.of & done)
        done |= 1 << each
        waiting += clock * weights[each]
    return waiting


@st.composite
def cases(draw: st.DrawFn) -> tuple[list[Item], list[int]]:
    number = draw(st.integers(1, 4))
    item = st.builds(Item, minutes=st.integers(0, 9), of=st.integers(1, 2**number - 1))
    weights = st.lists(st.integers(1, 4), min_size=number, max_size=number)
    return draw(st.lists(item, max_size=6)), draw(weights)


@settings(max_examples=60, deadline=None)
@given(cases())
def test_the_bound_by_sets_is_the_least_of_all_orders_and_names_the_first(
    case: tuple[list[Item], list[int]],
) -> None:
    items, weights = case
    sets = SetBound(items, weights=weights)
    least, order = min(
        (plainly(items, weights=weights, order=order), order)
        for order in permutations(range(len(weights)))
    )
    assert (sets.whole, sets.order) == (least, order)
    assert sets.rest[-1] == 0


@settings(max_examples=60, deadline=None)
@given(cases())
def test_the_bound_by_shares_is_never_above_any_order(case: tuple[list[Item], list[int]]) -> None:
    items, weights = case
    bound, order = shared_bound(items, weights=weights)
    assert bound <= SetBound(items, weights=weights).whole
    assert sorted(order) == list(range(len(weights)))


def test_where_nothing_is_shared_both_bounds_are_the_same() -> None:
    items = [Item(minutes=6, of=1), Item(minutes=2, of=2), Item(minutes=5, of=4)]
    assert shared_bound(items, weights=[1, 1, 5]) == (5 * 5 + 7 + 13, (2, 1, 0))
    assert SetBound(items, weights=[1, 1, 5]).whole == 45


def test_work_that_all_wait_for_counts_once_for_each() -> None:
    """Divided it would be less than what each waits for by itself."""
    items = [Item(minutes=6, of=3)]
    assert shared_bound(items, weights=[1, 1])[0] == 12


def test_what_is_late_is_dearer_than_all_waiting() -> None:
    items = (Item(minutes=3, of=1), Item(minutes=2, of=2))
    plain = SetBound(items, weights=(1, 1))
    assert (plain.order, plain.whole) == ((1, 0), 2 + 5)
    late = SetBound(items, weights=(1, 1), lateness=Lateness(due={0: 3}, unit=100))
    assert (late.order, late.whole) == ((0, 1), 3 + 5)
    vain = SetBound(items, weights=(1, 1), lateness=Lateness(due={0: 1}, unit=100))
    assert vain.whole == 2 * 100 + 3 + 5
