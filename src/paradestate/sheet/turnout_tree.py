"""How a plan may come out, as a tree: first the points, then one roll after the other.

Every branch carries its exact chance. Small branches are folded together until the tree is small
enough; nothing is left out, and all chances of the leaves add up to 1.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from fractions import Fraction
from math import lcm

from paradestate.core.game import Purchase
from paradestate.core.sentence.support import number_words, purchases_words
from paradestate.core.sentence.wording import capital, several
from paradestate.core.support.turnout import PlanOdds, Turnout

FOLDS = tuple(Fraction(1, each) for each in (200, 100, 50, 30, 20, 12, 8, 5, 3, 2, 1))
"""Branches of less than this chance are folded; the first that makes the tree small enough."""


class Ending(Enum):
    """What a leaf stands for."""

    WHOLE = "everything asked for"
    PART = "some of it"
    FOLDED = "several ways"
    SHORT = "too few points"


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """A branch of the tree, with those that it divides into."""

    chance: Fraction
    """Of all, not only of the branch before."""
    came: str
    """What has been settled on it: `2 x light tanks`, `no light tanks`; empty where no roll has."""
    ways: tuple["Way", ...] = ()
    ending: Ending | None = None
    """Of a branch that divides no further."""
    words: str = ""
    """What a leaf puts on the table."""

    def leaves(self) -> Iterator["Way"]:
        """Every end, from top to bottom."""
        if not self.ways:
            yield self
        for way in self.ways:
            yield from way.leaves()

    @property
    def depth(self) -> int:
        """Branches one after the other, at most."""
        return 1 + max((way.depth for way in self.ways), default=-1)


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnoutRow:
    """One line of the table beside the tree."""

    chance: Fraction
    words: str


def turnout_tree(odds: PlanOdds, *, most: int) -> Way:
    """The tree with at most so many leaves, two at the least."""
    short = _short(odds)
    if not odds.affordable:
        return short[0]
    tree = _tree_of(odds, most=max(most - len(short), 1))
    return Way(chance=Fraction(1), came="", ways=(tree, *short)) if short else tree


def turnout_rows(odds: PlanOdds) -> tuple[TurnoutRow, ...]:
    """The table beside the tree: every way that a plan may come out."""
    counted = tuple(
        TurnoutRow(chance=odds.affordable * each.chance, words=turnout_words(each, plan=odds.plan))
        for each in odds.turnouts
        if odds.affordable
    )
    is_counted = counted or not odds.affordable
    ways = _short(odds) if is_counted else (*_uncounted(odds).leaves(), *_short(odds))
    return (*counted, *(TurnoutRow(chance=way.chance, words=way.words) for way in ways))


def turnout_words(turnout: Turnout, *, plan: Sequence[Purchase]) -> str:
    """What comes, and what becomes of the points: `2 x machine guns; 12 points free again`."""
    if tuple(turnout.purchases) == tuple(plan):
        said = ["everything asked for"]
    else:
        said = [purchases_words(turnout.purchases) or "nothing"]
    if turnout.points_free:
        said.append(f"{several(turnout.points_free, 'point')} free again")
    if turnout.points_lost:
        said.append(f"{several(turnout.points_lost, 'point')} lost")
    return capital("; ".join(said))


def _short(odds: PlanOdds) -> tuple[Way, ...]:
    """The branch of those rolls that leave too few points, where there are any."""
    if odds.affordable == 1:
        return ()
    if _is_by_cost(odds):
        words = f"Too few points: fewer than {odds.cost}"
    else:
        words = "The points don't allow it"
    return (Way(chance=1 - odds.affordable, came="", ending=Ending.SHORT, words=words),)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Stem:
    """A branch before anything is folded, with all ways to which it may lead."""

    weight: int
    """Its share of all, in parts that are the same for the whole tree."""
    came: str
    turnouts: Sequence[Turnout]
    stems: tuple["_Stem", ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tree:
    """The whole tree of the rolls, and how it is folded."""

    plan: tuple[Purchase, ...]
    weights: Mapping[int, int]
    """Of each turnout, by its identity: sums of whole numbers are far quicker than of fractions."""
    unit: Fraction
    """The chance of one part, of all."""

    def stem(self, turnouts: Sequence[Turnout], *, came: str, entries: Sequence[str]) -> _Stem:
        """A branch on which these may come out, after what it has settled."""
        weight = sum(self.weights[id(each)] for each in turnouts)
        for place, entry in enumerate(entries):
            parts = self._parted(turnouts, entry=entry) if len(turnouts) > 1 else ()
            if len(parts) > 1:
                stems = tuple(
                    self.stem(some, came=said, entries=entries[place + 1 :]) for said, some in parts
                )
                return _Stem(weight=weight, came=came, turnouts=turnouts, stems=stems)
        return _Stem(weight=weight, came=came, turnouts=turnouts)

    def _parted(
        self, turnouts: Sequence[Turnout], *, entry: str
    ) -> Sequence[tuple[str, Sequence[Turnout]]]:
        """The ways by what comes of an entry, the most first."""
        parts: dict[tuple[Purchase, ...], list[Turnout]] = {}
        for turnout in turnouts:
            comes = tuple(each for each in turnout.purchases if each.entry == entry)
            parts.setdefault(comes, []).append(turnout)
        asked = sum(each.number for each in self.plan if each.entry == entry)
        return [
            (_came(entry, asked=asked, comes=sum(each.number for each in comes)), parts[comes])
            for comes in sorted(parts, key=lambda each: -sum(one.number for one in each))
        ]

    def folded(self, stem: _Stem, *, fold: Fraction) -> _Stem:
        """The branch with those under it of less than `fold` taken together."""
        least = fold / self.unit
        if stem.weight < least:
            return replace(stem, stems=())
        small = [each for each in stem.stems if each.weight < least]
        kept = [
            self.folded(each, fold=fold)
            for each in stem.stems
            if each.weight >= least or len(small) == 1
        ]
        if len(small) > 1:
            kept.append(_together(small))
        return replace(stem, stems=tuple(kept) if len(kept) > 1 else ())

    def way(self, stem: _Stem) -> Way:
        """The branch as it is shown."""
        chance = stem.weight * self.unit
        if stem.stems:
            return Way(chance=chance, came=stem.came, ways=tuple(map(self.way, stem.stems)))
        ending, words = self._ending(stem.turnouts)
        return Way(chance=chance, came=stem.came, ending=ending, words=words)

    def _ending(self, turnouts: Sequence[Turnout]) -> tuple[Ending, str]:
        if len(turnouts) > 1:
            shared = purchases_words(_shared(turnouts))
            with_ = f", all with {shared}" if shared else ""
            return Ending.FOLDED, f"{len(turnouts)} ways{with_}"
        is_whole = tuple(turnouts[0].purchases) == self.plan
        ending = Ending.WHOLE if is_whole else Ending.PART
        return ending, turnout_words(turnouts[0], plan=self.plan)


def _is_by_cost(odds: PlanOdds) -> bool:
    """Whether all points pay for it that are as many as it costs: groups may keep to shares."""
    return all(points in odds.paid_by for points in odds.allowance.counts if points >= odds.cost)


def _enough(odds: PlanOdds) -> str:
    if odds.affordable == 1:
        return ""
    return f"{odds.cost} or more points" if _is_by_cost(odds) else "the points allow it"


def _uncounted(odds: PlanOdds) -> Way:
    """All of it or not, where there are too many ways to tell them apart."""
    whole = Way(
        chance=odds.together, came="all of it", ending=Ending.WHOLE, words="Everything asked for"
    )
    rest = Way(
        chance=odds.affordable - odds.together,
        came="",
        ending=Ending.FOLDED,
        words="Some of it is refused: in too many ways to be counted",
    )
    ways = tuple(way for way in (whole, rest) if way.chance)
    return Way(chance=odds.affordable, came=_enough(odds), ways=ways) if len(ways) > 1 else ways[0]


def _tree_of(odds: PlanOdds, *, most: int) -> Way:
    """The tree of the rolls, folded until it has at most so many leaves."""
    if not odds.turnouts:
        return _uncounted(odds)
    parts = lcm(*(each.chance.denominator for each in odds.turnouts))
    tree = _Tree(
        plan=odds.plan,
        weights={id(each): int(each.chance * parts) for each in odds.turnouts},
        unit=odds.affordable / parts,
    )
    whole = tree.stem(odds.turnouts, came=_enough(odds), entries=odds.asking_order)
    shown = next(
        folded
        for fold in (Fraction(0), *FOLDS)
        if _ends(folded := tree.folded(whole, fold=fold)) <= most
    )
    return tree.way(shown)


def _ends(stem: _Stem) -> int:
    return sum(map(_ends, stem.stems)) or 1


def _together(stems: Sequence[_Stem]) -> _Stem:
    turnouts = [turnout for each in stems for turnout in each.turnouts]
    return _Stem(weight=sum(each.weight for each in stems), came="", turnouts=turnouts)


def _came(entry: str, *, asked: int, comes: int) -> str:
    if comes == 0:
        return f"no {entry}"
    return number_words(comes, entry) if comes == asked else f"{comes} of {asked} x {entry}"


def _shared(turnouts: Sequence[Turnout]) -> list[Purchase]:
    """What comes in all of them."""
    shared = Counter(turnouts[0].purchases)
    for turnout in turnouts[1:]:
        shared &= Counter(turnout.purchases)
    return list(shared.elements())
