"""What is true of a list over several games."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.support.chances import chances
from paradestate.core.support.force_map import LevelForces
from paradestate.core.support.offer import Offer
from paradestate.core.support.proof import (
    EntryLevel,
    EntryProof,
    GameProof,
    InBest,
    ListProof,
    Reach,
)
from paradestate.core.support.terms import Terms
from tests.support_terms import EVENING

WORTH = {"": {1: Fraction(1)}}
OFFERS = {
    "gun": Offer(name="gun", cost={1: 2}, worths=WORTH),
    "horse": Offer(name="horse", cost={1: 3}, worths=WORTH),
    "cart": Offer(name="cart", cost={1: 3}),
}
TERMS = Terms(game=EVENING, offers=OFFERS, absent={"mule": "only in attack"})


def entry(name: str, *places: InBest | None, reach: Reach = Reach.CAN_BE_TAKEN) -> EntryProof:
    return EntryProof(
        entry=name,
        reach=reach,
        reason="",
        levels=tuple(
            EntryLevel(points=points, holding=1, legal=2, in_best=place)
            for points, place in enumerate(places)
        ),
    )


GAME = GameProof(
    terms=TERMS,
    allowance=None,
    levels=tuple(LevelForces(points=points, legal=2, spending_all=1) for points in range(2)),
    unspent=(0, 1),
    cheapest=2,
    has_worths=True,
    entries=(
        entry("gun", InBest.EVERY, InBest.EVERY),
        entry("horse", InBest.NONE, InBest.NONE),
        entry("cart", InBest.NONE, InBest.NONE),
        entry("mule", reach=Reach.NEVER_AVAILABLE),
    ),
)


def proof(*games: GameProof) -> ListProof:
    return ListProof(games=games, refused={})


def test_only_what_is_so_in_every_game_is_always_so() -> None:
    one = proof(GAME)
    assert one.always(InBest.EVERY) == ("gun",)
    assert one.always(InBest.NONE) == ("horse",)
    other = replace(GAME, entries=(entry("gun", InBest.SOME), entry("horse", None)))
    assert proof(GAME, other).always(InBest.EVERY) == ()
    assert proof(GAME, other).always(InBest.NONE) == ("horse",)


def test_entries_without_a_worth_where_others_have_one() -> None:
    assert proof(GAME).worthless == ("cart",)
    assert proof(replace(GAME, has_worths=False)).worthless == ()


def test_what_one_game_lets_be_taken_isn_t_never_taken() -> None:
    assert proof(GAME).never_taken == ("mule",)
    assert proof(GAME, replace(GAME, entries=(entry("mule"),))).never_taken == ()
    assert proof(GAME).entries == ("gun", "horse", "cart", "mule")


def test_points_left_over_by_the_dice() -> None:
    assert (GAME.wasteful, GAME.waste, GAME.at) == ((1,), Fraction(1, 2), 1)
    rolled = replace(GAME, allowance=chances({0: 3, 1: 1}))
    assert (rolled.waste, rolled.at) == (Fraction(1, 4), 0)


def test_the_share_of_no_legal_forces_isn_t_there() -> None:
    level = EntryLevel(points=1, holding=0, legal=0, in_best=None)
    assert level.share is None
    assert replace(level, legal=4, holding=1).share == Fraction(1, 4)


def test_chances_of_standing_in_best_forces() -> None:
    gun = entry("gun", InBest.EVERY, InBest.SOME)
    assert gun.chance_of(InBest.EVERY, allowance=chances({0: 3, 1: 1})) == Fraction(3, 4)
    assert gun.chance_of(InBest.SOME, allowance=None) == Fraction(1, 2)
    assert entry("gun").chance_of(InBest.SOME, allowance=None) == 0
