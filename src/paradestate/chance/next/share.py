"""The mean share of the legal forces of all games that a stock lets be fielded, exactly.

What availability allows plays no part. With points for which nothing is legal the share is nought.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.chance.force.diagram import diagram
from paradestate.chance.force.fielding import Depot, Fielding
from paradestate.chance.force.legal_count import legal_forces
from paradestate.chance.force.weighing import weighing
from paradestate.chance.next.expectation import Stock
from paradestate.chance.next.game_worth import Play
from paradestate.chance.next.reach import Ground, ReachKey
from paradestate.core.certainty import NotComputed


@dataclass(frozen=True, slots=True, kw_only=True)
class _Game:
    play: Play
    place: int
    """Among all games; those in which nothing is legal have no share."""
    ground: Ground
    legal: tuple[int, ...]
    """Legal forces for each number of points left."""
    known: dict[ReachKey, Fraction]


class FieldableShare:
    """Shares of stocks over all games that are played."""

    def __init__(self, games: Sequence[_Game]) -> None:
        self._games = games

    def values(self, stocks: Sequence[Stock]) -> list[Fraction] | NotComputed:
        """The mean share of each stock."""
        total = [Fraction(0)] * len(stocks)
        for game in self._games:
            for at, stock in enumerate(stocks):
                share = _known_share(game, stock[game.place])
                if isinstance(share, NotComputed):
                    return share
                total[at] += game.play.share * share
        return total


def _known_share(game: _Game, owned: Depot) -> Fraction | NotComputed:
    """The share, worked out once for all stocks that let the same be fielded."""
    key = game.ground.key(owned)
    if key not in game.known:
        share = _share(game, owned)
        if isinstance(share, NotComputed):
            return share
        game.known[key] = share
    return game.known[key]


def _share(game: _Game, owned: Depot) -> Fraction | NotComputed:
    play = game.play
    fielding = Fielding(owned, play.entries)
    drawn = diagram(play.terms, greatest=play.greatest, more=fielding.ties)
    if isinstance(drawn, NotComputed):
        return drawn
    points = play.points
    fielded = legal_forces(drawn, points=tuple(points.counts))
    return sum(
        (
            points.of(level.points) * Fraction(level.legal, legal)
            for level, legal in zip(fielded, game.legal, strict=True)
            if legal
        ),
        Fraction(0),
    )


def fieldable_share(plays: Sequence[Play]) -> FieldableShare | NotComputed:
    """Shares in these games; refused where one is too large."""
    games = []
    for place, play in enumerate(plays):
        refusal = Fielding(play.most, play.entries).refusal
        drawn = play.drawn()
        if isinstance(drawn, NotComputed):
            return drawn
        if refusal is not None:
            return refusal
        if not drawn.is_legal:
            continue
        levels = legal_forces(drawn, points=tuple(play.points.counts))
        games.append(
            _Game(
                play=play,
                place=place,
                ground=Ground(drawn, play.entries, most=play.most, scale=weighing(drawn).scale),
                legal=tuple(level.legal for level in levels),
                known={},
            )
        )
    return FieldableShare(games)
