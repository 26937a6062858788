"""A problem as arrays says of every order what the plain code says."""

import numpy
from hypothesis import assume, given
from hypothesis import strategies as st

from paradestate.core.order import OrderProblem, priced, shortcomings
from paradestate.core.receipt import lots_of, step_reached
from paradestate.solve.heuristic.shelf import CLOSED, shelf_of
from tests.solve.drawn import problems_with_stand_ins


@given(problems_with_stand_ins(), st.data())
def test_the_shelf_prices_and_checks_as_the_plain_code_does(
    asked: OrderProblem, data: st.DataObject
) -> None:
    shelf = shelf_of(asked)
    assume(shelf.names)
    packs = data.draw(
        st.dictionaries(st.integers(0, len(shelf.names) - 1), st.integers(1, 9), max_size=4)
    )
    basket = shelf.basket(packs)
    order = priced(asked, basket)
    assert shelf.total(packs) == order.total
    assert shelf.is_enough(packs) == (not shortcomings(asked, basket))
    charged = {each.source: each for each in order.receipts}
    for seller, step in zip(shelf.sellers, shelf.steps_of(packs), strict=True):
        if seller.name not in charged:
            assert step == CLOSED
        else:
            receipt = charged[seller.name]
            terms = shelf.steps[list(shelf.sellers).index(seller)][step]
            assert terms.carriage == receipt.carriage or receipt.goods < seller.least_order
            share = 1 - float(receipt.discount_rate)
            assert terms.share == share or receipt.goods < seller.least_order


@given(problems_with_stand_ins())
def test_every_price_of_a_pack_is_a_column_of_what_it_holds_and_is_of_use(
    asked: OrderProblem,
) -> None:
    shelf = shelf_of(asked)
    sold = [
        (number, lot.size, lot.price)
        for number, pack in enumerate(shelf.packs)
        for lot in lots_of(pack)
    ]
    lots = shelf.lots
    columns = zip(lots.pack.tolist(), lots.size.tolist(), lots.price.tolist(), strict=True)
    assert sorted(columns) == sorted(sold)
    table, useful = lots.table(len(shelf.want)), shelf.useful(numpy.zeros(len(shelf.want)))
    for column, (pack, size) in enumerate(zip(lots.pack, lots.size, strict=True)):
        for row, each in shelf.holds[pack].items():
            assert table[column, row] == min(each * size, useful[row])
        assert set(numpy.flatnonzero(table[column])) <= set(shelf.holds[pack])


@given(problems_with_stand_ins())
def test_steps_are_those_of_the_source(asked: OrderProblem) -> None:
    shelf = shelf_of(asked)
    for seller, steps in zip(shelf.sellers, shelf.steps, strict=True):
        for step in steps:
            assert step.share == 1 - float(step_reached(seller.discount, step.least, default=0))
            assert step.carriage == step_reached(seller.carriage, step.least, default=0)
