"""Which work waits for what is on order: figures to come, handed out to the stands that lack them.

What is expected soonest is handed out first, to the stands in the order in which they are served.
Figures to come serve as their own kind only, as bought ones do. An order whose day is past, or is
said by nobody, is waited for by nothing: its figures count as here when their turn comes.
"""

import datetime
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from paradestate.core.number import summed
from paradestate.core.on_order import OnOrder
from paradestate.core.sentence.journal import SHORT
from paradestate.core.sentence.wording import day_words
from paradestate.core.work.forecast_value import AwaitedParcel, Goal
from paradestate.core.work.ladder import Ladder, Reached, Rung
from paradestate.core.work.rates import Rates
from paradestate.core.work.stand_work import StandWork, made_of

NEVER = datetime.date.max


def with_orders(
    works: Mapping[str, StandWork], orders: Iterable[OnOrder], *, rates: Rates
) -> Mapping[str, StandWork]:
    """The same works, those that lack figures with what is on order of them."""
    left = [
        (order, dict(order.figures))
        for order in sorted(orders, key=lambda order: order.expected or NEVER)
    ]
    return {name: _with_orders(work, left, rates=rates) for name, work in works.items()}


def _with_orders(
    work: StandWork, left: Sequence[tuple[OnOrder, dict[str, int]]], *, rates: Rates
) -> StandWork:
    lacking = dict(work.lacking)
    to_come, waiting = [], {}
    for order, there in left:
        figures = {kind: min(number, there.get(kind, 0)) for kind, number in lacking.items()}
        figures = {kind: number for kind, number in figures.items() if number}
        for kind, number in figures.items():
            there[kind] -= number
            lacking[kind] -= number
        if figures:
            to_come.append(replace(order, figures=figures))
            waiting[order.entry] = _minutes(work, figures, rates=rates)
    return replace(work, to_come=tuple(to_come), waiting=waiting) if to_come else work


def _minutes(work: StandWork, figures: Mapping[str, int], *, rates: Rates) -> Fraction:
    """All work on figures that are still in their packet."""
    made, first = made_of(work.stand), rates.bench.stages[0]
    minutes = (rates.left(made, kind, stage=first) * each for kind, each in figures.items())
    return sum(minutes, Fraction(0))


def there_on(works: Iterable[StandWork]) -> datetime.date:
    """The day on which all their figures are there: the first of all days where they are here."""
    days = [datetime.date.min]
    for work in works:
        days += [order.expected or NEVER for order in work.to_come]
        if work.unordered:
            days.append(NEVER)
    return max(days)


def orders_of(works: Iterable[StandWork]) -> tuple[OnOrder, ...]:
    """What works wait for together, order by order, soonest expected first."""
    found: dict[str, OnOrder] = {}
    for work in works:
        for order in work.to_come:
            before = found.get(order.entry)
            figures = order.figures if before is None else summed([before.figures, order.figures])
            found[order.entry] = replace(order, figures=figures)
    return tuple(sorted(found.values(), key=lambda order: order.expected or NEVER))


def parcels_of(orders: Sequence[OnOrder], *, today: datetime.date) -> tuple[AwaitedParcel, ...]:
    """The parcels that are expected on a day that isn't past."""
    return tuple(
        AwaitedParcel(name=name, arrivals={order.expected: Fraction(1)})
        for order, name in zip(orders, parcel_names(orders).values(), strict=True)
        if order.expected is not None and order.expected >= today
    )


def parcel_names(orders: Sequence[OnOrder]) -> Mapping[str, str]:
    """Entry of an order to the name of its parcel: its source, and what tells it from others."""
    sources = [order.source for order in orders]
    days = [(order.source, order.day) for order in orders]
    names = {}
    for order in orders:
        name = order.source
        if sources.count(name) > 1:
            name += f", ordered on {day_words(order.day)}"
        if days.count((order.source, order.day)) > 1:
            name += f" ({order.entry[:SHORT]})"
        names[order.entry] = name
    return names


def goals_of(
    ladder: Ladder, parcels: Sequence[AwaitedParcel], *, orders: Sequence[OnOrder]
) -> tuple[Goal, ...]:
    """The milestones with all the work up to each, in the order of the work, and what waits."""
    return tuple(
        _goal(
            each,
            waiting=waiting_of(ladder.rungs[: each.rung or 0], parcels, orders=orders),
            names=_dated(parcels, orders=orders),
        )
        for each in sorted(ladder.reached, key=lambda each: each.ends)
    )


def _dated(parcels: Iterable[AwaitedParcel], *, orders: Sequence[OnOrder]) -> Mapping[str, str]:
    """Entry of an order to its parcel, of those that are expected on a day."""
    known = {parcel.name for parcel in parcels}
    return {entry: name for entry, name in parcel_names(orders).items() if name in known}


def _goal(each: Reached, *, waiting: Mapping[str, Fraction], names: Mapping[str, str]) -> Goal:
    own = [order.entry for order in orders_of(each.works)]
    is_dated = all(entry in names for entry in own) and not any(
        work.unordered for work in each.works
    )
    return Goal(
        name=each.milestone.name,
        minutes=each.ends,
        waiting=waiting,
        parcels=frozenset(names[entry] for entry in own if entry in names) - set(waiting),
        unfinished=len(each.to_finish),
        is_undated=not each.ends and not is_dated,
    )


def waiting_of(
    rungs: Iterable[Rung], parcels: Sequence[AwaitedParcel], *, orders: Sequence[OnOrder]
) -> Mapping[str, Fraction]:
    """Parcel to the minutes of these batches that can't begin before it is there.

    A batch of which nothing is here is set up when the first of it comes.
    """
    names = _dated(parcels, orders=orders)
    waiting: dict[str, Fraction] = {}
    for rung in rungs:
        own = [
            (names[order.entry], sum(work.waiting.get(order.entry, 0) for work in rung.works))
            for order in orders_of(rung.works)
            if order.entry in names
        ]
        is_whole = bool(own) and sum(minutes for _, minutes in own) == rung.minutes
        for number, (name, minutes) in enumerate(own):
            set_up = rung.set_up if is_whole and not number else 0
            waiting[name] = waiting.get(name, Fraction(0)) + minutes + set_up
    return {name: minutes for name, minutes in waiting.items() if minutes}
