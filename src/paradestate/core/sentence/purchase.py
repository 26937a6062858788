"""Sentences about stock, sources and packs."""

from collections.abc import Iterator, Mapping

from paradestate.core.money import Currency, money_text
from paradestate.core.number import percent_text
from paradestate.core.sentence.wording import (
    by_hand_words,
    capital,
    counted,
    decimal,
    listed,
    plural,
    several,
    spelled,
)
from paradestate.core.source import Pack, Source


def stock_sentence(name: str, stages: Mapping[str, int]) -> str:
    """What is owned of one kind, in words."""
    held = listed(f"{number} {stage}" for stage, number in stages.items())
    return f"Owned of {plural(name)}: {held or 'none'}."


def source_sentence(source: Source) -> str:
    """A source's terms in words."""
    clauses = "; ".join(_source_clauses(source))
    return f"{capital(source.name)} sells in {clauses}." + by_hand_words(source.by_hand)


def _source_clauses(source: Source) -> Iterator[str]:
    currency = source.currency
    yield f"{currency}"
    if source.rate is not None:
        day = f" (rate of {source.rate_date})" if source.rate_date else ""
        yield f"1 {currency} costs {decimal(source.rate)} of the force's currency{day}"
    carriage = [
        f"{money_text(charge, currency)} from goods of {money_text(goods, currency)}"
        for goods, charge in source.carriage.items()
    ]
    yield f"carriage {listed(carriage)}"
    if source.discount:
        steps = [
            f"{percent_text(share)} off goods from {money_text(goods, currency)}"
            for goods, share in source.discount.items()
        ]
        yield listed(steps)
    if source.least_order:
        yield f"nothing below {money_text(source.least_order, currency)}"
    if source.noted is not None:
        yield f"prices noted {source.noted}"


def pack_sentence(pack: Pack, *, currency: Currency) -> str:
    """A pack in words."""
    title = f" ({pack.title})" if pack.title else ""
    clauses = "; ".join(_pack_clauses(pack, currency))
    text = f"{pack.name}{title} holds {counted(pack.holds) or 'nothing'} and costs {clauses}."
    return text + by_hand_words(pack.by_hand)


def _pack_clauses(pack: Pack, currency: Currency) -> Iterator[str]:
    yield money_text(pack.price, currency)
    for number, price in pack.multibuy.items():
        yield f"{spelled(number)} together {money_text(price, currency)}"
    if pack.most is not None:
        yield f"at most {pack.most} can be had"
    if pack.lead_days is not None:
        yield f"{several(pack.lead_days, 'day')} from order to arrival"
