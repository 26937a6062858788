"""Where an evening may stand."""

import numpy as np

from paradestate.chance.fallback.standing import UNSEEN, Standing, Standings, joined


def standings(*asked: list[bool], room: int = 3) -> Standings:
    number = len(asked)
    return Standings(
        asked=np.array(asked),
        taken=np.zeros((number, len(asked[0])), dtype=bool),
        early=np.zeros((number, 0), dtype=np.int64),
        room=np.full((number, 1), room),
        seen=np.full((number, 1), UNSEEN),
    )


def test_one_of_many_is_read_with_a_bit_for_each_entry() -> None:
    many = standings([False, False, False], [True, False, True])
    assert len(many) == 2
    assert many.at(1) == Standing(0b101, 0, (), (3,), (UNSEEN,))
    assert many.those(np.array([1])).at(0) == many.at(1)


def test_those_that_are_alike_tell_the_same_and_no_others() -> None:
    """With more entries than there are bits in a number."""
    first, last = [True] + [False] * 69, [False] * 69 + [True]
    many = joined([standings(first, last, first), standings(first, room=4)])
    told = many.told()
    assert told[0] == told[2]
    assert len(set(told)) == 3
    assert many.at(1).asked == 1 << 69
