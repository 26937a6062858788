"""A judged plan for programs."""

from paradestate.cli.count_json import fraction_json
from paradestate.core.finding import Finding
from paradestate.core.game import Purchase
from paradestate.core.support.judge import Judgement
from paradestate.core.support.way_out import WayOut
from paradestate.journeys.document import finding_document
from paradestate.journeys.judge import JudgedPlan


def judge_json(answer: JudgedPlan, *, findings: tuple[Finding, ...]) -> dict[str, object]:
    """The judgement with the keys that programs rely on."""
    made = answer.judgement
    after = made.after
    return {
        "legal": answer.is_legal,
        "game": answer.terms.game.name,
        "points": made.points,
        "points_are_most": answer.are_most,
        "spent": made.spent,
        "worth": fraction_json(made.worth),
        "certainty": "exact",
        "plan": purchases_json(made.plan),
        "order": list(answer.paragraph),
        "broken": _broken(made),
        "after_the_dice": None
        if after is None
        else {
            "left": purchases_json(after.left),
            "order": list(answer.paragraph_left),
            "gone": purchases_json(after.gone),
            "points_free": after.points_free,
            "points_lost": after.points_lost,
        },
        "ready": [
            {
                "entry": each.entry,
                "stand": each.pattern,
                "wanted": each.wanted,
                "finished": each.finished,
                "unfinished": each.unfinished,
                "lacking": dict(each.lacking),
            }
            for each in answer.ready
        ],
        "findings": [finding_document(finding) for finding in findings],
    }


def _broken(made: Judgement) -> list[dict[str, object]]:
    return [
        {
            "code": breach.code,
            "about": list(breach.about),
            "has": breach.has,
            "bound": breach.bound,
            "ways_out": [_way(way) for way in made.ways_out[breach]],
            "all_ways_tried": breach not in made.partly,
        }
        for breach in made.breaches
    ]


def _way(way: WayOut) -> dict[str, object]:
    return {
        "changes": [
            {
                "goes": None if each.goes is None else purchase_json(each.goes),
                "comes": None if each.comes is None else purchase_json(each.comes),
            }
            for each in way.changes
        ],
        "points": way.points,
        "plan": purchases_json(way.plan),
    }


def purchases_json(plan: tuple[Purchase, ...]) -> list[dict[str, object]]:
    """Purchases for programs."""
    return [purchase_json(each) for each in plan]


def purchase_json(purchase: Purchase) -> dict[str, object]:
    """One purchase for programs."""
    return {"entry": purchase.entry, "number": purchase.number, "choice": purchase.choice}
