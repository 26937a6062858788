"""Losses and the next strength, for programs; chances are fractions as strings."""

from paradestate.chance.recovery import RecoveryOdds
from paradestate.cli.chances_json import chances_json
from paradestate.cli.count_json import fraction_json
from paradestate.cli.play_json import notes_json
from paradestate.core.campaign.loss_flow import LossFlow
from paradestate.core.campaign.next_strength import PatternStrength
from paradestate.core.sentence.play import event_words
from paradestate.journeys.document import finding_document
from paradestate.journeys.game.losses import AfterGame
from paradestate.journeys.game.losses_struck import loss_lines


def losses_json(after: AfterGame) -> dict[str, object]:
    """The losses with the keys that programs rely on."""
    return {
        "game": None if after.record is None else after.record.id,
        "next_game": after.next_game,
        "notes": [] if after.record is None else notes_json(after.record),
        "casualties": [
            {
                "stand": each.stand.name,
                "pattern": each.stand.pattern,
                "out": each.out,
                "fate": each.fate,
                "taken_as_back": each.is_taken_as_back,
                "promoted": each.is_promoted,
            }
            for each in after.casualties
        ],
        "to_repair": dict(after.to_repair),
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
        "supporting_troops": [
            {"name": each.name, "entry": each.entry, "out": each.out} for each in after.supporting
        ],
        "flow": {
            "kinds": [_flow(each) for each in after.by_kind],
            "companies": [_flow(each) for each in after.by_company],
        },
        "written": [
            {
                "id": each.line.id,
                "what": event_words(each.line.event),
                "struck_out": each.line.struck_because,
            }
            for each in loss_lines(after)
        ],
        "experience": dict(after.experience),
        "certainty": "exact",
        "findings": [finding_document(finding) for finding in after.findings],
    }


def _flow(flow: LossFlow) -> dict[str, object]:
    return {
        "name": flow.name,
        "before": flow.before,
        "in_action": flow.in_action,
        "out": flow.out,
        "to_roll": flow.open,
        "recovered": flow.recovered,
        "lost": flow.lost,
        "replaced": flow.replaced,
        "promoted": flow.promoted,
        "not_in_it": flow.rested,
        "back_since": flow.joined,
        "lost_before": flow.away_lost,
        "to_roll_from_before": flow.away_open,
        "there": flow.sure,
        "must_have": flow.must_have,
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
