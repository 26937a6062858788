"""What remains of a plan once some of it was refused."""

from collections.abc import Mapping

import pytest

from paradestate.core.game import Purchase
from paradestate.core.support.offer import Offer
from paradestate.core.support.remainder import needed_before, remaining


def offer(
    name: str,
    *,
    needs: Mapping[str, int] | None = None,
    any_of: Mapping[str, int] | None = None,
    for_each: Mapping[str, int] | None = None,
) -> Offer:
    """An entry at one point."""
    return Offer(
        name=name,
        cost={1: 1},
        needs=needs or {},
        needs_any_of=any_of or {},
        needs_for_each=for_each or {},
    )


def listed(*offers: Offer) -> dict[str, Offer]:
    return {each.name: each for each in offers}


def plan(*entries: str) -> tuple[Purchase, ...]:
    return tuple(Purchase(entry=entry, number=1) for entry in entries)


LIST = listed(
    offer("tanks"),
    offer("scouts"),
    offer("commander", needs={"tanks": 1}),
    offer("staff", needs={"commander": 1}),
    offer("escort", needs={"tanks": 2}),
    offer("guide", any_of={"tanks": 1, "scouts": 1}),
    offer("gun", for_each={"tow": 1}),
    offer("tow"),
)


@pytest.mark.parametrize(
    ("entries", "gone", "stays"),
    [
        (("tanks", "commander", "staff"), {}, {0, 1, 2}),
        (("tanks", "commander", "staff"), {0}, set()),
        (("tanks", "commander", "staff"), {1}, {0}),
        (("tanks", "tanks", "escort"), {1}, {0}),
        (("tanks", "scouts", "guide"), {0}, {1, 2}),
        (("tanks", "scouts", "guide"), {0, 1}, set()),
        (("gun", "gun", "tow", "tow"), {3}, {0, 2}),
        (("gun", "gun", "tow", "tow"), {0, 3}, {1, 2}),
        ((), {}, set()),
    ],
)
def test_what_needs_the_refused_goes_with_it(
    entries: tuple[str, ...], gone: set[int], stays: set[int]
) -> None:
    assert remaining(LIST, plan(*entries), gone=gone) == stays


def test_those_that_hold_each_other_up_stay_together() -> None:
    circle = listed(offer("a", needs={"b": 1}), offer("b", needs={"a": 1}))
    assert remaining(circle, plan("a", "b"), gone=()) == {0, 1}
    assert remaining(circle, plan("a", "b"), gone={0}) == set()
    assert needed_before(circle, plan("a", "b")) == {"a": {"a", "b"}, "b": {"a", "b"}}


def test_what_is_needed_is_needed_through_others_too_but_only_within_the_plan() -> None:
    assert needed_before(LIST, plan("staff", "commander", "tanks", "guide", "gun")) == {
        "staff": {"commander", "tanks"},
        "commander": {"tanks"},
        "tanks": set(),
        "guide": {"tanks"},
        "gun": set(),
    }
