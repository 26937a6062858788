"""What is left of a plan once the dice have spoken, and what comes free with the rest."""

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from paradestate.core.finding import Finding, Level
from paradestate.core.game import Purchase
from paradestate.core.sentence.support import purchase_words, purchases_words
from paradestate.core.sentence.wording import capital, how_often, listed, several, spelled
from paradestate.core.support.breach import Bill
from paradestate.core.support.entry import Asking
from paradestate.core.support.judge_finding import Known
from paradestate.core.support.offer import Offer
from paradestate.core.support.plan import plan_points, purchases_of
from paradestate.core.support.remainder import remaining

Allowed = Mapping[str, tuple[int, ...]]
"""Entry to how many the dice allowed, roll after roll."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterTheDice:
    """A plan after its rolls."""

    left: tuple[Purchase, ...]
    """What still comes, in the order of the plan; of what was partly allowed the most."""
    cut: tuple[tuple[Purchase, int], ...]
    """Purchases that were refused or partly allowed, with the number that comes."""
    gone: tuple[Purchase, ...]
    """What goes because something that it needs didn't come."""
    points_free: int
    """Points of the plan that can be spent again."""
    points_lost: int
    """Points of the plan that are paid for nothing."""


def after_the_dice(bill: Bill, allowed: Allowed) -> AfterTheDice:
    """What the dice leave of a plan; a purchase without a roll stays as it is.

    Every purchase must have a price. The n-th roll of an entry is for its n-th purchase in the
    plan; where entries share a roll, an entry's one result holds for all its purchases.
    """
    offers = bill.terms.offers
    decided = tuple(_decided(bill, allowed))
    cut = tuple((asked, comes.number if comes else 0) for asked, comes in decided if comes != asked)
    came = {place: comes for place, (_, comes) in enumerate(decided) if comes}
    refused = range(len(decided)) - came.keys()
    stays = remaining(_held_needs(offers, bill.plan), bill.plan, gone=refused)
    left = tuple(comes for place, comes in came.items() if place in stays)
    lost = _points_lost(bill, decided, stays=stays)
    return AfterTheDice(
        left=left,
        cut=cut,
        gone=tuple(comes for place, comes in came.items() if place not in stays),
        points_free=bill.spent - plan_points(offers, left) - lost,
        points_lost=lost,
    )


def _decided(bill: Bill, allowed: Allowed) -> Iterator[tuple[Purchase, Purchase | None]]:
    """Each purchase, and what comes of it: the greatest priced number that is allowed."""
    rolls = {entry: list(numbers) for entry, numbers in allowed.items()}
    for asked in bill.plan:
        offer = bill.terms.offers[asked.entry]
        waiting = rolls.get(asked.entry)
        if not waiting or offer.availability is None:
            yield asked, asked
            continue
        result = waiting[0] if offer.availability.shared_roll else waiting.pop(0)
        number = offer.greatest_number(allowed=min(result, asked.number))
        yield asked, replace(asked, number=number) if number else None


def _points_lost(
    bill: Bill, decided: Sequence[tuple[Purchase, Purchase | None]], *, stays: Container[int]
) -> int:
    """Points of what was asked for above those of what comes, where they are lost.

    What is allowed and goes with its need was paid only where all had to be named beforehand.
    """
    offers = bill.terms.offers
    paid, comes = [], []
    for place, (asked, came) in enumerate(decided):
        if not offers[asked.entry].is_prepaid(asked.number, choice=asked.choice):
            continue
        if came and place in stays:
            comes.append(came)
        if came != asked or place in stays or bill.terms.asking is Asking.ALL_DECLARED_FIRST:
            paid.append(asked)
    return plan_points(offers, paid) - plan_points(offers, comes)


def _held_needs(offers: Mapping[str, Offer], plan: Sequence[Purchase]) -> Mapping[str, Offer]:
    """The offers without those needs that the plan didn't hold before a die was rolled."""
    there = purchases_of(plan)
    return {
        entry: _with_held_needs(offers[entry], there, times=times) for entry, times in there.items()
    }


def _with_held_needs(offer: Offer, there: Mapping[str, int], *, times: int) -> Offer:
    any_of = offer.needs_any_of
    return replace(
        offer,
        needs={other: n for other, n in offer.needs.items() if there.get(other, 0) >= n},
        needs_any_of=any_of if any(there.get(o, 0) >= n for o, n in any_of.items()) else {},
        needs_for_each={
            other: n
            for other, n in offer.needs_for_each.items()
            if there.get(other, 0) >= n * times
        },
    )


def roll_findings(bill: Bill, allowed: Allowed, *, known: Known) -> Iterator[Finding]:
    """What the dice take of a plan, and results that can't be right."""
    yield from _odd_results(bill, allowed, known=known)
    after = after_the_dice(bill, allowed)
    if after.cut:
        yield Finding(
            level=Level.WARN,
            code="refused",
            message=f"{_cut_words(after)}{_gone_words(bill, after)}: {_points_words(after)}.",
            effect=_left_words(after),
            hint="Spend the points again on what may still be taken.",
            place=known.place_of(bill.plan, after.cut[0][0].entry),
        )


def _cut_words(after: AfterTheDice) -> str:
    return capital(
        listed(
            f"{purchase_words(asked)} {'was' if asked.number == 1 else 'were'} refused"
            if number == 0
            else f"of {purchase_words(asked)} only {number} may come"
            for asked, number in after.cut
        )
    )


def _gone_words(bill: Bill, after: AfterTheDice) -> str:
    if not after.gone:
        return ""
    names = listed(
        f"{purchase_words(each)} "
        f"({bill.terms.offers[each.entry].price(each.number, choice=each.choice)})"
        for each in after.gone
    )
    return f", so {names} {'goes' if len(after.gone) == 1 else 'go'} too"


def _points_words(after: AfterTheDice) -> str:
    lost = f", and {after.points_lost} lost" if after.points_lost else ""
    return f"{several(after.points_free, 'point')} to spend again{lost}"


def _left_words(after: AfterTheDice) -> str:
    if not after.left:
        return "Nothing is left of the plan."
    return f"What is left: {purchases_words(after.left)}."


def _odd_results(bill: Bill, allowed: Allowed, *, known: Known) -> Iterator[Finding]:
    for entry, numbers in allowed.items():
        offer = bill.terms.offers.get(entry)
        if offer is None or offer.availability is None:
            yield _needs_no_roll(bill, entry, known=known)
        elif len(numbers) > _rolls(bill, offer):
            yield _rolled_twice(bill, offer, numbers=numbers, known=known)
    if allowed and bill.terms.asking is Asking.ALL_DECLARED_FIRST:
        yield from _not_declared(bill, allowed, known=known)


def _rolls(bill: Bill, offer: Offer) -> int:
    """How many rolls there are for an entry: one for each purchase, or one in all."""
    is_shared = offer.availability is not None and offer.availability.shared_roll
    return 1 if is_shared else max(bill.taken.get(offer.name, 0), 1)


def _needs_no_roll(bill: Bill, entry: str, *, known: Known) -> Finding:
    known_here = entry in bill.terms.offers
    why = "it needs no roll" if known_here else "it isn't on offer in this game"
    return Finding(
        level=Level.WARN,
        code="rolled-in-vain",
        message=f"A result is given for {entry}, and {why}.",
        effect="The result changes nothing.",
        hint="Leave it out, or look at the name.",
        place=known.place_of(bill.plan, entry),
    )


def _rolled_twice(bill: Bill, offer: Offer, *, numbers: tuple[int, ...], known: Known) -> Finding:
    rolls = _rolls(bill, offer)
    results = listed(str(number) if number else "refused" for number in numbers)
    return Finding(
        level=Level.WARN,
        code="rolled-twice",
        message=f"{offer.name} was rolled {how_often(len(numbers))} ({results}), "
        f"and has {several(rolls, 'roll')}.",
        effect=f"The first {'result' if rolls == 1 else f'{spelled(rolls)} results'} counted.",
        hint="Strike the other out with a reason, or keep it and leave out the first.",
        place=known.place_of(bill.plan, offer.name),
    )


def _not_declared(bill: Bill, allowed: Allowed, *, known: Known) -> Iterator[Finding]:
    """Purchases that need a roll and have none, where all rolls are made together."""
    for entry in bill.taken:
        offer = bill.terms.offers[entry]
        if offer.availability and len(allowed.get(entry, ())) < _rolls(bill, offer):
            yield Finding(
                level=Level.WARN,
                code="asked-after-declaring",
                message="This file rolls after all is declared. "
                f"Adding {entry} now is outside the rule.",
                effect="It is left in the plan, as if it had come.",
                hint="Take it out, or give its result too if it was declared with the others.",
                place=known.place_of(bill.plan, entry),
            )


def rolls_by_entry(rolls: Iterable[tuple[str, int]]) -> Allowed:
    """Results in the order in which they were said, by entry."""
    found: dict[str, tuple[int, ...]] = {}
    for entry, number in rolls:
        found[entry] = (*found.get(entry, ()), number)
    return found
