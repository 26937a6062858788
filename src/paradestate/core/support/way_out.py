"""Ways out: the changes of a plan that put a broken rule right and break no other.

Every single change is tried: dropping a purchase, another priced number, another choice, adding
one. Where none does it, every pair of them is tried, up to a bound; then as little as can be is
dropped. Each change is judged like the plan itself; nothing is guessed.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import combinations_with_replacement, islice

from paradestate.core.game import Purchase
from paradestate.core.support.breach import Bill, Breach, bill_of, breaches, is_priced
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms

MOST_PAIRS = 2500
"""Pairs of changes that are tried, so that an answer comes at once."""

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
class _Search:
    """All ways that were tried for one plan."""

    bill: Bill
    before: Mapping[Rule, int]
    singles: tuple[_Tried, ...]
    larger: list[_Tried] = field(default_factory=list)
    """Pairs, and the least to drop; filled when first wanted."""


def ways_out(bill: Bill, found: tuple[Breach, ...]) -> Mapping[Breach, tuple[WayOut, ...]]:
    """Each breach to the ways out of it, those that cost or give up least first.

    Either every single change that does it, or one larger set of changes, or nothing.
    """
    if not found:
        return {}
    before = _broken(found)
    singles = tuple(_tried(bill, (change,)) for change in single_changes(bill.terms, bill.plan))
    search = _Search(bill=bill, before=before, singles=singles)
    return {breach: _ways(search, (breach.code, breach.about)) for breach in found}


def _ways(search: _Search, rule: Rule) -> tuple[WayOut, ...]:
    single = [each.way for each in search.singles if _cures(search, each, rule=rule)]
    if single:
        return tuple(sorted(_cheapest_additions(single), key=lambda way: abs(way.points)))
    if not search.larger:
        search.larger.extend(_larger(search))
    larger = [each.way for each in search.larger if _cures(search, each, rule=rule)]
    return tuple(sorted(larger, key=_size)[:1])


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
    """The purchase with another priced number, then with another choice."""
    for number in offer.cost:
        if number != purchase.number:
            yield Purchase(entry=offer.name, number=number, choice=purchase.choice)
    for choice in offer.choices:
        if choice != purchase.choice:
            yield Purchase(entry=offer.name, number=purchase.number, choice=choice)


def _larger(search: _Search) -> Iterator[_Tried]:
    """Pairs of single changes that don't undo one another, and the least to drop."""
    for pair in islice(_pairs(search), MOST_PAIRS):
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
    for one, other in combinations_with_replacement(search.singles, 2):
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
    for rule in search.before:
        for dropped in (list(search.bill.plan), _droppable(search)):
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
