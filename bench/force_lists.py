"""Lists of supporting troops invented from a seed, of the shape of the example's, for measuring.

Of forty entries about three in four have one to four priced numbers of which the next is cheaper
than the first, one in six has a choice of three, one in four may be taken twice to four times; one
in six needs another, one in six bars another, one in twelve needs one of two; every tenth group of
three shares a limit. Prices are 1 to 10 points. One in four is rolled for.
"""

import random
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from paradestate.core.dice import Dice, Fixed, SignedTerm
from paradestate.core.game import Game
from paradestate.core.support.entry import Availability, Band, GroupLimit
from paradestate.core.support.offer import NO_CHOICE, Offer
from paradestate.core.support.terms import Terms

CHOICES = ("flame", "charges", "bridging")
ROLL = Availability(
    roll=Dice(terms=(SignedTerm(term=Fixed(number=1)),)),
    allows=(Band(least=1, most=None, allows=None),),
)


def force_list(
    entries: int, *, seed: int, rolled: int = 0, shares: tuple[Fraction, ...] = ()
) -> Terms:
    """So many entries, of which `rolled` are rolled for; a group of each share of the points."""
    draw = random.Random(f"forces {entries} {seed}")  # noqa: S311 - the same list each time
    names = [f"entry {number}" for number in range(1, entries + 1)]
    offers = {name: _offer(name, draw=draw) for name in names}
    for name in draw.sample(names, entries // 6):
        offers[name] = replace(offers[name], needs={_other(name, names, draw=draw): 1})
    for name in draw.sample(names, entries // 12):
        any_of = {_other(name, names, draw=draw): 1 for _ in range(2)}
        offers[name] = replace(offers[name], needs_any_of=any_of)
    for name in draw.sample(names, entries // 6):
        _bar(offers, name, other=_other(name, names, draw=draw))
    for name in draw.sample(names, rolled):
        offers[name] = replace(offers[name], availability=ROLL)
    groups = [GroupLimit(group=f"group {n}", most=2) for n in range(entries // 10)]
    groups.extend(GroupLimit(group=f"share {n}", most_points=each) for n, each in enumerate(shares))
    free = draw.sample(names, entries)
    for limit in groups:
        for name in (free.pop() for _ in range(3)):
            offers[name] = replace(offers[name], group=limit.group)
    return Terms(
        game=Game(name="evening", allowance=ROLL.roll, posture="attack"),
        offers=offers,
        absent={},
        groups=tuple(groups),
    )


def _offer(name: str, *, draw: random.Random) -> Offer:
    first = draw.randint(1, 6)
    cost: Mapping[int, int] = {1: first}
    if draw.randint(1, 4) > 1:
        steps = draw.randint(2, 4)
        cost = {n: first + (n - 1) * max(1, first - 1) for n in range(1, steps + 1)}
    named = draw.randint(1, 6) == 1
    worth = draw.randint(1, 12)
    return Offer(
        name=name,
        cost=cost,
        choices=dict.fromkeys(CHOICES, 0) if named else {NO_CHOICE: 0},
        most=draw.randint(2, 4) if draw.randint(1, 4) == 1 else 1,
        worths={NO_CHOICE: {n: Fraction(worth * n * (9 - n), 16) for n in cost}},
    )


def _other(name: str, names: list[str], *, draw: random.Random) -> str:
    return draw.choice([each for each in names if each != name])


def _bar(offers: dict[str, Offer], name: str, *, other: str) -> None:
    offers[name] = replace(offers[name], bars=offers[name].bars | {other})
    offers[other] = replace(offers[other], bars=offers[other].bars | {name})
