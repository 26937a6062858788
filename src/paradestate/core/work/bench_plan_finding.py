"""What is to be said of money and bench together: why there is no plan, what the limit delays."""

from collections.abc import Iterator
from fractions import Fraction

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.money import money_text
from paradestate.core.months import PlannedOrder, least_a_month, least_carried
from paradestate.core.months_finding import lead_time_unknown
from paradestate.core.place import Place, nearest_place
from paradestate.core.sentence.wording import day_words, month_words
from paradestate.core.work.bench_plan import BenchPlan, Playable
from paradestate.core.work.forecast_finding import parcel_after_deadline
from paradestate.core.work.forecast_value import AwaitedParcel

ONCE = Fraction(1)


def pace_missing(force: Force) -> Finding:
    """The stop where the owner doesn't say how much he does in a week."""
    return Finding(
        level=Level.STOP,
        code="pace-missing",
        message="Nothing says how much work is done in a week: `week` isn't given.",
        effect="It can't be said when the bench has work, so no month is chosen for it.",
        hint="Write `week: 4 h` under `bench`.",
        place=nearest_place(force.places, ("bench", "week")),
    )


def plan_findings(force: Force, plan: BenchPlan, *, place: Place | None) -> Iterator[Finding]:
    """What the limit does to the first milestone to come, and parcels that the deadline misses.

    `place` is where the limit is written; None for the command line.
    """
    if plan.playable and plan.playable[0].buy_by is not None:
        yield _moved(plan, plan.playable[0], place=place or CHOSEN_HERE)
    today = plan.terms.savings.begins
    unknown = {
        each.parcel.source: each.parcel for each in plan.ordered if each.parcel.lead_days is None
    }
    yield from (lead_time_unknown(force, parcel) for parcel in unknown.values())
    for each in plan.ordered:
        arrives = each.parcel.arrival(plan.bought(each.parcel.name))
        if arrives is not None:
            awaited = AwaitedParcel(name=each.parcel.name, arrivals={arrives: ONCE})
            yield from parcel_after_deadline(force, awaited, today=today)


def _moved(plan: BenchPlan, first: Playable, *, place: Place) -> Finding:
    savings = plan.terms.savings
    buy_by = first.buy_by or savings.begins
    needed = [each for each in plan.ordered if each.parcel.name in first.needs]
    last = max(plan.month_of(each.parcel.name) for each in needed)
    cost = sum(each.parcel.cost for each in needed)
    order = PlannedOrder(name=first.name, cost=cost, due=savings.month(buy_by))
    currency = savings.currency
    a_month = money_text(least_a_month([order], carried=savings.carried), currency)
    carried = money_text(least_carried([order], a_month=savings.a_month), currency)
    parcels = "parcel" if len(needed) == 1 else "parcels"
    had = f" with {money_text(savings.carried, currency)} carried" if savings.carried else ""
    return Finding(
        level=Level.WARN,
        code="limit-moves-the-date",
        message=f"{money_text(cost, currency)} for the {parcels} that the {first.name} waits for "
        f"is needed by {day_words(buy_by)}; {money_text(savings.a_month, currency)} a month{had} "
        f"allows it in {month_words(savings.day(last))}.",
        effect=f"The day on which it can be played moves from {day_words(first.if_paid)} to "
        f"{day_words(first.day)}.",
        hint=f"With {a_month} a month, or with {carried} carried, it could be as soon.",
        place=place,
    )
