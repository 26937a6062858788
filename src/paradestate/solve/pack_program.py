"""The packs of one sort in a whole-number program: how many, and what they cost at the till.

A till takes multi-buys as often as that is cheapest, whether that suits the discount or not. So
each number of packs has exactly one cost, and each has exactly one solution here.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.receipt import Lot, cost_of, lots_of
from paradestate.core.source import Pack
from paradestate.solve.error import TooGreatError
from paradestate.solve.program import Program

MOST_LISTED = 2_000
"""Numbers of one pack that are listed one by one where its multi-buys follow no simpler rule."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PackTerms:
    """Sums of variables that say how many of a pack are bought and what they cost."""

    pack: Pack
    most: int
    """The greatest number that the program allows."""
    number: Mapping[int, int]
    goods: Mapping[int, int]


def add_pack(program: Program, pack: Pack, *, most: int) -> PackTerms:
    """Adds the variables of a pack of which up to `most` are bought."""
    match lots_of(pack):
        case (one,):
            number = program.variable(most=most)
            terms = PackTerms(pack=pack, most=most, number={number: 1}, goods={number: one.price})
        case (lot, one):
            terms = _in_lots_and_singly(program, pack, lot=lot, one=one, most=most)
        case _:
            terms = _listed(program, pack, most=most)
    program.row(terms.number, most=most)
    return terms


def _in_lots_and_singly(
    program: Program, pack: Pack, *, lot: Lot, one: Lot, most: int
) -> PackTerms:
    """One multi-buy that saves something: fewer than its size are bought singly."""
    lots = program.variable(most=most // lot.size)
    singly = program.variable(most=min(most, lot.size - 1))
    return PackTerms(
        pack=pack,
        most=most,
        number={lots: lot.size, singly: 1},
        goods={lots: lot.price, singly: one.price},
    )


def _listed(program: Program, pack: Pack, *, most: int) -> PackTerms:
    """Several multi-buys: small numbers one by one, and whole best lots on top of the last."""
    best, start = lots_of(pack)[0], repeats_from(pack)
    listed = range(min(most, start + best.size - 1) + 1)
    rest = {number: program.variable(most=1) for number in listed}
    program.row(dict.fromkeys(rest.values(), 1), least=1, most=1)
    repeats = program.variable(most=most // best.size)
    upper = {variable: -(most // best.size) for number, variable in rest.items() if number >= start}
    program.row({repeats: 1, **upper}, most=0)
    return PackTerms(
        pack=pack,
        most=most,
        number={repeats: best.size, **{variable: number for number, variable in rest.items()}},
        goods={
            repeats: best.price,
            **{variable: cost_of(pack, number=number) for number, variable in rest.items()},
        },
    )


def values_for(terms: PackTerms, number: int) -> Mapping[int, int]:
    """The variables of a pack where so many are bought; empty where the program allows fewer."""
    if number > terms.most:
        return {}
    values = dict.fromkeys(terms.number, 0)
    match lots_of(terms.pack):
        case (_,) | (_, _):
            left = number
            for variable, size in sorted(terms.number.items(), key=lambda each: -each[1]):
                values[variable], left = divmod(left, size)
        case _:
            repeats, *listed = terms.number
            best, start = lots_of(terms.pack)[0].size, repeats_from(terms.pack)
            values[repeats] = max(0, number - start) // best
            values[listed[number - best * values[repeats]]] = 1
    return values


def repeats_from(pack: Pack) -> int:
    """From this number of packs on, so many more as the best lot holds cost its price more.

    Raises TooGreatError where that is too far off to be listed.
    """
    best, *others = lots_of(pack)
    if len(others) <= 1:
        return 0
    # Fewer others than the best lot's size are ever taken beside it.
    certain = max(0, (best.size - 1) * max(lot.size for lot in others) + 1 - best.size)
    if certain + best.size > MOST_LISTED:
        raise TooGreatError(f"the multi-buys of {pack.name} are too great for the solver")
    number = certain
    while number and _cost_of_one_lot(pack, number=number - 1) == best.price:
        number -= 1
    return number


def _cost_of_one_lot(pack: Pack, *, number: int) -> int:
    """What the best lot adds to the cost of so many packs."""
    more = number + lots_of(pack)[0].size
    return cost_of(pack, number=more) - cost_of(pack, number=number)
