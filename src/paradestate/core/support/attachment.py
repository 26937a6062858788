"""Who is attached to whom: the sections of a plan, their hosts, and what each place is worth.

force, establishment, plan -> sections and hosts -> worth of an attachment, what it breaks, moves

Each section has one host or stays independent. A host has room for as many as the narrowest of
those attached to it allows, whatever their entries; two of one entry aren't with the same host
where the entry says so.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TypeAlias

from paradestate.core.establishment import Establishment
from paradestate.core.formation import Need
from paradestate.core.game import Purchase
from paradestate.core.sentence.wording import capital
from paradestate.core.support.entry import Attachment, Entry

INDEPENDENT = "independent"
"""Stands in the place of a host where a section has none."""

PLACE_WORTH, INDEPENDENT_WORTH = Fraction(1), Fraction(0)
"""What a place is worth, and none, where the owner doesn't say."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One of those taken of an entry that may be attached."""

    name: str
    """Such as `machine-gun platoon 2`, or `pioneers(flame)` where there is only one."""
    entry: str
    rule: Attachment
    must: bool = False
    """Whether it may not stay independent."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Host:
    """A body of the must layer, to which sections may be attached."""

    name: str
    """Such as `No 2 Company / 3 Platoon`."""
    formation: str


Attached: TypeAlias = Mapping[str, str]
"""Section to its host, or to INDEPENDENT."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Attaching:
    """The sections to be attached, the hosts there are, and the owner's worths."""

    sections: tuple[Section, ...]
    """In the order of the plan."""
    hosts: tuple[Host, ...]
    """In file order."""
    worths: Mapping[tuple[str, str], Fraction] = field(default_factory=dict)
    """Section and host (or INDEPENDENT) to what that is worth; what is left out is as usual."""

    def worth(self, section: str, *, host: str) -> Fraction:
        """What it is worth to have a section with a host, or independent."""
        usual = INDEPENDENT_WORTH if host == INDEPENDENT else PLACE_WORTH
        return self.worths.get((section, host), usual)

    def hosts_for(self, section: Section) -> tuple[Host, ...]:
        """The hosts of the kind that the section may be attached to."""
        return tuple(host for host in self.hosts if host.formation == section.rule.to)


@dataclass(frozen=True, slots=True, kw_only=True)
class Barrier:
    """A rule that keeps a section from a place."""

    rule: str
    """`must-attach`, `no-host-of-its-kind`, `host-full` or `two-alike`."""
    section: str
    host: str
    with_: tuple[str, ...] = ()
    """The other sections there that it has to do with."""
    most: int | None = None
    """How many that host has room for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """What changes when one section goes to another place and all others stay."""

    section: str
    host: str
    gain: Fraction
    """The total after it less the total before, if nothing forbids it."""
    barrier: Barrier | None = None


def sections_of(
    plan: Iterable[Purchase], *, entries: Mapping[str, Entry], must: Iterable[str] = ()
) -> tuple[Section, ...]:
    """Each one taken of the entries that may be attached; `must` names entries.

    Every purchase is of a known entry.
    """
    numbers: dict[tuple[str, str], int] = {}
    for purchase in plan:
        if entries[purchase.entry].attach is not None:
            kind = (purchase.entry, purchase.choice)
            numbers[kind] = numbers.get(kind, 0) + purchase.number
    bound = frozenset(must)
    named = [
        (name, entry, rule)
        for (entry, choice), number in numbers.items()
        if (rule := entries[entry].attach) is not None
        for name in _numbered(f"{entry}({choice})" if choice else entry, number=number)
    ]
    names = _told_apart(name for name, _, _ in named)
    return tuple(
        Section(name=name, entry=entry, rule=rule, must=entry in bound)
        for name, (_, entry, rule) in zip(names, named, strict=True)
    )


def _numbered(kind: str, *, number: int) -> Iterator[str]:
    """A running number where there are several, as with the parts of the force."""
    for place in range(1, number + 1):
        yield kind if number == 1 else f"{kind} {place}"


def _told_apart(names: Iterable[str]) -> Iterator[str]:
    """The names, with a number in brackets behind each that was there before."""
    taken = {INDEPENDENT}
    for name in names:
        unlike, number = name, 1
        while unlike in taken:
            number += 1
            unlike = f"{name} ({number})"
        taken.add(unlike)
        yield unlike


def number_of_sections(plan: Iterable[Purchase], *, entries: Mapping[str, Entry]) -> int:
    """How many sections there are to attach, without naming them."""
    return sum(each.number for each in plan if entries[each.entry].attach is not None)


def hosts_of(made: Establishment, *, formations: Iterable[str]) -> tuple[Host, ...]:
    """The bodies of the must layer of these formations; the raised one goes by its formation."""
    wanted = frozenset(formations)
    there = [body for body in made.bodies if body.formation in wanted and body.layer is Need.MUST]
    names = _told_apart(body.name or capital(body.formation) for body in there)
    return tuple(
        Host(name=name, formation=body.formation) for name, body in zip(names, there, strict=True)
    )


def total_worth(question: Attaching, attached: Attached) -> Fraction:
    """What an attachment is worth to the owner, all sections together."""
    return sum(
        (question.worth(name, host=host) for name, host in attached.items()),
        Fraction(0),
    )


def barriers(question: Attaching, attached: Attached) -> tuple[Barrier, ...]:
    """Every rule that an attachment breaks; none: it may stand so. Each section must be in it."""
    return tuple(
        barrier
        for section in question.sections
        if (barrier := barrier_of(question, attached, section=section, host=attached[section.name]))
    )


def barrier_of(
    question: Attaching, attached: Attached, *, section: Section, host: str
) -> Barrier | None:
    """The rule that keeps a section from a place while all others stay; None: it may be there."""
    if host == INDEPENDENT:
        broken = "must-attach" if section.must else ""
        return Barrier(rule=broken, section=section.name, host=host) if broken else None
    if host not in {each.name for each in question.hosts_for(section)}:
        return Barrier(rule="no-host-of-its-kind", section=section.name, host=host)
    others = tuple(
        each
        for each in question.sections
        if each.name != section.name and attached[each.name] == host
    )
    most = _room(rule.most_per_host for rule in (section.rule, *(each.rule for each in others)))
    if most is not None and len(others) >= most:
        return Barrier(
            rule="host-full",
            section=section.name,
            host=host,
            with_=tuple(each.name for each in others),
            most=most,
        )
    alike = tuple(each.name for each in others if each.entry == section.entry)
    if alike and section.rule.no_two_alike:
        return Barrier(rule="two-alike", section=section.name, host=host, with_=alike)
    return None


def _room(limits: Iterable[int | None]) -> int | None:
    return min((limit for limit in limits if limit is not None), default=None)


def moved(question: Attaching, attached: Attached, *, section: str, host: str) -> Move:
    """What moving a section to a host, or to INDEPENDENT, changes, or which rule forbids it."""
    known = next(each for each in question.sections if each.name == section)
    before = question.worth(section, host=attached[section])
    return Move(
        section=section,
        host=host,
        gain=question.worth(section, host=host) - before,
        barrier=barrier_of(question, attached, section=known, host=host),
    )


def moves(question: Attaching, attached: Attached) -> Mapping[str, tuple[Move, ...]]:
    """Section to what every other place of its kind would bring, independence last."""
    return {
        section.name: tuple(
            moved(question, attached, section=section.name, host=host)
            for host in (*(each.name for each in question.hosts_for(section)), INDEPENDENT)
            if host != attached[section.name]
        )
        for section in question.sections
    }
