"""Doubts about sources, packs and stand-ins."""

from collections.abc import Iterator
from itertools import pairwise

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.money import money_text
from paradestate.core.place import Place, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.source import Pack, Source, force_currency


def _place(force: Force, *path: str) -> Place:
    return nearest_place(force.places, path)


def _packs(force: Force) -> Iterator[tuple[Source, Pack]]:
    for source in force.sources.values():
        for pack in source.packs.values():
            yield source, pack


def packs_without_contents(force: Force) -> Iterator[Finding]:
    """A pack that holds nothing."""
    for source, pack in _packs(force):
        if not pack.holds:
            yield Finding(
                level=Level.STOP,
                code="pack-without-contents",
                message=f"Pack '{pack.name}' has no contents, so it can't fill any want.",
                effect="It is never bought.",
                hint="Write what it holds, such as holds: {rifleman: 10}.",
                place=_place(force, "sources", source.name, "packs", pack.name, "holds"),
            )


def free_packs(force: Force) -> Iterator[Finding]:
    """A pack that costs nothing."""
    for source, pack in _packs(force):
        if pack.price == 0:
            yield Finding(
                level=Level.WARN,
                code="price-nought",
                message=f"{pack.name} costs {money_text(0, source.currency)}: a gift?",
                effect="An order takes as many as it likes.",
                hint="Write the price, or 'most: 1' if it is a gift.",
                place=_place(force, "sources", source.name, "packs", pack.name, "price"),
            )


def vain_multibuys(force: Force) -> Iterator[Finding]:
    """A multi-buy that costs as much as the packs singly, or more."""
    for source, pack in _packs(force):
        for number, price in pack.multibuy.items():
            if price >= number * pack.price:
                singly = money_text(number * pack.price, source.currency)
                path = ("packs", pack.name, "multibuy", str(number))
                yield Finding(
                    level=Level.WARN,
                    code="multibuy-in-vain",
                    message=f"{number} of {pack.name} cost "
                    f"{money_text(price, source.currency)} together and {singly} singly.",
                    effect="The multi-buy is never taken.",
                    hint="Look at the price and the multi-buy again.",
                    place=_place(force, "sources", source.name, *path),
                )


def missing_first_carriage(force: Force) -> Iterator[Finding]:
    """Carriage that says nothing for small orders."""
    for source in force.sources.values():
        least = min(source.carriage, default=None)
        if least is None or least > source.least_order:
            below = "" if least is None else f" for goods below {_amount(least, source)}"
            yield Finding(
                level=Level.WARN,
                code="carriage-without-first-step",
                message=f"{source.name}: carriage says nothing{below}.",
                effect="Such orders are taken to be sent free.",
                hint="Add `0: ...` with the charge for the smallest order.",
                place=_place(force, "sources", source.name, "carriage"),
            )


def _amount(amount: int, source: Source) -> str:
    return money_text(amount, source.currency)


def falling_discounts(force: Force) -> Iterator[Finding]:
    """A discount that is smaller for more goods."""
    for source in force.sources.values():
        for fewer, more in pairwise(sorted(source.discount)):
            if source.discount[more] < source.discount[fewer]:
                yield Finding(
                    level=Level.WARN,
                    code="discount-falls",
                    message=f"{source.name}: the discount falls at {_amount(more, source)}.",
                    effect="Sums use it as it stands.",
                    hint="Look at the steps again.",
                    place=_place(force, "sources", source.name, "discount"),
                )


def currencies(force: Force) -> Iterator[Finding]:
    """Currencies that can't be added up for want of a rate."""
    home = force_currency(force.sources)
    own = [source for source in force.sources.values() if source.rate is None]
    if force.sources and not own:
        first = next(iter(force.sources.values()))
        yield _rate_finding(
            force,
            first,
            code="currency-unknown",
            message="Every source has a rate, so nobody can know the force's own currency.",
            hint="Take 'rate' out where prices are in the force's own currency.",
        )
    for source in own:
        if source.currency != home:
            yield _rate_finding(
                force,
                source,
                code="rate-missing",
                message=f"{source.name} is in {source.currency} and the total in {home}.",
                hint="Enter a 'rate' and its 'rate date'.",
            )
    for source in force.sources.values():
        if source.rate is not None and source.rate_date is None:
            yield Finding(
                level=Level.REMARK,
                code="rate-without-date",
                message=f"{source.name}: nobody knows of which day the rate is.",
                effect="The total in the force's currency may be out of date.",
                hint="Add 'rate date: ...'.",
                place=_place(force, "sources", source.name, "rate"),
            )


def _rate_finding(force: Force, source: Source, *, code: str, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="Prices can't be added up.",
        hint=hint,
        place=_place(force, "sources", source.name, "currency"),
    )


def circles_of_stand_ins(force: Force) -> Iterator[Finding]:
    """Two kinds that may stand for each other."""
    for figure in force.figures.values():
        for other_name in figure.may_stand_for:
            other = force.figures.get(other_name)
            if other is None or figure.name not in other.may_stand_for:
                continue
            if figure.name < other_name:
                yield Finding(
                    level=Level.WARN,
                    code="stand-in-circle",
                    message=f"{figure.name} stands for {other_name} and {other_name} for "
                    f"{figure.name}: fine singly, but one figure is used once only.",
                    effect="Each figure is still counted once.",
                    hint="Keep both if that is meant, or take one out.",
                    place=_place(force, "figures", figure.name, "may stand for", other_name),
                    related=(_place(force, "figures", other_name, "may stand for", figure.name),),
                )


RULES: tuple[Rule, ...] = (
    packs_without_contents,
    free_packs,
    vain_multibuys,
    missing_first_carriage,
    falling_discounts,
    currencies,
    circles_of_stand_ins,
)
