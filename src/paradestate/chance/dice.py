"""Exact chances of what dice come to.

Ways are whole numbers. All ways of one throw are the coefficients of a polynomial in the total,
and the polynomial is kept in one whole number with a slot for each total, so that Python's own
multiplication adds dice. Source: any text on generating functions; packing polynomials into whole
numbers is Kronecker's substitution.
"""

from collections.abc import Mapping
from math import comb

from paradestate.core.dice import Dice, Fixed, Keep, LookUp, Term, Throw
from paradestate.core.game import Allowance
from paradestate.core.support.chances import Chances, chances

BITS_IN_BYTE = 8


def allowance_chances(allowance: Allowance) -> Chances:
    """The chance of each number of points, rolled or looked up for a roll."""
    if isinstance(allowance, LookUp):
        return dice_chances(allowance.roll).become(allowance.given)
    return dice_chances(allowance)


def dice_chances(dice: Dice) -> Chances:
    """The chance of each total; all faces of all dice are equally likely."""
    ways = {0: 1}
    for signed in dice.terms:
        sign = -1 if signed.minus else 1
        ways = sums(ways, {sign * total: n for total, n in _term_ways(signed.term).items()})
    held: dict[int, int] = {}
    for total, number in ways.items():
        kept = dice.held(total)
        held[kept] = held.get(kept, 0) + number
    return chances(held)


def sums(one: Mapping[int, int], other: Mapping[int, int]) -> dict[int, int]:
    """Total to ways of two that are independent, added up."""
    found: dict[int, int] = {}
    for total, number in one.items():
        for more, ways in other.items():
            found[total + more] = found.get(total + more, 0) + number * ways
    return found


def _term_ways(term: Term) -> Mapping[int, int]:
    if isinstance(term, Fixed):
        return {term.number: 1}
    return {total * term.times: number for total, number in _throw_ways(term).items()}


def _throw_ways(throw: Throw) -> Mapping[int, int]:
    """Total to ways, before it is taken `times` times."""
    match throw.keep:
        case Keep.ALL:
            return _all_kept(throw.number, sides=throw.sides)
        case Keep.BEST:
            return _best_kept(throw)
        case Keep.WORST:
            mirrored = throw.kept * (throw.sides + 1)
            return {mirrored - total: number for total, number in _best_kept(throw).items()}


def _all_kept(number: int, *, sides: int) -> Mapping[int, int]:
    """Total to ways of so many dice: the power of one die."""
    slot = _slot(number, sides=sides)
    die = sum(1 << (face * slot) for face in range(sides))
    return _unpacked(die**number, slot=slot, least=number)


def _best_kept(throw: Throw) -> Mapping[int, int]:
    """Total to ways of the best `kept` of a throw.

    Faces are gone through from the greatest down; at each, some of the dice that show less than
    those before show it, and as many of them are kept as there is still room for.
    """
    slot = _slot(throw.number, sides=throw.sides)
    packed = {throw.number: 1}  # dice that show less, to the packed totals of those kept
    for face in range(throw.sides, 0, -1):
        reached: dict[int, int] = {}
        for left, totals in packed.items():
            room = max(throw.kept - (throw.number - left), 0)
            for here in range(left + 1):
                moved = totals << (min(here, room) * face * slot)
                reached[left - here] = reached.get(left - here, 0) + comb(left, here) * moved
        packed = reached
    return _unpacked(packed[0], slot=slot, least=0)


def _slot(number: int, *, sides: int) -> int:
    """Bits of a slot that holds every way of the throw: whole bytes."""
    ways: int = sides**number
    return BITS_IN_BYTE * (ways.bit_length() // BITS_IN_BYTE + 1)


def _unpacked(packed: int, *, slot: int, least: int) -> Mapping[int, int]:
    """Total to ways, the first slot being that of `least`."""
    wide = slot // BITS_IN_BYTE
    number = packed.bit_length() // slot + 1
    text = packed.to_bytes(number * wide, "little")
    ways = (int.from_bytes(text[at : at + wide], "little") for at in range(0, len(text), wide))
    return {total: n for total, n in enumerate(ways, start=least) if n}
