"""What to ask for first in a game of a folder."""

import datetime
from fractions import Fraction
from pathlib import Path

from paradestate.core.certainty import NotComputed
from paradestate.core.choice import Choice
from paradestate.core.game import Purchase
from paradestate.journeys.fallback import FallbackJourney, SoFar, best_fallback, shown_choices
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 1)
ATTACK = "whole-day attack"
SMALL = """\
format: 1
title: Test
stands: {a: {base: none}}
formations: {top: {parts: {a: 1}}}
raise: {formation: top}
games: {evening: {allowance: 6, posture: attack}}
supporting troops:
  tank:
    cost: 6
    availability: {roll: 1d6, allows: {1-3: 0, 4-6: all}}
    when refused: points kept
  gun: {cost: 4}
"""


def played(
    folder: Path = EXAMPLES / "marenz",
    *,
    game: str | None = ATTACK,
    points: int | None = None,
    taken: str = "",
    refused: str = "",
) -> FallbackJourney:
    return best_fallback(
        folder,
        today=TODAY,
        choice=Choice(game=game),
        grades={},
        points=points,
        so_far=SoFar(taken=taken, refused=refused),
    )


def codes(journey: FallbackJourney) -> set[str]:
    assert journey.terms is None
    return {finding.code for finding in journey.checked.findings}


def test_over_the_whole_allowance() -> None:
    journey = played()
    assert journey.value == Fraction(32261, 1944)
    assert [level.points for level in journey.levels] == list(range(13, 24))
    assert journey.fallback is None


def test_with_points_the_whole_play() -> None:
    journey = played(points=18)
    assert journey.fallback is not None
    assert journey.value == journey.fallback.worth == Fraction(154, 9)
    shown = [each.purchase and each.purchase.entry for each in shown_choices(journey.fallback)]
    assert shown == ["light tanks", "anti-tank guns", "armoured cars", None]


def test_what_was_taken_and_refused_so_far() -> None:
    journey = played(
        points=18, taken="light tanks=2, machine-gun platoon=2", refused="armoured cars=2"
    )
    assert journey.fallback is not None
    assert journey.fallback.points == 4
    assert journey.fallback.first_choices[0].purchase == Purchase(entry="anti-tank guns", number=1)
    assert journey.value == 15 + Fraction(5, 6) * 4 + Fraction(1, 6) * 3


def test_lost_points_of_what_was_refused_are_gone(tmp_path: Path) -> None:
    text = SMALL.replace("points kept", "points lost") + "worths: {tank: {1: 10}, gun: {1: 5}}\n"
    (tmp_path / "force.yaml").write_text(text)
    journey = played(tmp_path, game=None, points=9, refused="tank=1")
    assert journey.fallback is not None
    assert [journey.fallback.points, journey.value] == [3, 0]


def test_slips_and_purchases_that_cannot_be_are_stops() -> None:
    assert "number-not-priced" in codes(played(points=18, taken="light tanks=7"))
    assert "number-not-priced" in codes(played(points=18, refused="light tanks=7"))
    assert "not-a-purchase" in codes(played(points=18, refused="light tanks"))
    assert "over-points" in codes(played(points=8, taken="light tanks=2"))
    assert "barred-pair" in codes(played(taken="armoured cars=2, bicycle troop=2"))
    assert "unknown-choice" in codes(played(game="moonlight"))


def test_what_has_to_be_taken_yet_is_no_stop(tmp_path: Path) -> None:
    text = SMALL.replace("gun: {cost: 4}", "gun: {cost: 4, limit: {most: 1, least: 1}}")
    (tmp_path / "force.yaml").write_text(f"{text}worths: {{tank: {{1: 10}}}}\n")
    assert played(tmp_path, game=None, points=6, refused="tank=1").value == 0


def test_without_worths_nothing_can_be_said(tmp_path: Path) -> None:
    (tmp_path / "force.yaml").write_text(SMALL)
    journey = played(tmp_path, game=None)
    assert codes(journey) >= {"worths-missing"}
    (finding,) = [each for each in journey.checked.findings if each.code == "worths-missing"]
    assert finding.hint.startswith("Add 'worths:'")


def test_what_is_too_much_is_not_computed(tmp_path: Path) -> None:
    tanks = "".join(
        f"  tank {n}: {{cost: 1, availability: {{roll: 1d6, allows: {{1-3: 0, 4-6: all}}}},"
        " when refused: points kept}\n"
        for n in range(17)
    )
    worths = ", ".join(f"tank {n}: {{1: 1}}" for n in range(17))
    (tmp_path / "force.yaml").write_text(f"{SMALL}{tanks}worths: {{{worths}}}\n")
    for points in (None, 5):
        journey = played(tmp_path, game=None, points=points)
        assert isinstance(journey.certainty, NotComputed)
        assert journey.value is None
        assert journey.terms is not None


def test_with_less_than_no_points_nothing_is_asked_for(tmp_path: Path) -> None:
    text = SMALL.replace("allowance: 6", "allowance: 1d4 - 6") + "worths: {tank: {1: 3}}\n"
    (tmp_path / "force.yaml").write_text(text)
    journey = played(tmp_path, game=None)
    assert journey.value == 0
    assert [(level.points, level.first) for level in journey.levels] == [
        (points, None) for points in range(-5, -1)
    ]
    assert "over-points" in codes(played(tmp_path, game=None, taken="gun=1"))
