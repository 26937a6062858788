"""What room under limits is worth: prices at which no force comes to more than a bound.

One option is chosen for each entry, and each option uses room under some limits. Whoever pays for
the room that he uses, and is given the price of all that there is, is worth no less than before as
long as he keeps the limits. So all room at its price, and for each entry the most that an option is
worth less the room that it uses, is a bound, whatever the prices are, if none is below nought
(Lagrangian relaxation: Fisher, "The Lagrangian relaxation method for solving integer programming
problems", 1981). Good prices make a low bound. They are looked for step by step: the price of what
is asked for too much rises, that of what is left over falls (Held, Wolfe and Crowder, "Validation
of subgradient optimization", 1974). Those steps are taken with the machine's numbers, and only they
are: the prices that come out are whole, and so is every sum made with them.
"""

from collections.abc import Sequence
from fractions import Fraction

import numpy

from paradestate.chance.force.option import Options

STEPS = 2_000
"""Steps toward good prices."""
PATIENCE = 30
"""After so many steps in vain the next are shorter."""
FIRST_STEP, SHORTER = 0.1, 0.5
"""The first step aims so much below the bound, as a part of it; later ones aim closer."""
SHORTEST = 1e-6


def prices(options: Options) -> tuple[int, ...]:
    """A whole price, in units of weight, for a unit of room under each limit."""
    room = options.room
    every = [option for choices in options.of.values() for option in choices]
    most = max((abs(option.weight) for option in every), default=0)
    if not room or not most:
        return (0,) * len(room)
    scales = [max(1, each) for each in room]
    found = _near_prices(
        weights=[option.weight / most for option in every],
        uses=[
            [use / scale for use, scale in zip(option.uses, scales, strict=True)]
            for option in every
        ],
        room=[each / scale for each, scale in zip(room, scales, strict=True)],
        sizes=[len(choices) for choices in options.of.values()],
    )
    return tuple(
        round(Fraction(price) * most / scale) for price, scale in zip(found, scales, strict=True)
    )


def _near_prices(
    *,
    weights: Sequence[float],
    uses: Sequence[Sequence[float]],
    room: Sequence[float],
    sizes: Sequence[int],
) -> list[float]:
    """Prices that make the bound low, with weights and room about one."""
    firsts = numpy.cumsum([0, *sizes[:-1]])
    entries = numpy.repeat(numpy.arange(len(sizes)), sizes)
    weigh, use, there = numpy.array(weights), numpy.array(uses), numpy.array(room)
    price = best = numpy.zeros(len(room))
    lowest, part, in_vain = numpy.inf, FIRST_STEP, 0
    for _ in range(STEPS):
        left = weigh - use @ price
        greatest = numpy.maximum.reduceat(left, firsts)
        bound = float(greatest.sum() + price @ there)
        in_vain += 1
        if bound < lowest:
            lowest, best, in_vain = bound, price, 0
        elif in_vain > PATIENCE:
            part, in_vain, price = part * SHORTER, 0, best
            if part < SHORTEST:
                break
            continue
        chosen = numpy.flatnonzero(left == greatest[entries])
        chosen = chosen[numpy.unique(entries[chosen], return_index=True)[1]]
        slope = there - use[chosen].sum(axis=0)
        steep = float(slope @ slope)
        if not steep:
            break
        length = (bound - lowest + part * max(1.0, abs(lowest))) / steep
        price = numpy.maximum(0, price - length * slope)
    return [float(each) for each in best]
