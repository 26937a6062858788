"""What won't come of what is on order: named by its kinds, or all that its source still owes.

It comes off what is on order, the oldest order first, and its entry says why.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from paradestate.core import log_finding
from paradestate.core.finding import Finding
from paradestate.core.log_request import Desk, LogRequest
from paradestate.core.on_order import figures_on_order


@dataclass(frozen=True, slots=True, kw_only=True)
class Cancelled:
    """What an entry says of it."""

    source: str = ""
    figures: Mapping[str, int] = field(default_factory=dict)


def cancelled(request: LogRequest, desk: Desk) -> Cancelled:
    """What a request takes off what is on order; it must have no slip."""
    source = request.source or _sources(desk)[0]
    return Cancelled(source=source, figures=request.figures or _on_order(desk, source=source))


def cancel_slips(request: LogRequest, desk: Desk) -> Iterator[Finding]:
    """What is wrong with what is said not to come, as stops."""
    if not request.note.strip():
        yield log_finding.incomplete(
            "Nothing says why it won't come.", hint='Add --note "refunded".'
        )
    sources = _sources(desk)
    if request.source and request.source not in sources:
        yield log_finding.not_on_order(request.source, sources=sources)
    elif not sources:
        yield log_finding.not_on_order("", sources=())
    elif not request.source and len(sources) > 1:
        yield log_finding.incomplete(
            "Figures are on order from more than one source.",
            hint=f"Say with --source from which they won't come: {', '.join(sources)}.",
        )
    else:
        yield from _too_many(request, _on_order(desk, source=request.source or sources[0]))


def _too_many(request: LogRequest, there: Mapping[str, int]) -> Iterator[Finding]:
    for kind, number in request.figures.items():
        if number > there.get(kind, 0):
            yield log_finding.more_than_on_order(kind, number, there=there)


def _sources(desk: Desk) -> Sequence[str]:
    """From whom anything is on order."""
    return tuple(dict.fromkeys(order.source for order in desk.state.on_order))


def _on_order(desk: Desk, *, source: str) -> Mapping[str, int]:
    return figures_on_order(each for each in desk.state.on_order if each.source == source)
