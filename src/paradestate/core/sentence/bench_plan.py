"""Money and bench together in sentences: what is playable when, idle days, what joining changes."""

from collections.abc import Iterable, Iterator
from fractions import Fraction

from paradestate.core.certainty import Exact, Within
from paradestate.core.money import money_text
from paradestate.core.sentence.wording import (
    day_words,
    hours_words,
    listed,
    several,
)
from paradestate.core.work.bench_plan import BenchPlan, Playable
from paradestate.core.work.course import MOST_IN_ANY_SEQUENCE, Idle
from paradestate.core.work.habit import DAYS


def head_sentence(plan: BenchPlan) -> str:
    """What is bought for how much, and when the first milestone can be played."""
    savings = plan.terms.savings
    currency = savings.currency
    carried = f" and {money_text(savings.carried, currency)} carried" if savings.carried else ""
    bought = (
        f"{several(len(plan.ordered), 'parcel')} for {money_text(plan.total, currency)}, with "
        f"{money_text(savings.a_month, currency)} a month{carried}"
        if plan.ordered
        else "Nothing is lacking, so there is nothing to buy"
    )
    return f"{bought}: {playable_words(plan.playable[0])}."


def playable_words(each: Playable) -> str:
    """When a milestone can be played, and what decides it."""
    parcel = f", decided by the {parcels_words(each.awaits)}" if each.awaits else ""
    return f"the {each.name} can be played on {day_words(each.day)}{parcel}"


def parcels_words(names: tuple[str, ...]) -> str:
    """Parcels by name: `parcel from North`."""
    return f"{'parcel' if len(names) == 1 else 'parcels'} from {listed(names)}"


def idle_sentences(plan: BenchPlan) -> Iterator[str]:
    """When the bench has no work, and until what comes."""
    for each in plan.idle:
        names = tuple(plan.ordered[number].parcel.name for number in sorted(each.awaits))
        days = (
            f"on {day_words(each.first)}"
            if each.first == each.last
            else f"from {day_words(each.first)} to {day_words(each.last)}"
        )
        comes = "comes" if len(names) == 1 else "come"
        yield (
            f"The bench stands idle for {idle_words(each)} {days}: nothing owned is left to do "
            f"until the {parcels_words(names)} {comes}."
        )
    if not plan.idle and plan.playable:
        yield "The bench never stands idle for a day until all is done."


def idle_words(idle: Idle) -> str:
    """How long: `2 weeks`, `3 days`."""
    weeks, more = divmod(idle.days, DAYS)
    return several(idle.days, "day") if more else several(weeks, "week")


def other_way_sentence(plan: BenchPlan, other: BenchPlan, *, orders: int) -> str:
    """What would be if what is lacking were bought in so many orders: `In 2 orders it costs ...`.

    Both have something to play with that isn't there yet.
    """
    gap = other.total - plan.total
    more = "more" if gap > 0 else "less"
    money = money_text(abs(gap), plan.terms.savings.currency)
    cost = f"{money} {more}" if gap else "the same"
    first = plan.playable[0]
    moved = next(each.day for each in other.playable if each.name == first.name)
    days = (moved - first.day).days
    when = f"{several(abs(days), 'day')} {'later' if days > 0 else 'sooner'}" if days else "as soon"
    return (
        f"In {several(orders, 'order')} it costs {cost}; the {first.name} can then be played on "
        f"{day_words(moved)}, {when}."
    )


def plan_sentences(
    plan: BenchPlan, *, others: Iterable[tuple[BenchPlan, int]], certainty: Exact | Within
) -> Iterator[str]:
    """What is said below a plan; `others` are other ways to order with how many orders each has.

    `certainty` is how sure it is that the orders cost as little as can be.
    """
    yield from idle_sentences(plan)
    for other, orders in others:
        yield other_way_sentence(plan, other, orders=orders)
    yield pace_sentence(plan.terms.time.week)
    yield proof_sentence(plan)
    if isinstance(certainty, Within):
        above = money_text(plan.total - certainty.bound, plan.terms.savings.currency)
        yield f"Within: the orders cost at most {above} above the least possible."


def pace_sentence(week: Fraction) -> str:
    """What the days rest on."""
    return (
        f"The days rest on your own week of {hours_words(week)}, every week alike: a plan, and no "
        "forecast. Figures are worked on from the day after they come."
    )


def proof_sentence(plan: BenchPlan) -> str:
    """How sure the sequence is."""
    every = len(plan.playable) <= MOST_IN_ANY_SEQUENCE
    which = "of these purchases or of the forces" if every else "of these purchases"
    kept = "" if every else "; the forces keep the order of the ladder"
    if plan.is_proved:
        return f"Exact, at that pace: no other sequence {which} has less weighted waiting{kept}."
    share = (plan.waiting - plan.least) / plan.waiting
    hundredths = -(-share.numerator * 100 // share.denominator)
    return (
        f"Within, at that pace: no other sequence {which} has more than {hundredths}% less "
        f"weighted waiting{kept}."
    )
