"""The proof of a list: what its author should know of each entry before the players do."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from paradestate.core.certainty import NotComputed
from paradestate.core.support.chances import Chances
from paradestate.core.support.force_map import LevelForces
from paradestate.core.support.price_table import PriceDoubt
from paradestate.core.support.terms import Terms


class Reach(StrEnum):
    """Whether an entry can be taken in a game at all."""

    CAN_BE_TAKEN = "can be taken"
    NEVER_AFFORDABLE = "never affordable"
    """Legal forces hold it, but none for the points that there are."""
    NEVER_AVAILABLE = "never available"
    """Its own conditions, its roll, or where and when it may be had prevent it."""
    NOT_SETTLED = "never taken"
    """No legal force holds it; whether it is too dear or ruled out wasn't computed."""


class InBest(StrEnum):
    """Where an entry stands among all best forces of one number of points."""

    NONE = "none"
    SOME = "some"
    EVERY = "every"


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryLevel:
    """An entry with so many points left."""

    points: int
    holding: int
    """Legal forces that hold it."""
    legal: int
    """All legal forces."""
    in_best: InBest | None
    """None: nothing is legal, or nothing has a worth."""

    @property
    def share(self) -> Fraction | None:
        """The share of the legal forces that hold it; None: nothing is legal."""
        return Fraction(self.holding, self.legal) if self.legal else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Dominance:
    """Another entry that costs no more and gives everything, as easily and as often."""

    by: str
    is_alike: bool
    """Whether the same holds the other way round, so that nothing tells the two apart."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryProof:
    """What is true of one entry in one game."""

    entry: str
    reach: Reach
    reason: str
    """Why it can't be taken, in words; empty where it can."""
    doubts: tuple[PriceDoubt, ...] = ()
    prices: Mapping[int, int] | None = None
    """Number taken to points in this game; None: it isn't on offer."""
    steps: tuple[int, ...] = ()
    """What each priced number costs more than the one below it."""
    never_allowed: tuple[int, ...] = ()
    """Priced numbers that no total of its roll allows in full."""
    dominated: Dominance | None = None
    levels: tuple[EntryLevel, ...] = ()
    """Points rising."""

    @property
    def can_be_taken(self) -> bool:
        """Whether some legal force holds it, and its roll allows it."""
        return self.reach is Reach.CAN_BE_TAKEN

    def chance_of(self, in_best: InBest, *, allowance: Chances | None) -> Fraction:
        """How likely the dice leave points at which it stands so; without dice the share of all."""
        levels = [level.points for level in self.levels if level.in_best is in_best]
        if allowance is None:
            return Fraction(len(levels), max(1, len(self.levels)))
        return sum((allowance.of(points) for points in levels), Fraction(0))


@dataclass(frozen=True, slots=True, kw_only=True)
class GameProof:
    """What is true of a list in one game."""

    terms: Terms
    allowance: Chances | None
    """The points left by the dice; None where they were given."""
    levels: tuple[LevelForces, ...]
    unspent: tuple[int | None, ...]
    """For each level the fewest points that a legal force leaves; None: none is legal."""
    cheapest: int | None
    """The fewest points above nought that a purchase costs: fewer are never spent on anything."""
    has_worths: bool
    entries: tuple[EntryProof, ...]

    def values(self, entry: str) -> bool:
        """Whether the owner says a worth of an entry that is on offer."""
        offer = self.terms.offers.get(entry)
        return offer is not None and offer.has_worths

    @property
    def wasteful(self) -> tuple[int, ...]:
        """Points left that no legal force spends to the last."""
        pairs = zip(self.levels, self.unspent, strict=True)
        return tuple(level.points for level, left in pairs if left)

    @property
    def waste(self) -> Fraction:
        """The share of the rolls after which points are left that nobody can spend."""
        if self.allowance is None:
            return Fraction(len(self.wasteful), max(1, len(self.levels)))
        return sum((self.allowance.of(points) for points in self.wasteful), Fraction(0))

    @property
    def at(self) -> int:
        """The points left of which most is said: those given, or the middle of the dice."""
        if self.allowance is None:
            return self.levels[-1].points
        return self.allowance.quantile(Fraction(1, 2))


@dataclass(frozen=True, slots=True, kw_only=True)
class ListProof:
    """What is true of a list in all of the games that were looked at."""

    games: tuple[GameProof, ...]
    refused: Mapping[str, NotComputed]
    """Game to why it wasn't worked out."""

    def by_game(self, entry: str) -> Iterator[tuple[GameProof, EntryProof]]:
        """One entry, game after game."""
        for game in self.games:
            yield from ((game, each) for each in game.entries if each.entry == entry)

    def of(self, entry: str) -> tuple[EntryProof, ...]:
        """The same without the games."""
        return tuple(each for _, each in self.by_game(entry))

    @property
    def entries(self) -> tuple[str, ...]:
        """All entries of the list, in file order."""
        return tuple(dict.fromkeys(each.entry for game in self.games for each in game.entries))

    @property
    def never_taken(self) -> tuple[str, ...]:
        """Entries that can't be taken in any of the games."""
        return tuple(
            name for name in self.entries if not any(each.can_be_taken for each in self.of(name))
        )

    def always(self, in_best: InBest) -> tuple[str, ...]:
        """Entries that stand so at every number of points of every game in which they can be had.

        Of those in none only such as have a worth.
        """
        return tuple(name for name in self.entries if self._is_always(name, in_best))

    def _is_always(self, name: str, in_best: InBest) -> bool:
        places = [
            level.in_best
            for game, each in self.by_game(name)
            if each.can_be_taken and game.values(name)
            for level in each.levels
            if level.in_best is not None
        ]
        return bool(places) and all(place is in_best for place in places)

    @property
    def worthless(self) -> tuple[str, ...]:
        """Entries of which no worth is said, where one is said of others."""
        games = [game for game in self.games if game.has_worths]
        return tuple(
            name
            for name in self.entries
            if games
            and any(name in game.terms.offers for game in games)
            and not any(game.values(name) for game in games)
        )
