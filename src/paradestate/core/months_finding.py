"""What is to be said about spreading orders over months: why it can't be, and what is doubtful."""

from fractions import Fraction

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.money import money_text
from paradestate.core.months import MOST_ORDERS, PlannedOrder, least_a_month, least_carried
from paradestate.core.outline import decimal_text
from paradestate.core.parcel import Parcel
from paradestate.core.place import Place, nearest_place
from paradestate.core.savings import Savings
from paradestate.core.sentence.wording import (
    day_words,
    end_words,
    listed,
    month_words,
    several,
)

MOST_MONTHS = 600
"""No plan is longer: a bound against slips."""

NOTHING_SPREAD = "No order is given its month."


def _stop(*, code: str, message: str, hint: str, place: Place = CHOSEN_HERE) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect=NOTHING_SPREAD,
        hint=hint,
        place=place,
    )


def limit_missing(force: Force) -> Finding:
    """The stop where nothing says what may be spent in a month."""
    return _stop(
        code="limit-missing",
        message="Nothing says how much may be spent in a month.",
        hint="Give it with --limit 30, or write `a month: 30.00` under `aim`.",
        place=nearest_place(force.places, ("aim",)),
    )


def never_covered(total: int, savings: Savings) -> Finding:
    """The stop where nothing is put aside and what is there doesn't do."""
    currency = savings.currency
    lacking = money_text(total - savings.carried, currency)
    return _stop(
        code="limit-never-covers",
        message=f"{money_text(total, currency)} can't be paid from "
        f"{money_text(savings.carried, currency)} with nothing put aside a month.",
        hint=f"Give a --limit above nought, or carry {lacking} more with --carried.",
    )


def too_many_months(total: int, savings: Savings, *, months: int) -> Finding:
    """The stop for a plan that takes longer than a person saves."""
    currency = savings.currency
    a_month = -(-(total - savings.carried) // MOST_MONTHS)
    return _stop(
        code="too-many-months",
        message=f"At {money_text(savings.a_month, currency)} a month "
        f"{money_text(total, currency)} takes {months:,} months; at most {MOST_MONTHS} are "
        "worked out.",
        hint=f"Look for a slip in the amounts, or put aside {money_text(a_month, currency)} "
        "a month or more.",
    )


def too_many_orders(number: int) -> Finding:
    """The stop for more orders than all sequences can be weighed of."""
    return _stop(
        code="too-many-orders",
        message=f"There are {number} orders; of more than {MOST_ORDERS} not every sequence "
        "can be weighed.",
        hint="Join some that are bought together, and name them all with --order.",
    )


def lead_time_unknown(force: Force, parcel: Parcel) -> Finding:
    """The remark that a parcel is needed by a day and nobody knows how long it takes."""
    return Finding(
        level=Level.REMARK,
        code="lead-time-unknown",
        message=f"How long the parcel from {parcel.source} takes isn't known.",
        effect="It is counted as there on the day it is bought, which may be too soon.",
        hint="Give the packs their `lead days`.",
        place=nearest_place(force.places, ("sources", parcel.source)),
    )


def bought_too_late(
    parcel: Parcel,
    *,
    month: int,
    savings: Savings,
    planned: tuple[PlannedOrder, ...],
    place: Place,
) -> Finding:
    """The warning that a parcel is bought in a month in which it comes too late.

    The way out is for all the orders planned.
    """
    needed, currency = parcel.needed, savings.currency
    if needed is None:
        raise ValueError(f"{parcel.name} isn't needed by any day")
    bought = savings.day(month)
    there = parcel.arrival(bought) or bought
    takes = f" and takes {several(parcel.lead_days, 'day')} to come" if parcel.lead_days else ""
    carried = f" with {money_text(savings.carried, currency)} carried" if savings.carried else ""
    return Finding(
        level=Level.WARN,
        code="bought-too-late",
        message=f"{money_text(parcel.cost, currency)} {'from' if parcel.source else 'for'} "
        f"{parcel.name} is needed by {end_words(needed)}{takes}; "
        f"{money_text(savings.a_month, currency)} a month{carried} allows it in "
        f"{month_words(bought)}.",
        effect=f"It is there on {day_words(there)} at the soonest, "
        f"{several((there - needed.last).days, 'day')} late.",
        hint=_way_out(parcel, savings=savings, planned=planned),
        place=place,
    )


def _way_out(parcel: Parcel, *, savings: Savings, planned: tuple[PlannedOrder, ...]) -> str:
    buy_by = parcel.buy_by
    if buy_by is not None and buy_by < savings.begins:
        return (
            f"It had to be bought by {day_words(buy_by)}, so money doesn't mend that: "
            "need it later, or find it where it comes sooner."
        )
    a_month = money_text(least_a_month(planned, carried=savings.carried), savings.currency)
    carried = money_text(least_carried(planned, a_month=savings.a_month), savings.currency)
    return f"With {a_month} a month, or with {carried} carried, it would be there in time."


def rate_breaks_the_limit(
    force: Force,
    parcels: tuple[Parcel, ...],
    *,
    share: Fraction,
    overspent: tuple[tuple[int, int], ...],
    savings: Savings,
) -> Finding:
    """The warning that at rates higher by a share some months of the plan aren't paid for."""
    names = [parcel.source for parcel in parcels if parcel.band is not None]
    month, lacking = overspent[0]
    most = money_text(max(short for _, short in overspent), savings.currency)
    return Finding(
        level=Level.WARN,
        code="rate-breaks-the-limit",
        message=f"With the {'rate' if len(names) == 1 else 'rates'} of {listed(names)} "
        f"{decimal_text(share * 100)}% higher, {month_words(savings.day(month))} is overspent by "
        f"{money_text(lacking, savings.currency)}.",
        effect="The plan keeps within what is put aside only while no rate rises so far.",
        hint=f"Carry {most} more at the start, or buy later than the plan says.",
        place=nearest_place(force.places, ("sources", names[0], "rate")),
    )
