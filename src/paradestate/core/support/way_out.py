"""Ways out: the changes of a plan that put a broken rule right and break no other.

Every single change is tried: dropping a purchase, another priced number, another choice, adding
one. Where none does it, every pair of them is tried, up to a bound; then as little as can be is
dropped. Each change is judged like the plan itself; nothing is guessed. Of a long plan not all of
this is tried, and the answer says so.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import combinations_with_replacement, islice, product, takewhile

from paradestate.core.game import Purchase
from paradestate.core.support.breach import Bill, Breach, bill_of, breaches, is_priced
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms

MOST_PAIRS = 2500
"""Pairs of changes that are tried, so that an answer comes at once."""
MOST_LOOKED_AT = 500_000
"""Pairs that are looked at for those worth trying."""
MOST_READ: Mapping[str, int] = {"single": 600_000, "pair": 200_000, "dropped": 450_000}
"""Purchases and entries that are read again in all judgements of one sort of change."""

SLIPS = frozenset({"number-not-priced", "choice-missing", "choice-unknown"})
"""Rules that are broken by a slip of the pen: what was meant comes before giving it up."""

Rule = tuple[str, tuple[str, ...]]
"""What tells a breach: its code and what it is about."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One change of a plan: a purchase that goes, one that comes, or both for an exchange."""

    goes: Purchase | None = None
    comes: Purchase | None = None

    @property
    def entry(self) -> str:
        """The entry that it is about."""
        purchase = self.goes or self.comes
        return purchase.entry if purchase else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOut:
    """Changes that put something right."""

    changes: tuple[Change, ...]
    plan: tuple[Purchase, ...]
    """The plan with them made."""
    points: int
    """Points that the plan then costs more; fewer where it is below nought."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tried:
    """A way out with how far each rule is broken after it."""

    way: WayOut
    broken: Mapping[Rule, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class WaysOut:
    """The ways out of all that a plan breaks."""

    of: Mapping[Breach, tuple[WayOut, ...]]
    """Those that cost or give up least first; empty where none was found."""
    partly: frozenset[Breach] = frozenset()
    """Those for which changes were left untried because there are too many."""

    @property
    def all_tried(self) -> bool:
        """Whether no change was left untried for any of them."""
        return not self.partly


class _Tries:
    """How often a plan may still be judged again; what is over is left untried, and noted."""

    def __init__(self, bill: Bill) -> None:
        read = 1 + len(bill.plan) + len(bill.terms.offers)
        self._left = {sort: most // read for sort, most in MOST_READ.items()}
        self.untried: set[str] = set()
        self.went_further = False

    def may(self, sort: str) -> bool:
        """Whether one more may be tried, which is then counted."""
        if self._left[sort] <= 0:
            self.untried.add(sort)
            return False
        self._left[sort] -= 1
        return True


@dataclass(frozen=True, slots=True, kw_only=True)
class _Search:
    """All ways that were tried for one plan."""

    bill: Bill
    before: Mapping[Rule, int]
    singles: tuple[_Tried, ...]
    tries: _Tries
    larger: list[_Tried] = field(default_factory=list)
    """Pairs, and the least to drop; filled when first wanted."""


def ways_out(bill: Bill, found: tuple[Breach, ...]) -> WaysOut:
    """The ways out of each breach.

    Either every single change that does it, or one larger set of changes, or nothing.
    """
    if not found:
        return WaysOut(of={})
    tries = _Tries(bill)
    changes = takewhile(lambda _: tries.may("single"), single_changes(bill.terms, bill.plan))
    singles = tuple(_tried(bill, (change,)) for change in changes)
    search = _Search(bill=bill, before=_broken(found), singles=singles, tries=tries)
    ways = {breach: _ways(search, (breach.code, breach.about)) for breach in found}
    partly = (breach for breach, of in ways.items() if _is_partly(tries, of))
    return WaysOut(of=ways, partly=frozenset(partly))


def _is_partly(tries: _Tries, ways: tuple[WayOut, ...]) -> bool:
    """Whether there may be more ways: single ones are all there once each of them was tried."""
    is_single = bool(ways) and len(ways[0].changes) == 1
    return "single" in tries.untried or (bool(tries.untried) and not is_single)


def _ways(search: _Search, rule: Rule) -> tuple[WayOut, ...]:
    single = [each.way for each in search.singles if _cures(search, each, rule=rule)]
    if single:
        every = sorted(_cheapest_additions(single), key=lambda way: abs(way.points))
        return tuple(sorted(every, key=_gives_up) if rule[0] in SLIPS else every)
    if not search.tries.went_further:
        search.tries.went_further = True
        search.larger.extend(_larger(search))
    larger = [each.way for each in search.larger if _cures(search, each, rule=rule)]
    return tuple(sorted(larger, key=_size)[:1])


def _gives_up(way: WayOut) -> bool:
    return all(change.comes is None for change in way.changes)


def _size(way: WayOut) -> tuple[int, int]:
    return len(way.changes), abs(way.points)


def _cures(search: _Search, tried: _Tried, *, rule: Rule) -> bool:
    """Whether a rule is kept now, and every other at least as well as before."""
    return rule not in tried.broken and _is_no_worse(search, tried)


def _is_no_worse(search: _Search, tried: _Tried) -> bool:
    return all(by <= search.before.get(rule, 0) for rule, by in tried.broken.items())


def _cheapest_additions(ways: list[WayOut]) -> Iterator[WayOut]:
    """Of several additions of one entry only the cheapest."""
    best: dict[str, WayOut] = {}
    for way in ways:
        (change,) = way.changes
        if change.comes is None or change.goes is not None:
            yield way
            continue
        known = best.setdefault(change.comes.entry, way)
        if way.points < known.points:
            best[change.comes.entry] = way
    yield from best.values()


def _broken(found: tuple[Breach, ...]) -> Mapping[Rule, int]:
    return {(breach.code, breach.about): breach.by for breach in found}


def _tried(bill: Bill, changes: tuple[Change, ...]) -> _Tried:
    plan = bill.plan
    for change in changes:
        plan = changed(plan, change)
    return _judged(bill, changes, plan=plan)


def _judged(bill: Bill, changes: tuple[Change, ...], *, plan: tuple[Purchase, ...]) -> _Tried:
    after = bill_of(bill.terms, plan, points=bill.points)
    way = WayOut(changes=changes, plan=plan, points=after.spent - bill.spent)
    return _Tried(way=way, broken=_broken(breaches(after)))


def changed(plan: tuple[Purchase, ...], change: Change) -> tuple[Purchase, ...]:
    """The plan with a change made; what comes stands where the other went, else last."""
    if change.goes is None:
        return plan if change.comes is None else (*plan, change.comes)
    place = plan.index(change.goes)
    comes = () if change.comes is None else (change.comes,)
    return (*plan[:place], *comes, *plan[place + 1 :])


def single_changes(terms: Terms, plan: tuple[Purchase, ...]) -> Iterator[Change]:
    """Every single change of a plan, each once: drops, exchanges, then additions."""
    different = tuple(dict.fromkeys(plan))
    for purchase in different:
        yield Change(goes=purchase)
    for purchase in different:
        offer = terms.offers.get(purchase.entry)
        for other in () if offer is None else _variations(offer, purchase):
            yield Change(goes=purchase, comes=other)
    for offer in terms.offers.values():
        for number in offer.cost:
            for choice in offer.choices:
                comes = Purchase(entry=offer.name, number=number, choice=choice)
                yield Change(comes=comes)


def _variations(offer: Offer, purchase: Purchase) -> Iterator[Purchase]:
    """The purchase with another priced number, then with another choice; both if both are wrong."""
    if purchase.number not in offer.cost and purchase.choice not in offer.choices:
        for number, choice in product(offer.cost, offer.choices):
            yield Purchase(entry=offer.name, number=number, choice=choice)
        return
    for number in offer.cost:
        if number != purchase.number:
            yield Purchase(entry=offer.name, number=number, choice=purchase.choice)
    for choice in offer.choices:
        if choice != purchase.choice:
            yield Purchase(entry=offer.name, number=purchase.number, choice=choice)


def _larger(search: _Search) -> Iterator[_Tried]:
    """Pairs of single changes that don't undo one another, and the least to drop."""
    for place, pair in enumerate(_pairs(search)):
        if place == MOST_PAIRS:
            search.tries.untried.add("pair")
        if place == MOST_PAIRS or not search.tries.may("pair"):
            break
        yield _tried(search.bill, pair)
    yield from _least_dropped(search)


def _pairs(search: _Search) -> Iterator[tuple[Change, Change]]:
    """Pairs that may do it: the sums of those of two entries are known without trying them."""
    bill = search.bill
    still_wanted = {
        rule
        for rule in search.before
        if not any(_cures(search, each, rule=rule) for each in search.singles)
    }
    over = max(bill.spent - bill.points, 0)
    most_over = 0 if still_wanted == {OVER_POINTS} else over
    if len(search.singles) ** 2 > 2 * MOST_LOOKED_AT:
        search.tries.untried.add("pair")
    every = combinations_with_replacement(search.singles, 2)
    for one, other in islice(every, MOST_LOOKED_AT):
        first, second = one.way.changes[0], other.way.changes[0]
        if first.goes is not None and first.goes == second.goes and _is_last(bill, first.goes):
            continue
        after = bill.spent + one.way.points + other.way.points
        if first.entry == second.entry or after - bill.points <= most_over:
            yield first, second


OVER_POINTS: Rule = ("over-points", ())


def _is_last(bill: Bill, purchase: Purchase) -> bool:
    return bill.plan.count(purchase) == 1


def _least_dropped(search: _Search) -> Iterator[_Tried]:
    """For each rule what must go when as much as can goes, and as much as can comes back."""
    droppable: list[Purchase] | None = None
    for rule in search.before:
        for is_whole in (True, False):
            if not search.tries.may("dropped"):
                return
            if not is_whole and droppable is None:
                droppable = _droppable(search)
            dropped = list(search.bill.plan if is_whole else droppable or ())
            best = _drop(search.bill, dropped)
            if _cures(search, best, rule=rule):
                yield _with_most_back(search, best, rule=rule, dropped=dropped)
                break


def _droppable(search: _Search) -> list[Purchase]:
    """What can be dropped one after the other without breaking a rule, the dearest first."""
    left = _by_price(search.bill, search.bill.plan)[::-1]
    dropped: list[Purchase] = []
    went = True
    while went:
        went = False
        for purchase in tuple(left):
            if not search.tries.may("dropped"):
                return dropped
            if _is_no_worse(search, _drop(search.bill, [*dropped, purchase])):
                left.remove(purchase)
                dropped.append(purchase)
                went = True
    return dropped


def _with_most_back(
    search: _Search, best: _Tried, *, rule: Rule, dropped: list[Purchase]
) -> _Tried:
    """The same with all that may stay after all, the cheapest first, so that few have to go."""
    came_back = True
    while came_back:
        came_back = False
        for purchase in _by_price(search.bill, dropped):
            if not search.tries.may("dropped"):
                return best
            dropped.remove(purchase)
            tried = _drop(search.bill, dropped)
            if _cures(search, tried, rule=rule):
                best, came_back = tried, True
            else:
                dropped.append(purchase)
    return best


def _by_price(bill: Bill, purchases: Iterable[Purchase]) -> list[Purchase]:
    """The purchases, the cheapest first; those without a price cost nothing."""
    offers = bill.terms.offers
    return sorted(
        purchases,
        key=lambda each: (
            offers[each.entry].price(each.number, choice=each.choice)
            if is_priced(bill.terms, each)
            else 0
        ),
    )


def _drop(bill: Bill, purchases: list[Purchase]) -> _Tried:
    """All of them dropped, in one pass, for there may be hundreds."""
    go = Counter(purchases)
    left: list[Purchase] = []
    for purchase in bill.plan:
        if go[purchase]:
            go[purchase] -= 1
        else:
            left.append(purchase)
    changes = tuple(Change(goes=purchase) for purchase in purchases)
    return _judged(bill, changes, plan=tuple(left))
