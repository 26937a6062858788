"""Doubts about spending."""

from dataclasses import replace

import pytest

from paradestate.core.finding import Finding
from paradestate.core.game import Game
from paradestate.core.support.breach import bill_of
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.offer import Offer
from paradestate.core.support.spending import points_findings, spending_findings
from paradestate.core.support.terms import Terms
from tests.core.support.test_breach import GUNS, TANKS, take, terms
from tests.support_terms import dice

MOST = Known(are_most=True)


def said(known_terms: Terms, *names: str, points: int, known: Known | None = None) -> list[Finding]:
    bill = bill_of(known_terms, take(*names), points=points)
    return list(spending_findings(bill, known=known or Known()))


def whole_day(**more: int) -> Terms:
    game = Game(name="whole day", allowance=dice(2, sides=6, plus=18), posture="attack")
    return replace(
        terms(GUNS),
        game=game,
        formation_cost=7,
        grade_costs=more,
        grades={"training": "long-service", "steadfastness": "high"},
    )


@pytest.mark.parametrize(
    ("grades", "message"),
    [
        ({}, "The worst roll leaves 20 - 7 (formation) = 13 points; the plan costs 16."),
        (
            {"training": 4, "steadfastness": 3},
            (
                "With training long-service (4) and steadfastness high (3) the worst roll leaves "
                "20 - 7 (formation) - 7 (grades) = 6 points; the plan costs 16."
            ),
        ),
        (
            {"training": -1, "steadfastness": 0},
            (
                "With training long-service (-1) the worst roll leaves "
                "20 - 7 (formation) + 1 (grades) = 14 points; the plan costs 16."
            ),
        ),
    ],
)
def test_what_the_worst_roll_leaves(grades: dict[str, int], message: str) -> None:
    (finding,) = said(whole_day(**grades), *["guns"] * 4, points=23, known=MOST)
    assert (finding.code, finding.message) == ("worst-roll-short", message)


def test_where_nothing_is_taken_off_the_worst_roll_is_a_number() -> None:
    plain = replace(whole_day(), formation_cost=0)
    (finding,) = said(plain, *["guns"] * 6, points=30, known=MOST)
    assert finding.message == "The worst roll leaves 20 points; the plan costs 24."


def test_a_plan_that_the_worst_roll_pays_is_not_doubted() -> None:
    assert said(whole_day(), *["guns"] * 3, points=23, known=MOST) == []
    assert said(whole_day(), *["guns"] * 4, points=16) == []


def test_points_that_nothing_can_use() -> None:
    (finding,) = said(terms(GUNS), "guns", points=7)
    assert finding.message == "3 points are left, and no more can be had for them."
    (one,) = said(terms(GUNS), "guns", points=5)
    assert one.message == "1 point is left, and no more can be had for it."
    assert said(terms(GUNS), "guns", points=8) == []
    assert said(terms(GUNS), "guns", points=4) == []


def test_what_may_not_be_added_spends_nothing() -> None:
    assert said(terms(GUNS), "guns", "guns", points=20)[0].code == "points-unspendable"
    barred = terms(
        replace(GUNS, bars=frozenset({"tanks"})), replace(TANKS, bars=frozenset({"guns"}))
    )
    assert said(barred, "guns", "guns", points=20)[0].code == "points-unspendable"


def test_a_larger_number_spends_points() -> None:
    sections = Offer(name="sections", cost={1: 3, 2: 5})
    assert said(terms(sections), "sections", points=5) == []
    assert said(terms(sections), "sections", points=4)[0].code == "points-unspendable"


def test_points_that_no_roll_leaves() -> None:
    def codes(points: int) -> list[str]:
        bill = bill_of(whole_day(), (), points=points)
        return [each.message for each in points_findings(bill, known=Known())]

    assert codes(13) == codes(23) == []
    assert codes(24) == ["24 points left; the allowance less 7 leaves 13 to 23."]


def test_points_beside_an_allowance_without_dice() -> None:
    game = Game(name="evening", allowance=dice(0, sides=6, plus=12), posture="attack")
    bill = bill_of(replace(terms(GUNS), game=game), (), points=9)
    found = points_findings(bill, known=Known())
    assert [each.message for each in found] == ["9 points left; the allowance leaves 12."]
