"""What a figure costs alone."""

from fractions import Fraction

from paradestate.core.money import Currency
from paradestate.core.unit_price import UnitPrice, unit_prices
from tests.forces import marenz
from tests.orders import GBP, pack, source

EUR = Currency("EUR")
ONE = {"rifleman": 1}


def test_the_pack_by_which_one_figure_is_cheapest_gives_the_price() -> None:
    found = unit_prices({"rifleman": 6, "mortar crew": 1}, marenz().sources, currency=GBP)
    # 12 for 8.00 are cheaper by the figure than 10 for 8.00; 6 for 7.00 than 4 for 5.00.
    assert found == {
        "rifleman": UnitPrice(source="South", pack="S3", price=800, number=12, currency=GBP),
        "mortar crew": UnitPrice(source="North", pack="N3", price=700, number=6, currency=GBP),
    }


def test_what_is_sold_only_mixed_or_not_at_all_has_no_price() -> None:
    assert unit_prices({"officer": 1, "cyclist": 1}, marenz().sources, currency=GBP) == {}


def test_a_kind_of_which_a_pack_holds_none_does_not_make_it_mixed() -> None:
    near = source("Near", pack("A", 100, rifleman=4, officer=0))
    assert unit_prices(ONE, {"Near": near}, currency=GBP)["rifleman"].number == 4
    assert unit_prices({"officer": 1}, {"Near": near}, currency=GBP) == {}


def test_other_currencies_are_compared_at_their_rate_and_said_as_they_are() -> None:
    near = source("Near", pack("A", 100, rifleman=1))
    far = source("Far", pack("F", 110, rifleman=1), currency=EUR, rate=Fraction("0.9"))
    both = {"Near": near, "Far": far}
    price = unit_prices(ONE, both, currency=GBP)["rifleman"]
    assert (price.source, price.price, price.currency) == ("Far", 110, EUR)


def test_of_two_that_are_as_cheap_the_first_is_taken() -> None:
    near = source("Near", pack("A", 100, rifleman=2), pack("B", 50, rifleman=1))
    assert unit_prices(ONE, {"Near": near}, currency=GBP)["rifleman"].pack == "A"
