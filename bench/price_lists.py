"""Price lists invented from a seed, of two shapes, for measuring the search for an order.

*Catalogue*: four sources that sell many kinds in packs of one to three, of which two in five are
wanted; 4 to 17 packs hold each wanted kind. *Dense*: three sources whose packs of one to six
kinds hold nothing that isn't wanted. Prices are about what the figures are worth, cheaper a figure
in larger packs; every source has steps of carriage and most one of discount; one pack in five has
a multi-buy; one kind in five may stand in for another, also when bought.
"""

import random
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from paradestate.core.cover import Substitutes
from paradestate.core.figure import Match
from paradestate.core.order import OrderProblem
from paradestate.core.source import Pack
from tests.orders import pack, problem, source


def catalogue(kinds: int, *, seed: int) -> OrderProblem:
    """A want of two in five of so many kinds."""
    draw = random.Random(f"catalogue {kinds} {seed}")  # noqa: S311 - the same list each time
    worth = _worths(kinds, draw=draw)
    insides = [
        *([kind] for kind in worth for _ in range(3)),
        *(draw.sample(list(worth), draw.randint(2, 3)) for _ in range(3 * kinds)),
    ]
    packs = [_pack(number, inside, worth=worth, draw=draw) for number, inside in enumerate(insides)]
    wanted = draw.sample(list(worth), kinds * 2 // 5)
    return _asked(packs, wanted, sources=4, draw=draw)


def dense(kinds: int, *, packs: int, seed: int) -> OrderProblem:
    """So many kinds wanted from so many packs that hold nothing else."""
    draw = random.Random(f"dense {kinds} {packs} {seed}")  # noqa: S311 - as above
    worth = _worths(kinds, draw=draw)
    wanted = list(worth)
    sold = [
        _pack(number, draw.sample(wanted, draw.randint(1, 6)), worth=worth, draw=draw)
        for number in range(packs - kinds)
    ]
    singles = [
        _pack(number, [kind], worth=worth, draw=draw)
        for number, kind in enumerate(wanted, start=packs - kinds)
    ]
    return _asked([*sold, *singles], wanted, sources=3, draw=draw)


def _worths(kinds: int, *, draw: random.Random) -> Mapping[str, int]:
    return {f"kind {number}": draw.randint(30, 120) for number in range(1, kinds + 1)}


def _pack(
    number: int, inside: Sequence[str], *, worth: Mapping[str, int], draw: random.Random
) -> Pack:
    """A pack at about what it is worth, the figure cheaper in a larger one, in steps of 25."""
    holds = {kind: draw.randint(2, 12) for kind in inside}
    value = sum(worth[kind] * each for kind, each in holds.items())
    rebate = min(20, sum(holds.values()) // 2)
    price = max(25, value * (draw.randint(85, 125) - rebate) // 2500 * 25)
    multibuy = {3: price * 27 // 10} if draw.randint(1, 5) == 1 else {}
    return pack(f"P{number}", price, multibuy=multibuy, **holds)


def _asked(
    packs: Sequence[Pack], wanted: Sequence[str], *, sources: int, draw: random.Random
) -> OrderProblem:
    shelves: list[list[Pack]] = [[] for _ in range(sources)]
    for each in packs:
        draw.choice(shelves).append(each)
    sellers = [
        source(
            f"Source {letter}",
            *shelf,
            carriage={0: draw.choice((350, 500, 750)), draw.choice((6000, 10000, 20000)): 0},
            discount={draw.choice((15000, 30000)): Fraction(draw.choice((0, 5, 10)), 100)},
        )
        for letter, shelf in zip("ABCD", shelves, strict=False)
        if shelf
    ]
    asked = problem(*sellers, **{kind: draw.randint(3, 40) for kind in wanted})
    return replace(asked, substitutes=_substitutes(wanted, draw=draw))


def _substitutes(wanted: Sequence[str], *, draw: random.Random) -> Substitutes:
    pairs = (draw.sample(wanted, 2) for _ in range(len(wanted) // 5))
    return Substitutes(
        may_stand_for={kind: {other: Match.GOOD} for kind, other in pairs}, bought_too=True
    )
