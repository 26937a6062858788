"""Small questions of who is attached to whom, drawn at random, and their answer by enumeration."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import product

from hypothesis import strategies as st

from paradestate.core.support.attachment import (
    INDEPENDENT,
    Attaching,
    Host,
    Section,
    barriers,
    total_worth,
)
from paradestate.core.support.entry import Attachment

TO = "platoon"
"""The formation of the hosts where nothing else is said."""


def rule(most: int | None = 1, *, to: str = TO, no_two_alike: bool = False) -> Attachment:
    return Attachment(to=to, most_per_host=most, no_two_alike=no_two_alike)


def sections(entry: str, number: int, *, of: Attachment, must: bool = False) -> tuple[Section, ...]:
    """So many of an entry, called `entry 1` and so on."""
    return tuple(
        Section(name=f"{entry} {place}", entry=entry, rule=of, must=must)
        for place in range(1, number + 1)
    )


def hosts(number: int, *, formation: str = TO) -> tuple[Host, ...]:
    """So many hosts, called `1` and so on behind a letter of their formation."""
    return tuple(
        Host(name=f"{formation[0]}{place}", formation=formation) for place in range(1, number + 1)
    )


def three_weapons() -> Attaching:
    """Three weapons and three hosts of one place each (worked by hand)."""
    guns = (*sections("MG", 2, of=rule()), *sections("AT", 1, of=rule()))
    rows = ((5, 4, 1), (6, 3, 2), (4, 5, 3))
    worths = {
        (gun.name, host.name): Fraction(worth)
        for gun, row in zip(guns, rows, strict=True)
        for host, worth in zip(hosts(3), row, strict=True)
    }
    return Attaching(sections=guns, hosts=hosts(3), worths=worths)


@st.composite
def attachings(draw: st.DrawFn, *, most: int = 5) -> Attaching:
    """At most so many sections of three entries, three hosts of one formation and one of another.

    Rooms differ, some sections must be attached, and some worths are said.
    """
    found: list[Section] = []
    for entry in ("a", "b", "c"):
        drawn = rule(
            draw(st.sampled_from((1, 1, 2, None))),
            to=draw(st.sampled_from((TO, TO, TO, "company"))),
            no_two_alike=draw(st.booleans()),
        )
        must = draw(st.integers(0, 3)) == 0
        found += sections(entry, draw(st.integers(0, 2)), of=drawn, must=must)
    there = (*hosts(draw(st.integers(0, 3))), *hosts(1, formation="company"))
    places = (*(host.name for host in there), INDEPENDENT)
    pairs = [(each.name, place) for each in found[:most] for place in places]
    worth = st.fractions(-2, 4, max_denominator=3)
    said = draw(st.dictionaries(st.sampled_from(pairs), worth, max_size=9)) if pairs else {}
    return Attaching(sections=tuple(found[:most]), hosts=there, worths=said)


def every_attachment(question: Attaching) -> Iterator[Mapping[str, str]]:
    """All that break no rule, those that give the first sections the first hosts first."""
    open_to = [
        (*(host.name for host in question.hosts_for(section)), INDEPENDENT)
        for section in question.sections
    ]
    for places in product(*open_to):
        names = (section.name for section in question.sections)
        attached = dict(zip(names, places, strict=True))
        if not barriers(question, attached):
            yield attached


def best_by_enumeration(question: Attaching) -> Fraction | None:
    """What the best is worth; None where there is none."""
    totals = [total_worth(question, attached) for attached in every_attachment(question)]
    return max(totals, default=None)
