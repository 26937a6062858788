"""All rules in one tuple, in the order of the job."""

from paradestate.core.review import (
    buying,
    campaign,
    conditions,
    detachment,
    limit,
    loss_limit,
    organisation,
    plans,
    roll,
    scenario,
    stands,
    supporting_troops,
    work,
)
from paradestate.core.review.rule import Rule

EVERY_RULE: tuple[Rule, ...] = (
    *organisation.RULES,
    *detachment.RULES,
    *stands.RULES,
    *buying.RULES,
    *supporting_troops.RULES,
    *roll.RULES,
    *limit.RULES,
    *conditions.RULES,
    *plans.RULES,
    *scenario.RULES,
    *campaign.RULES,
    *loss_limit.RULES,
    *work.RULES,
)
