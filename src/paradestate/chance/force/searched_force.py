"""The best force of one number of points, where all forces together are too many to be told apart.

It is searched for depth first (see `option` for what is searched): entry after entry, the option
that looks best first, and no further where a bound says that nothing better can come. The bound
comes from prices for the room under the limits (see `scarcity`): it falls by what an option is
worth less than the best of its entry at these prices, and by the price of room that can't be used
any more. It is a whole number, so that what is left out is proved to be no better.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from operator import attrgetter
from typing import NamedTuple

from paradestate.chance.force.groundwork import Groundwork, MoreTies, groundwork
from paradestate.chance.force.option import FINENESS, Option, Options, options_of
from paradestate.chance.force.scarcity import prices
from paradestate.chance.force.tie import Move, Tie
from paradestate.core.certainty import NotComputed
from paradestate.core.game import Purchase
from paradestate.core.support.breach import bill_of, breaches
from paradestate.core.support.force_map import SearchedForce, ValuedForce
from paradestate.core.support.plan import plan_points, plan_worth
from paradestate.core.support.terms import Terms

MOST_STEPS = 1_000_000
"""So many parts of forces are looked at, unless somebody says otherwise: some seconds."""


def searched_force(
    terms: Terms, *, points: int, more: MoreTies | None = None, steps: int | None = None
) -> SearchedForce | NotComputed:
    """The legal force of the greatest worth, of those one with the fewest points.

    After so many steps, each of them a part of a force that is looked at, the best that was found
    until then, with a bound. Refused where the takings of the entries are too many.
    """
    if points < 0:
        is_legal = not breaches(bill_of(terms, (), points=points))
        return _proved(_valued(terms, ()) if is_legal else None)
    ground = groundwork(terms, greatest=points, more=more)
    if isinstance(ground, NotComputed):
        return ground
    options = options_of(ground, points=points)
    if isinstance(options, NotComputed):
        return options
    if options is None:
        return _proved(None)
    search = _Search(options)
    search.run(MOST_STEPS if steps is None else steps)
    force = None
    if search.best is not None:
        force = _force(terms, ground, chosen=search.chosen(), scale=options.scale)
        # Whatever is found passes the same judge as a plan made by hand.
        assert not breaches(bill_of(terms, force.purchases, points=points))  # noqa: S101
    if not search.waiting:
        return _proved(force)
    bound = Fraction(options.units(search.bound), options.scale)
    return SearchedForce(force=force, bound=bound, is_proved=False)


def _proved(force: ValuedForce | None) -> SearchedForce:
    return SearchedForce(force=force, bound=None if force is None else force.worth, is_proved=True)


def _force(
    terms: Terms, ground: Groundwork, *, chosen: Iterable[tuple[str, Option]], scale: int
) -> ValuedForce:
    """What was chosen, as purchases in file order."""
    taken = dict(chosen)
    purchases = tuple(
        purchase
        for name, each in ground.taken.items()
        for purchase in sorted(
            each.takings.valued_purchases_of(taken[name].taking, 0, scale=scale),
            key=lambda each: (each.number, each.choice),
        )
    )
    return _valued(terms, purchases)


def _valued(terms: Terms, purchases: tuple[Purchase, ...]) -> ValuedForce:
    return ValuedForce(
        purchases=purchases,
        points=plan_points(terms.offers, purchases),
        worth=plan_worth(terms.offers, purchases),
    )


class _Way(NamedTuple):
    """One option of an entry."""

    loss: int
    """By how much it is worth less than the best of its entry, at the prices of the room."""
    uses: tuple[int, ...]
    """Of the room under each limit that the entry touches."""
    option: Option


class _Limit(NamedTuple):
    """A limit at an entry that touches it."""

    place: int
    price: int
    still: int
    """Room that this entry and all after it can use."""
    then: int
    """Room that all after it can use."""


class _Turn(NamedTuple):
    """An entry in the order of deciding."""

    entry: str
    ways: tuple[_Way, ...]
    """The one with the least loss first."""
    limits: tuple[_Limit, ...]
    ties: tuple[tuple[int, bool], ...]
    """Those that ask about it, and whether they ask about no later entry."""


class _Part(NamedTuple):
    """A force as far as its first entries are decided."""

    bound: int
    """No force that begins like this weighs more; one that is complete weighs just this."""
    turns: int
    """Entries that are decided."""
    room: tuple[int, ...]
    """What is left under each limit."""
    kept: tuple[int, ...]
    """What each tie has kept."""
    before: "_Part | None"
    way: _Way | None


class _Search:
    """Looks for the best force, part after part."""

    def __init__(self, options: Options) -> None:
        price = prices(options)
        losses = {name: _ways(choices, price) for name, choices in options.of.items()}
        bound = sum(map(int.__mul__, price, options.room)) + sum(
            _left(ways[0].option, price) for ways in losses.values()
        )
        self.best: _Part | None = None
        self.waiting = [_Part(bound, 0, options.room, (0,) * len(options.ties), None, None)]
        """Parts from which the search may go on, the last of them first."""
        self._ties = options.ties
        self._turns = tuple(_turns(losses, price=price, ties=options.ties))
        self._enough: int | None = None
        """What a force must weigh at least to be better."""

    @property
    def bound(self) -> int:
        """No force weighs more."""
        best = [] if self.best is None else [self.best.bound]
        return max([*best, *[part.bound for part in self.waiting]])

    def chosen(self) -> Iterator[tuple[str, Option]]:
        """The entries of the best force with their options."""
        part = self.best
        while part is not None and part.way is not None:
            yield self._turns[part.turns - 1].entry, part.way.option
            part = part.before

    def run(self, steps: int) -> None:
        """Looks at so many parts, or at all."""
        waiting = self.waiting
        for _ in range(steps):
            if not waiting:
                return
            part = waiting.pop()
            if self._is_in_vain(part.bound):
                continue
            if part.turns == len(self._turns):
                self.best = part
                self._enough = part.bound + FINENESS
            else:
                waiting.extend(self._onward(part))

    def _is_in_vain(self, bound: int) -> bool:
        return self._enough is not None and bound < self._enough

    def _onward(self, part: _Part) -> list[_Part]:
        """The part with each option of the next entry, that with the greatest bound last."""
        turn = self._turns[part.turns]
        found = []
        for way in turn.ways:
            bound = part.bound - way.loss
            if self._is_in_vain(bound):
                break
            room = list(part.room)
            for (place, price, still, then), use in zip(turn.limits, way.uses, strict=True):
                before = room[place]
                after = room[place] = before - use
                if after < 0:
                    break
                if price and after > then:
                    bound -= price * (after - then - max(0, before - still))
            else:
                kept = self._kept(part.kept, turn, move=way.option.move) if turn.ties else part.kept
                if kept is not None and not self._is_in_vain(bound):
                    found.append(_Part(bound, part.turns + 1, tuple(room), kept, part, way))
        found.sort(key=attrgetter("bound"))
        return found

    def _kept(self, kept: tuple[int, ...], turn: _Turn, *, move: Move) -> tuple[int, ...] | None:
        """What the ties keep after an entry; None where one is broken."""
        found = list(kept)
        for place, is_last in turn.ties:
            tie = self._ties[place]
            after = tie.after(found[place], entry=turn.entry, move=move)
            if after is None or (is_last and not tie.holds(after)):
                return None
            found[place] = after
        return tuple(found)


def _left(option: Option, price: Sequence[int]) -> int:
    """What it weighs less the price of the room that it uses."""
    return option.weight - sum(map(int.__mul__, price, option.uses))


def _ways(choices: Sequence[Option], price: Sequence[int]) -> tuple[_Way, ...]:
    """The options of an entry, the one that has most left first."""
    left = [_left(option, price) for option in choices]
    ways = (_Way(max(left) - each, o.uses, o) for each, o in zip(left, choices, strict=True))
    return tuple(sorted(ways, key=attrgetter("loss")))


def _turns(
    ways: Mapping[str, tuple[_Way, ...]], *, price: Sequence[int], ties: Sequence[Tie]
) -> Iterator[_Turn]:
    """The entries, those first of which the second best option loses most."""
    order = sorted(ways, key=lambda name: -ways[name][1].loss if len(ways[name]) > 1 else 0)
    most = {
        name: tuple(map(max, zip(*(way.uses for way in ways[name]), strict=True))) for name in order
    }
    still = [sum(used) for used in zip(*most.values(), strict=True)]
    for number, name in enumerate(order):
        then = list(map(int.__sub__, still, most[name]))
        rows = [row for row, used in enumerate(most[name]) if used]
        later = frozenset(order[number + 1 :])
        yield _Turn(
            entry=name,
            ways=tuple(
                way._replace(uses=tuple(way.uses[row] for row in rows)) for way in ways[name]
            ),
            limits=tuple(_Limit(row, price[row], still[row], then[row]) for row in rows),
            ties=tuple(
                (place, not tie.entries & later)
                for place, tie in enumerate(ties)
                if name in tie.entries
            ),
        )
        still = then
