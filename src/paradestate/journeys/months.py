"""In which month to buy each parcel, so that no more is spent than was put aside.

folder -> parcels of the order, or orders named -> what is put aside -> months -> doubts
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from pathlib import Path

from paradestate.core.certainty import Exact, Within
from paradestate.core.choice import CHOSEN_HERE, Choice, unknown_choice
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.money import Currency, decimal_places
from paradestate.core.months import (
    MOST_ORDERS,
    PlannedOrder,
    Spread,
    month_paid,
    overspent,
    spread,
)
from paradestate.core.months_finding import (
    MOST_MONTHS,
    bought_too_late,
    lead_time_unknown,
    limit_missing,
    never_covered,
    rate_breaks_the_limit,
    too_many_months,
    too_many_orders,
)
from paradestate.core.order import Order
from paradestate.core.parcel import Parcel, parcels_of
from paradestate.core.place import Place, nearest_place
from paradestate.core.savings import Savings
from paradestate.core.source import force_currency
from paradestate.core.span import DateSpan
from paradestate.journeys.check import Checked, checked
from paradestate.journeys.choosing import typed_finding
from paradestate.journeys.order import OrderJourney, Request, Search, order
from paradestate.text.money import in_minor
from paradestate.text.slip import Slip


@dataclass(frozen=True, slots=True, kw_only=True)
class Terms:
    """What the plan has to keep to. Money in units of the force's currency."""

    begins: datetime.date
    """The day on which the plan begins."""
    limit: Fraction | None = None
    """What may be spent in a month; None for what the folder says."""
    carried: Fraction = Fraction(0)
    needed: Mapping[str, DateSpan] = field(default_factory=dict)
    """Parcel to when it is needed; for others that is the folder's deadline."""
    band: Fraction | None = None
    """The share by which rates may be lower or higher; None where that isn't asked."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthsJourney:
    """The plan, or None with the stops that prevent it."""

    checked: Checked
    parcels: tuple[Parcel, ...] = ()
    certainty: Exact | Within = Exact()
    """How sure it is that the parcels cost as little as can be."""
    band: Fraction | None = None
    """The share by which rates may be lower or higher; None where that wasn't asked."""
    savings: Savings | None = None
    plan: Spread | None = None

    @property
    def total(self) -> int:
        """What all parcels cost."""
        return sum(parcel.cost for parcel in self.parcels)


def months_of_order(
    folder: Path,
    *,
    today: datetime.date,
    choice: Choice,
    request: Request,
    search: Search,
    terms: Terms,
) -> MonthsJourney:
    """The months in which to buy the parcels of the cheapest order, as it was asked for."""
    read = checked(folder, today=today)
    if read.is_stopped or _limit(read.force, terms) is None:
        return _spread(MonthsJourney(checked=read), terms=terms)
    found = order(folder, today=today, choice=choice, request=request, search=search)
    if found.answer is None:
        return MonthsJourney(checked=found.checked)
    return months_of_found(found, found.answer.order, terms=terms)


def months_of_found(found: OrderJourney, bought: Order, *, terms: Terms) -> MonthsJourney:
    """The months in which to buy the parcels of an order that was found, or of one beside it."""
    if found.answer is None or found.problem is None:
        return MonthsJourney(checked=found.checked)
    parcels = parcels_of(found.problem, bought, band=terms.band)
    journey = MonthsJourney(
        checked=found.checked, parcels=parcels, certainty=found.answer.certainty
    )
    return _spread(journey, terms=terms)


def months_of_named(
    folder: Path, *, today: datetime.date, orders: Mapping[str, Fraction], terms: Terms
) -> MonthsJourney:
    """The months in which to buy orders that are named with what they cost."""
    read = checked(folder, today=today)
    if read.is_stopped:
        return MonthsJourney(checked=read)
    currency = _currency(read.force)
    costs = {name: _minor(amount, currency) for name, amount in orders.items()}
    slips = tuple(typed_finding(cost) for cost in costs.values() if isinstance(cost, Slip))
    parcels = tuple(
        Parcel(name=name, cost=cost) for name, cost in costs.items() if not isinstance(cost, Slip)
    )
    return _spread(MonthsJourney(checked=read.with_findings(*slips), parcels=parcels), terms=terms)


def _spread(journey: MonthsJourney, *, terms: Terms) -> MonthsJourney:
    """The journey with its plan, or with the stops that prevent it."""
    if journey.checked.is_stopped:
        return journey
    force = journey.checked.force
    savings, findings = savings_of(force, terms)
    if savings is None:
        return replace(journey, checked=journey.checked.with_findings(*findings))
    parcels = tuple(_needed(parcel, force, terms=terms) for parcel in journey.parcels)
    made = replace(journey, savings=savings, parcels=parcels, band=terms.band)
    stopping = (*_unknown(parcels, terms), *barred(made.total, savings, number=len(parcels)))
    if stopping:
        return replace(made, checked=made.checked.with_findings(*stopping))
    planned = tuple(parcel.planned(savings) for parcel in parcels)
    plan = spread(planned, a_month=savings.a_month, carried=savings.carried)
    said = (
        *_late(made, plan, planned=planned, savings=savings, terms=terms),
        *_at_other_rates(made, plan, savings=savings, share=terms.band),
    )
    return replace(made, plan=plan, checked=made.checked.with_findings(*said))


def _currency(force: Force) -> Currency:
    return force_currency(force.sources) or Currency("GBP")


def _minor(amount: Fraction, currency: Currency) -> int | Slip:
    return in_minor(amount, places=decimal_places(currency))


def _limit(force: Force, terms: Terms) -> Fraction | None:
    """What may be spent in a month, as it was typed or as the folder says."""
    written = force.aim.a_month if force.aim else None
    return written if terms.limit is None else terms.limit


def savings_of(force: Force, terms: Terms) -> tuple[Savings | None, tuple[Finding, ...]]:
    """What is put aside, or None with the stops that prevent it."""
    limit, currency = _limit(force, terms), _currency(force)
    if limit is None:
        return None, (limit_missing(force),)
    a_month, carried = _minor(limit, currency), _minor(terms.carried, currency)
    if isinstance(a_month, Slip):
        path = ("aim", "a month") if terms.limit is None else ()
        place = nearest_place(force.places, path) if path else CHOSEN_HERE
        return None, (replace(typed_finding(a_month), place=place),)
    if isinstance(carried, Slip):
        return None, (typed_finding(carried),)
    savings = Savings(a_month=a_month, carried=carried, currency=currency, begins=terms.begins)
    return savings, ()


def _needed(parcel: Parcel, force: Force, *, terms: Terms) -> Parcel:
    deadline = force.aim.deadline if force.aim else None
    return replace(parcel, needed=terms.needed.get(parcel.name, deadline))


def _unknown(parcels: tuple[Parcel, ...], terms: Terms) -> Iterator[Finding]:
    known = [parcel.name for parcel in parcels]
    for name in terms.needed:
        if name not in known:
            yield unknown_choice(name, known, what="order")


def barred(total: int, savings: Savings, *, number: int) -> Iterator[Finding]:
    """Why no plan can be made."""
    if number > MOST_ORDERS:
        yield too_many_orders(number)
    if savings.a_month == 0 and total > savings.carried:
        yield never_covered(total, savings)
        return
    months = month_paid(total, a_month=savings.a_month, carried=savings.carried)
    if months > MOST_MONTHS:
        yield too_many_months(total, savings, months=months)


def _late(
    journey: MonthsJourney,
    plan: Spread,
    *,
    planned: tuple[PlannedOrder, ...],
    savings: Savings,
    terms: Terms,
) -> Iterator[Finding]:
    """A remark for each parcel whose days on the way nobody knows, a warning for each too late."""
    force = journey.checked.force
    late = {each.name: each.month for each in plan.late}
    for parcel in journey.parcels:
        if parcel.needed and parcel.source and parcel.lead_days is None:
            yield lead_time_unknown(force, parcel)
        if parcel.name in late:
            yield bought_too_late(
                parcel,
                month=late[parcel.name],
                savings=savings,
                planned=planned,
                place=_place_needed(force, parcel, terms=terms),
            )


def _place_needed(force: Force, parcel: Parcel, *, terms: Terms) -> Place:
    if parcel.name in terms.needed:
        return CHOSEN_HERE
    return nearest_place(force.places, ("aim", "deadline"))


def _at_other_rates(
    journey: MonthsJourney, plan: Spread, *, savings: Savings, share: Fraction | None
) -> Iterator[Finding]:
    """A warning where the plan costs more than was put aside when rates rise by a share."""
    costs = {
        parcel.name: parcel.band.most if parcel.band else parcel.cost for parcel in journey.parcels
    }
    short = overspent(plan, costs, a_month=savings.a_month, carried=savings.carried)
    if share is not None and short:
        force = journey.checked.force
        yield rate_breaks_the_limit(
            force, journey.parcels, share=share, overspent=short, savings=savings
        )
