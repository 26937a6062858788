"""The opponent's sheet: what may be seen, and room for what he finds out.

It is made from a list of what may be seen, not by deleting what may not. On it are the kinds of
stand that the raised force and its supporting troops put on the table before his eyes, the marks on
their rear edges, figures that stand in for others, posture and table. Markers and dummies, what is
off the table, what comes later, plan, points and names of units are no part of it. Which formations
are in reserve makes no difference to it, so that nobody can read that from a gap.
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from paradestate.core.choice import CHOSEN_HERE, unknown_choice
from paradestate.core.finding import Finding, Level, stops
from paradestate.core.force import Force
from paradestate.core.mark.marking import MarkedStand
from paradestate.core.paper.brought import brought
from paradestate.core.paper.ground import Ground
from paradestate.core.paper.paper import Draft
from paradestate.core.paper.seen import (
    SeenColour,
    SeenGame,
    SeenMark,
    SeenStand,
    SeenTable,
    may_be_seen,
)
from paradestate.core.place import Place, nearest_place
from paradestate.core.sentence.cross_check import Tick
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import several
from paradestate.core.support.entry import Position
from paradestate.core.support.reserve import in_front
from paradestate.core.unfolding import Stand


@dataclass(frozen=True, slots=True, kw_only=True)
class OpponentsSheet:
    """What the opponent gets to read: nothing else fits into it."""

    game: SeenGame | None
    table: SeenTable | None
    colours: tuple[SeenColour, ...]
    stands: tuple[SeenStand, ...]


def opponents_sheet(ground: Ground) -> Draft[OpponentsSheet]:
    """The opponent's sheet; a stop where something private was asked to be on it."""
    findings = tuple(_asked_too_much(ground))
    if stops(findings):
        return Draft(shown=None, findings=findings)
    in_view = tuple(_in_view(ground))
    game, table = ground.force.games.get(ground.game), ground.force.table
    shown = OpponentsSheet(
        game=None if game is None else SeenGame(of=game),
        table=None if table is None else SeenTable(of=table.size),
        colours=tuple(_colours(ground, in_view)),
        stands=tuple(_kinds(ground, in_view)),
    )
    named = tuple(_named_all_the_same(ground, shown))
    hidden = len(private_names(ground))
    tick = Tick(
        words=f"{several(hidden, 'private name')}, {len(named) or 'none'} of them "
        "on the opponent's sheet",
        holds=not named,
    )
    if named:
        return Draft(shown=None, findings=named)
    return Draft(shown=shown, ticks=(tick,))


def revealed_patterns(ground: Ground) -> frozenset[str]:
    """The stands that the opponent has found out, those of named supporting troops included."""
    entries = ground.force.supporting_troops
    found = set(ground.revealed)
    for name in ground.revealed:
        if name in entries:
            found.update(entries[name].each, entries[name].grants)
    return frozenset(found)


def may_be_found_out(force: Force) -> tuple[str, ...]:
    """Stands and supporting troops that change his sheet once they are named as found out."""
    hidden = {
        name
        for name, pattern in force.stands.items()
        if not may_be_seen(pattern) and may_be_seen(pattern, is_revealed=True)
    }
    entries = (
        name
        for name, entry in force.supporting_troops.items()
        if entry.place is Position.EITHER
        or (entry.place is Position.ON_TABLE and hidden & {*entry.each, *entry.grants})
    )
    return (*(name for name in force.stands if name in hidden), *entries)


def private_names(ground: Ground) -> frozenset[str]:
    """Names of stands and supporting troops that the opponent must not read."""
    revealed = revealed_patterns(ground)
    hidden = (
        name
        for name, pattern in ground.force.stands.items()
        if not may_be_seen(pattern, is_revealed=name in revealed)
    )
    off_table = (name for name in ground.force.supporting_troops if not _is_on_table(ground, name))
    return frozenset((*hidden, *off_table))


def _is_on_table(ground: Ground, entry: str) -> bool:
    """Whether supporting troops are surely there to be seen; of some it may be chosen."""
    known = ground.force.supporting_troops.get(entry)
    if known is None or known.place is Position.OFF_TABLE:
        return False
    return known.place is Position.ON_TABLE or entry in ground.revealed


def _in_view(ground: Ground) -> Iterator[Stand]:
    """The raised stands that are on the table for all to see."""
    revealed = revealed_patterns(ground)
    late = _within(ground, _late(ground))
    for stand in ground.made.stands:
        pattern = ground.pattern(stand.pattern)
        is_late = stand.within in late or stand.pattern in _late(ground)
        is_there = stand.is_wanted and not stand.printed and not is_late
        if is_there and may_be_seen(pattern, is_revealed=pattern.name in revealed):
            yield stand


def _late(ground: Ground) -> Mapping[str, object]:
    """What comes onto the table only later."""
    game = ground.force.games.get(ground.game)
    return {} if game is None else game.arrivals


def _within(ground: Ground, formations: Mapping[str, object]) -> frozenset[int]:
    """The places of bodies that are of one of these formations, or lie in one that is."""
    found: set[int] = set()
    for place, body in enumerate(ground.made.bodies):
        if body.formation in formations or body.within in found:
            found.add(place)
    return frozenset(found)


def _supporting(ground: Ground) -> Counter[str]:
    """Pattern to how many of it supporting troops put down before his eyes."""
    front = in_front(ground.plan, ground.reserve.purchases)
    plan = tuple(each for each in front if _is_on_table(ground, each.entry))
    revealed = revealed_patterns(ground)
    numbers = Counter(each.pattern for each in brought(replace(ground, plan=plan)))
    return Counter(
        {
            name: number
            for name, number in numbers.items()
            if may_be_seen(ground.pattern(name), is_revealed=name in revealed)
        }
    )


def _kinds(ground: Ground, in_view: tuple[Stand, ...]) -> Iterator[SeenStand]:
    """Each kind of stand once, in the order of the force."""
    numbers = Counter(stand.pattern for stand in in_view) + _supporting(ground)
    shown = {stand.name for stand in in_view}
    states = ground.strength.stands if ground.strength is not None else ()
    seen = tuple(state for state in states if state.stand.name in shown)
    revealed = revealed_patterns(ground)
    for name, number in numbers.items():
        yield SeenStand(
            of=ground.pattern(name),
            is_revealed=name in revealed,
            states=seen,
            number=number,
        )


def _colours(ground: Ground, in_view: tuple[Stand, ...]) -> Iterator[SeenColour]:
    """The marks that are seen, colour by colour, each once."""
    shown = {stand.name for stand in in_view}
    revealed = revealed_patterns(ground)
    by_colour: dict[str, dict[int, MarkedStand]] = {}
    for marked in ground.marks.stands:
        mark = marked.rear
        if mark is not None and mark.colour and marked.stand.name in shown:
            by_colour.setdefault(mark.colour, {}).setdefault(mark.bars, marked)
    for borne in by_colour.values():
        yield SeenColour(
            marks=tuple(
                SeenMark(
                    of=borne[bars],
                    pattern=ground.pattern(borne[bars].stand.pattern),
                    is_revealed=borne[bars].stand.pattern in revealed,
                )
                for bars in sorted(borne)
            )
        )


def _named_all_the_same(ground: Ground, shown: OpponentsSheet) -> Iterator[Finding]:
    """Row 80: what is seen bears the name of something that isn't."""
    said = dict.fromkeys(each.called for each in shown.stands)
    said |= dict.fromkeys(mark.colour for each in shown.colours for mark in each.marks)
    private = {name.casefold(): name for name in private_names(ground)}
    for words in said:
        if words.casefold() in private:
            name = private[words.casefold()]
            section = "stands" if name in ground.force.stands else "supporting troops"
            yield _private(name, nearest_place(ground.force.places, (section, name)))


def _asked_too_much(ground: Ground) -> Iterator[Finding]:
    """Row 80: names to be shown as found out that nobody may find out on paper."""
    force, reserve = ground.force, ground.reserve
    known = (*force.stands, *force.supporting_troops, *reserve.formations)
    kept_back = {each.entry: purchase_words(each) for each in reserve.purchases}
    kept_back |= {name: several(number, name) for name, number in reserve.formations.items()}
    for name in ground.revealed:
        if name not in known:
            yield unknown_choice(name, known, what="stand or entry")
        elif name in kept_back:
            yield _private(f"reserve: {kept_back[name]}", CHOSEN_HERE)
        elif name in force.supporting_troops:
            if force.supporting_troops[name].place is Position.OFF_TABLE:
                yield _private(f"off the table: {name}", CHOSEN_HERE)
        elif not may_be_seen(force.stands[name], is_revealed=True):
            yield _private(name, nearest_place(force.places, ("stands", name)))


def _private(what: str, place: Place) -> Finding:
    return Finding(
        level=Level.STOP,
        code="private-on-public-sheet",
        message=f"The opponent's sheet would show '{what}'.",
        effect="It isn't printed.",
        hint="Mark it as visible ('seen by opponent: yes') or leave it out.",
        place=place,
    )
