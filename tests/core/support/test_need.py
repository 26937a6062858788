"""What must be there beside purchases of an entry."""

import pytest

from paradestate.core.support.need import Lack, are_needs_met, lacks
from paradestate.core.support.offer import Offer


def scouts(**words: dict[str, int]) -> Offer:
    return Offer(name="scouts", cost={1: 1}, **words)  # type: ignore[arg-type] # words of needs


def count(name: str) -> int:
    """Two guns and a horse are there."""
    return {"guns": 2, "horse": 1}.get(name, 0)


@pytest.mark.parametrize(
    ("offer", "times", "lacking"),
    [
        (scouts(), 1, []),
        (scouts(needs={"guns": 2, "horse": 1}), 9, []),
        (
            scouts(needs={"guns": 3, "tanks": 1}),
            1,
            [Lack("need-missing", ("guns",), 2, 3), Lack("need-missing", ("tanks",), 0, 1)],
        ),
        (scouts(needs_for_each={"guns": 1}), 2, []),
        (
            scouts(needs_for_each={"guns": 1}),
            3,
            [Lack("need-for-each-missing", ("guns",), 2, 3)],
        ),
        (scouts(needs_any_of={"tanks": 1, "guns": 2}), 1, []),
        (
            scouts(needs_any_of={"tanks": 2, "guns": 3}),
            1,
            [Lack("need-any-missing", ("tanks", "guns"), 0, 1)],
        ),
    ],
)
def test_every_need_that_lacks_something_is_told(
    offer: Offer, times: int, lacking: list[Lack]
) -> None:
    assert list(lacks(offer, count, times=times)) == lacking
    assert are_needs_met(offer, count, times=times) is (lacking == [])
