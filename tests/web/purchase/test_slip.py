"""Purchase slips."""

import datetime

from paradestate.core.order import priced
from paradestate.journeys.choosing import want_of
from paradestate.web.purchase.slip import packs_text, slips_of
from tests.orders import pack, problem, source

TODAY = datetime.date(2026, 11, 27)


def test_a_multi_buy_is_said_to_be_one() -> None:
    seller = source("A", pack("box", 1000, multibuy={3: 2700}, rifleman=4))
    asked = problem(seller, rifleman=16)
    (slip,) = slips_of(asked, priced(asked, {("A", "box"): 4}), today=TODAY)
    (line,) = slip.said.lines
    assert (line.number, line.each, line.cost, line.multibuy) == (4, "10.00", "37.00", True)
    said = slip.said
    assert (slip.gauge, said.standing, said.sentences, said.age) == (None, "", (), "")


def test_goods_below_a_line_say_what_the_next_would_cost() -> None:
    seller = source("A", pack("box", 3800, rifleman=4), carriage={0: 500, 4000: 0})
    asked = problem(seller, rifleman=4)
    (slip,) = slips_of(asked, priced(asked, {("A", "box"): 1}), today=TODAY)
    assert slip.said.sentences == ("With £2.00 more, at £40 of goods, it would cost £40.00.",)
    assert [(row.goods, row.carriage, row.reached) for row in slip.charges] == [
        ("£40.00", "free", False)
    ]


def test_packs_with_odd_names_are_read_back_as_they_were() -> None:
    names = ("N1", "large, blue", "a=b", "the 'good' box", 'the "best" box')
    seller = source("North", *(pack(name, 100, rifleman=1) for name in names))
    asked = problem(seller, rifleman=5)
    order = priced(asked, {("North", name): number for number, name in enumerate(names, start=1)})
    numbers, findings = want_of(packs_text(order.receipts[0]))
    assert findings == ()
    assert numbers == {f"North/{name}": number for number, name in enumerate(names, start=1)}
