"""The legal forces of a game in a folder."""

import datetime
from fractions import Fraction
from pathlib import Path

import pytest

from paradestate.chance.force import diagram, taking
from paradestate.core.certainty import NotComputed
from paradestate.core.choice import Choice
from paradestate.core.support.force_map import LevelForces, ValuedForce
from paradestate.journeys.forces import (
    BestAlone,
    Fieldable,
    ForcesAsked,
    ForcesFound,
    forces,
)
from paradestate.journeys.memory import Memory
from tests.forces import EXAMPLES

TODAY = datetime.date(2026, 3, 1)
MARENZ = EXAMPLES / "marenz"
ATTACK = Choice(game="whole-day attack")
SMALL = """\
format: 1
title: Test
figures: {a: {}, b: {}, c: {}}
stands:
  A: {base: none, figures: {a: 1}}
  B: {base: none, figures: {b: 1}}
  C: {base: none, figures: {c: 1}}
  card: {base: none, printed: yes}
formations: {top: {parts: {card: 1}}}
raise: {formation: top}
games: {evening: {allowance: 6 + 1d2, posture: attack}}
supporting troops:
  A: {cost: 2, limit: {most: 3}, each: {A: 1}}
  B: {cost: 3, limit: {most: 2}, each: {B: 1}}
  C: {cost: 5, needs: [B], each: {C: 1}}
stock: {a: {based: 2}, b: {based: 1, painted: 1}}
"""
TANGLED = SMALL.replace("figures: {b: 1}", "figures: {a: 1}")
"""Here A and B want the same figures."""


def found(
    folder: Path,
    *,
    choice: Choice = ATTACK,
    points: int | None = None,
    seed: int | None = None,
    finished: bool = False,
) -> ForcesFound:
    asked = ForcesAsked(points=points, seed=seed, finished=finished)
    answer = forces(folder, today=TODAY, choice=choice, grades={}, asked=asked).found
    assert isinstance(answer, ForcesFound)
    return answer


@pytest.fixture
def small(tmp_path: Path) -> Path:
    (tmp_path / "force.yaml").write_text(SMALL)
    return tmp_path


def test_without_points_all_that_the_dice_leave_are_looked_at() -> None:
    answer = found(MARENZ)
    assert [level.points for level in answer.levels] == list(range(13, 24))
    assert (answer.points, answer.level.legal, answer.level.spending_all) == (18, 3809, 977)
    assert answer.allowance is not None
    assert answer.worths[5] == answer.best[0].worth == 19
    assert [force.worth for force in answer.best] == [19, 18, 17, 16]
    assert (answer.every, answer.drawn, answer.is_listed) == ((), None, False)


def test_few_forces_are_all_listed_by_points() -> None:
    answer = found(MARENZ, points=5)
    assert [level.points for level in answer.levels] == list(range(6))
    assert answer.allowance is None
    assert len(answer.every) == answer.level.legal == 19
    assert [force.points for force in answer.every] == sorted(f.points for f in answer.every)
    assert isinstance(answer.fieldable, Fieldable)
    assert len(answer.fieldable.every) == answer.fieldable.at(5)


def test_points_below_nought() -> None:
    """A force that is dearer than the allowance can only go without supporting troops."""
    answer = found(MARENZ, points=-2, seed=1)
    nothing = ValuedForce(purchases=(), points=0, worth=Fraction(0))
    assert answer.level == LevelForces(points=-2, legal=1, spending_all=0)
    assert (answer.best, answer.every, answer.drawn) == ((nothing,), (nothing,), nothing)


def test_what_is_owned_and_what_is_finished(small: Path) -> None:
    """The small example of section 3.12 of the computations: 6 of 10; with one more B 8."""
    finished = found(small, choice=Choice(), points=8, finished=True).fieldable
    owned = found(small, choice=Choice(), points=8).fieldable
    assert isinstance(finished, Fieldable)
    assert isinstance(owned, Fieldable)
    assert (finished.at(8), owned.at(8), owned.must_lacks) == (6, 8, 0)
    assert finished.best is not None


def test_without_worths_none_is_the_best(small: Path) -> None:
    answer = found(small, choice=Choice())
    assert not answer.has_worths
    assert answer.best == ()
    assert answer.worths[0] == Fraction(0)


def test_the_same_seed_draws_the_same_force() -> None:
    one, other = (found(MARENZ, points=18, seed=4).drawn for _ in range(2))
    assert one == other
    assert one is not None
    assert one.points <= 18


def test_a_grade_takes_points_off() -> None:
    answer = forces(
        MARENZ,
        today=TODAY,
        choice=ATTACK,
        grades={"training": "long-service"},
        asked=ForcesAsked(),
    ).found
    assert isinstance(answer, ForcesFound)
    assert answer.points == 14


def test_a_program_that_goes_on_running_works_it_out_once() -> None:
    memory = Memory()
    one, other = (
        forces(
            MARENZ, today=TODAY, choice=ATTACK, grades={}, asked=ForcesAsked(), memory=memory
        ).found
        for _ in range(2)
    )
    assert one is other


def test_what_is_too_much_is_not_worked_out(small: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def asked() -> object:
        return forces(
            small, today=TODAY, choice=Choice(), grades={}, asked=ForcesAsked(points=8)
        ).found

    (small / "force.yaml").write_text(TANGLED)
    monkeypatch.setattr(diagram, "MOST_NODES", 4)
    answer = asked()
    assert isinstance(answer, ForcesFound)
    assert isinstance(answer.fieldable, NotComputed)
    monkeypatch.setattr(diagram, "MOST_NODES", 1)
    assert isinstance(asked(), NotComputed)


def test_the_best_alone_is_searched_for_where_all_are_too_many(
    small: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Two A and a B are worth most; of the two figures that are owned all three want one."""

    def asked(*, steps: int = 1_000) -> object:
        """With four nodes all forces can still be told apart, those in hand can't."""
        told = ForcesAsked(points=7, seed=1, steps=steps)
        return forces(small, today=TODAY, choice=Choice(), grades={}, asked=told).found

    (small / "force.yaml").write_text(TANGLED)
    (small / "worths.yaml").write_text("worths: {A: {1: 2, 2: 3}, B: {1: 3}}\n")
    monkeypatch.setattr(diagram, "MOST_NODES", 4)
    answer = asked()
    assert isinstance(answer, ForcesFound)
    assert isinstance(answer.fieldable, NotComputed)
    assert answer.searched is not None
    assert answer.searched.bound == 5
    monkeypatch.setattr(diagram, "MOST_NODES", 1)
    alone = asked()
    assert isinstance(alone, BestAlone)
    assert alone.best.force == answer.best[0]
    assert (alone.best.bound, alone.best.is_proved) == (Fraction(6), True)
    assert alone.fieldable == answer.searched
    assert (alone.points, alone.are_given, alone.is_draw_asked) == (7, True, True)
    stopped = asked(steps=1)
    assert isinstance(stopped, BestAlone)
    assert not stopped.best.is_proved
    monkeypatch.setattr(taking, "MOST_KEYS", 1)
    assert isinstance(asked(), NotComputed), "there are too many ways to take A alone"


def test_what_can_be_fielded_may_not_be_known_beside_the_best(
    small: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Supporting troops take stands of a must layer that lacks figures."""
    text = SMALL.replace("{card: 1}", "{card: 1, C: 1}").replace(
        "each: {A: 1}}", "replaces: {of: C, number: 1, with: A}}"
    )
    (small / "force.yaml").write_text(text)
    (small / "worths.yaml").write_text("worths: {A: {1: 2}}\n")
    assert found(small, choice=Choice(), points=8).searched is None
    monkeypatch.setattr(diagram, "MOST_NODES", 1)
    answer = forces(small, today=TODAY, choice=Choice(), grades={}, asked=ForcesAsked()).found
    assert isinstance(answer, BestAlone)
    assert isinstance(answer.fieldable, NotComputed)
    assert (answer.points, answer.are_given) == (7, False)


def test_stands_taken_of_a_must_layer_that_lacks_some(small: Path) -> None:
    text = SMALL.replace("{card: 1}", "{card: 1, C: 1}").replace(
        "each: {A: 1}}", "replaces: {of: C, number: 1, with: A}}"
    )
    (small / "force.yaml").write_text(text)
    assert isinstance(found(small, choice=Choice(), points=8).fieldable, NotComputed)


def test_what_stops_the_terms_stops_the_forces() -> None:
    answer = forces(
        MARENZ, today=TODAY, choice=Choice(game="moonlight"), grades={}, asked=ForcesAsked()
    )
    assert answer.found is None
    assert answer.checked.is_stopped
