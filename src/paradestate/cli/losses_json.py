"""Losses and the next strength, for programs; chances are fractions as strings."""

from paradestate.chance.recovery import RecoveryOdds
from paradestate.cli.chances_json import chances_json
from paradestate.cli.count_json import fraction_json
from paradestate.core.campaign.next_strength import PatternStrength
from paradestate.journeys.document import finding_document
from paradestate.journeys.losses import AfterGame


def losses_json(after: AfterGame) -> dict[str, object]:
    """The losses with the keys that programs rely on."""
    return {
        "game": None if after.record is None else after.record.id,
        "next_game": after.next_game,
        "casualties": [
            {
                "stand": each.stand.name,
                "pattern": each.stand.pattern,
                "out": each.out,
                "fate": each.fate,
                "promoted": each.is_promoted,
            }
            for each in after.casualties
        ],
        "to_roll": [
            {
                "for": each.name,
                "stands": list(each.stands),
                "dice": str(after.campaign.recovery[each.pattern].roll),
                "on": str(after.campaign.recovery[each.pattern].on),
            }
            for each in after.groups
        ],
        "odds": None if after.odds is None else _odds(after.odds),
        "next_strength": [_strength(each) for each in after.strengths],
        "experience": dict(after.experience),
        "certainty": "exact",
        "findings": [finding_document(finding) for finding in after.findings],
    }


def _odds(odds: RecoveryOdds) -> dict[str, object]:
    return {
        "back": chances_json(odds.back),
        "mean_back": fraction_json(odds.back.mean),
        "complete": fraction_json(odds.none_needed),
        "complete_with_pool": fraction_json(odds.pool_enough),
    }


def _strength(each: PatternStrength) -> dict[str, object]:
    return {
        "pattern": each.pattern,
        "must_have": each.wanted,
        "sure": each.sure,
        "to_roll": each.open,
        "lost": each.lost,
        "pool": each.pool,
        "least_to_add": each.least_to_add,
        "most_to_add": each.most_to_add,
    }
