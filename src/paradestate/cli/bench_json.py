"""The order of work for programs; times are minutes, fractions as strings."""

import datetime
from collections.abc import Mapping
from fractions import Fraction

from paradestate.cli.count_json import fraction_json
from paradestate.cli.forecast_json import (
    calibration_json,
    dates_json,
    forecast_json,
    learned_json,
    nights_json,
)
from paradestate.core.journal_text import on_order_record
from paradestate.core.sentence.work import week_number
from paradestate.core.work.ladder import Critical, Ladder, Reached, Rung
from paradestate.journeys.bench.bench import OrderOfWork


def bench_json(order: OrderOfWork, *, today: datetime.date) -> dict[str, object]:
    """The answer with the keys that programs rely on."""
    ladder = order.ladder
    by_kind = order.by_kind.reached_of
    deadline = None if order.deadline is None else order.deadline.last
    return {
        "milestones": [
            {
                **_reached(each, beside=by_kind[each.milestone.name], week=order.week_alone),
                **dates_json(order.forecast_of.get(each.milestone.name), deadline=deadline),
            }
            for each in ladder.reached
        ],
        "repairs": [_repair(each, order, today=today) for each in ladder.repairs],
        "batches": _rungs(ladder),
        "minutes": fraction_json(ladder.minutes),
        "critical": None if ladder.critical is None else _critical(ladder.critical),
        "mixed": [{"colour": each.colour, "batches": list(each.batches)} for each in ladder.mixed],
        "waiting": fraction_json(ladder.waiting),
        "by_kind": {
            "batches": _rungs(order.by_kind),
            "waiting": fraction_json(order.by_kind.waiting),
        },
        "on_order": [on_order_record(each) for each in order.orders],
        "week": None if order.week is None else fraction_json(order.week),
        "forecast": forecast_json(order.dates.forecast),
        "nights": nights_json(order.dates),
        "learned": learned_json(order.worked.learned),
        "calibration": calibration_json(order.calibration),
        "certainty": "exact" if ladder.is_proved else "within",
        "bound": None if ladder.is_proved else fraction_json(ladder.least),
    }


def _reached(each: Reached, *, beside: Reached, week: Fraction | None) -> Mapping[str, object]:
    return {
        "name": each.milestone.name,
        "weight": fraction_json(each.milestone.weight),
        "minutes": fraction_json(each.ends),
        "minutes_by_kind": fraction_json(beside.ends),
        "week": None if week is None else week_number(each.ends, week=week),
        "week_by_kind": None if week is None else week_number(beside.ends, week=week),
        "own_minutes": fraction_json(each.minutes),
        "stands": len(each.to_finish),
        "of_stands": sum(not work.stand.printed for work in each.works),
        "printed": sum(work.stand.printed for work in each.works),
        "batch": each.rung,
        "lacking": dict(each.lacking),
        "leaves_out": list(each.milestone.left_out),
    }


def _repair(each: Reached, order: OrderOfWork, *, today: datetime.date) -> Mapping[str, object]:
    wanted = each.milestone.wanted
    assert wanted is not None  # noqa: S101 - what makes it a repair
    found = order.forecast_beside.get(each.milestone.name)
    return {
        "wanted": wanted.isoformat(),
        "is_overdue": wanted <= today,
        "stands": [
            {"stand": work.stand.name, "note": work.repair.note if work.repair else ""}
            for work in each.works
        ],
        "minutes": fraction_json(each.ends),
        "minutes_until_wanted": None if each.due is None else fraction_json(each.due),
        "batch": each.rung,
        "in_time": None if found is None else fraction_json(found.before(wanted)),
        **dates_json(found),
    }


def _rungs(ladder: Ladder) -> list[Mapping[str, object]]:
    return [_rung(rung) for rung in ladder.rungs]


def _rung(rung: Rung) -> Mapping[str, object]:
    return {
        "number": rung.number,
        "stretch": rung.stretch,
        "pattern": rung.pattern,
        "stands": [work.stand.name for work in rung.works],
        "minutes": fraction_json(rung.minutes),
        "set_up": fraction_json(rung.set_up),
        "ends": fraction_json(rung.ends),
        "stages": {stage: fraction_json(minutes) for stage, minutes in rung.by_stage.items()},
        "early": list(rung.early),
        "takes_turns_with": rung.takes_turns_with,
        "waiting": fraction_json(rung.waiting),
        "colours": list(rung.colours),
        "lacking": dict(rung.lacking),
        "completes": list(rung.completes),
        "held_until": None if rung.held_until is None else rung.held_until.isoformat(),
    }


def _critical(critical: Critical) -> Mapping[str, object]:
    return {
        "milestone": critical.milestone,
        "stand": critical.work.stand.name,
        "minutes": fraction_json(critical.work.minutes),
        "lacking": dict(critical.work.lacking),
        "stands_lacking": critical.lacking,
    }
