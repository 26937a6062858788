"""What waiting for paint to dry is left, where one batch is worked on while another dries.

A batch is taken as a whole: each of its stages begins when all of it has dried from the one before.
Two batches of one stretch go together; whichever is dry is worked on, and where both are the one at
hand. Batches are paired so that the waiting of all of them together is least.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

MOST_PAIRED = 10
"""Batches of one stretch of which every pairing is tried; of more each goes with the next."""
NOTHING = Fraction(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Spell:
    """Work without a break, and how long it has to dry afterwards before more can be done."""

    minutes: Fraction
    dries: Fraction


Spells = tuple[Spell, ...]


def spells(by_stage: Mapping[str, Fraction], dry: Mapping[str, Fraction]) -> Spells:
    """The stages of a batch as spells; a stage that takes no minutes dries with the one before."""
    found: list[Spell] = []
    for stage, minutes in by_stage.items():
        dries = dry.get(stage, NOTHING)
        if minutes or not found:
            found.append(Spell(minutes=minutes, dries=dries))
        else:
            found[-1] = Spell(minutes=found[-1].minutes, dries=found[-1].dries + dries)
    return tuple(found)


def waiting_left(*batches: Spells) -> Fraction:
    """Minutes in which one can do nothing but wait, over the batches taken together."""
    return min(_waiting(batches[first:] + batches[:first]) for first in range(max(1, len(batches))))


def _waiting(batches: Sequence[Spells]) -> Fraction:
    to_do = [list(each) for each in batches]
    dry_at = [NOTHING] * len(to_do)
    clock = waited = NOTHING
    at_hand = 0
    while any(to_do):
        open_ = [number for number, each in enumerate(to_do) if each]
        at_hand = min(
            open_,
            key=lambda number: (max(clock, dry_at[number]), number != at_hand),
        )
        spell = to_do[at_hand].pop(0)
        begun = max(clock, dry_at[at_hand])
        waited += begun - clock
        clock = begun + spell.minutes
        dry_at[at_hand] = clock + spell.dries
    return waited


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """One batch, or two that take turns, by their numbers."""

    batches: tuple[int, ...]
    waiting: Fraction


def turns(batches: Sequence[Spells]) -> tuple[Turn, ...]:
    """Which batches take turns, in their order; a pair stands where its first batch did.

    Two batches are paired only where that leaves less waiting.
    """
    alone = [waiting_left(each) for each in batches]

    @cache
    def together(first: int, second: int) -> Fraction:
        return waiting_left(batches[first], batches[second])

    @cache
    def best(left: tuple[int, ...]) -> tuple[Fraction, tuple[Turn, ...]]:
        if not left:
            return NOTHING, ()
        first, rest = left[0], left[1:]
        tried: list[tuple[tuple[int, ...], Fraction, tuple[int, ...]]]
        tried = []
        for second in rest if len(batches) <= MOST_PAIRED else rest[:1]:
            paired = together(first, second)
            if paired < alone[first] + alone[second]:
                others = tuple(each for each in rest if each != second)
                tried.append(((first, second), paired, others))
        tried.append(((first,), alone[first], rest))
        ways = [(taken, waiting, best(others)) for taken, waiting, others in tried]
        taken, waiting, (more, after) = min(ways, key=lambda way: way[1] + way[2][0])
        return waiting + more, (Turn(batches=taken, waiting=waiting), *after)

    return best(tuple(range(len(batches))))[1]
