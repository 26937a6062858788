"""What is to be said about an order: why there is none, what it leaves over, how sure it is."""

from collections.abc import Iterator
from fractions import Fraction
from typing import assert_never

from paradestate.core.certainty import Within
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.money import money_text
from paradestate.core.order import Order, OrderProblem
from paradestate.core.order_outcome import (
    Barred,
    LeastOrder,
    Limit,
    MostOf,
    MostParcels,
    NobodySells,
    NotFound,
    OrderAnswer,
    Why,
)
from paradestate.core.place import Place, nearest_place
from paradestate.core.sentence.wording import plural, several

MUCH_LEFT_OVER = Fraction(1, 5)
"""A share of what is wanted that is worth a word when more is left over (common practice)."""


def refusal(
    force: Force, problem: OrderProblem, *, outcome: NobodySells | Barred
) -> tuple[Finding, ...]:
    """Why there is no order: kinds that nobody sells, or the limits that bar it."""
    match outcome:
        case NobodySells():
            return tuple(_unsold(force, problem, kind=kind) for kind in outcome.kinds)
        case Barred(limits=(limit,)):
            return (_barring(force, problem, limit=limit),)
        case Barred():
            return (_barring_together(force, problem, limits=outcome.limits),)


def _unsold(force: Force, problem: OrderProblem, *, kind: str) -> Finding:
    number = problem.want[kind]
    verb = "is" if number == 1 else "are"
    return _stop(
        code="nobody-sells",
        message=f"{several(number, kind)} {verb} wanted; no pack on the list contains "
        f"{plural(kind)}.",
        hint="Add a source or a substitute.",
        place=nearest_place(force.places, ("figures", kind)),
    )


def _barring(force: Force, problem: OrderProblem, *, limit: Limit) -> Finding:
    place = _place(force, limit)
    match limit:
        case MostOf(pack=(source, pack), most=most):
            return _stop(
                code="most-bars-the-order",
                message=f"Only {most} of {pack} can be had from {source}, which isn't enough.",
                hint="Find another source or a substitute, or want less.",
                place=place,
            )
        case LeastOrder():
            return _stop(
                code="least-order-bars-the-order",
                message=f"{_said(problem, limit)[0].upper()}{_said(problem, limit)[1:]}, and what "
                "can be had there doesn't come to that.",
                hint="Find another source.",
                place=place,
            )
        case MostParcels():
            return _stop(
                code="one-parcel-bars-the-order",
                message="No source has all that is wanted, so it can't come in one parcel.",
                hint="Leave out --one-parcel.",
                place=place,
            )
        case _:
            assert_never(limit)


def _barring_together(force: Force, problem: OrderProblem, *, limits: tuple[Limit, ...]) -> Finding:
    first, *others = limits
    said = " and ".join(_said(problem, limit) for limit in limits)
    return _stop(
        code="no-order",
        message=f"No order meets the want while {said}.",
        hint="Find another source or a substitute, or want less.",
        place=_place(force, first),
        related=tuple(_place(force, limit) for limit in others),
    )


def _said(problem: OrderProblem, limit: Limit) -> str:
    match limit:
        case MostOf(pack=(source, pack), most=most):
            return f"only {most} of {source} {pack} can be had"
        case LeastOrder(source=source, least=least):
            currency = problem.sources[source].currency
            return f"{source} sends nothing below {money_text(least, currency)}"
        case MostParcels():
            return "all comes in one parcel"
        case _:
            assert_never(limit)


def _place(force: Force, limit: Limit) -> Place:
    match limit:
        case MostOf(pack=(source, pack)):
            return nearest_place(force.places, ("sources", source, "packs", pack, "most"))
        case LeastOrder(source=source):
            return nearest_place(force.places, ("sources", source, "least order"))
        case MostParcels():
            return nearest_place(force.places, ("sources",))
        case _:
            assert_never(limit)


def _stop(
    *, code: str, message: str, hint: str, place: Place, related: tuple[Place, ...] = ()
) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="There is no order that meets the want.",
        hint=hint,
        place=place,
        related=related,
    )


def nothing_found(force: Force, outcome: NotFound, *, seconds: float) -> Finding:
    """The stop for a search that ended with nothing."""
    if outcome.why is Why.OUT_OF_TIME:
        message = f"Stopped at {seconds:g} s before any order was found."
        hint = "Allow more time with --seconds."
    elif outcome.why is Why.INTERRUPTED:
        message = "Stopped by hand before any order was found."
        hint = "Give it more time."
    else:
        message = "The numbers wanted, the prices or the multi-buys are too great to be exact."
        hint = "Look for a slip among them, or order in parts with --want."
    return Finding(
        level=Level.STOP,
        code="not-computed",
        message=message,
        effect="There may be an order or none: nothing is proved.",
        hint=hint,
        place=nearest_place(force.places, ("sources",)),
    )


def doubts(
    force: Force, problem: OrderProblem, *, answer: OrderAnswer, seconds: float
) -> Iterator[Finding]:
    """A warning on much left over, and a remark on an order that isn't proved."""
    yield from _much_left_over(force, problem, answer=answer)
    if isinstance(answer.certainty, Within):
        best = money_text(answer.order.total, problem.currency)
        bound = money_text(answer.certainty.bound, problem.currency)
        stopped = f"Stopped at {seconds:g} s: best" if answer.out_of_time else "Best"
        if answer.interrupted:
            stopped = "Stopped by hand: best"
        yield Finding(
            level=Level.REMARK,
            code="not-proved",
            message=f"{stopped} found {best}, nothing below {bound} exists.",
            effect="A cheaper order may exist, within those bounds.",
            hint="Allow more time with --seconds."
            if answer.out_of_time
            else "Search again without stopping, and without --within.",
            place=nearest_place(force.places, ("sources",)),
        )


def unknown_arrival(force: Force, order: Order) -> Finding:
    """The remark that the lead time of some pack of the soonest order isn't known."""
    source, name = next(iter(order.packs))
    return Finding(
        level=Level.REMARK,
        code="lead-time-unknown",
        message="No order can be put together from packs whose lead time is known.",
        effect="This order is the cheapest, and nobody knows whether it is there soonest.",
        hint="Give the packs their `lead days`.",
        place=nearest_place(force.places, ("sources", source, "packs", name)),
    )


def _much_left_over(
    force: Force, problem: OrderProblem, *, answer: OrderAnswer
) -> Iterator[Finding]:
    order = answer.order
    fewer = [step for step in answer.steps if step.number_left_over < order.number_left_over]
    if not fewer or not _leaves_much(problem, order):
        return
    thrifty = [step for step in fewer if not _leaves_much(problem, step)]
    other = (thrifty or fewer[-1:])[0]
    yield Finding(
        level=Level.WARN,
        code="much-left-over",
        message=f"This order leaves {order.number_left_over} spare of {order.number_bought} "
        f"bought; the {money_text(other.total, problem.currency)} order leaves "
        f"{other.number_left_over} of {other.number_bought}.",
        effect="Figures are paid for that nothing wants.",
        hint="Choose among the steps of cost against left over.",
        place=nearest_place(force.places, ("sources",)),
    )


def _leaves_much(problem: OrderProblem, order: Order) -> bool:
    return order.number_left_over > MUCH_LEFT_OVER * problem.number_lacking
