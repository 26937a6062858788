"""What to get next, as values and in sentences."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.advice.advice import Advice, Aim, Alone, Candidate, Joined, Step
from paradestate.core.advice.basket import Priced
from paradestate.core.certainty import Exact, NotComputed, Sampled, Within

GUN, TANK = (Candidate(name=f"Quay/{each}", words=f"1 {each}") for each in ("gun", "tank"))


def priced(value: int | Fraction, cost: int, *basket: int) -> Priced:
    return Priced(basket=basket, cost=Fraction(cost), value=Fraction(value))


NOW, ONE, BEST, WISH = (
    priced(6, 0, 0, 0),
    priced(10, 800, 1, 0),
    priced(Fraction(31, 3), 1600, 2, 0),
    priced(10, 2000, 1, 1),
)
ADVICE = Advice(
    aim=Aim.WORTH,
    candidates=(GUN, TANK),
    now=NOW,
    now_sure=None,
    alone=(
        Alone(
            candidate=TANK,
            priced=priced(6, 1200, 0, 1),
            gain=Fraction(0),
            sure=None,
            is_affordable=True,
            best_with=WISH,
            together=Joined(priced=WISH, gain=Fraction(4), sure=None, is_affordable=True),
        ),
    ),
    best=BEST,
    gain_sure=None,
    bound=None,
    steps=(
        Step(added=(1, 0), priced=ONE, gain=Fraction(4), cost=Fraction(800)),
        Step(added=(1, 0), priced=BEST, gain=Fraction(1, 3), cost=Fraction(800)),
    ),
    foresight=Fraction(31, 3),
    wish=WISH,
    rows=(),
)
SAMPLED = Sampled(plus_or_minus=Fraction(121, 1000), draws=500, seed=1)


def test_the_gain_and_the_price_of_fun() -> None:
    assert ADVICE.gain == Fraction(13, 3)
    assert ADVICE.price_of_fun(WISH) == Fraction(1, 3)


def test_how_sure_it_is() -> None:
    assert ADVICE.certainty == Exact()
    assert replace(ADVICE, bound=Fraction(21, 2)).certainty == Within(bound=11)
    assert replace(ADVICE, gain_sure=SAMPLED).certainty == SAMPLED
    assert isinstance(replace(ADVICE, foresight=NotComputed(reason="late")).foresight, NotComputed)
