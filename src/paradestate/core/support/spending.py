"""Doubts about spending: points that the worst roll doesn't leave, points that nothing can use."""

from collections.abc import Iterator

from paradestate.core.finding import Finding, Level
from paradestate.core.sentence.wording import listed, several
from paradestate.core.support.breach import Bill, bill_of, breaches
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.terms import Terms
from paradestate.core.support.way_out import changed, single_changes


def spending_findings(bill: Bill, *, known: Known) -> Iterator[Finding]:
    """What may be said of the points of a legal plan."""
    terms = bill.terms
    if known.are_most and terms.least_points < bill.spent <= bill.points:
        yield Finding(
            level=Level.WARN,
            code="worst-roll-short",
            message=f"{_with_grades(terms)} worst roll leaves {_subtraction(terms)}; "
            f"the plan costs {bill.spent}.",
            effect="Judged as if the best roll had come.",
            hint="Give what was rolled with --points, or ask for the odds of the plan.",
            place=known.place_of(bill.plan),
        )
    is_certain = not known.are_most or terms.least_points == terms.most_points
    rest = bill.points - bill.spent
    if is_certain and rest > 0 and not _is_spendable(bill, rest=rest):
        verb, it = ("is", "it") if rest == 1 else ("are", "them")
        yield Finding(
            level=Level.REMARK,
            code="points-unspendable",
            message=f"{several(rest, 'point')} {verb} left, and no more can be had for {it}.",
            effect="The points lapse.",
            hint="Nothing needs to be done; another plan may spend all.",
            place=known.place_of(bill.plan),
        )


def points_findings(bill: Bill, *, known: Known) -> Iterator[Finding]:
    """Points that were given, and that no roll of the allowance leaves."""
    terms = bill.terms
    totals = terms.game.allowance.totals()
    if bill.points + terms.taken_off not in totals:
        yield Finding(
            level=Level.WARN,
            code="points-impossible",
            message=f"{several(bill.points, 'point')} left; {_left_by_allowance(terms)}.",
            effect="Judged with the points as they were given.",
            hint="Points left are the allowance less formation cost and grades.",
            place=known.place_of(bill.plan),
        )


def _left_by_allowance(terms: Terms) -> str:
    """What the allowance can leave: `the allowance less 7 leaves 13 to 23`."""
    less = f" less {terms.taken_off}" if terms.taken_off else ""
    most = f" to {terms.most_points}" if terms.most_points > terms.least_points else ""
    return f"the allowance{less} leaves {terms.least_points}{most}"


def _with_grades(terms: Terms) -> str:
    paid = [
        f"{scale} {terms.grades.get(scale, '')} ({points})"
        for scale, points in terms.grade_costs.items()
        if points
    ]
    return f"With {listed(paid)} the" if paid else "The"


def _subtraction(terms: Terms) -> str:
    """The points left after the worst roll, with the sum: `20 - 7 (formation) = 13 points`."""
    worst = min(terms.game.allowance.totals())
    grades = sum(terms.grade_costs.values())
    steps = [
        f" {'-' if points > 0 else '+'} {abs(points)} ({what})"
        for what, points in (("formation", terms.formation_cost), ("grades", grades))
        if points
    ]
    left = several(terms.least_points, "point")
    return f"{worst}{''.join(steps)} = {left}" if steps else left


def _is_spendable(bill: Bill, *, rest: int) -> bool:
    """Whether one more purchase, or a larger one, spends some of the rest and stays legal."""
    for change in single_changes(bill.terms, bill.plan):
        if change.comes is None:
            continue
        after = bill_of(bill.terms, changed(bill.plan, change), points=bill.points)
        if 0 < after.spent - bill.spent <= rest and not breaches(after):
            return True
    return False
