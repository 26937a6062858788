"""Judging a plan for a game of a folder."""

import datetime
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.game import Purchase
from paradestate.journeys.choosing import results_of
from paradestate.journeys.judge import Asked, JudgeAnswer, JudgedPlan, judge
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 1)
MARENZ = EXAMPLES / "marenz"
PLAN = "light tanks=2, tank squadron commander=1, machine-gun platoon=2"
OWN_PLAN = """\
format: 1
title: Test
stands: {a: {base: none}}
formations: {top: {parts: {a: 1}}}
raise: {formation: top}
games: {evening: {allowance: 12, posture: attack, plan: [guns=1, guns=1]}}
supporting troops: {guns: {cost: 2}}
"""


def asked(
    folder: Path = MARENZ,
    *,
    game: str | None = "whole-day attack",
    numbers: dict[str, int] | None = None,
    grades: dict[str, str] | None = None,
    **what: object,
) -> JudgeAnswer:
    return judge(
        folder,
        today=TODAY,
        choice=Choice(game=game, numbers=numbers or {}),
        grades=grades or {},
        asked=Asked(**what),  # type: ignore[arg-type]  # each test says what it asks
    )


def made(answer: JudgeAnswer) -> JudgedPlan:
    assert answer.judged is not None, answer.checked.findings
    return answer.judged


def codes(answer: JudgeAnswer) -> list[str]:
    return [finding.code for finding in answer.checked.findings if finding.code != "stands-alike"]


def test_a_plan_that_was_typed() -> None:
    answer = asked(plan=PLAN, points=18)
    judged = made(answer)
    assert (judged.is_legal, judged.judgement.spent, judged.are_most) == (True, 17, False)
    assert judged.paragraph == (
        "Under command: 2 x machine-gun platoon (attached to a platoon, one to each at most).",
        "In support: 2 x light tanks and 1 x tank squadron commander.",
    )
    assert [each.pattern for each in judged.ready] == [
        "light tank",
        "tank commander",
        "machine-gun team",
    ]
    assert set(codes(answer)) == {"points-unspendable", "not-finished"}


def test_purchases_that_are_known_need_not_be_typed() -> None:
    tanks = Purchase(entry="light tanks", number=2)
    assert made(asked(purchases=(tanks,), points=18)).judgement.spent == 9
    nothing = made(asked(purchases=(), points=18))
    assert (nothing.is_legal, nothing.paragraph) == (True, ("No supporting troops.",))


def test_without_points_the_most_there_can_be() -> None:
    judged = made(asked(plan=PLAN))
    assert (judged.judgement.points, judged.are_most) == (23, True)
    dearer = made(asked(plan=PLAN, grades={"training": "long-service"}))
    assert dearer.judgement.points == 19


def test_a_limit_that_set_lowers_is_told_from_one_in_the_folder() -> None:
    twice = "machine-gun platoon=2, machine-gun platoon=2"
    answer = asked(plan=twice, numbers={"company": 2})
    assert "limit-lowered" in codes(answer)
    assert not made(answer).is_legal
    assert made(asked(plan=twice)).is_legal
    assert "over-limit" in codes(asked(plan=f"{twice}, machine-gun platoon=1"))


def test_dice_and_reserve() -> None:
    results, _ = results_of(["light tanks=0"])
    answer = asked(plan=PLAN, points=18, allowed=results, reserve={"platoon": 5})
    judged = made(answer)
    assert {"refused", "reserve-too-large"} <= set(codes(answer))
    assert (judged.is_legal, judged.judgement.is_legal) == (False, True)
    assert judged.paragraph_left == (judged.paragraph[0], "In reserve, named: 5 platoons.")


def test_what_is_not_on_offer_puts_nothing_on_the_table() -> None:
    judged = made(asked(plan="field works for a company=1, lancers=2"))
    assert judged.ready == ()
    assert len(judged.judgement.breaches) == 2


def test_the_plan_of_the_game_is_judged_at_its_place_and_said_once(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(OWN_PLAN)
    answer = asked(tmp_path, game=None)
    (finding,) = answer.checked.findings
    assert (finding.code, finding.level) == ("over-limit", "stop")
    assert finding.place.path == ("games", "evening", "plan", "1")
    typed = asked(tmp_path, game=None, plan="guns=1", points=12)
    assert [each.level for each in typed.checked.findings] == ["warn", "remark"]


def test_what_stops_the_terms_or_the_plan_stops_the_judge(tmp_path: Path) -> None:
    assert asked(game=None, plan=PLAN).judged is None
    unreadable = asked(plan="light tanks")
    assert unreadable.judged is None
    assert "not-a-purchase" in codes(unreadable)
    top = OWN_PLAN.replace("parts: {a: 1}", "parts: [{of: a, number: 1-2, usual: 1}]")
    (tmp_path / "force.yaml").write_text(top)
    assert made(asked(tmp_path, game=None, numbers={"a": 2})).judgement.spent == 4


def test_results_that_cannot_be_read_are_stops() -> None:
    assert results_of(["tanks=0, tanks=2", "guns=1"])[0] == (
        ("tanks", 0),
        ("tanks", 2),
        ("guns", 1),
    )
    results, findings = results_of(["tanks", "tanks=x"])
    assert results == ()
    assert [finding.code for finding in findings] == ["not-names-and-numbers", "not-a-number"]
