"""What is to be said about an order: why there is none, what it leaves over, how sure it is."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from paradestate.core.certainty import Within
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.money import money_text
from paradestate.core.order import Order, OrderAnswer, OrderProblem, PackName
from paradestate.core.place import Place, nearest_place

MUCH_LEFT_OVER = Fraction(1, 10)
"""A share of what is bought that is worth a word when it is left over (common practice)."""


def _stop(*, code: str, message: str, hint: str, place: Place) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="There is no order that meets the want.",
        hint=hint,
        place=place,
    )


def refusal(
    force: Force,
    problem: OrderProblem,
    *,
    unsold: Sequence[str],
    most_of: Sequence[PackName],
    least_orders: Sequence[str],
) -> tuple[Finding, ...]:
    """Why there is no order: kinds that nobody sells, or the limits that bar it."""
    findings = [_unsold(force, problem, kind=kind) for kind in unsold]
    for source, name in most_of:
        most = problem.sources[source].packs[name].most
        findings.append(
            _stop(
                code="most-bars-the-order",
                message=f"Only {most} of {name} can be had from {source}, which isn't enough.",
                hint="Find another source, or stand-ins.",
                place=nearest_place(force.places, ("sources", source, "packs", name, "most")),
            )
        )
    for source in least_orders:
        seller = problem.sources[source]
        least = money_text(seller.least_order, seller.currency)
        findings.append(
            _stop(
                code="least-order-bars-the-order",
                message=f"{source} sends nothing below {least}, and what it has doesn't come to "
                "that.",
                hint="Find another source, or ask for more.",
                place=nearest_place(force.places, ("sources", source, "least order")),
            )
        )
    if findings:
        return tuple(findings)
    return (
        _stop(
            code="no-order",
            message="Several limits together (most of a pack, least order) bar every order.",
            hint="Find another source.",
            place=nearest_place(force.places, ("sources",)),
        ),
    )


def _unsold(force: Force, problem: OrderProblem, *, kind: str) -> Finding:
    number = problem.want[kind]
    return _stop(
        code="nobody-sells",
        message=f"{number} {kind} {'is' if number == 1 else 'are'} wanted; no pack on the list "
        f"contains {kind}.",
        hint="Add a source or a substitute.",
        place=nearest_place(force.places, ("figures", kind)),
    )


def nothing_found(force: Force, *, seconds: float) -> Finding:
    """The stop for a search that ended with nothing."""
    return _stop(
        code="not-computed",
        message=f"Stopped at {seconds:g} s before any order was found.",
        hint="Allow more time with --seconds.",
        place=nearest_place(force.places, ("sources",)),
    )


def doubts(
    force: Force, problem: OrderProblem, *, answer: OrderAnswer, seconds: float
) -> Iterator[Finding]:
    """A warning on much left over, and a remark on an order that isn't proved."""
    better = [step for step in answer.steps if step is not answer.order]
    if better and _bought(answer.order) * MUCH_LEFT_OVER < answer.order.number_left_over:
        yield _much_left_over(force, problem, order=answer.order, other=better[0])
    if isinstance(answer.certainty, Within):
        best = money_text(answer.order.total, problem.currency)
        bound = money_text(answer.certainty.bound, problem.currency)
        yield Finding(
            level=Level.REMARK,
            code="not-proved",
            message=f"Stopped at {seconds:g} s: best found {best}, nothing below {bound} exists.",
            effect="A cheaper order may exist, within those bounds.",
            hint="Allow more time with --seconds.",
            place=nearest_place(force.places, ("sources",)),
        )


def _bought(order: Order) -> int:
    return sum(order.held.values())


def _much_left_over(force: Force, problem: OrderProblem, *, order: Order, other: Order) -> Finding:
    return Finding(
        level=Level.WARN,
        code="much-left-over",
        message=f"This order leaves {order.number_left_over} spare of {_bought(order)} bought; "
        f"the {money_text(other.total, problem.currency)} order leaves {other.number_left_over} "
        f"of {_bought(other)}.",
        effect="Figures are paid for that nothing wants.",
        hint="Choose among the steps of cost against left over.",
        place=nearest_place(force.places, ("sources",)),
    )
