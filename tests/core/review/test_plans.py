"""Rules for the plans of games."""

import pytest

from paradestate.core.finding import Finding, Level
from paradestate.core.review.plans import RULES
from tests.forces import partial_force_from

STANDS = "stands: {a: {base: none}}\nformations: {top: {parts: {a: 1}}}"
GAMES = "games: {g: {allowance: 9, posture: attack, plan: [PLAN]}}"
ENTRIES = (
    "e: {cost: {2: 5}, choice: [flame, smoke]}, d: {cost: 1, only in: {posture: defence}},"
    " n: {cost: 1, not in: {posture: attack}}, old: {cost: 1, until: 1940}, big: {cost: 10},"
    " tow: {cost: 1, needs: [big]}"
)


def found(plan: str, *, head: str = "", entries: str = ENTRIES) -> list[Finding]:
    texts = (STANDS, f"supporting troops: {{{entries}}}", GAMES.replace("PLAN", plan))
    force = partial_force_from(*texts, head=head) if head else partial_force_from(*texts)
    return [finding for rule in RULES for finding in rule(force)]


def codes(plan: str, *, entries: str = ENTRIES) -> list[str]:
    return [finding.code for finding in found(plan, entries=entries)]


@pytest.mark.parametrize(
    ("plan", "expected"),
    [
        ("e=2", ["choice-missing"]),
        ("e(flame)=2", []),
        ("e(flame)=3", ["number-not-priced"]),
        ("e(charges)=2", ["choice-unknown"]),
        ("old(x)=1", ["choice-unknown"]),
        ("d=1", ["not-in-force"]),
        ("n=1", ["not-in-force"]),
        ("old=1", []),
        ("big=1", ["over-points"]),
        ("tow=1", ["need-missing"]),
    ],
)
def test_plans(plan: str, expected: list[str]) -> None:
    assert codes(plan) == expected


def test_a_plan_that_is_not_legal_lets_everything_else_be_worked_out() -> None:
    (finding,) = found("big=1")
    assert finding.level is Level.WARN
    assert finding.message == ("g: Spent 10 of 9 points: over by 1.")
    assert finding.hint == "Dropping 1 x big (10) would do it."
    (slip,) = found("e(flame)=3")
    assert slip.level is Level.STOP


def test_a_plan_against_the_date() -> None:
    head = "format: 1\ntitle: T\nraise: {formation: top, date: 1943}\n"
    (finding,) = found("old=1", head=head)
    assert finding.message == "old: not to be had in 1943."
    assert finding.place.path == ("games", "g", "plan", "1")


def test_a_date_that_is_partly_inside_leaves_the_benefit_of_the_doubt() -> None:
    head = "format: 1\ntitle: T\nraise: {formation: top, date: 1940}\n"
    entries = "old: {cost: 1, until: 1940-06}"
    assert found("old=1", head=head, entries=entries) == []


def test_slips_are_found_where_nothing_can_be_raised() -> None:
    head = "format: 1\ntitle: T\nraise: {formation: nowhere}\n"
    assert [each.code for each in found("e(flame)=3, big=1", head=head)] == ["number-not-priced"]
    head = "format: 1\ntitle: T\n"
    assert [each.code for each in found("d=1", head=head)] == ["not-in-force"]


@pytest.mark.parametrize(("rows", "expected"), [("1-2: 3", []), ("1-6: 9", ["over-points"])])
def test_points_that_are_looked_up(rows: str, expected: list[str]) -> None:
    looked_up = GAMES.replace("9", f"{{roll: 1d6, gives: {{{rows}}}}}").replace("PLAN", "big=1")
    force = partial_force_from(STANDS, f"supporting troops: {{{ENTRIES}}}", looked_up)
    assert [finding.code for rule in RULES for finding in rule(force)] == expected


def test_a_plan_of_something_that_could_not_be_read() -> None:
    assert codes("e=2", entries="e: {cost: x}") == []
    assert codes("e=2", entries="e: {cost: 0, limit: any}") == []
    assert codes("e=2", entries="e: {cost: {}}") == []
