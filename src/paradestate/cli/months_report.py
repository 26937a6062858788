"""A plan of months printed for people."""

from collections.abc import Iterable, Iterator
from pathlib import Path

from rich.console import Console
from rich.text import Text

from paradestate.cli.output import console, titled_table
from paradestate.core.certainty import Within
from paradestate.core.money import money_text
from paradestate.core.months import Spread
from paradestate.core.outline import decimal_text
from paradestate.core.parcel import Parcel
from paradestate.core.savings import Savings
from paradestate.core.sentence.wording import day_words, end_words, month_words, several
from paradestate.journeys.months import MonthsJourney


def print_months(journey: MonthsJourney, *, folder: Path) -> None:
    """The plan in a sentence, month by month, when things are there, and how sure it is."""
    plan, savings = journey.plan, journey.savings
    if plan is None or savings is None:
        return
    out = console()
    out.print(Text(journey.checked.force.title, style="bold"))
    if not journey.parcels:
        out.print(f"Nothing is lacking, so there is nothing to buy for {folder}.")
        return
    out.print(_first_sentence(journey, plan, savings=savings))
    out.print()
    print_month_by_month(out, journey.parcels, plan=plan, savings=savings)
    if any(parcel.needed or parcel.lead_days is not None for parcel in journey.parcels):
        out.print()
        _print_days(out, journey, plan=plan, savings=savings)
    out.print()
    for sentence in (*_rates(journey, savings), *_proof(journey, plan, savings=savings)):
        out.print(sentence)


def _first_sentence(journey: MonthsJourney, plan: Spread, *, savings: Savings) -> str:
    number, currency = len(journey.parcels), savings.currency
    carried = f" and {money_text(savings.carried, currency)} carried" if savings.carried else ""
    last = month_words(savings.day(plan.months[-1].month))
    bought = f"it is bought in {last}" if number == 1 else f"all is bought by {last}"
    return (
        f"{several(number, _word(journey))} for {money_text(journey.total, currency)}, with "
        f"{money_text(savings.a_month, currency)} a month{carried}: {bought}."
    )


def _word(journey: MonthsJourney) -> str:
    return "parcel" if _are_parcels(journey) else "order"


def _are_parcels(journey: MonthsJourney) -> bool:
    return any(parcel.source for parcel in journey.parcels)


def print_month_by_month(
    out: Console, parcels: Iterable[Parcel], *, plan: Spread, savings: Savings
) -> None:
    """What there is to spend in each month, what is bought and what is left."""
    costs = {parcel.name: money_text(parcel.cost, savings.currency) for parcel in parcels}
    table = titled_table("Month by month")
    table.add_column("month")
    table.add_column("to spend", justify="right")
    table.add_column("bought")
    table.add_column("spent", justify="right")
    table.add_column("left", justify="right")
    for month in plan.months:
        table.add_row(
            month_words(savings.day(month.month)),
            money_text(month.balance + month.spent, savings.currency),
            ", ".join(f"{name} {costs[name]}" for name in month.orders) or "-",
            money_text(month.spent, savings.currency),
            money_text(month.balance, savings.currency),
        )
    out.print(table)


def _print_days(out: Console, journey: MonthsJourney, *, plan: Spread, savings: Savings) -> None:
    table = titled_table("Earliest days")
    is_known = any(parcel.lead_days is not None for parcel in journey.parcels)
    there = ("there",) if is_known else ()
    for heading in (_word(journey), "bought", *there, "needed by", ""):
        table.add_column(heading)
    parcels = {parcel.name: parcel for parcel in journey.parcels}
    late = {each.name for each in plan.late}
    for name, month in _purchases(plan):
        parcel, bought = parcels[name], savings.day(month)
        arrival = parcel.arrival(bought)
        arrives = day_words(arrival) if arrival else "not known"
        table.add_row(
            name,
            day_words(bought),
            *([arrives] if is_known else []),
            end_words(parcel.needed) if parcel.needed else "-",
            "late" if name in late else "",
        )
    out.print(table)


def _purchases(plan: Spread) -> Iterator[tuple[str, int]]:
    for month in plan.months:
        yield from ((name, month.month) for name in month.orders)


def _rates(journey: MonthsJourney, savings: Savings) -> Iterator[str]:
    if journey.band is None:
        return
    share = f"{decimal_text(journey.band * 100)}%"
    banded = [(parcel, parcel.band) for parcel in journey.parcels if parcel.band is not None]
    for parcel, band in banded:
        amounts = (parcel.cost, band.least, band.most)
        cost, least, most = (money_text(amount, savings.currency) for amount in amounts)
        moved = f"{least} to {most}"
        yield f"{parcel.name} costs {cost}; with its rate {share} lower or higher {moved}."
    if not banded:
        yield f"All is paid in {savings.currency}, so no rate moves it."


def _proof(journey: MonthsJourney, plan: Spread, *, savings: Savings) -> Iterator[str]:
    """How sure the sequence is, and where it isn't proved the cost."""
    if len(journey.parcels) == 1:
        yield "Exact: it is bought in the first month that pays for it."
    else:
        sooner = "sooner on the whole"
        if any(parcel.needed for parcel in journey.parcels):
            late = "as little late" if plan.late else "as much in time"
            sooner = f"less late, and none {late} is {sooner}"
        counted = ", each parcel counted by its figures" if _are_parcels(journey) else ""
        yield f"Exact: no other sequence is {sooner}{counted}."
    if isinstance(journey.certainty, Within):
        above = money_text(journey.total - journey.certainty.bound, savings.currency)
        cost = "it costs" if len(journey.parcels) == 1 else "together they cost"
        yield f"Within: {cost} at most {above} above the least possible."
