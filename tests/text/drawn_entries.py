"""Entries of a force drawn by lot: every field of every record takes many values."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, TypeVar

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from paradestate.core.bench import Coat, Milestone
from paradestate.core.dice import Totals
from paradestate.core.figure import Match, Sort
from paradestate.core.force import Wishes
from paradestate.core.formation import Arm, Echelon, Need, Part
from paradestate.core.game import CostByNumber, Purchase, ReserveMethod
from paradestate.core.money import Currency, decimal_places
from paradestate.core.scenario import Arrival
from paradestate.core.source import Pack, Source
from paradestate.core.span import Window
from paradestate.core.stand import Sight
from paradestate.core.supplies import Supplies
from paradestate.core.support.entry import (
    Attachment,
    Availability,
    Circumstance,
    Improvement,
    Limit,
    Position,
    Refusal,
    Replacement,
    Rounding,
    Variation,
    Worth,
)
from paradestate.core.support.mission import Missions, RollOn
from paradestate.core.table import Line, TrayPlace
from tests.text.drawn_values import (
    COUNT,
    DATE,
    DAYS,
    DECIMAL,
    DURATION,
    FREE,
    GAME_NIGHTS,
    HEX_COLOUR,
    LENGTH,
    NAME,
    OPTIONAL,
    OUTLINE,
    PERCENT,
    POINTS,
    POSITIVE,
    RANGE,
    RECTANGLE,
    SCALE,
    SIDE,
    WEEK,
    WHOLE,
    YES_NO,
    bands,
    dice,
    is_tidy,
    look_up,
    maybe,
    names,
    some,
    table,
    totals,
)

T = TypeVar("T")

CURRENCIES = ("GBP", "JPY", "KWD", "CLF")
USUAL_POSTURES = ("attack", "defence", "encounter")

Fields = Mapping[str, SearchStrategy[Any]]
"""What each field of a record is drawn from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class World:
    """The names that a force defines; each of them may be referred to."""

    figures: Sequence[str]
    stands: Sequence[str]
    formations: Sequence[str]
    entries: Sequence[str]
    stages: Sequence[str]
    grades: Mapping[str, Sequence[str]]
    """Scale to its grades."""


def purchase(world: World) -> SearchStrategy[Purchase]:
    """A choice only beside an entry that can't be taken for one with its choice in brackets."""
    plain = [entry for entry in world.entries if "(" not in entry]
    bare = st.builds(Purchase, entry=st.sampled_from(world.entries), number=WHOLE)
    if not plain:
        return bare
    choice = st.text("abc d", min_size=1, max_size=4).filter(is_tidy)
    return bare | st.builds(
        Purchase, entry=st.sampled_from(plain), number=WHOLE, choice=choice
    ).filter(lambda drawn: f"{drawn.entry}({drawn.choice})" not in world.entries)


WINDOW = st.builds(Window, begins=maybe(DATE), ends=maybe(DATE))


def counts(known: Sequence[str], *, least: int = 1) -> SearchStrategy[dict[str, int]]:
    return table(st.sampled_from(known), st.integers(least, 10**9))


def several(known: Sequence[str]) -> SearchStrategy[tuple[str, ...]]:
    return some(st.sampled_from(known))


def figure(world: World) -> Fields:
    return {
        "height": maybe(LENGTH),
        "footprint": maybe(OUTLINE),
        "sort": st.sampled_from(Sort),
        "may_stand_for": table(st.sampled_from(world.figures), st.sampled_from(Match)),
        "by_hand": FREE,
    }


def stand(world: World) -> Fields:
    return {
        "base": maybe(OUTLINE),
        "footprint": maybe(OUTLINE),
        "edge": LENGTH,
        "gap": LENGTH,
        "height": maybe(LENGTH),
        "men": maybe(RANGE),
        "figures": counts(world.figures),
        "printed": YES_NO,
        "modelled_as": counts(world.figures),
        "shows": several(world.figures),
        "must_not_show": several(world.figures),
        "carries": COUNT,
        "stays": YES_NO,
        "called": FREE,
        "seen_by_opponent": st.sampled_from(Sight),
        "by_hand": FREE,
    }


def part(world: World) -> Fields:
    return {
        "of": st.sampled_from((*world.stands, *world.formations)),
        "number": RANGE,
        "usual": maybe(WHOLE),
        "need": st.sampled_from(Need),
        "window": WINDOW,
        "theatre": OPTIONAL,
        "by_hand": FREE,
    }


def formation(world: World) -> Fields:
    parts = some(st.builds(Part, **part(world)))
    return {
        "echelon": maybe(st.sampled_from(Echelon)),
        "arm": maybe(st.sampled_from(Arm)),
        "men": maybe(COUNT),
        "men_per_figure": maybe(POSITIVE),
        "figure": st.sampled_from(("", *world.figures)),
        "figures_per_stand": maybe(WHOLE),
        "may_detach": counts(world.stands),
        "weak": maybe(PERCENT),
        "like": st.sampled_from(("", *world.formations)),
        "add": parts,
        "drop": several((*world.stands, *world.formations)),
        "called": FREE,
        "parts": parts,
        "by_hand": FREE,
    }


def raised(world: World) -> Fields:
    elements = (*world.stands, *world.formations)
    return {
        "formation": st.sampled_from(world.formations),
        "date": maybe(DATE),
        "theatre": OPTIONAL,
        "numbers": counts(elements, least=0),
        "names": table(st.sampled_from(elements), NAME | some(NAME)),
        "wished": st.sampled_from(Wishes) | several(elements),
        "by_hand": FREE,
    }


def stock(known: Sequence[str], world: World) -> SearchStrategy[dict[str, dict[str, int]]]:
    return table(st.sampled_from(known), table(st.sampled_from(world.stages), COUNT))


@st.composite
def sources(draw: st.DrawFn, world: World) -> dict[str, Source]:
    """Sources whose amounts suit their currency."""
    found = {}
    for name in draw(names()):
        currency = Currency(draw(st.sampled_from(CURRENCIES)))
        money = st.integers(0, 10 ** (9 + decimal_places(currency)))
        found[name] = Source(
            name=name,
            currency=currency,
            packs=draw(named(Pack, draw(names()), fields=pack(world, money))),
            **{field: draw(drawn) for field, drawn in source(money).items()},
        )
    return found


def source(money: SearchStrategy[int]) -> Fields:
    return {
        "rate": maybe(POSITIVE),
        "rate_date": maybe(DATE),
        "carriage": table(money, money),
        "discount": table(money, PERCENT),
        "least_order": money,
        "noted": maybe(DATE),
        "by_hand": FREE,
    }


def pack(world: World, money: SearchStrategy[int]) -> Fields:
    return {
        "title": FREE,
        "price": money,
        "holds": counts(world.figures),
        "most": maybe(WHOLE),
        "lead_days": maybe(COUNT),
        "multibuy": table(WHOLE, money),
        "by_hand": FREE,
    }


TOTALS = totals().map(lambda ends: Totals(least=ends[0], most=ends[1]))
ARRIVAL: Fields = {
    "roll": maybe(dice()),
    "on": maybe(TOTALS),
    "from_turn": WHOLE,
    "until_turn": maybe(WHOLE),
    "edge": FREE,
    "by_hand": FREE,
}


def game(world: World) -> Fields:
    return {
        "allowance": dice() | look_up(POINTS),
        "posture": NAME,
        "weight": POSITIVE,
        "numbers": counts((*world.stands, *world.formations), least=0),
        "plan": some(purchase(world)),
        "strengths": table(st.sampled_from(world.formations), look_up(PERCENT)),
        "arrivals": table(
            st.sampled_from((*world.stands, *world.formations)),
            st.builds(Arrival, **ARRIVAL),
        ),
        "by_hand": FREE,
    }


def grade(known: Sequence[str]) -> Fields:
    points = st.fixed_dictionaries(dict.fromkeys(known, POINTS))
    return {"usual": st.sampled_from(known), "points": points, "by_hand": FREE}


COST = table(WHOLE, POINTS, least=1)


def limit(world: World) -> Fields:
    return {
        "most": maybe(COUNT),
        "for_every": WHOLE,
        "of": st.sampled_from(("", *world.formations)),
        "round": st.sampled_from(Rounding),
        "plus": COUNT,
        "least": COUNT,
    }


def availability() -> SearchStrategy[Availability]:
    return st.builds(Availability, roll=dice(), allows=bands(), shared_roll=OPTIONAL)


def cost_by_grade(world: World) -> SearchStrategy[dict[str, dict[str, dict[int, int]]]]:
    scales = {scale: table(st.sampled_from(grades), COST) for scale, grades in world.grades.items()}
    return st.fixed_dictionaries({}, optional=scales)


ROLL_ON = st.builds(RollOn, roll=dice(), on=TOTALS)
MISSIONS = st.builds(Missions, arrives=maybe(ROLL_ON), falls_silent=maybe(ROLL_ON)).filter(
    lambda drawn: drawn != Missions()
)


def replacement(world: World) -> SearchStrategy[Replacement]:
    stand = st.sampled_from(world.stands)
    return st.builds(Replacement, of=stand, number=WHOLE, with_=stand)


def improvement(world: World) -> SearchStrategy[Improvement]:
    scale = st.sampled_from(list(world.grades))
    formation = st.sampled_from(world.formations)
    return st.builds(Improvement, of=formation, scale=scale, number=WHOLE, steps=WHOLE)


def entry(world: World) -> Fields:
    entries = counts(world.entries)
    circumstance = st.builds(Circumstance, posture=st.sampled_from(USUAL_POSTURES))
    limits = st.just(Limit(most=None)) | st.builds(Limit, **limit(world))
    variation = st.builds(
        Variation, cost=maybe(COST), limit=maybe(limits), availability=maybe(availability())
    )
    return {
        "held_at": FREE,
        "cost": COST,
        "cost_by_grade": cost_by_grade(world),
        "repeats_cost_more": some(POINTS),
        "each": counts(world.stands),
        "limit": limits,
        "availability": maybe(availability()),
        "when_refused": maybe(st.sampled_from(Refusal)),
        "needs": entries,
        "needs_any_of": entries,
        "needs_for_each": entries,
        "bars": several(world.entries),
        "opens": several(world.entries),
        "grants": counts(world.stands),
        "replaces": maybe(replacement(world)),
        "improves": maybe(improvement(world)),
        "choice": some(NAME),
        "choice_costs": table(NAME, POINTS),
        "group": OPTIONAL,
        "attach": maybe(
            st.builds(
                Attachment,
                to=st.sampled_from(world.formations),
                most_per_host=maybe(WHOLE),
                no_two_alike=YES_NO,
            )
        ),
        "place": st.sampled_from(Position),
        "missions": maybe(MISSIONS),
        "only_in": maybe(circumstance),
        "not_in": maybe(circumstance),
        "in_posture": table(st.sampled_from(USUAL_POSTURES), variation),
        "window": WINDOW,
        "theatre": OPTIONAL,
        "by_hand": FREE,
    }


def named(
    make: Callable[..., T], known: Sequence[str], *, fields: Fields
) -> SearchStrategy[dict[str, T]]:
    """An entry for each of the names."""
    drawn = {name: st.builds(make, name=st.just(name), **fields) for name in known}
    return st.fixed_dictionaries(drawn)


def tray() -> Fields:
    known = {"inside": RECTANGLE, "height": maybe(LENGTH), "gap": LENGTH}
    return {**known, "number": WHOLE, "by_hand": FREE}


TRAY_PLACE = st.builds(TrayPlace, across=LENGTH, deep=LENGTH, is_turned=YES_NO)


def bench(world: World) -> Fields:
    stage = st.sampled_from(world.stages)
    elements = (*world.stands, *world.formations)
    kinds = st.sampled_from((*world.figures, *Sort))
    coat = st.builds(Coat, colour=NAME, coats=WHOLE, share=PERCENT)
    milestone = st.builds(
        Milestone, name=NAME, numbers=counts(elements, least=0), weight=POSITIVE, by_hand=FREE
    )
    return {
        "stages": st.just(tuple(world.stages)),
        "minutes": table(kinds, table(stage, DECIMAL.map(abs))),
        "minutes_per_stand": table(st.sampled_from(world.stands), DECIMAL.map(abs)),
        "set_up": DURATION,
        "dry": table(stage, DURATION),
        "week": maybe(WEEK),
        "away": some(DAYS),
        "colours": table(NAME, some(coat)),
        "playable": some(milestone),
        "supplies": st.sampled_from([Supplies(), Supplies(undercoat=2, varnish=0)]),
        "by_hand": FREE,
    }


OPPONENT: Fields = {
    "front": maybe(st.builds(Line, number=WHOLE, width=SIDE)),
    "gap": LENGTH,
    "colours": some(NAME),
    "difference_allowed": PERCENT,
    "by_hand": FREE,
}
TABLE: Fields = {
    "size": RECTANGLE,
    "ground_scale": maybe(SCALE),
    "gap": LENGTH,
    "by_hand": FREE,
}
AIM: Fields = {
    "text": FREE,
    "deadline": maybe(DATE),
    "a_month": maybe(POSITIVE),
    "game_nights": some(GAME_NIGHTS),
    "by_hand": FREE,
}
GROUP_LIMIT: Fields = {
    "least": COUNT,
    "most": maybe(COUNT),
    "least_points": PERCENT,
    "most_points": maybe(PERCENT),
    "by_hand": FREE,
}


def reserves(world: World) -> Fields:
    return {
        "method": st.sampled_from(ReserveMethod),
        "most": PERCENT,
        "of": st.sampled_from(world.formations),
        "by_hand": FREE,
    }


def marks(world: World) -> Fields:
    by_formation = st.shared(table(st.sampled_from(world.formations), some(NAME)), key="marks")
    return {
        "by_formation": by_formation,
        "colours": table(NAME, HEX_COLOUR),
        "rear_bars": by_formation.map(lambda marked: frozenset([*marked][:1])),
    }


def formation_cost(world: World) -> SearchStrategy[int | CostByNumber]:
    by_number = st.builds(
        CostByNumber, by=st.sampled_from(world.formations), points=table(COUNT, POINTS)
    )
    return POINTS | by_number


def worth(name: str) -> SearchStrategy[Worth]:
    by_number = table(WHOLE, DECIMAL)
    by_choice = table(st.just(""), by_number, least=1) | table(NAME, by_number, least=1)
    return st.builds(Worth, entry=st.just(name), by_choice=by_choice)
