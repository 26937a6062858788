"""The judge, on the example: what is legal, what it costs, what is said."""

from collections.abc import Iterator
from fractions import Fraction

import pytest

from paradestate.core.game import Purchase
from paradestate.core.support.breach import bill_of, breaches
from paradestate.core.support.judge import Judgement, judged
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.plan import purchases_of
from paradestate.core.support.terms import Terms
from tests.core.support.test_breach import take
from tests.core.support.test_terms import terms
from tests.forces import marenz
from tests.support_terms import Plan, single_purchases

TANKS = Purchase(entry="light tanks", number=2)
SECTIONS = Purchase(entry="machine-gun platoon", number=2)
COMMANDER = Purchase(entry="tank squadron commander", number=1)
PLAN = (TANKS, COMMANDER, SECTIONS)
TRAINING = Purchase(entry="assault training for a platoon", number=1)


def whole_day() -> Terms:
    return terms(marenz(), game="whole-day attack")


def affordable(known: Terms, *, points: int) -> Iterator[Plan]:
    """Every multiset of purchases within points and limits, where all prices are above nought."""
    singles = [each for offer in known.offers.values() for each in single_purchases(offer)]
    waiting: list[tuple[Plan, int, int]] = [((), points, 0)]
    while waiting:
        plan, left, first = waiting.pop()
        yield plan
        for place in range(first, len(singles)):
            one = singles[place]
            offer = known.offers[one.entry]
            price = offer.price(one.number, choice=one.choice)
            if price <= left and purchases_of(plan).get(one.entry, 0) < (offer.most or left):
                waiting.append(((*plan, one), left - price, place))


@pytest.mark.parametrize(("points", "legal", "spending_all"), [(5, 19, 8), (18, 3809, 977)])
def test_the_legal_forces_of_the_example_are_as_many_as_by_hand(
    points: int, legal: int, spending_all: int
) -> None:
    """5 points: 19, of which 8 spend all, by hand; both are check values of `computations`."""
    known = whole_day()
    found = [
        bill
        for plan in affordable(known, points=points)
        if not breaches(bill := bill_of(known, plan, points=points))
    ]
    assert (len(found), sum(bill.spent == points for bill in found)) == (legal, spending_all)


def codes(judgement: Judgement) -> list[str]:
    return [finding.code for finding in judgement.findings]


def test_the_plan_of_the_computations_costs_17() -> None:
    """Tanks (9), commander (3) and two machine-gun sections (5), as in `computations` 3.10."""
    made = judged(whole_day(), PLAN, points=18)
    assert (made.is_legal, made.spent, made.points, made.worth) == (True, 17, 18, Fraction(15))
    assert codes(made) == ["points-unspendable"]
    assert (made.plan, made.breaches, made.ways_out, made.after) == (PLAN, (), {}, None)


def test_the_plan_of_the_mistakes_is_over_by_one() -> None:
    made = judged(whole_day(), (*PLAN, TRAINING), points=18)
    assert (made.is_legal, made.spent) == (False, 19)
    (finding,) = made.findings
    assert finding.message == "Spent 19 of 18 points: over by 1."
    assert finding.hint.startswith(
        "Dropping 1 x assault training for a platoon (2), "
        "taking 1 x machine-gun platoon instead of 2 (2)"
    )
    for way in made.ways_out[made.breaches[0]]:
        assert judged(whole_day(), way.plan, points=18).is_legal


def test_the_dice_that_refuse_the_tanks_free_12_points() -> None:
    made = judged(whole_day(), PLAN, points=18, allowed={"light tanks": (0,)})
    assert made.is_legal
    assert codes(made) == ["refused"]
    assert made.after is not None
    assert (made.after.left, made.after.points_free) == ((SECTIONS,), 12)


def test_where_something_has_no_price_the_dice_are_not_asked() -> None:
    made = judged(whole_day(), (*PLAN, *take("lancers")), points=18, allowed={"light tanks": (0,)})
    assert (made.after, codes(made), made.spent) == (None, ["unknown-name"], 17)


def test_points_that_no_roll_leaves_are_doubted_and_used() -> None:
    made = judged(whole_day(), PLAN, points=50)
    assert made.is_legal
    assert codes(made) == ["points-impossible"]


def test_without_a_roll_the_most_is_assumed() -> None:
    made = judged(whole_day(), (*PLAN, TRAINING), points=23, known=Known(are_most=True))
    assert made.is_legal
    assert codes(made) == ["worst-roll-short"]
