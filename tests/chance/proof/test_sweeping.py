"""One question of a sweep says what the same change says by itself."""

import pickle
from dataclasses import replace
from fractions import Fraction

from paradestate.chance.dice import allowance_chances
from paradestate.chance.proof.sweeping import Sweeper
from paradestate.chance.proof.what_if import list_forces, what_if
from paradestate.core.certainty import NotComputed
from paradestate.core.support.amendment import LimitAmendment, PriceAmendment
from paradestate.core.support.comparison import ListComparison, ListForces
from paradestate.core.support.offer import Offer
from paradestate.core.support.sweep import SweepQuestion, SweepRow
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import listed
from tests.support_terms import dice

GUNS = Offer(name="guns", cost={1: 2, 2: 3}, worths={"": {1: Fraction(3), 2: Fraction(4)}})
TANKS = Offer(name="tanks", cost={1: 4}, worths={"": {1: Fraction(7)}})


def as_it_is(terms: Terms, *, points: tuple[int, ...] = (2, 4, 6)) -> ListForces:
    found = list_forces(terms, points=points, at=points[-1])
    assert isinstance(found, ListForces)
    return found


def asked(sweeper: Sweeper, *amendments: PriceAmendment | LimitAmendment) -> SweepRow | NotComputed:
    return sweeper(SweepQuestion(game=0, amendments=amendments))


def test_a_row_is_what_the_change_comes_to_by_itself() -> None:
    old = as_it_is(listed(GUNS, TANKS))
    dearer = PriceAmendment(entry="guns", number=2, points=5)
    alone = what_if(old, (dearer,))
    assert isinstance(alone, ListComparison)
    row = asked(Sweeper(games=(old,)), dearer)
    # By hand, with 6 points: nothing, 1 or 2 guns, tanks, tanks and 1 gun; at 5 points 2 guns stay.
    assert row == SweepRow(
        old=5,
        new=5,
        lost=0,
        gained=0,
        best=alone.level.new_best,
        mean_best=Fraction(3 + 7 + 10),
        held=(("guns", 3),),
        listed=5,
    )


def test_the_mean_is_over_the_dice() -> None:
    allowance = allowance_chances(dice(1, sides=2, plus=2)).moved(0)
    old = list_forces(listed(GUNS, TANKS), points=(3, 4), at=4, allowance=allowance)
    assert isinstance(old, ListForces)
    row = asked(Sweeper(games=(old,)), LimitAmendment(entry="tanks", most=0))
    assert isinstance(row, SweepRow)
    assert row.mean_best == 4


def test_without_a_best_force_there_is_no_mean() -> None:
    must = replace(TANKS, least=1)
    row = asked(
        Sweeper(games=(as_it_is(listed(GUNS, must)),)),
        PriceAmendment(entry="tanks", points=5),
    )
    assert isinstance(row, SweepRow)
    assert row.mean_best is None
    worthless = replace(GUNS, worths={})
    row = asked(
        Sweeper(games=(as_it_is(listed(worthless)),)), PriceAmendment(entry="guns", points=1)
    )
    assert isinstance(row, SweepRow)
    assert row.mean_best is None


def test_what_does_not_fit_is_said() -> None:
    row = asked(
        Sweeper(games=(as_it_is(listed(GUNS)),)),
        PriceAmendment(entry="lances", points=1),
        PriceAmendment(entry="guns", number=3, points=1),
    )
    assert row == NotComputed(
        reason="lances: it isn't on offer; guns: 3 of it has no price; priced are 1, 2"
    )


def test_what_is_too_tangled_is_said() -> None:
    old = as_it_is(listed(GUNS))
    many = PriceAmendment(entry="guns", points=-20_000)
    row = asked(Sweeper(games=(old,)), LimitAmendment(entry="guns", most=900_000), many)
    assert isinstance(row, NotComputed)


def test_a_sweeper_can_be_sent_elsewhere() -> None:
    sweeper = Sweeper(games=(as_it_is(listed(GUNS, TANKS)),))
    question = SweepQuestion(game=0, amendments=(PriceAmendment(entry="tanks", points=2),))
    assert pickle.loads(pickle.dumps(sweeper))(question) == sweeper(question)  # noqa: S301 - ours
