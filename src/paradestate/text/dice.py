"""Dice from text, as the trade writes them; and bands of totals."""

import math
import re

from paradestate.core.dice import Dice, Fixed, Keep, SignedTerm, Term, Throw
from paradestate.text.number import RANGE, read_whole
from paradestate.text.slip import Slip

MOST_DICE = 20
MOST_SIDES = 100
GREATEST_FIXED = 10_000
MOST_TERMS = 20
MOST_TOTALS = 100_000
MOST_LETTERS = 500
LEAST_SIDES = 2

_THROW = re.compile(
    r"(?:(best|worst) (\d{1,2}) of )?(\d{0,2})d(\d{1,3})(?: [x×] (\d{1,4}))?", re.ASCII
)
_FIXED = re.compile(r"\d{1,5}", re.ASCII)
_JOINT = re.compile(r" ([+-]) ")
_BOUND = re.compile(r"at (least|most) (\d{1,6})", re.ASCII)


def _unreadable(text: str, *, why: str = "") -> Slip:
    return Slip(
        code="not-dice",
        message=f"'{text}' isn't dice.{' ' + why if why else ''}",
        hint="Examples: 2d6, 18 + 2d6, 1d6 x 2, best 2 of 3d6, 2d6 + 3, at most 12.",
    )


def read_dice(text: str) -> Dice | Slip:
    """A sum of terms, with a least and a most where given: `18 + 2d6, at most 28`."""
    sum_text, *bounds = text.split(", ")
    if len(bounds) > len(("least", "most")) or len(text) > MOST_LETTERS:
        return _unreadable(text)
    terms: list[SignedTerm] = []
    pieces = _JOINT.split(sum_text)
    if len(pieces) > 2 * MOST_TERMS:
        return _unreadable(text, why=f"It has more than {MOST_TERMS} terms.")
    for sign, piece in zip(["+", *pieces[1::2]], pieces[::2], strict=True):
        term = _read_term(piece)
        if term is None:
            return _unreadable(text)
        terms.append(SignedTerm(term=term, minus=sign == "-"))
    if sum(term.term.number for term in terms if isinstance(term.term, Throw)) > MOST_DICE:
        return _unreadable(text, why=f"At most {MOST_DICE} dice are thrown at once.")
    if number_of_totals(terms) > MOST_TOTALS:
        return _unreadable(text, why=f"It has more than {MOST_TOTALS:,} totals.")
    return _bounded(text, tuple(terms), bounds=bounds)


def number_of_totals(terms: list[SignedTerm]) -> int:
    """At most so many different totals can come up."""
    totals = [signed.term.totals() for signed in terms]
    spread = sum(max(each) - min(each) for each in totals) + 1
    return min(spread, math.prod(len(each) for each in totals))


def _read_term(text: str) -> Term | None:
    if _FIXED.fullmatch(text):
        number = int(text)
        return Fixed(number=number) if number <= GREATEST_FIXED else None
    found = _THROW.fullmatch(text)
    if found is None:
        return None
    keep, kept, number_text, sides, times = found.groups()
    throw = Throw(
        number=int(number_text or 1),
        sides=int(sides),
        times=int(times or 1),
        keep=Keep(keep) if keep else Keep.ALL,
        kept=int(kept or 0),
    )
    sensible = (
        1 <= throw.number <= MOST_DICE and LEAST_SIDES <= throw.sides <= MOST_SIDES and throw.times
    )
    return throw if sensible and (not keep or 1 <= throw.kept <= throw.number) else None


def _bounded(text: str, terms: tuple[SignedTerm, ...], *, bounds: list[str]) -> Dice | Slip:
    limits: dict[str, int] = {}
    for bound in bounds:
        found = _BOUND.fullmatch(bound)
        if found is None or found.group(1) in limits:
            return _unreadable(text)
        limits[found.group(1)] = int(found.group(2))
    at_least, at_most = limits.get("least"), limits.get("most")
    if at_least is not None and at_most is not None and at_least > at_most:
        return _unreadable(text, why="Its least is above its most.")
    return Dice(terms=terms, at_least=at_least, at_most=at_most)


def read_band(text: str) -> tuple[int, int | None] | Slip:
    """The totals of a roll that a band covers: `3`, `2-4`, `9 or more` (most None)."""
    if text.endswith(" or more"):
        least = read_whole(text.removesuffix(" or more"), least=0)
        return least if isinstance(least, Slip) else (least, None)
    found = RANGE.fullmatch(text)
    low, high = found.groups() if found else (text, text)
    least, most = read_whole(low, least=0), read_whole(high, least=0)
    if isinstance(least, Slip) or isinstance(most, Slip):
        return Slip(
            code="not-a-band",
            message=f"'{text}' isn't a band of rolls.",
            hint="Write one total, two with a dash, or a least: 3, 2-4, 9 or more.",
        )
    if least > most:
        return Slip(
            code="range-backwards",
            message=f"{text} runs backwards.",
            hint=f"Did you mean {most}-{least}?",
        )
    return least, most
