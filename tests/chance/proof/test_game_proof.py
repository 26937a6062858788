"""The proof of a list in one game, beside plain listing."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings

from paradestate.chance.proof.game_proof import cheapest_purchase, game_proof
from paradestate.core.certainty import NotComputed
from paradestate.core.support.chances import Chances, chances
from paradestate.core.support.entry import Availability, Band, Entry
from paradestate.core.support.offer import Offer
from paradestate.core.support.proof import EntryProof, GameProof, InBest, Reach
from paradestate.core.support.terms import Terms
from tests.chance.force.lists import A, B, C, listed
from tests.forces import marenz
from tests.support_terms import attack, dice, every_legal_plan, plain_points, small_terms


def entries_of(terms: Terms) -> dict[str, Entry]:
    return {name: Entry(name=name, cost={}) for name in (*terms.offers, *terms.absent)}


def proved(terms: Terms, *points: int, allowance: Chances | None = None) -> GameProof:
    found = game_proof(terms, entries_of(terms), points=points, allowance=allowance)
    assert isinstance(found, GameProof)
    return found


def entry(proof: GameProof, name: str) -> EntryProof:
    return next(each for each in proof.entries if each.entry == name)


def test_the_example_in_an_attack() -> None:
    """Section 3.24 of the computations: the smallest price is 2, so a last point is waste."""
    terms = attack()
    found = game_proof(terms, marenz().supporting_troops, points=(5, 10, 18), allowance=None)
    assert isinstance(found, GameProof)
    assert [level.legal for level in found.levels] == [19, 234, 3809]
    assert found.cheapest == 2
    assert found.wasteful == ()
    assert entry(found, "anti-tank rifles").reason == "not to be had in 1943"
    assert entry(found, "machine-gun platoon").steps == (3, 2, 2)
    tanks = entry(found, "light tanks")
    assert [level.holding for level in tanks.levels] == [0, 1, 205]
    assert tanks.reach is Reach.CAN_BE_TAKEN


def test_points_that_nobody_can_spend() -> None:
    """A costs 2 and is taken up to three times, C costs 5 and needs B: 1, 4 and 7 of 2 and 3."""
    rolls = chances({1: 1, 4: 1, 7: 2})
    terms = listed(replace(A, most=1))
    found = proved(terms, 1, 4, 7, allowance=rolls)
    assert found.unspent == (1, 2, 5)
    assert found.wasteful == (1, 4, 7)
    assert found.waste == 1
    some = proved(listed(A, B), 1, 4, 7, allowance=rolls)
    assert some.unspent == (1, 0, 0)
    assert some.waste == Fraction(1, 4)


def test_an_entry_whose_roll_never_allows_any_can_t_be_taken() -> None:
    never = Availability(roll=dice(1, sides=4), allows=(Band(least=1, most=4, allows=1),))
    pair = Offer(name="pair", cost={2: 3}, availability=never)
    found = entry(proved(listed(A, pair), 5), "pair")
    assert (found.reach, found.reason) == (Reach.NEVER_AVAILABLE, "its roll never allows any")
    either = entry(proved(listed(A, replace(pair, cost={1: 2, 2: 3})), 5), "pair")
    assert either.reach is Reach.CAN_BE_TAKEN
    assert either.never_allowed == (2,)


def test_without_worths_nothing_is_said_of_best_forces() -> None:
    found = proved(listed(Offer(name="gun", cost={1: 1})), 1)
    assert not found.has_worths
    assert entry(found, "gun").levels[0].in_best is None


def test_where_nothing_is_legal_nothing_is_held() -> None:
    found = proved(listed(A, replace(B, least=3)), 5)
    assert [level.share for level in entry(found, "A").levels] == [None]
    assert entry(found, "A").reach is Reach.NEVER_AVAILABLE


def test_a_diagram_that_is_too_large_is_refused() -> None:
    found = game_proof(listed(A), entries_of(listed(A)), points=(10_001,), allowance=None)
    assert isinstance(found, NotComputed)


def test_nothing_costs_anything_where_nothing_is_on_offer() -> None:
    assert cheapest_purchase(listed()) is None
    assert cheapest_purchase(listed(replace(B, cost={1: -1}))) is None
    assert cheapest_purchase(listed(A, C)) == 2


@settings(max_examples=25, deadline=None)
@given(small_terms(most_entries=3))
def test_every_claim_equals_plain_listing(terms: Terms) -> None:
    levels = tuple(range(5))
    found = proved(terms, *levels)
    for place, points in enumerate(levels):
        plans = list(every_legal_plan(terms, points=points))
        spent = [plain_points(terms, plan) for plan in plans]
        assert found.unspent[place] == (points - max(spent) if plans else None)
        for each in found.entries:
            if each.entry not in terms.offers:
                assert each.reach is Reach.NEVER_AVAILABLE
                continue
            holding = [plan for plan in plans if any(p.entry == each.entry for p in plan)]
            assert each.levels[place].holding == len(holding)
            if holding and each.never_allowed == ():
                assert each.reach is Reach.CAN_BE_TAKEN


def test_chances_of_standing_in_best_forces_are_weighed_by_the_dice() -> None:
    rolls = chances({2: 1, 3: 2, 8: 1})
    found = entry(proved(listed(A, B, C), 2, 3, 8, allowance=rolls), "B")
    assert [level.in_best for level in found.levels] == [InBest.NONE, InBest.EVERY, InBest.EVERY]
    assert found.chance_of(InBest.EVERY, allowance=rolls) == Fraction(3, 4)
    assert found.chance_of(InBest.EVERY, allowance=None) == Fraction(2, 3)
