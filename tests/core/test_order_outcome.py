"""What can become of a search for an order."""

from paradestate.core.order_outcome import LeastOrder, MostOf, limits_of, unsold
from tests.orders import pack, problem, source


def test_wanted_kinds_that_no_pack_holds_are_named_in_order_of_the_want() -> None:
    seller = source("North", pack("A", 1, rifleman=1, signaller=0))
    wanted = problem(seller, signaller=1, rifleman=1, officer=2, pioneer=0)
    assert unsold(wanted) == ("signaller", "officer")
    assert unsold(problem(seller, rifleman=5)) == ()


def test_limits_are_the_most_of_packs_and_the_least_orders() -> None:
    limited = problem(
        source("North", pack("A", 1, most=2, a=1), pack("B", 1, a=1), pack("C", 1, most=1)),
        source("South", pack("A", 1, most=3, a=1), least_order=500),
        a=1,
    )
    assert limits_of(limited) == (
        MostOf(pack=("North", "A"), most=2),
        MostOf(pack=("South", "A"), most=3),
        LeastOrder(source="South", least=500),
    )
