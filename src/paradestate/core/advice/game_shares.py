"""How often each kind of game is played: by the owner's weights, and by the games really played."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

PRIOR_GAMES = 6
"""Games that the owner's weights count for together.

What one means to play is known before the first evening, and what is played shows only bit by bit:
with six games played both count alike, after thirty the record counts five times as much. Six
evenings are a quarter of a year of club nights every second week (common practice, no source).
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class GameShares:
    """Each kind of game with its share in all, and what that rests on."""

    of_game: Mapping[str, Fraction]
    played: Mapping[str, int]
    """Kind to games of it that were played to their end; empty where they don't count."""
    is_by_weight: bool = False
    """Whether the owner's weights count alone, because that was asked for."""

    @property
    def games(self) -> int:
        """Games that were played, of all these kinds."""
        return sum(self.played.values())

    @property
    def is_few(self) -> bool:
        """Whether the owner's weights count for more than the games played."""
        return self.games < PRIOR_GAMES


def game_shares(
    weights: Mapping[str, Fraction], played: Mapping[str, int], *, by_weight: bool = False
) -> GameShares:
    """The share of each kind of game that has a weight.

    With `n` games of a kind among `N`, and the owner's share `w` of it, it is
    `(6 w + n) / (6 + N)`: the mean of the posterior of a multinomial whose prior is a Dirichlet
    distribution worth six games (A. Gelman and others, "Bayesian Data Analysis", 3rd edition,
    2013, section 3.4). Games of kinds that have no weight count for nothing; `by_weight` leaves
    out all of them.
    """
    whole = sum(weights.values())
    counted = {} if by_weight else {name: played.get(name, 0) for name in weights}
    prior = PRIOR_GAMES + sum(counted.values())
    return GameShares(
        of_game={
            name: (PRIOR_GAMES * weight / whole + counted.get(name, 0)) / prior
            for name, weight in weights.items()
        },
        played=counted if any(counted.values()) else {},
        is_by_weight=by_weight,
    )
