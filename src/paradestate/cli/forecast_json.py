"""Dates of the work at the bench for programs; chances and minutes as fractions in strings."""

import datetime
from collections.abc import Mapping

from paradestate.cli.count_json import fraction_json
from paradestate.core.certainty import Sampled, certainty_word
from paradestate.core.sentence.forecast import dates_of
from paradestate.core.work.forecast_value import (
    FOUR_IN_FIVE,
    HALF,
    NINETEEN_IN_TWENTY,
    FinishDate,
    Forecast,
    GoalForecast,
)
from paradestate.core.work.kept_forecast import Calibration
from paradestate.core.work.learned_minutes import LearnedMinutes, LearnedRate
from paradestate.journeys.bench.forecast import Dates

KEYS = {
    HALF: "half_chance",
    FOUR_IN_FIVE: "four_in_five",
    NINETEEN_IN_TWENTY: "nineteen_in_twenty",
}


def dates_json(
    found: GoalForecast | None, *, deadline: datetime.date | None = None
) -> dict[str, object]:
    """The three dates of a milestone; `null` where it is reached, or has none."""
    chance = None if found is None or deadline is None else found.by_end_of(deadline)
    at = {} if found is None else {KEYS[chance]: each for chance, each in dates_of(found).items()}
    return {
        **dict.fromkeys(KEYS.values()),
        **{key: each.day.isoformat() for key, each in at.items()},
        "by_deadline": None if chance is None else fraction_json(chance),
        "between": {key: _between(each) for key, each in at.items()} or None,
        "waits": {}
        if found is None
        else {
            **dict.fromkeys(sorted(found.goal.parcels), "0"),
            **{name: fraction_json(minutes) for name, minutes in found.goal.waiting.items()},
        },
    }


def _between(each: FinishDate) -> list[str | None]:
    latest = each.latest
    return [each.earliest.isoformat(), None if latest is None else latest.isoformat()]


def forecast_json(found: Forecast | None) -> Mapping[str, object] | None:
    """How sure dates are, and what they rest on; `null` where there are none."""
    if found is None:
        return None
    certainty, evidence = found.goals[-1].certainty, found.evidence
    drawn = certainty if isinstance(certainty, Sampled) else None
    return {
        "begins": found.begins.isoformat(),
        "certainty": certainty_word(certainty),
        "plus_or_minus": None if drawn is None else fraction_json(drawn.plus_or_minus),
        "draws": None if drawn is None else drawn.draws,
        "seed": None if drawn is None else drawn.seed,
        "sessions": evidence.sessions,
        "weeks": evidence.weeks,
        "weeks_left_out": evidence.left_out,
        "logged": fraction_json(evidence.logged),
        "is_thin": evidence.is_thin,
    }


def nights_json(found: Dates) -> list[Mapping[str, object]]:
    """Each game night with the chance of each milestone that it is ready by the evening before."""
    goals = () if found.forecast is None else found.forecast.goals
    return [
        {
            "day": night.isoformat(),
            "ready": {
                each.goal.name: None if each.goal.is_undated else fraction_json(each.before(night))
                for each in goals
            },
        }
        for night in found.nights
    ]


def learned_json(learned: LearnedMinutes) -> Mapping[str, object]:
    """Minutes that sessions taught."""
    return {
        "stretches": learned.stretches,
        "rates": [{"stage": rate.stage, **_rate_json(rate)} for rate in learned.rates],
        "stands": [_rate_json(rate) for rate in learned.stands],
    }


def _rate_json(rate: LearnedRate) -> Mapping[str, object]:
    return {
        "what": rate.what,
        "minutes": fraction_json(rate.minutes),
        "given": None if rate.given is None else fraction_json(rate.given),
        "stretches": rate.stretches,
        "logged": fraction_json(rate.logged),
    }


def calibration_json(found: Calibration) -> Mapping[str, int]:
    """How kept forecasts of four in five came out."""
    return {
        "met": found.met,
        "missed": found.missed,
        "early": found.early,
        "to_come": found.to_come,
        "milestones": found.milestones,
    }
