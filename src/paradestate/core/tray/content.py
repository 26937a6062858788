"""What goes into the trays, and which trays there are: the stands of a force, of a plan too.

Every wanted stand goes in, printed markers among them, in the order of the organisation. Stands
whose size nobody says can't be laid anywhere.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paradestate.core.establishment import Establishment
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.outline import Outline
from paradestate.core.sentence.wording import capital
from paradestate.core.strength import Strength
from paradestate.core.support.entry import Position
from paradestate.core.support.readiness import plan_stands, readiness, without_exchanged
from paradestate.core.table import Tray
from paradestate.core.tray.thing import Case, Thing
from paradestate.core.unfolding import SEPARATOR, Stand

MOST_THINGS = 600
"""Stands that are laid out; a few battalions."""

MOST_CASES = 40
"""Trays that are tried; no cupboard has more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Content:
    """All that is to be laid, and what can't be."""

    things: tuple[Thing, ...]
    sizeless: Mapping[str, int]
    """Pattern without a size to how many stands of it there are."""


def content(
    force: Force,
    made: Establishment,
    *,
    strength: Strength,
    plan: tuple[Purchase, ...] = (),
    only_finished: bool = False,
) -> Content:
    """The wanted stands of the force, and those that a plan brings.

    With `only_finished` those alone that are, and what is printed.
    """
    finished = _finished(force, strength) if only_finished else None
    exchanged = _exchanged(force, made, plan=plan)
    found: list[tuple[Thing | None, str]] = []
    for stand in made.stands:
        is_there = finished is None or stand.printed or stand.name in finished
        if stand.is_wanted and is_there and stand.name not in exchanged:
            found.append((_of_stand(force, stand), stand.pattern))
    for name, pattern, company in _planned(force, made, plan=plan, only_finished=only_finished):
        found.append((_thing(force, name, pattern=pattern, company=company), pattern))
    return Content(
        things=tuple(thing for thing, _ in found if thing),
        sizeless=Counter(pattern for thing, pattern in found if thing is None),
    )


def cases(trays: Mapping[str, Tray]) -> tuple[Case, ...]:
    """Every single tray: of two that are alike `case 1` and `case 2`."""
    return tuple(case for tray in trays.values() for case in _cases(tray))[:MOST_CASES]


def _cases(tray: Tray) -> Iterator[Case]:
    for number in range(1, min(tray.number, MOST_CASES) + 1):
        yield Case(
            name=tray.name if tray.number == 1 else f"{tray.name} {number}",
            kind=tray.name,
            inside=tray.inside,
            height=tray.height,
            gap=tray.gap,
        )


def _finished(force: Force, strength: Strength) -> frozenset[str]:
    last = force.bench.stages[-1]
    return frozenset(state.stand.name for state in strength.stands if state.stage == last)


def _exchanged(force: Force, made: Establishment, *, plan: tuple[Purchase, ...]) -> frozenset[str]:
    """Must stands that stay at home, because the plan exchanges them for others."""
    if not plan:
        return frozenset()
    kept = {stand.name for stand in without_exchanged(force, made, plan=plan)}
    must = {stand.name for stand in made.stands if not stand.wishes}
    return frozenset(must - kept)


def _of_stand(force: Force, stand: Stand) -> Thing | None:
    above = stand.name.rpartition(SEPARATOR)[0]
    platoon = "" if above == stand.company else above
    return _thing(force, stand.name, pattern=stand.pattern, company=stand.company, platoon=platoon)


def _thing(
    force: Force, name: str, *, pattern: str, company: str, platoon: str = ""
) -> Thing | None:
    """None where nobody says how large it is."""
    outline = outline_of(force, pattern)
    if outline is None:
        return None
    known = force.stands.get(pattern)
    return Thing(
        name=name,
        pattern=pattern,
        outline=outline,
        height=None if known is None else known.height,
        company=company,
        platoon=platoon,
    )


def outline_of(force: Force, pattern: str) -> Outline | None:
    """What a pattern covers; None where nobody says."""
    known = force.stands.get(pattern)
    return None if known is None else known.outline


def _planned(
    force: Force, made: Establishment, *, plan: Sequence[Purchase], only_finished: bool
) -> Iterator[tuple[str, str, str]]:
    """Name, pattern and what it is kept together with, of each stand that the plan brings."""
    ready = {
        (each.entry, each.pattern): each.finished
        for each in (readiness(force, made, plan=tuple(plan)) if only_finished else ())
    }
    numbers: Counter[str] = Counter()
    for entry, pattern, number in _brought(force, plan):
        most = ready.get((entry, pattern), number)
        for _ in range(min(number, most, MOST_THINGS)):
            body = capital(entry)
            called = f"{body}{SEPARATOR}{capital(pattern)}"
            numbers[called] += 1
            yield f"{called} {numbers[called]}", pattern, body


def _brought(force: Force, plan: Sequence[Purchase]) -> Iterator[tuple[str, str, int]]:
    """Entry, pattern and number, over all purchases; what is off the table has no stands."""
    numbers: Counter[tuple[str, str]] = Counter()
    for purchase in plan:
        entry = force.supporting_troops[purchase.entry]
        if entry.place is not Position.OFF_TABLE:
            for pattern, number in plan_stands(entry, purchase).items():
                numbers[entry.name, pattern] += number
    for (name, pattern), number in numbers.items():
        yield name, pattern, number
