"""What a source charges."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.money import Currency
from paradestate.core.receipt import (
    Lot,
    Receipt,
    cheaper_from,
    cost_of,
    exchange_rate,
    lots_of,
    receipt,
)
from paradestate.core.source import Pack, Source
from tests.forces import marenz
from tests.orders import GBP, pack, source

EUR = Currency("EUR")


def bill(seller: Source, **packs: int) -> Receipt:
    return receipt(seller, packs, currency=GBP)


def charges(found: Receipt) -> tuple[int, int, int, int]:
    return found.goods, found.discount, found.carriage, found.total


def test_the_example_of_the_south_costs_48_50() -> None:
    """3 x S1 + 1 x S3 = 50.00 - 5.00 + 3.50 = 48.50."""
    found = bill(marenz().sources["South"], S1=3, S3=1)
    assert charges(found) == (5000, 500, 350, 4850)
    assert found.discount_rate == Fraction(1, 10)
    assert [(line.pack, line.number, line.cost) for line in found.lines] == [
        ("S1", 3, 4200),
        ("S3", 1, 800),
    ]


def test_the_example_of_the_north_alone_costs_50_00_carriage_free() -> None:
    assert charges(bill(marenz().sources["North"], N1=1, N2=2, N3=2)) == (5000, 0, 0, 5000)


def test_buying_one_cheap_pack_more_can_lower_the_total() -> None:
    """49.00 of goods cost 52.50, and 50.00 of goods cost 48.50."""
    south = source(
        "South",
        pack("A", 4900, rifleman=1),
        pack("B", 100, rifleman=1),
        carriage={0: 350},
        discount={5000: Fraction(1, 10)},
    )
    assert bill(south, A=1).total == 5250
    assert bill(south, A=1, B=1).total == 4850


@pytest.mark.parametrize(("goods", "carriage"), [(3999, 500), (4000, 0), (4001, 0)])
def test_a_step_holds_from_the_value_named(goods: int, carriage: int) -> None:
    seller = source("North", pack("A", goods, rifleman=1), carriage={0: 500, 4000: 0})
    assert bill(seller, A=1).carriage == carriage


def test_below_the_first_step_nothing_is_charged_for_carriage() -> None:
    seller = source("North", pack("A", 10, rifleman=1), carriage={11: 5})
    assert bill(seller, A=1).carriage == 0
    assert bill(seller, A=2).carriage == 5


def test_carriage_goes_by_goods_before_discount() -> None:
    seller = source(
        "North",
        pack("A", 100, rifleman=1),
        carriage={0: 9, 100: 1},
        discount={100: Fraction(1, 2)},
    )
    assert charges(bill(seller, A=1)) == (100, 50, 1, 51)


def test_steps_may_fall_and_stand_in_any_order() -> None:
    seller = source(
        "North",
        pack("A", 10, rifleman=1),
        carriage={20: 7, 0: 3},
        discount={20: Fraction(0), 0: Fraction(1, 2)},
    )
    assert charges(bill(seller, A=1)) == (10, 5, 3, 8)
    assert charges(bill(seller, A=2)) == (20, 0, 7, 27)


@pytest.mark.parametrize(("goods", "discount"), [(4, 0), (5, 1), (6, 1), (14, 1), (15, 2)])
def test_the_discount_is_rounded_half_up(goods: int, discount: int) -> None:
    seller = source("North", pack("A", goods, rifleman=1), discount={0: Fraction(1, 10)})
    assert bill(seller, A=1).discount == discount


def test_nothing_bought_is_nothing_charged() -> None:
    seller = source(
        "North", pack("A", 10, rifleman=1), carriage={0: 500}, discount={0: Fraction(1)}
    )
    found = bill(seller, A=0)
    assert charges(found) == (0, 0, 0, 0)
    assert found.lines == ()
    assert found.discount_rate == 0


def test_a_gift_is_carried_for_money() -> None:
    seller = source("North", pack("A", 0, rifleman=1), carriage={0: 500})
    assert charges(bill(seller, A=1)) == (0, 0, 500, 500)


def test_a_total_in_another_currency_is_exchanged_once() -> None:
    """35.00 EUR at 0.86 are 30.10 GBP."""
    seller = source(
        "Abroad",
        pack("A", 3000, rifleman=1),
        carriage={0: 500},
        currency=EUR,
        rate=Fraction(86, 100),
    )
    found = bill(seller, A=1)
    assert (found.total, found.exchanged) == (3500, 3010)


@pytest.mark.parametrize(("price", "exchanged"), [(2, 1), (3, 2), (5, 3), (6, 3)])
def test_the_exchange_is_rounded_half_up(price: int, exchanged: int) -> None:
    seller = source("Abroad", pack("A", price, rifleman=1), currency=EUR, rate=Fraction(1, 2))
    assert bill(seller, A=1).exchanged == exchanged


def test_currencies_with_other_minor_units_are_exchanged_in_whole_units() -> None:
    """100 JPY at 0.005 are 0.50 GBP; 1.000 KWD at 2.5 is 2.50 GBP."""
    yen = source("Far", pack("A", 100, a=1), currency=Currency("JPY"), rate=Fraction(5, 1000))
    assert bill(yen, A=1).exchanged == 50
    dinar = source("Gulf", pack("A", 1000, a=1), currency=Currency("KWD"), rate=Fraction(5, 2))
    assert bill(dinar, A=1).exchanged == 250


def test_two_currencies_without_a_rate_are_a_programmers_mistake() -> None:
    with pytest.raises(ValueError, match="no rate from EUR of Abroad to GBP"):
        exchange_rate(source("Abroad", currency=EUR), GBP)


def test_a_multibuy_holds_any_number_of_times_and_the_rest_is_singly() -> None:
    offered = pack("A", 20, multibuy={3: 54}, rifleman=1)
    assert [cost_of(offered, number=number) for number in range(8)] == [
        0,
        20,
        40,
        54,
        74,
        94,
        108,
        128,
    ]


def test_a_multibuy_that_saves_nothing_is_never_taken() -> None:
    offered = pack("A", 20, multibuy={3: 60, 4: 90}, rifleman=1)
    assert lots_of(offered) == (Lot(size=1, price=20),)
    assert cost_of(offered, number=12) == 240


def test_a_multibuy_of_one_is_a_price() -> None:
    assert cost_of(pack("A", 20, multibuy={1: 15}, rifleman=1), number=3) == 45
    assert cost_of(pack("A", 20, multibuy={1: 25}, rifleman=1), number=3) == 60


def test_the_lot_that_is_cheapest_a_pack_stands_first() -> None:
    offered = pack("A", 20, multibuy={2: 38, 5: 80, 10: 160}, rifleman=1)
    assert lots_of(offered) == (
        Lot(size=5, price=80),
        Lot(size=2, price=38),
        Lot(size=1, price=20),
    )


@st.composite
def offers(draw: st.DrawFn) -> Pack:
    price = draw(st.integers(0, 12))
    sizes = draw(st.lists(st.integers(1, 9), max_size=4, unique=True))
    return pack("A", price, multibuy={n: draw(st.integers(0, n * 12)) for n in sizes}, rifleman=1)


@given(offers(), st.integers(0, 60))
def test_the_cost_is_the_least_of_every_way_to_make_up_the_number(
    offered: Pack, number: int
) -> None:
    least = [0]
    for count in range(1, number + 1):
        ways = [least[-1] + offered.price]
        ways += [least[count - n] + cost for n, cost in offered.multibuy.items() if n <= count]
        least.append(min(ways))
    assert cost_of(offered, number=number) == least[number]


def test_a_great_number_costs_no_time() -> None:
    offered = pack("A", 20, multibuy={3: 54, 10: 150}, rifleman=1)
    assert cost_of(offered, number=10**9) == 150 * 10**8


def test_where_a_larger_order_may_cost_less() -> None:
    assert cheaper_from(marenz().sources["North"]) == (4000,)
    assert cheaper_from(marenz().sources["South"]) == (5000,)
    rising = source("Quay", carriage={0: 100, 500: 300, 900: 200}, least_order=700)
    assert cheaper_from(rising) == (700, 900)
