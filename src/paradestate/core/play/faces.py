"""What dice showed, as it was read out: whether they can show that, and what it comes to."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from paradestate.core.dice import Dice, Fixed, Keep, Term, Throw
from paradestate.core.finding import Finding
from paradestate.core.log_finding import log_stop
from paradestate.core.play.machine_roll import thrown
from paradestate.core.sentence.wording import listed, runs, several


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What a roll showed."""

    faces: tuple[int, ...]
    """Empty where only the total of several dice was said."""
    total: int


def total_of(dice: Dice, faces: Sequence[int]) -> int:
    """What faces come to, die after die in the order in which the dice are written."""
    rest, total = list(faces), 0
    for signed in dice.terms:
        number = signed.term.number if isinstance(signed.term, Throw) else 0
        here, rest = rest[:number], rest[number:]
        total += (-1 if signed.minus else 1) * _worth(signed.term, here)
    return dice.held(total)


def _worth(term: Term, faces: Sequence[int]) -> int:
    if isinstance(term, Fixed):
        return term.number
    kept = sorted(faces, reverse=term.keep is Keep.BEST)
    return term.times * sum(kept if term.keep is Keep.ALL else kept[: term.kept])


def read_shown(dice: Dice, numbers: Sequence[int]) -> Shown | Finding:
    """A number for each die, or one number: the total of all, with what is added to them."""
    sides = thrown(dice)
    if len(numbers) == len(sides):
        wrong = tuple(_impossible(numbers, sides=sides))
        if wrong:
            return _stop(f"{listed(wrong)}.", hint="Read the dice again; each face is from 1 up.")
        return Shown(faces=tuple(numbers), total=total_of(dice, numbers))
    if len(numbers) == 1:
        return _by_total(dice, numbers[0])
    return _stop(
        f"{dice} is {several(len(sides), 'die').replace('dies', 'dice')}; "
        f"{len(numbers)} numbers were entered.",
        hint="Type what each die shows, or the total alone.",
    )


def _impossible(numbers: Sequence[int], *, sides: Sequence[int]) -> Iterator[str]:
    for number, most in zip(numbers, sides, strict=True):
        if not 1 <= number <= most:
            yield f"{number} on 1d{most}"


def _by_total(dice: Dice, total: int) -> Shown | Finding:
    totals = dice.totals()
    if total in totals:
        return Shown(faces=(), total=total)
    whole = totals[-1] - totals[0] + 1 == len(totals)
    given = f"{totals[0]} to {totals[-1]}" if whole and len(totals) > 1 else listed(runs(totals))
    return _stop(
        f"{dice} gives {given}; {total} was entered.",
        hint="Type what each die shows, such as 6 2; or the total with what is added.",
    )


def _stop(message: str, *, hint: str) -> Finding:
    return log_stop(code="roll-impossible", message=message, hint=hint)
