"""How many of a pack an order can use."""

import pytest

from paradestate.core.source import Pack
from paradestate.solve.order_bound import most_useful
from tests.orders import pack, problem, source


@pytest.mark.parametrize(
    ("offered", "most"),
    [
        (pack("A", 10, rifleman=3), 4),  # 10 wanted by threes
        (pack("A", 10, rifleman=3, officer=1), 4),
        (pack("A", 10, signaller=3), 4),  # not wanted, but four lift the goods to 40
        (pack("A", 3, rifleman=3), 14),
        (pack("A", 0, rifleman=3), 4),
        (pack("A", 0, signaller=3), 0),
        (pack("A", 3, most=5, rifleman=3), 5),
        (pack("A", 10, rifleman=0), 4),
        (pack("A", 50, multibuy={3: 30}, rifleman=3), 6),
    ],
)
def test_more_than_fill_every_want_or_reach_every_step_are_of_no_use(
    offered: Pack, most: int
) -> None:
    seller = source("North", offered, carriage={0: 5, 40: 0})
    asked = problem(seller, rifleman=10, officer=2)
    assert most_useful(asked, seller, pack=offered) == most
