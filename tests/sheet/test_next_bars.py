"""What to get next as bars."""

from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.advice.advice import Advice, Alone, Candidate, Joined
from paradestate.core.advice.basket import Basket, Priced
from paradestate.core.money import Currency
from paradestate.core.sentence.advice import Told
from paradestate.sheet.next_bars import MOST_BARS, PHONE, WIDE, next_bars, next_words
from paradestate.sheet.svg import Drawing, drawing
from tests.core.advice.test_advice import ADVICE, SAMPLED
from tests.sheet.reading import root_of, text_of, texts_of, texts_on_others, texts_outside

WIDTHS = (WIDE, PHONE)


def alone(
    place: int, *, of: int, gain: Fraction, joined: Joined | None = None, had: bool = True
) -> Alone:
    basket = tuple(int(each == place) for each in range(of))
    return Alone(
        candidate=candidate(place),
        priced=priced(basket, gain=gain),
        gain=gain,
        sure=None,
        is_affordable=had,
        best_with=None,
        together=joined,
    )


def candidate(place: int) -> Candidate:
    return Candidate(name=f"Quay/number {place}", words=f"{place + 1} guns with their crews")


def priced(basket: Basket, *, gain: Fraction) -> Priced:
    return Priced(basket=basket, cost=Fraction(950 * sum(basket)), value=6 + gain)


def joined(basket: Basket, *, gain: int = 9) -> Joined:
    made = priced(basket, gain=Fraction(gain))
    return Joined(priced=made, gain=Fraction(gain), sure=None, is_affordable=True)


def advice(*every: Alone, best: Basket) -> Advice:
    return replace(
        ADVICE,
        candidates=tuple(candidate(place) for place in range(len(every))),
        alone=every,
        best=priced(best, gain=Fraction(9)),
    )


def drawn(made: Advice, *, width: int = WIDE) -> Drawing:
    found = next_bars(told(made), width=width)
    assert found is not None
    return found


def told(made: Advice) -> Told:
    return Told(advice=made, currency=Currency("GBP"))


def example() -> Advice:
    """One that adds by itself, two that add together, one that is too dear, one idle."""
    both = joined((0, 2, 1, 0, 0))
    return advice(
        alone(0, of=5, gain=Fraction(9, 2)),
        alone(1, of=5, gain=Fraction(0), joined=both),
        alone(2, of=5, gain=Fraction(0), joined=both),
        alone(3, of=5, gain=Fraction(3), had=False),
        alone(4, of=5, gain=Fraction(0)),
        best=(1, 2, 1, 0, 0),
    )


def bars_of(drawing: Drawing) -> list[float]:
    """Lengths of bars, from above; boxes and marks of the key are square or small."""
    every = [float(each.get("width", "")) for each in root_of(drawing).iter("rect")]
    return [each for each in every if each not in {20, 28}]


@pytest.mark.parametrize("width", WIDTHS)
def test_bars_are_as_long_as_what_they_stand_for_and_the_longest_stands_first(width: int) -> None:
    longest, *others = bars_of(drawn(example(), width=width))
    assert [each / longest for each in others] == pytest.approx([1 / 2, 1 / 3], abs=0.001)


@pytest.mark.parametrize("width", WIDTHS)
def test_the_gain_and_the_cost_stand_at_each_bar(width: int) -> None:
    said = texts_of(drawn(example(), width=width))
    adds = "together add" if width == WIDE else "adds"
    assert [said.index(each) for each in (f"{adds} 9", "adds 4.5", "adds 3")] == sorted(
        said.index(each) for each in (f"{adds} 9", "adds 4.5", "adds 3")
    )
    assert {"for £28.50", "for £9.50"} <= set(said)
    assert {"2 x Quay/number 1", "1 x Quay/number 2", "Quay/number 0"} <= set(said)


@pytest.mark.parametrize("width", WIDTHS)
def test_what_adds_nothing_has_no_bar(width: int) -> None:
    assert not [each for each in texts_of(drawn(example(), width=width)) if "number 4" in each]


def test_how_many_to_get_is_filled_in() -> None:
    root = root_of(drawn(example()))
    filled = [text_of(each) for each in root.iter("text") if each.get("class") == "pen b"]
    assert filled == ["2", "1", "1", "1"], "the last is that of the key"


def test_only_marks_that_are_there_are_explained() -> None:
    every = {"so many to get", "only together", "dearer than there is", "right to that, 19 in 20"}
    assert every & set(texts_of(drawn(example()))) == every - {"right to that, 19 in 20"}
    single = replace(alone(0, of=1, gain=Fraction(1)), sure=SAMPLED)
    only = drawn(advice(single, best=(0,)))
    assert every & set(texts_of(only)) == {"right to that, 19 in 20"}
    assert "adds 1 ± 0.13" in texts_of(only)


def test_an_interval_is_as_long_as_it_is_wide() -> None:
    sampled = replace(SAMPLED, plus_or_minus=Fraction(2))
    single = replace(alone(0, of=1, gain=Fraction(1)), sure=sampled)
    made = drawn(advice(single, best=(1,)), width=PHONE)
    (bar,) = bars_of(made)
    lines = [each.get("d", "") for each in root_of(made).iter("path")]
    (line,) = [each for each in lines if each.startswith("M2.00")]
    end = float(line.partition("H")[2].partition("M")[0])
    assert end == pytest.approx(2 + 3 * bar, abs=0.02), "from nought, not below, to thrice the gain"


@pytest.mark.parametrize("width", WIDTHS)
def test_of_many_the_first_are_drawn_and_the_rest_counted(width: int) -> None:
    every = [alone(each, of=20, gain=Fraction(1 + each)) for each in range(20)]
    made = drawn(advice(*every, best=(0,) * 20), width=width)
    assert len(bars_of(made)) == MOST_BARS
    assert "8 more are in the table." in texts_of(made)


def test_of_many_joined_the_first_are_named_and_the_others_told_on_pointing() -> None:
    whole = joined((1,) * 6)
    every = [alone(each, of=6, gain=Fraction(0), joined=whole) for each in range(6)]
    made = drawn(advice(*every, best=(0,) * 6))
    assert "and 3 more" in texts_of(made)
    titles = [each.text for each in root_of(made).iter("title")]
    assert "1 x Quay/number 3, 1 x Quay/number 4 and 1 x Quay/number 5" in titles


@pytest.mark.parametrize("width", WIDTHS)
def test_no_text_runs_out_of_the_drawing_or_into_another(width: int) -> None:
    long = replace(
        alone(0, of=1, gain=Fraction(10**9)),
        candidate=Candidate(name="Northern Castings and Sons/N1000", words="guns " * 30),
    )
    wordy = replace(advice(long, best=(1,)), candidates=(long.candidate,))
    for made in (drawn(example(), width=width), drawn(wordy, width=width)):
        assert texts_outside(made) == []
        for row in root_of(made).findall("g"):
            assert texts_on_others(drawing(list(row), size=(width, 100), words="a row")) == []


def test_it_says_in_words_what_it_shows() -> None:
    assert drawn(example()).words == (
        "What each adds: 2 x Quay/number 1 and 1 x Quay/number 2 together add 9 for £28.50; "
        "1 x Quay/number 0 adds 4.5 for £9.50; 1 x Quay/number 3 adds 3 for £9.50."
    )


def test_where_nothing_adds_anything_there_is_no_drawing() -> None:
    idle = advice(alone(0, of=1, gain=Fraction(0)), best=(0,))
    assert next_bars(told(idle)) is None
    assert next_words(told(idle)) == "What each adds: nothing."
