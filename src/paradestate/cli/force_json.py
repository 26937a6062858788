"""A force with its worth for programs."""

from paradestate.cli.count_json import fraction_json
from paradestate.cli.judge_json import purchases_json
from paradestate.core.support.force_map import ValuedForce


def force_json(force: ValuedForce | None) -> dict[str, object] | None:
    """Worth, points and purchases of a force; null where there is none."""
    if force is None:
        return None
    return {
        "worth": fraction_json(force.worth),
        "points": force.points,
        "purchases": purchases_json(force.purchases),
    }
