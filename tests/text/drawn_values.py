"""Single values drawn by lot: usual, odd and extreme."""

import datetime
from collections.abc import Sequence
from fractions import Fraction
from typing import TypeVar

from hypothesis import assume
from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from paradestate.core.dice import Dice, Fixed, Keep, LookUp, Row, SignedTerm, Throw
from paradestate.core.game_night import GameNights
from paradestate.core.number import NumberRange
from paradestate.core.outline import Disc, Rectangle
from paradestate.core.span import DateSpan, day, month, year
from paradestate.core.support.entry import Band
from paradestate.text.dice import MOST_TOTALS, number_of_totals
from paradestate.text.spelling import tidy

T = TypeVar("T")
K = TypeVar("K")
N = TypeVar("N", int, Fraction)

ODD_TEXTS = (
    *("<<", "no", "~", "null", "12:30", "0x10", "1e3", "1943", "2026-01-01", "- a", "? a", "a: b"),
    *("a #b", "# a", "*a", "&a", "!a", "%a", "@a", "`a", "[", "{", "}", ",", "'", '"', "\\", "="),
    *("---", "...", "a\nb", "a\n\n b", "tab\tbed", "bell\x07", "\u00e9t\u00e9", "\u540d", "any"),
    *("a(b)", "a (b)", "a=1", "all", "none", "x" * 140, "line\u2028break", "\U0001f600"),
)
MOST_DRAWN = 3


def is_tidy(text: str) -> bool:
    return tidy(text) == text


FREE = st.one_of(
    st.sampled_from(ODD_TEXTS),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=12).filter(is_tidy),
)
NAME = FREE.filter(bool)
OPTIONAL = st.just("") | NAME
YES_NO = st.booleans()
WHOLE = st.integers(1, 1_000_000_000)
COUNT = st.integers(0, 1_000_000_000)
POINTS = st.integers(-1_000_000, 1_000_000_000)
DECIMAL = st.builds(Fraction, st.integers(-(10**9), 10**9), st.sampled_from([1, 10, 1000, 10**6]))
POSITIVE = DECIMAL.map(abs).filter(bool)
RATIO = st.fractions(min_value=0, max_value=50_000, max_denominator=5_000)
LENGTH = st.one_of(
    RATIO, st.integers(0, 1000).map(lambda sixteenths: Fraction(127 * sixteenths, 80))
)
SIDE = LENGTH.filter(bool)
PERCENT = st.fractions(min_value=0, max_value=1, max_denominator=300)
DISC = st.builds(Disc, diameter=SIDE)
RECTANGLE = st.builds(Rectangle, width=SIDE, depth=SIDE)
OUTLINE = DISC | RECTANGLE
RANGE = st.tuples(WHOLE, WHOLE).map(lambda two: NumberRange(least=min(two), most=max(two)))
DATES = st.dates(min_value=datetime.date(1, 1, 1))
DATE = st.one_of(
    DATES.map(day),
    DATES.map(lambda date: month(date.year, date.month)),
    DATES.map(lambda date: year(date.year)),
)
GAME_NIGHTS = st.one_of(
    st.builds(GameNights, first=DATES),
    st.tuples(DATES, DATES, st.integers(1, 52), st.booleans()).map(
        lambda drawn: GameNights(
            first=min(drawn[:2]), weeks=drawn[2], until=max(drawn[:2]) if drawn[3] else None
        )
    ),
)
DAYS = st.tuples(DATES, DATES).map(lambda two: DateSpan(first=min(two), last=max(two)))


DURATION = st.one_of(
    st.fractions(min_value=0, max_value=100_000, max_denominator=1_000),
    st.integers(0, 100_000).map(lambda hours: Fraction(60 * hours)),
)
WEEK = st.fractions(min_value=Fraction(1, 1000), max_value=7 * 24 * 60, max_denominator=1_000)
SCALE = st.fractions(min_value=Fraction(1, 1000), max_value=1_000, max_denominator=1_000)
HEX_COLOUR = st.text("0123456789ABCDEF", min_size=6, max_size=6)


def maybe(drawn: SearchStrategy[T]) -> SearchStrategy[T | None]:
    return st.none() | drawn


def some(drawn: SearchStrategy[T], *, least: int = 0) -> SearchStrategy[tuple[T, ...]]:
    return st.lists(drawn, min_size=least, max_size=MOST_DRAWN).map(tuple)


def table(
    keys: SearchStrategy[K], values: SearchStrategy[T], *, least: int = 0
) -> SearchStrategy[dict[K, T]]:
    return st.dictionaries(keys, values, min_size=least, max_size=MOST_DRAWN)


def names(*, without: Sequence[str] = ()) -> SearchStrategy[list[str]]:
    """One name or more, each once."""
    known = NAME.filter(lambda name: name not in without)
    return st.lists(known, min_size=1, max_size=MOST_DRAWN, unique=True)


def throws() -> SearchStrategy[Throw]:
    def throw(*, number: int, sides: int, times: int, keep: Keep, kept: int) -> Throw:
        kept = 0 if keep is Keep.ALL else min(kept, number)
        return Throw(number=number, sides=sides, times=times, keep=keep, kept=kept)

    return st.builds(
        throw,
        number=st.integers(1, 6),
        sides=st.integers(2, 100),
        times=st.sampled_from([1, 2, 9999]),
        keep=st.sampled_from(Keep),
        kept=st.integers(1, 6),
    )


@st.composite
def dice(draw: st.DrawFn) -> Dice:
    fixed = st.builds(Fixed, number=st.integers(0, 10_000))
    terms = draw(st.lists(throws() | fixed, min_size=1, max_size=MOST_DRAWN))
    signs = [False, *(draw(YES_NO) for _ in terms[1:])]
    assume(number_of_totals([SignedTerm(term=term) for term in terms]) <= MOST_TOTALS)
    bounds = sorted(draw(st.tuples(st.integers(0, 99), st.integers(0, 99))))
    return Dice(
        terms=tuple(
            SignedTerm(term=term, minus=minus) for term, minus in zip(terms, signs, strict=True)
        ),
        at_least=bounds[0] if draw(YES_NO) else None,
        at_most=bounds[1] if draw(YES_NO) else None,
    )


def totals() -> SearchStrategy[tuple[int, int | None]]:
    """The first and last total of a row of a roll."""
    return st.tuples(st.integers(0, 20), maybe(st.integers(0, 20))).filter(
        lambda two: two[1] is None or two[0] <= two[1]
    )


def look_up(drawn: SearchStrategy[N]) -> SearchStrategy[LookUp[N]]:
    """A roll whose total is looked up, in rows that may have holes."""
    rows = table(totals(), drawn).map(
        lambda given: tuple(
            Row(least=least, most=most, gives=gives) for (least, most), gives in given.items()
        )
    )
    return st.builds(LookUp, roll=dice(), gives=rows)


def bands() -> SearchStrategy[tuple[Band, ...]]:
    return table(totals(), maybe(COUNT)).map(
        lambda drawn: tuple(
            Band(least=least, most=most, allows=allows) for (least, most), allows in drawn.items()
        )
    )
