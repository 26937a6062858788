"""Months and bench together printed for people."""

from collections.abc import Iterator

from rich.console import Console
from rich.text import Text

from paradestate.cli.months_report import print_month_by_month
from paradestate.cli.output import console, print_hanging, titled_table
from paradestate.core.sentence.bench_plan import head_sentence, plan_sentences
from paradestate.core.sentence.wording import day_words, hours_words, listed
from paradestate.core.work.bench_plan import BenchPlan
from paradestate.journeys.bench.bench_months import BenchMonths, Joined


def print_bench_months(answer: BenchMonths) -> None:
    """The plan in a sentence, month by month, when forces can be played, and how sure it is."""
    chosen = answer.chosen
    if chosen is None:
        return
    plan = chosen.plan
    out = console()
    out.print(Text(answer.checked.force.title, style="bold"))
    if not plan.playable:
        out.print("Nothing is left to do at the bench, and nothing is lacking.")
        return
    print_hanging(out, head_sentence(plan))
    out.print()
    if plan.ordered:
        parcels = [each.parcel for each in plan.ordered]
        print_month_by_month(out, parcels, plan=plan.spread, savings=plan.terms.savings)
        out.print()
        _print_parcels(out, plan)
        out.print()
    _print_playable(out, plan)
    out.print()
    for sentence in _sentences(answer, chosen):
        print_hanging(out, sentence)


def _print_parcels(out: Console, plan: BenchPlan) -> None:
    table = titled_table("What to order when")
    for heading in ("parcel", "for", "bought"):
        table.add_column(heading)
    table.add_column("there", justify="right")
    for each in plan.ordered:
        bought = plan.bought(each.parcel.name)
        there = each.parcel.arrival(bought)
        table.add_row(
            each.parcel.name,
            listed(each.milestones),
            day_words(bought),
            day_words(there) if there else "not known",
        )
    out.print(table)


def _print_playable(out: Console, plan: BenchPlan) -> None:
    table = titled_table("When it can be played")
    table.add_column("playable")
    table.add_column("decided by")
    table.add_column("hours", justify="right")
    table.add_column("day", justify="right")
    table.add_column("if all is bought at once", justify="right")
    for each in plan.playable:
        table.add_row(
            each.name,
            listed(each.awaits) or "the work",
            hours_words(each.minutes),
            day_words(each.day),
            day_words(each.if_paid),
        )
    out.print(table)


def _sentences(answer: BenchMonths, chosen: Joined) -> Iterator[str]:
    plan = chosen.plan
    others = ((each.plan, len(each.orders)) for each in answer.notable)
    yield from plan_sentences(plan, others=others, certainty=chosen.certainty)
