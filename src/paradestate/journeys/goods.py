"""What may be got next: candidates with their cost, and the stock that there is with some of them.

A game comes in with its force; money buys packs here, and hours of work are in `bench_goods`.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from paradestate.chance.force.diagram import Diagram, diagram
from paradestate.chance.force.fielding import Depot, served_by
from paradestate.chance.next.expectation import Stock
from paradestate.chance.next.reach import most_wanted
from paradestate.core.advice.advice import Candidate, LeftOut
from paradestate.core.advice.basket import Basket, Means
from paradestate.core.advice.pack_prices import PackPrices
from paradestate.core.choice import CHOSEN_HERE, unknown_choice
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.money import Currency
from paradestate.core.number import summed
from paradestate.core.order import PackName
from paradestate.core.place import nearest_place
from paradestate.core.receipt import cheaper_from, exchange_rate, lots_of
from paradestate.core.sentence.wording import counted
from paradestate.core.source import Pack, Source
from paradestate.core.support.entry import Entry
from paradestate.core.support.terms import Terms
from paradestate.journeys.count import Count


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayedGame:
    """A game with the force that plays it."""

    terms: Terms
    count: Count
    owned: Depot
    """What of its stock counts."""

    @property
    def entries(self) -> Mapping[str, Entry]:
        """Those on offer."""
        return {name: self.count.force.supporting_troops[name] for name in self.terms.offers}


@dataclass(frozen=True, slots=True, kw_only=True)
class Goods:
    """Everything that may be got."""

    candidates: tuple[Candidate, ...]
    means: Means
    limit: Fraction
    left_out: tuple[LeftOut, ...]
    kinds: frozenset[str]
    """Figure kinds of which there may be more."""
    stock: Callable[[Basket], Stock]
    """What there is, for each game, with a basket."""
    ceiling: Callable[[Basket], Stock]
    """No less than that, and no less for a larger basket."""


def wanted_kinds(games: Sequence[PlayedGame]) -> Mapping[str, int]:
    """Figure kind to the most figures that the must layer and the forces of a game may want."""
    wanted: dict[str, int] = {}
    for game in games:
        drawn = diagram(game.terms, greatest=max(0, game.terms.most_points), more=lambda _: ())
        if isinstance(drawn, Diagram):
            more = most_wanted(drawn, game.entries, owned=game.owned)
            wanted |= {kind: max(number, wanted.get(kind, 0)) for kind, number in more.items()}
    return {kind: number for kind, number in wanted.items() if number}


def packs_to_buy(
    games: Sequence[PlayedGame], *, limit: Fraction, wish: Mapping[str, int], currency: Currency
) -> Goods:
    """The packs of all sources of which something is wanted, or that are wished for."""
    force = games[0].count.force
    wanted = wanted_kinds(games)
    names, most, left_out = [], [], []
    for name, pack in _packs(force):
        number = max(
            _useful(force, pack, wanted=wanted),
            _filling(force.sources[name[0]], pack, limit=limit, currency=currency),
            wish.get(pack_words(name), 0),
        )
        reason = _reason(force, name, currency=currency, number=number, limit=limit)
        if reason:
            left_out.append(LeftOut(name=pack_words(name), reason=reason))
            continue
        names.append(name)
        most.append(number if pack.most is None else min(number, pack.most))
    packs = [force.sources[source].packs[pack] for source, pack in names]

    def stock(basket: Basket) -> Stock:
        bought = summed(
            {kind: each * number for kind, each in pack.holds.items()}
            for pack, number in zip(packs, basket, strict=True)
            if number
        )
        return tuple(game.owned.with_figures(bought) for game in games)

    return Goods(
        candidates=tuple(
            Candidate(name=pack_words(name), words=pack.title or counted(pack.holds))
            for name, pack in zip(names, packs, strict=True)
        ),
        means=PackPrices(force.sources, names, currency=currency, most=most),
        limit=limit,
        left_out=tuple(left_out),
        kinds=frozenset(
            other
            for pack in packs
            for kind in pack.holds
            for other in served_by(force.figures, kind)
        ),
        stock=stock,
        ceiling=stock,
    )


def pack_words(name: PackName) -> str:
    """A pack as it is typed: its source and its name."""
    return "/".join(name)


def figures_in(force: Force, packs: Mapping[str, int]) -> Mapping[str, int]:
    """The figures in so many of each pack, packs as they are typed."""
    return summed(
        {kind: each * packs[pack_words(name)] for kind, each in pack.holds.items()}
        for name, pack in _packs(force)
        if pack_words(name) in packs
    )


def _packs(force: Force) -> Iterator[tuple[PackName, Pack]]:
    for source in force.sources.values():
        for pack in source.packs.values():
            yield (source.name, pack.name), pack


def _useful(force: Force, pack: Pack, *, wanted: Mapping[str, int]) -> int:
    """Of how many of a pack something may be wanted, if all else were lacking."""
    return max(
        (
            -(-sum(wanted.get(other, 0) for other in served_by(force.figures, kind)) // each)
            for kind, each in pack.holds.items()
            if each
        ),
        default=0,
    )


def _filling(source: Source, pack: Pack, *, limit: Fraction, currency: Currency) -> int:
    """Of how many of a pack an order may get cheaper, or large enough to be sent, whoever wants it.

    Nought where no step of the source can be paid for.
    """
    lots = lots_of(pack)
    best = min(Fraction(lot.price, lot.size) for lot in lots)
    kept = 1 - max(source.discount.values(), default=Fraction(0))
    rate = exchange_rate(source, currency)
    steps = [value for value in cheaper_from(source) if (value * kept - 1) * rate <= limit]
    sizes = [lot.size for lot in lots if lot.size > 1 and lot.price < pack.price * (lot.size - 1)]
    needed = ceil(steps[-1] / best) if steps and best else 0
    return max(needed, 0, *sizes)


def _reason(
    force: Force, name: PackName, *, currency: Currency, number: int, limit: Fraction
) -> str:
    """Why a pack is no candidate; empty where it is one."""
    if not number:
        return "nothing wants what it holds"
    prices = PackPrices(force.sources, [name], currency=currency, most=[1])
    return "it is dearer than the money" if prices.least((1,)) > limit else ""


def wish_findings(names: Sequence[str], *, wish: Mapping[str, int], what: str) -> Iterator[Finding]:
    """A stop for each wish for something that there isn't."""
    for name in wish:
        if name not in names:
            yield unknown_choice(name, names, what=what)


def nothing_to_buy(force: Force) -> Finding:
    """The stop where no source sells anything."""
    return Finding(
        level=Level.STOP,
        code="nothing-to-buy",
        message="No source sells a pack.",
        effect="It can't be said what to buy next.",
        hint="Add 'sources' with packs and their prices.",
        place=nearest_place(force.places, ("sources",)) if force.places else CHOSEN_HERE,
    )
