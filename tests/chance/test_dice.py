"""Exact chances of dice, beside plain counting of every throw and beside a second library."""

from fractions import Fraction
from itertools import product

import icepool
import pytest
from hypothesis import given
from hypothesis import strategies as st

from paradestate.chance.dice import allowance_chances, dice_chances
from paradestate.core.dice import Dice, Fixed, Keep, LookUp, Row, SignedTerm, Term, Throw
from paradestate.core.support.chances import Chances, chances
from paradestate.text.dice import read_dice


def rolled(text: str) -> Chances:
    """The chances of dice as the trade writes them."""
    dice = read_dice(text)
    assert isinstance(dice, Dice)
    return dice_chances(dice)


@st.composite
def throws(draw: st.DrawFn) -> Throw:
    number = draw(st.integers(1, 3))
    keep = draw(st.sampled_from(Keep))
    return Throw(
        number=number,
        sides=draw(st.integers(2, 4)),
        times=draw(st.integers(1, 3)),
        keep=keep,
        kept=draw(st.integers(1, number)) if keep is not Keep.ALL else 0,
    )


def some_dice() -> st.SearchStrategy[Dice]:
    terms: st.SearchStrategy[Term] = throws() | st.builds(Fixed, number=st.integers(0, 9))
    signed = st.builds(SignedTerm, term=terms, minus=st.booleans())
    bounds = st.none() | st.integers(0, 9)
    return st.builds(
        lambda terms, least, more: Dice(
            terms=tuple(terms),
            at_least=least,
            at_most=None if more is None else (least or 0) + more,
        ),
        st.lists(signed, min_size=1, max_size=2),
        bounds,
        bounds,
    )


def shown(term: Term, faces: tuple[int, ...]) -> int:
    """What one term of a throw comes to."""
    if isinstance(term, Fixed):
        return term.number
    rising = sorted(faces)
    kept = {
        Keep.ALL: rising,
        Keep.BEST: rising[-term.kept :],
        Keep.WORST: rising[: term.kept],
    }
    return sum(kept[term.keep]) * term.times


def plainly(dice: Dice) -> Chances:
    """Every face of every die gone through."""
    counts: dict[int, int] = {}
    each = [
        product(range(1, term.sides + 1), repeat=term.number) if isinstance(term, Throw) else [()]
        for term in (signed.term for signed in dice.terms)
    ]
    for way in product(*each):
        total = sum(
            (-1 if signed.minus else 1) * shown(signed.term, faces)
            for signed, faces in zip(dice.terms, way, strict=True)
        )
        if dice.at_least is not None:
            total = max(total, dice.at_least)
        if dice.at_most is not None:
            total = min(total, dice.at_most)
        counts[total] = counts.get(total, 0) + 1
    return chances(counts)


@given(some_dice())
def test_chances_are_those_of_every_throw_counted(dice: Dice) -> None:
    worked_out = dice_chances(dice)
    assert worked_out == plainly(dice)
    assert tuple(worked_out.counts) == dice.totals()


@pytest.mark.parametrize(
    ("text", "die"),
    [
        ("2d6", 2 @ icepool.d6),
        ("18 + 2d6", 2 @ icepool.d6 + 18),
        ("1d6 x 2", icepool.d6 * 2),
        ("10d20 - 3d4", 10 @ icepool.d20 - 3 @ icepool.d4),
        ("best 2 of 3d6", icepool.d6.highest(3, 2)),
        ("worst 3 of 5d10 x 3", icepool.d10.lowest(5, 3) * 3),
        ("best 7 of 12d12", icepool.d12.highest(12, 7)),
        ("2d6 + 3, at least 7, at most 12", (2 @ icepool.d6 + 3).clip(7, 12)),
    ],
)
def test_a_second_library_agrees(text: str, die: "icepool.Die[int]") -> None:
    assert rolled(text) == chances({total: die.quantity(total) for total in die.outcomes()})


def test_the_allowance_of_the_example() -> None:
    """11 + 2d6 are left; the percentiles are those of the whole allowance, 18 + 2d6."""
    left = rolled("11 + 2d6")
    assert (min(left.counts), max(left.counts)) == (13, 23)
    assert left.mean == 18
    assert left.at_least(17) == Fraction(13, 18)
    tenths = (Fraction(1, 10), Fraction(1, 2), Fraction(9, 10))
    assert [rolled("18 + 2d6").quantile(share) for share in tenths] == [22, 25, 28]


def test_points_may_be_looked_up_for_a_roll() -> None:
    rows = (Row(least=2, most=6, gives=10), Row(least=7, most=None, gives=14))
    roll = read_dice("2d6")
    assert isinstance(roll, Dice)
    looked_up = allowance_chances(LookUp(roll=roll, gives=rows))
    assert looked_up == Chances(counts={10: 5, 14: 7}, ways=12)
    assert allowance_chances(roll) == rolled("2d6")


def test_the_most_dice_that_may_be_thrown() -> None:
    assert rolled("20d100").mean == 1010
    assert rolled("20d100").of(20) == Fraction(1, 100**20)
