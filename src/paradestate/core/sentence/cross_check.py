"""The cross-checks of a count, each in words with its numbers, and whether it holds."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.establishment import CrossCheck, Establishment
from paradestate.core.strength import Strength


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """A cross-check in words, and whether it holds."""

    words: str
    holds: bool


def ticks(made: Establishment, *, check: CrossCheck, strength: Strength) -> Iterator[Tick]:
    """Every check: two ways to one number, which only a fault of this program makes differ.

    foot by level = by kind = by company; stands by name = multiplied; used + over = held;
    there + lacking = wanted
    """
    level, kind, company = check.totals
    yield Tick(
        words=f"foot figures by level {level}, by kind {kind}, by company {company}",
        holds=check.agrees,
    )
    stands, multiplied = {**made.must.stands, **made.must.printed}, made.rollup.stands
    shared = {name: number for name, number in stands.items() if name in multiplied}
    yield Tick(
        words=f"{sum(shared.values())} stands by name, {sum(multiplied.values())} multiplied",
        holds=shared == dict(multiplied),
    )
    held, used = sum(strength.held.values()), sum(strength.used.values())
    surplus = sum(strength.surplus.values())
    yield Tick(
        words=f"{used} used and {surplus} over make the {held} that are held",
        holds=used + surplus == held,
    )
    # From the stands, not by taking what is lacking from what is wanted: that would always agree.
    there = sum(each.number for state in strength.stands for each in state.fillings)
    wanted = sum(strength.wanted.values())
    lacking = sum(strength.deficiency.values())
    yield Tick(
        words=f"{there} there and {lacking} lacking make the {wanted} that are wanted",
        holds=there + lacking == wanted,
    )
