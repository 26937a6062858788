"""What a stock lets its owner field in one game: all that the worth of the stock rests on.

Two stocks that let the same be fielded are worth the same, so that it is worked out once for both.
Figures that serve only among themselves are looked at part by part: what they let be taken of a
single entry is kept as a set of takings, what binds several entries as a tie.
"""

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from paradestate.chance.force.diagram import Diagram
from paradestate.chance.force.fielding import Depot, Fielding, Stocked, demand
from paradestate.chance.force.taking import Taking, ValuedTaking
from paradestate.chance.force.tie import Move
from paradestate.chance.force.weighing import Among
from paradestate.core.support.entry import Entry

TieKey: TypeAlias = Hashable
"""Tells ties with different limits apart."""
ReachKey: TypeAlias = tuple[int, ...]
"""What stocks that let the same be fielded have in common: a number for each part."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """What can be fielded."""

    among: Mapping[str, Among]
    """Entry to the takings that its figures let be fielded; where that is all, left out."""
    ties: Mapping[TieKey, Stocked]
    """What binds several entries."""


class Ground:
    """What stocks let be fielded of the entries of one game."""

    def __init__(
        self, drawn: Diagram, entries: Mapping[str, Entry], *, most: Depot, scale: int
    ) -> None:
        self.every: Mapping[str, Among] = {
            row.entry: frozenset(row.takings.valued(scale)) for row in drawn.rows
        }
        """Entry to all of its takings, worths in units of one over `scale`."""
        self._entries = entries
        self._plain: Mapping[str, Sequence[Taking]] = {row.entry: row.plain for row in drawn.rows}
        self._parts = [frozenset(kinds) for kinds in Fielding(most, entries).knots()]
        self._most = [most.part(kinds) for kinds in self._parts]
        """What of the greatest stock has to do with each part."""
        self._found: dict[Hashable, int] = {}
        self._numbers: dict[Hashable, int] = {}
        self._reaches: dict[int, Reach] = {}

    def key(self, owned: Depot) -> ReachKey:
        """The key of a stock that is no greater than the greatest."""
        return tuple(self._number(place, owned) for place in range(len(self._parts)))

    def reach(self, key: ReachKey) -> Reach:
        """What can be fielded by the stocks with this key."""
        among: dict[str, Among] = {}
        ties: dict[TieKey, Stocked] = {}
        for number in key:
            part = self._reaches[number]
            ties |= part.ties
            for entry, takings in part.among.items():
                among[entry] = among.get(entry, takings) & takings
        return Reach(among=among, ties=ties)

    def _number(self, place: int, owned: Depot) -> int:
        """The number of what a stock lets be fielded of one part."""
        kinds, most = self._parts[place], self._most[place]
        stock = (
            place,
            tuple(owned.loose.get(kind, 0) for kind in most.loose),
            tuple(owned.must.get(kind, 0) for kind in most.must),
            tuple(owned.spare[pattern] for pattern in most.on_stand),
        )
        if stock not in self._found:
            reach = self._looked_at(owned.part(kinds))
            content = (place, frozenset(reach.ties), frozenset(reach.among.items()))
            self._found[stock] = self._numbers.setdefault(content, len(self._numbers))
            self._reaches[self._found[stock]] = reach
        return self._found[stock]

    def _looked_at(self, owned: Depot) -> Reach:
        among: dict[str, Among] = {}
        ties: dict[TieKey, Stocked] = {}
        for tie in Fielding(owned, self._entries).ties(self._plain):
            if len(tie.entries) > 1:
                ties[_key(tie)] = tie
                continue
            (entry,) = tie.entries
            there = among.get(entry, self.every[entry])
            among[entry] = frozenset(each for each in there if _is_there(tie, each))
        return Reach(among=among, ties=ties)


def _is_there(tie: Stocked, taking: ValuedTaking) -> bool:
    """Whether what a taking of the only entry of a tie wants is there."""
    (entry,) = tie.entries
    kept = tie.after(0, entry=entry, move=Move(taking.purchases, taking.number, 0))
    return kept is not None and tie.holds(kept)


def _key(tie: Stocked) -> TieKey:
    return tie.entries, tuple(tie.weights.items()), tuple(tie.spare.items()), tie.room


def most_wanted(drawn: Diagram, entries: Mapping[str, Entry], *, owned: Depot) -> Mapping[str, int]:
    """Kind to more figures than all forces of a game and the must layer may want of it."""
    wanted = dict(owned.must)
    for row in drawn.rows:
        wants = demand(entries[row.entry])
        for pattern in {**wants.for_each, **wants.a_purchase}:
            stands = max(wants.stands(pattern, taking) for taking in row.plain)
            for kind, number in owned.on_stand.get(pattern, {}).items():
                wanted[kind] = wanted.get(kind, 0) + max(0, stands) * number
    return wanted
