"""The odds of a plan for programs; chances are fractions as strings."""

from paradestate.cli.chances_json import chances_json, missions_json
from paradestate.cli.count_json import fraction_json
from paradestate.cli.judge_json import purchases_json
from paradestate.core.certainty import Exact, certainty_word
from paradestate.core.sentence.odds import percentiles
from paradestate.core.support.turnout import PlanOdds, Roll, Turnout
from paradestate.journeys.odds import OddsJourney


def odds_json(journey: OddsJourney) -> dict[str, object]:
    """The odds with the keys that programs rely on; points are points left."""
    odds, terms = journey.odds, journey.terms
    if odds is None or terms is None:
        return {}
    allowance = odds.allowance
    return {
        "game": terms.game.name,
        "plan": purchases_json(odds.plan),
        "cost": odds.cost,
        "affordable": fraction_json(odds.affordable),
        "available": fraction_json(odds.available),
        "together": fraction_json(odds.together),
        "allowance": chances_json(allowance),
        "at_least": {
            str(points): fraction_json(allowance.at_least(points)) for points in allowance.counts
        },
        "mean": fraction_json(allowance.mean),
        "percentiles": {str(share): points for share, points in percentiles(allowance).items()},
        "rolls": [_roll(roll) for roll in odds.rolls],
        **_turnouts(odds),
        "missions": missions_json(journey.missions),
        "asking": terms.asking,
        "asking_order": odds.asking_order,
        "certainty": certainty_word(Exact()),
        "asking_order_certainty": certainty_word(odds.order_certainty),
    }


def _roll(roll: Roll) -> dict[str, object]:
    return {
        "entry": roll.entry,
        "asked": roll.asked,
        "allowed": chances_json(roll.allowed),
        "shared_roll": roll.shared_roll or None,
    }


def _turnouts(odds: PlanOdds) -> dict[str, object]:
    """What may turn up; null where there were too many ways."""
    if not odds.turnouts:
        return {"turnouts": None, "mean_lost": None}
    return {
        "turnouts": [_turnout(each) for each in odds.turnouts],
        "mean_lost": fraction_json(odds.mean_lost),
    }


def _turnout(turnout: Turnout) -> dict[str, object]:
    return {
        "chance": fraction_json(turnout.chance),
        "purchases": purchases_json(turnout.purchases),
        "points_free": turnout.points_free,
        "points_lost": turnout.points_lost,
    }
