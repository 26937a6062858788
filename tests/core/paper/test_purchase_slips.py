"""Purchase slips on paper."""

import datetime
from fractions import Fraction

import pytest

from paradestate.core.certainty import Exact, Within
from paradestate.core.order import OrderProblem, priced
from paradestate.core.paper.purchase_slips import (
    PurchaseSlips,
    certainty_words,
    purchase_slips,
    there,
)
from tests.orders import GBP, marenz_problem, pack, problem, source

TODAY = datetime.date(2026, 11, 27)


def slips(asked: OrderProblem, packs: dict[tuple[str, str], int]) -> PurchaseSlips:
    order = priced(asked, packs)
    shown = purchase_slips(asked, order, certainty=Exact(), today=TODAY).shown
    assert shown is not None
    return shown


def test_story_5_the_slip_from_north_of_the_order_for_fifty_pounds() -> None:
    """N1 once, N2 and N3 twice: £50.00 of goods, carriage free."""
    asked = marenz_problem("North")
    shown = slips(asked, {("North", "N1"): 1, ("North", "N2"): 2, ("North", "N3"): 2})
    (slip,) = shown.slips
    assert [(line.number, line.pack, line.cost) for line in slip.lines] == [
        (1, "N1", "20.00"),
        (2, "N2", "16.00"),
        (2, "N3", "14.00"),
    ]
    assert (slip.goods, slip.carriage_words, slip.carriage) == ("50.00", "Carriage, free", "0.00")
    assert slip.total == shown.total == "£50.00"
    assert slip.standing == "Goods £50.00, £10.00 above the line."
    assert [(step.words, step.is_reached) for step in slip.steps] == [("£40: carriage free", True)]
    assert shown.left_over == "2 riflemen and 3 mortar crews"


def test_goods_below_a_line_say_what_the_next_would_cost_and_a_multi_buy_is_said() -> None:
    seller = source(
        "A", pack("box", 1000, multibuy={3: 2700}, rifleman=4), carriage={0: 500, 4000: 0}
    )
    (slip,) = slips(problem(seller, rifleman=16), {("A", "box"): 4}).slips
    (line,) = slip.lines
    assert (line.each, line.cost, line.multibuy) == ("10.00", "37.00", True)
    assert slip.carriage_words == "Carriage"
    assert slip.standing == "Goods £37.00, £3.00 below the line."
    assert slip.sentences == ("With £3.00 more, at £40 of goods, it would cost £40.00.",)


def test_discount_and_another_currency_are_on_it() -> None:
    seller = source(
        "A",
        pack("box", 1000, rifleman=4),
        discount={500: Fraction(1, 10)},
        currency=type(GBP)("EUR"),
        rate=Fraction(1, 2),
    )
    (slip,) = slips(problem(seller, rifleman=4), {("A", "box"): 1}).slips
    assert (slip.discount_words, slip.discount) == ("Discount, 10%", "-1.00")
    assert (slip.total, slip.exchanged) == ("€9.00", "£4.50")


def test_a_source_that_charges_the_same_whatever_the_goods_has_no_line_to_stand_at() -> None:
    (slip,) = slips(
        problem(source("A", pack("box", 100, rifleman=4)), rifleman=4), {("A", "box"): 1}
    ).slips
    assert (slip.standing, slip.steps, slip.age, slip.is_old) == ("", (), "", False)


def test_where_nothing_is_bought_there_is_no_slip() -> None:
    asked = problem(source("A", pack("box", 100, rifleman=4)))
    empty = priced(asked, {})
    assert purchase_slips(asked, empty, certainty=Exact(), today=TODAY).shown is None


@pytest.mark.parametrize(
    ("certainty", "words"),
    [
        (Exact(), "exact: nothing that does it costs less"),
        (Within(bound=900), "at most £1.00 above the least possible"),
        (
            Within(bound=0),
            "the best found in time; nothing is proved of what the least is",
        ),
    ],
)
def test_how_sure_a_total_is(certainty: Exact | Within, words: str) -> None:
    assert certainty_words(certainty, total=1000, currency=GBP) == words


def test_when_a_parcel_arrives_is_said_where_it_is_known() -> None:
    assert list(there(1)) == ["It can be there 1 day after ordering."]
    assert list(there(None)) == []
