"""Small forces with stocks drawn at random, and whether a plan of theirs can be fielded."""

from dataclasses import replace

from hypothesis import strategies

from paradestate.core.establishment import Establishment, establishment
from paradestate.core.figure import FigureKind, Match
from paradestate.core.force import Force
from paradestate.core.number import NONE
from paradestate.core.strength import strength
from paradestate.core.support.entry import Entry, Position, Replacement
from paradestate.core.support.terms import Terms
from paradestate.core.unfolding import Stand
from tests.forces import force_from
from tests.support_terms import Plan

KINDS = ("foot", "gunner", "rider")
FIGURES = "figures: {foot: {}, gunner: {}, rider: {}, cook: {}}\n"
STANDS = """\
stands:
  section: {base: none, figures: {foot: 2}}
  gun: {base: none, figures: {gunner: 2, foot: 1}}
  patrol: {base: none, figures: {rider: 1}}
  staff: {base: none, figures: {rider: 1, foot: 1}}
  card: {base: none, printed: yes, modelled as: {foot: 1}}
"""
PATTERNS = ("section", "gun", "patrol", "staff", "card")
LAST = "based"


@strategies.composite
def stocked_forces(draw: strategies.DrawFn, *, exchanges: bool = False) -> Force:
    """A force of a few stands that owns more or less of what it wants."""
    raised = force_from(
        FIGURES, STANDS, "formations: {top: {parts: {section: 2, patrol: 1, card: 1}}}"
    )
    few = strategies.integers(0, 5)
    stock = {
        kind: {"painted": draw(few), LAST: 4 * exchanges + draw(few)} for kind in (*KINDS, "cook")
    }
    stands = {
        pattern: {"painted": draw(few) // 4, LAST: draw(few) // 2}
        for pattern in draw(strategies.sets(strategies.sampled_from(PATTERNS[:4]), max_size=2))
    }
    matches = strategies.dictionaries(
        strategies.sampled_from(KINDS), strategies.sampled_from(Match), max_size=2
    )
    figures = {
        kind: FigureKind(name=kind, may_stand_for=draw(matches)) for kind in (*KINDS, "cook")
    }
    return replace(raised, stock=stock, stock_stands=stands, figures=figures)


@strategies.composite
def fielded_entries(
    draw: strategies.DrawFn, terms: Terms, *, exchanges: bool = False
) -> dict[str, Entry]:
    """What the entries of some terms put down, free, off the table or in exchange."""
    found = {}
    for name, offer in terms.offers.items():
        numbers = strategies.dictionaries(
            strategies.sampled_from(PATTERNS), strategies.integers(1, 2), max_size=2
        )
        exchange = Replacement(
            of="section", number=1, with_=draw(strategies.sampled_from(PATTERNS))
        )
        found[name] = Entry(
            name=name,
            cost=offer.cost,
            each=draw(numbers),
            grants=draw(strategies.just({}) | numbers),
            place=draw(strategies.sampled_from(Position)),
            replaces=exchange if exchanges and draw(strategies.booleans()) else None,
        )
    return found


def made_of(force: Force) -> Establishment:
    """The establishment of such a force."""
    made, _ = establishment(force)
    assert made is not None
    return made


def plainly_fielded(force: Force, entries: dict[str, Entry], *, plan: Plan) -> bool:
    """Whether all stands of a plan are there beside the must layer, allotted stand by stand."""
    made = made_of(force)
    must = [stand for stand in made.stands if not stand.wishes]
    wanted: list[str] = []
    for purchase in plan:
        entry = entries[purchase.entry]
        if entry.place is not Position.OFF_TABLE:
            wanted.extend(
                name for name, n in entry.each.items() for _ in range(n * purchase.number)
            )
        wanted.extend(name for name, number in entry.grants.items() for _ in range(number))
        if entry.replaces is not None:
            gone = [stand for stand in must if stand.pattern == entry.replaces.of]
            must = [stand for stand in must if stand not in gone[: entry.replaces.number]]
            wanted.extend([entry.replaces.with_] * entry.replaces.number)
    added = [_stand(force, pattern, number=n) for n, pattern in enumerate(wanted)]
    states = strength(force, replace(made, stands=(*must, *added))).stands
    return not any(state.lacking for state in states if state.stand.wishes)


def _stand(force: Force, pattern: str, *, number: int) -> Stand:
    printed = force.stands[pattern].printed
    return Stand(
        name=f"{pattern} {number}",
        pattern=pattern,
        wishes=("supporting troops",),
        is_wanted=True,
        figures={} if printed else force.stands[pattern].figures,
        men=NONE,
        printed=printed,
        company="",
        level=None,
        within=0,
    )
