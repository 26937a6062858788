"""Doubts about conditions between entries of supporting troops: what can never be taken."""

from collections.abc import Iterator, Mapping

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.support.entry import Entry

SECTION = "supporting troops"


def _stop(force: Force, *path: str, code: str, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="The entry can't be chosen as it stands.",
        hint=hint,
        place=nearest_place(force.places, (SECTION, *path)),
    )


def needs_and_bars(force: Force) -> Iterator[Finding]:
    """An entry that bars what it can't do without, whichever of the two says so."""
    for entry in force.supporting_troops.values():
        barred = _barred(force, entry)
        if entry.name in entry.bars:
            yield _stop(
                force,
                entry.name,
                "bars",
                code="needs-and-bars",
                message=f"'{entry.name}' bars itself: it can never be taken.",
                hint="Take it out of its own 'bars'.",
            )
        for word, needed in _without_alternative(force, entry, barred=barred):
            yield _stop(
                force,
                entry.name,
                word,
                code="needs-and-bars",
                message=f"'{entry.name}' needs and bars '{needed}': it can never be taken.",
                hint="Take one of the two out.",
            )


def _barred(force: Force, entry: Entry) -> set[str]:
    others = force.supporting_troops.values()
    return {*entry.bars, *(other.name for other in others if entry.name in other.bars)}


def _without_alternative(
    force: Force, entry: Entry, *, barred: set[str]
) -> Iterator[tuple[str, str]]:
    """Word and entry of each need that is barred; of alternatives only where all of them are."""
    yield from (("needs", name) for name in entry.needs if name in barred)
    yield from (("needs for each", name) for name in entry.needs_for_each if name in barred)
    ways = _alternatives(force, entry)
    if ways and set(ways) <= barred:
        word = "needs any of" if entry.needs_any_of else ""
        yield word, "', '".join(ways)


def _alternatives(force: Force, entry: Entry) -> tuple[str, ...]:
    """Entries of which one is needed: those said here, and those that open this one."""
    opened_by = (
        other.name for other in force.supporting_troops.values() if entry.name in other.opens
    )
    return tuple(dict.fromkeys((*entry.needs_any_of, *opened_by)))


def needs_in_a_circle(force: Force) -> Iterator[Finding]:
    """Entries that need themselves by a roundabout way, with no other way to have them.

    Conditions are judged on the whole force, so that both could be bought together; but neither
    can be bought first.
    """
    lacking = _never_first(force)
    seen: set[str] = set()
    for name in lacking:
        circle = _circle_from(name, lacking=lacking)
        if not seen & set(circle):
            first = circle.index(min(circle))
            circle = (*circle[first:], *circle[:first])
            yield _stop(
                force,
                circle[0],
                _word(force.supporting_troops[circle[0]], circle[1 % len(circle)]),
                code="needs-circle",
                message=f"{' needs '.join((*circle, circle[0]))}: none can be bought first.",
                hint="Sell them as a set, or drop one need.",
            )
        seen |= set(circle)


def _word(entry: Entry, needed: str) -> str:
    """The word by which one entry needs another."""
    if needed in entry.needs:
        return "needs"
    return "needs for each" if needed in entry.needs_for_each else "needs any of"


def _never_first(force: Force) -> Mapping[str, tuple[str, ...]]:
    """Entries that no order of buying reaches, each with those needs that aren't reached either.

    Names that lead nowhere are passed over.
    """
    troops = force.supporting_troops
    must = {
        name: tuple(each for each in (*entry.needs, *entry.needs_for_each) if each in troops)
        for name, entry in troops.items()
    }
    ways = {name: _alternatives(force, entry) for name, entry in troops.items()}
    reached: set[str] = set()
    grew = True
    while grew:
        more = {
            name
            for name in troops
            if reached.issuperset(must[name])
            and (not ways[name] or any(way in reached or way not in troops for way in ways[name]))
        }
        grew = more != reached
        reached = more
    return {
        name: tuple(each for each in must[name] if each not in reached) or ways[name]
        for name in troops
        if name not in reached
    }


def _circle_from(name: str, *, lacking: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """The circle that one comes to by following what is lacking."""
    path = [name]
    while True:
        following = lacking[path[-1]][0]
        if following in path:
            return tuple(path[path.index(following) :])
        path.append(following)


RULES: tuple[Rule, ...] = (needs_and_bars, needs_in_a_circle)
