"""A fall-back for programs; worths and chances are fractions as strings."""

from collections.abc import Iterable

from paradestate.cli.count_json import fraction_json
from paradestate.cli.judge_json import purchases_json
from paradestate.core.certainty import NotComputed, certainty_word
from paradestate.core.game import Purchase
from paradestate.core.support.policy import Ask, Fallback, FirstChoice, Granted, Step, Tipping
from paradestate.journeys.fallback import FallbackJourney


def fallback_json(journey: FallbackJourney) -> dict[str, object]:
    """The fall-back with the keys that programs rely on; points are points left."""
    terms, play, value = journey.terms, journey.fallback, journey.value
    if terms is None or journey.allowance is None:
        return {}
    certainty = journey.certainty
    return {
        "game": terms.game.name,
        "asking": terms.asking,
        "points": play.points if play else None,
        "value": None if value is None else fraction_json(value),
        "first": _purchase(play.first_choices[0].purchase) if play else None,
        "chart": _step(play.chart) if play else None,
        "by_points": {
            str(level.points): {
                "chance": fraction_json(journey.allowance.of(level.points)),
                "value": fraction_json(level.worth),
                "first": _purchase(level.first),
            }
            for level in journey.levels
        },
        **_changes(play),
        "certainty": certainty_word(certainty),
        "reason": certainty.reason if isinstance(certainty, NotComputed) else None,
    }


def _changes(play: Fallback | None) -> dict[str, object]:
    """What else could be asked first, and what would make that as good."""
    return {
        "first_choices": [_first(choice) for choice in play.first_choices] if play else None,
        "tippings": [_tipping(each) for each in play.tippings] if play else None,
        "declared": purchases_json(play.declared) if play else None,
    }


def _purchase(purchase: Purchase | None) -> dict[str, object] | None:
    return purchases_json((purchase,))[0] if purchase else None


def _first(choice: FirstChoice) -> dict[str, object]:
    return {"purchase": _purchase(choice.purchase), "value": fraction_json(choice.worth)}


def _tipping(tipping: Tipping) -> dict[str, object]:
    down_to, up_to = tipping.down_to, tipping.up_to
    return {
        "entry": tipping.entry,
        "choice": tipping.choice,
        "number": tipping.number,
        "worth": fraction_json(tipping.worth),
        "down_to": None if down_to is None else fraction_json(down_to),
        "up_to": None if up_to is None else fraction_json(up_to),
    }


def _step(step: Step) -> dict[str, object]:
    if not isinstance(step, Ask):
        return {
            "buy": purchases_json(step.purchases),
            "points": step.points,
            "value": fraction_json(step.worth),
        }
    return {
        "buy_first": purchases_json(step.before),
        "ask": _purchase(step.purchase),
        "points": step.points,
        "value": fraction_json(step.worth),
        "is_tied": step.is_tied,
        "outcomes": list(_outcomes(step.outcomes)),
    }


def _outcomes(outcomes: Iterable[Granted]) -> Iterable[dict[str, object]]:
    for outcome in outcomes:
        yield {
            "allowed": outcome.allowed,
            "also_allowed": dict(outcome.also),
            "chance": fraction_json(outcome.chance),
            "takes": _purchase(outcome.takes),
            "value": fraction_json(outcome.worth),
            "is_tied": outcome.is_tied,
            "then": _step(outcome.then),
        }
