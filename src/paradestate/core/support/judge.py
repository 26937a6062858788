"""The judge: whether a plan is legal in a game, why not, and the ways out.

plan -> bill -> breaches -> ways out -> findings, with doubts about points and rolls
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.finding import Finding
from paradestate.core.game import Purchase
from paradestate.core.support.breach import Breach, bill_of, breaches, priced
from paradestate.core.support.judge_finding import Known, breach_finding
from paradestate.core.support.plan import plan_worth
from paradestate.core.support.refusal import AfterTheDice, Allowed, after_the_dice, roll_findings
from paradestate.core.support.spending import points_findings, spending_findings
from paradestate.core.support.terms import Terms
from paradestate.core.support.way_out import WayOut, ways_out

NOTHING_KNOWN = Known()


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """A plan judged."""

    plan: tuple[Purchase, ...]
    is_legal: bool
    spent: int
    """Points of what has a price."""
    points: int
    worth: Fraction
    """The owner's worth of what has a price."""
    breaches: tuple[Breach, ...]
    """Every rule that is broken; none where it is legal."""
    ways_out: Mapping[Breach, tuple[WayOut, ...]]
    partly: frozenset[Breach]
    """Those for which not every way out was tried."""
    after: AfterTheDice | None
    """What the dice left of it, where their results were said and everything has a price."""
    findings: tuple[Finding, ...]
    """A stop for each broken rule, and the doubts."""


def judged(
    terms: Terms,
    plan: tuple[Purchase, ...],
    *,
    points: int,
    allowed: Allowed | None = None,
    known: Known = NOTHING_KNOWN,
) -> Judgement:
    """Whether a plan keeps every rule of a game with so many points left.

    `allowed` is what the dice said, entry by entry, where they were rolled. Availability plays no
    part in what is legal.
    """
    bill = bill_of(terms, plan, points=points)
    broken = breaches(bill)
    ways = ways_out(bill, broken)
    findings = [breach_finding(bill, breach, ways=ways, known=known) for breach in broken]
    can_be_bought = priced(terms, plan)
    is_rolled = bool(allowed) and can_be_bought == plan
    findings += points_findings(bill, known=known)
    if not broken and not is_rolled:
        findings += spending_findings(bill, known=known)
    if is_rolled:
        findings += roll_findings(bill, allowed or {}, known=known)
    return Judgement(
        plan=plan,
        is_legal=not broken,
        spent=bill.spent,
        points=points,
        worth=plan_worth(terms.offers, can_be_bought),
        breaches=broken,
        ways_out=ways.of,
        partly=ways.partly,
        after=after_the_dice(bill, allowed or {}) if is_rolled else None,
        findings=tuple(findings),
    )
