"""What really came of a parcel: its packs as figures, less what was short, less what was miscast.

received of a kind = figures that the packs should hold - short - miscast; claimed = short + miscast
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from paradestate.core.choice import CHOSEN_HERE, unknown_choice
from paradestate.core.finding import Finding, Level
from paradestate.core.log_finding import log_stop, unwritten
from paradestate.core.number import summed
from paradestate.core.sentence.wording import capital, counted, listed, plural, several
from paradestate.core.source import Source


@dataclass(frozen=True, slots=True, kw_only=True)
class Delivery:
    """One source's parcel, unpacked."""

    source: str
    came: Mapping[str, int]
    """Pack to how many of it are there."""
    ordered: Mapping[str, int] = field(default_factory=dict)
    """Pack to how many were ordered; empty where nobody said."""
    short: Mapping[str, int] = field(default_factory=dict)
    """Kind to figures that the packs should hold and don't."""
    miscast: Mapping[str, int] = field(default_factory=dict)
    """Kind to figures that are there and of no use."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Received:
    """What a parcel comes to."""

    figures: Mapping[str, int]
    """Kind to figures that are there and of use."""
    claimed: Mapping[str, int]
    """Kind to figures that the source owes: those short and those miscast."""
    awaited: Mapping[str, int]
    """Pack to how many were ordered and haven't come."""
    unordered: Mapping[str, int]
    """Pack to how many came that nobody ordered."""


def unpacked(delivery: Delivery, source: Source) -> tuple[Received | None, tuple[Finding, ...]]:
    """What a parcel comes to, or None with the stops that prevent it; and what is odd about it."""
    unknown = tuple(_unknown(delivery, source))
    if unknown:
        return None, unknown
    due = _due(delivery, source)
    wrong = tuple(_impossible(delivery, due))
    if wrong:
        return None, wrong
    claimed = _added(delivery.short, delivery.miscast)
    ordered, came = delivery.ordered, delivery.came
    known = Received(
        figures=_less(due, claimed),
        claimed=claimed,
        awaited=_less(ordered, came),
        unordered=_less(came, ordered) if ordered else {},
    )
    return known, tuple(_odd(delivery, known))


def delivery_note(delivery: Delivery, known: Received) -> str:
    """What the journal is to say of a parcel: from which packs, and what is claimed."""
    parts = [f"parcel from {delivery.source}: {packs_words(delivery.came)}"]
    for word, figures in (("short", delivery.short), ("miscast", delivery.miscast)):
        if _added(figures):
            parts.append(f"{word} {counted(_added(figures))}")
    if known.claimed:
        parts.append(f"claimed {counted(known.claimed)}")
    if known.awaited:
        parts.append(f"awaited {packs_words(known.awaited)}")
    return "; ".join(parts)


def packs_words(packs: Mapping[str, int]) -> str:
    """Packs with numbers: `3 x S1 and 1 x S3`."""
    return listed(f"{number} x {name}" for name, number in packs.items() if number)


def _added(*every: Mapping[str, int]) -> Mapping[str, int]:
    """Numbers added up by name; noughts are left out."""
    return {name: number for name, number in summed(every).items() if number}


def _less(numbers: Mapping[str, int], taken: Mapping[str, int]) -> Mapping[str, int]:
    """What is left of each where something is."""
    left = {name: number - taken.get(name, 0) for name, number in numbers.items()}
    return {name: number for name, number in left.items() if number > 0}


def _due(delivery: Delivery, source: Source) -> Mapping[str, int]:
    """Kind to figures that the packs that came should hold."""
    held = (
        {kind: each * number for kind, each in source.packs[name].holds.items()}
        for name, number in delivery.came.items()
    )
    return _added(*held)


def _unknown(delivery: Delivery, source: Source) -> Iterator[Finding]:
    for name in dict.fromkeys((*delivery.came, *delivery.ordered)):
        if name not in source.packs:
            yield unwritten(unknown_choice(name, source.packs, what=f"pack of {source.name}"))


def _impossible(delivery: Delivery, due: Mapping[str, int]) -> Iterator[Finding]:
    if not _added(delivery.came):
        yield log_stop(
            code="parcel-empty",
            message=f"No pack of the parcel from {delivery.source} is said to have come.",
            hint="Give the number of each pack that lay in it.",
        )
        return
    for kind in dict.fromkeys((*delivery.short, *delivery.miscast)):
        short, miscast = delivery.short.get(kind, 0), delivery.miscast.get(kind, 0)
        if short + miscast > due.get(kind, 0):
            yield log_stop(
                code="more-missing-than-came",
                message=f"{capital(plural(kind))}: {short} short and {miscast} miscast, of "
                f"{due.get(kind, 0)} that the packs should hold.",
                hint="Count again, or correct the number of packs that came.",
            )


def _odd(delivery: Delivery, known: Received) -> Iterator[Finding]:
    if known.unordered:
        yield Finding(
            level=Level.WARN,
            code="pack-not-ordered",
            message=f"{delivery.source} sent {packs_words(known.unordered)}, which "
            f"{'was' if sum(known.unordered.values()) == 1 else 'were'} not ordered.",
            effect="Their figures are booked in.",
            hint="If they go back, log their figures 'lost' then, or strike the parcel out.",
            place=CHOSEN_HERE,
        )
    if known.awaited:
        yield Finding(
            level=Level.REMARK,
            code="pack-awaited",
            message=f"{several(sum(known.awaited.values()), 'pack')} not in the parcel: "
            f"{packs_words(known.awaited)}.",
            effect="Nothing of that is booked in.",
            hint="Receive it when it comes, or ask for it.",
            place=CHOSEN_HERE,
        )
