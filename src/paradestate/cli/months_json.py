"""A plan of months for programs."""

import datetime

from paradestate.core.certainty import Within, certainty_word
from paradestate.core.money import amount_text
from paradestate.core.months import Month
from paradestate.core.parcel import Parcel
from paradestate.core.savings import Savings
from paradestate.journeys.months import MonthsJourney


def months_json(journey: MonthsJourney) -> dict[str, object]:
    """The plan with the keys that programs rely on; money as decimal strings."""
    plan, savings, certainty = journey.plan, journey.savings, journey.certainty
    if plan is None or savings is None:
        return {}
    currency = savings.currency
    parcels = {parcel.name: parcel for parcel in journey.parcels}
    late = {each.name for each in plan.late}
    return {
        "months": [
            month_json(month, savings, parcels=[parcels[name] for name in month.orders], late=late)
            for month in plan.months
        ],
        "total": amount_text(journey.total, currency),
        "limit": amount_text(savings.a_month, currency),
        "carried": amount_text(savings.carried, currency),
        "currency": currency,
        "certainty": certainty_word(certainty),
        "bound": amount_text(certainty.bound, currency) if isinstance(certainty, Within) else None,
    }


def month_json(
    month: Month, savings: Savings, *, parcels: list[Parcel], late: set[str]
) -> dict[str, object]:
    """One month of a plan with the keys that programs rely on."""
    day = savings.day(month.month)
    return {
        "month": month.month,
        "calendar": f"{day.year:04d}-{day.month:02d}",
        "spent": amount_text(month.spent, savings.currency),
        "orders": [
            _order(parcel, savings, bought=day, late=parcel.name in late) for parcel in parcels
        ],
        "balance": amount_text(month.balance, savings.currency),
    }


def _order(
    parcel: Parcel, savings: Savings, *, bought: datetime.date, late: bool
) -> dict[str, object]:
    arrives, band = parcel.arrival(bought), parcel.band
    known: dict[str, object] = {
        "name": parcel.name,
        "cost": amount_text(parcel.cost, savings.currency),
        "arrives": arrives.isoformat() if arrives else None,
        "needed": parcel.needed.last.isoformat() if parcel.needed else None,
        "late": late,
    }
    if band is not None:
        known["least"] = amount_text(band.least, savings.currency)
        known["most"] = amount_text(band.most, savings.currency)
    return known
