"""How many of a pack, and how great a value of goods, an order can use."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.order import OrderProblem, priced
from paradestate.core.source import Pack
from paradestate.solve.order_bound import greatest_goods, most_useful
from tests.orders import pack, problem, source
from tests.solve.drawn import problems


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


@given(problems(), st.data())
def test_no_order_that_costs_so_much_has_goods_of_more_value(
    asked: OrderProblem, data: st.DataObject
) -> None:
    sold = [name for name, _ in asked.packs()]
    order = priced(
        asked, data.draw(st.dictionaries(st.sampled_from(sold), st.integers(1, 30), max_size=3))
    )
    bound = {
        name: greatest_goods(asked, seller, most_total=order.total)
        for name, seller in asked.sources.items()
    }
    useful = {name: greatest_goods(asked, seller) for name, seller in asked.sources.items()}
    for receipt in order.receipts:
        name = receipt.source
        assert receipt.goods <= bound[name] or bound[name] == useful[name]


def test_a_known_total_leaves_room_for_the_goods_that_its_discount_allows() -> None:
    seller = source("North", pack("A", 100, rifleman=1), discount={1000: Fraction(1, 10)})
    asked = problem(seller, rifleman=5000)
    assert greatest_goods(asked, seller) == 500_000
    assert greatest_goods(asked, seller, most_total=9000) == 10_001  # half pennies of rounding
