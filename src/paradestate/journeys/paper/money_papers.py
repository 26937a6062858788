"""Papers for which an order is looked for: purchase slips, and what it would cost to buy again."""

from collections.abc import Iterator, Mapping

from paradestate.core.money import Currency, money_text
from paradestate.core.paper.box_list import Box, BoxList, Prices, Whole, box_list
from paradestate.core.paper.paper import Draft
from paradestate.core.paper.purchase_slips import PurchaseSlips, certainty_words, purchase_slips
from paradestate.core.source import force_currency
from paradestate.core.unit_price import unit_prices
from paradestate.journeys.order import Request, Search, order
from paradestate.journeys.paper.paper_kind import Desk
from paradestate.journeys.paper.workshop_papers import packed_for
from paradestate.journeys.replacement import Replacement, replacement

SECONDS = 10.0
"""How long the cheapest order is looked for."""

NO_TRAY = "In no tray"


def purchase_slips_of(desk: Desk) -> Draft[PurchaseSlips]:
    """A slip for each source of the cheapest order of what is lacking."""
    if not desk.ground.force.sources:
        return Draft(shown=None)
    journey = order(
        desk.folder,
        today=desk.today,
        choice=desk.choice,
        request=Request(),
        search=_search(),
        memory=desk.memory,
    )
    if journey.problem is None or journey.answer is None:
        return Draft(shown=None)
    answer = journey.answer
    return purchase_slips(
        journey.problem, answer.order, certainty=answer.certainty, today=desk.today
    )


def box_list_of(desk: Desk) -> Draft[BoxList]:
    """What lies in which tray, and what it would cost new."""
    found = replacement(desk.folder, today=desk.today, search=_search(), memory=desk.memory)
    owned = {
        kind: found.wanted.get(kind, 0) + found.unsold.get(kind, 0)
        for kind in (*found.wanted, *found.unsold)
    }
    force = desk.ground.force
    currency = force_currency(force.sources) or Currency("GBP")
    prices = Prices(
        by_kind=unit_prices(owned, force.sources, currency=currency),
        sources=force.sources,
        currency=currency,
    )
    boxes = tuple(_boxes(desk, owned))
    return box_list(boxes, prices=prices, whole=_whole(found, currency))


def _search() -> Search:
    return Search(seconds=SECONDS, alternatives=False)


def _whole(found: Replacement, currency: Currency) -> Whole:
    answer = None if found.journey is None else found.journey.answer
    if answer is None:
        return Whole(total="", sure="", unsold=found.unsold)
    total = answer.order.total
    return Whole(
        total=money_text(total, currency),
        sure=certainty_words(answer.certainty, total=total, currency=currency),
        unsold=found.unsold,
    )


def _boxes(desk: Desk, owned: Mapping[str, int]) -> Iterator[Box]:
    """What is owned of the stands of each tray, then what is owned beside."""
    left = dict(owned)
    for name, figures in _in_trays(desk):
        inside = {kind: min(number, left.get(kind, 0)) for kind, number in figures.items()}
        for kind, number in inside.items():
            left[kind] = left.get(kind, 0) - number
        yield Box(name=name, figures=inside)
    yield Box(name=NO_TRAY, figures=left)


def _in_trays(desk: Desk) -> Iterator[tuple[str, Mapping[str, int]]]:
    packed = packed_for(desk)
    if packed is None:
        return
    states = {state.stand.name: state for state in packed.count.strength.stands}
    for lid in packed.lids:
        figures: dict[str, int] = {}
        for stand in lid.stands:
            state = states.get(stand.name)
            for each in state.fillings if state is not None else ():
                figures[each.kind] = figures.get(each.kind, 0) + each.number
        yield lid.tray, figures
