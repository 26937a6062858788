"""Months and bench together for programs."""

from paradestate.cli.months_json import month_json
from paradestate.core.certainty import Within, certainty_word
from paradestate.core.money import amount_text
from paradestate.core.work.bench_plan import BenchPlan
from paradestate.journeys.bench.bench_months import BenchMonths, Joined


def months_at_bench_json(answer: BenchMonths) -> dict[str, object]:
    """The plan with the keys that programs rely on; money as decimal strings, fractions too."""
    chosen = answer.chosen
    if chosen is None:
        return {}
    plan, certainty = chosen.plan, chosen.certainty
    savings = plan.terms.savings
    parcels = {each.parcel.name: each.parcel for each in plan.ordered}
    return {
        "months": [
            month_json(month, savings, parcels=[parcels[name] for name in month.orders], late=set())
            for month in plan.spread.months
        ],
        "total": amount_text(plan.total, savings.currency),
        "limit": amount_text(savings.a_month, savings.currency),
        "carried": amount_text(savings.carried, savings.currency),
        "currency": savings.currency,
        "certainty": certainty_word(certainty),
        "bound": amount_text(certainty.bound, savings.currency)
        if isinstance(certainty, Within)
        else None,
        "week": str(plan.terms.time.week),
        "purchases": [
            {"name": each.parcel.name, "source": each.parcel.source, "for": list(each.milestones)}
            for each in plan.ordered
        ],
        "milestones": _milestones(plan),
        "idle": _idle(plan),
        "waiting": str(plan.waiting),
        "least_waiting": str(plan.least),
        "sequence": "exact" if plan.is_proved else "within",
        "ways": [_way(each) for each in (chosen, *answer.others)],
    }


def _milestones(plan: BenchPlan) -> list[dict[str, object]]:
    return [
        {
            "name": each.name,
            "minutes": str(each.minutes),
            "day": each.day.isoformat(),
            "decided_by": list(each.awaits),
            "needs": list(each.needs),
            "if_paid_at_once": each.if_paid.isoformat(),
            "buy_by": each.buy_by.isoformat() if each.buy_by else None,
        }
        for each in plan.playable
    ]


def _idle(plan: BenchPlan) -> list[dict[str, object]]:
    return [
        {
            "first": each.first.isoformat(),
            "last": each.last.isoformat(),
            "days": each.days,
            "until": [plan.ordered[number].parcel.name for number in sorted(each.awaits)],
        }
        for each in plan.idle
    ]


def _way(way: Joined) -> dict[str, object]:
    return {
        "orders": [list(order.milestones) for order in way.orders],
        "total": amount_text(way.plan.total, way.plan.terms.savings.currency),
        "waiting": str(way.plan.waiting),
        "days": {each.name: each.day.isoformat() for each in way.plan.playable},
    }
