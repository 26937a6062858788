"""How often each kind of game is played."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.advice.game_shares import PRIOR_GAMES, game_shares

WEIGHTS = {"evening": Fraction(3), "day": Fraction(1)}


def test_without_games_the_owners_weights_say_it() -> None:
    found = game_shares(WEIGHTS, {})
    assert found.of_game == {"evening": Fraction(3, 4), "day": Fraction(1, 4)}
    assert (found.played, found.games, found.is_few) == ({}, 0, True)


def test_six_games_count_as_much_as_the_owners_weights() -> None:
    """Half of three quarters and none, and half of a quarter and all."""
    found = game_shares(WEIGHTS, {"day": 6})
    assert found.of_game == {"evening": Fraction(3, 8), "day": Fraction(5, 8)}
    assert (found.games, found.is_few) == (PRIOR_GAMES, False)


def test_games_of_other_kinds_and_those_that_are_left_out_count_for_nothing() -> None:
    assert game_shares(WEIGHTS, {"siege": 9}) == game_shares(WEIGHTS, {})
    alone = game_shares(WEIGHTS, {"day": 6}, by_weight=True)
    assert alone.of_game == game_shares(WEIGHTS, {}).of_game
    assert (alone.played, alone.is_by_weight) == ({}, True)


@given(
    st.lists(st.tuples(st.integers(1, 9), st.integers(0, 40)), min_size=1, max_size=4),
)
def test_shares_are_those_of_one_pseudo_game_after_the_other(pairs: list[tuple[int, int]]) -> None:
    """Each game played moves the shares by one part in all games so far (the slow twin)."""
    weights = {str(place): Fraction(weight) for place, (weight, _) in enumerate(pairs)}
    played = {str(place): number for place, (_, number) in enumerate(pairs)}
    shares = {name: weight / sum(weights.values()) for name, weight in weights.items()}
    games = PRIOR_GAMES
    for name, number in played.items():
        for _ in range(number):
            games += 1
            shares = {
                each: share + (Fraction(each == name) - share) / games
                for each, share in shares.items()
            }
    assert game_shares(weights, played).of_game == shares
    assert sum(shares.values()) == 1
