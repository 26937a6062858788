"""What to get next in sentences."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.advice.advice import Advice, Aim, Step
from paradestate.core.certainty import NotComputed
from paradestate.core.money import Currency
from paradestate.core.sentence.advice import (
    Told,
    certainty_sentence,
    fun_sentences,
    near_above,
    reason_sentence,
    together_sentences,
)
from tests.core.advice.test_advice import ADVICE, BEST, NOW, SAMPLED, WISH, priced

WISHED = "what is wished for is 1 x Quay/gun and 1 x Quay/tank at 10"
NO_MORE = "no purchase brings more than that"


def told(advice: Advice = ADVICE, *, currency: str | None = "GBP") -> Told:
    return Told(advice=advice, currency=Currency(currency) if currency else None)


def test_the_reason_is_one_sentence() -> None:
    assert reason_sentence(told()) == (
        "One Quay/gun adds 4 for £8.00; a second Quay/gun adds 0.33 for £8.00 more."
    )


def test_where_nothing_adds_anything_it_says_so() -> None:
    assert reason_sentence(told(replace(ADVICE, steps=(), best=NOW))) == (
        "Nothing that can be had adds anything to the 6 of now."
    )


def test_things_that_add_together_and_make_all_cheaper() -> None:
    first = Step(added=(8, 0), priced=priced(7, 1, 8, 0), gain=Fraction(1), cost=Fraction(90))
    both = Step(added=(1, 2), priced=priced(9, 1, 9, 2), gain=Fraction(2), cost=Fraction(-50))
    more = Step(added=(3, 0), priced=priced(10, 1, 12, 2), gain=Fraction(1), cost=Fraction(60))
    advice = replace(ADVICE, steps=(first, both, more))
    assert reason_sentence(told(advice, currency=None)) == (
        "8 x Quay/gun together add 1 for 1.5 h; another Quay/gun and 2 x Quay/tank together add 2 "
        "and makes all 0.83 h cheaper; 3 more x Quay/gun together add 1 for 1 h more."
    )


def test_what_adds_something_only_with_others() -> None:
    assert list(together_sentences(told())) == [
        "Quay/tank adds nothing by itself, only together: 1 x Quay/gun and 1 x Quay/tank."
    ]
    alone = replace(ADVICE.alone[0], together=())
    assert list(together_sentences(told(replace(ADVICE, alone=(alone,))))) == []


def test_the_wish_and_foresight() -> None:
    assert list(fun_sentences(told())) == [
        f"The best with {WISHED}: the price of the fun is 0.33.",
        "Who knew all dice before buying would come to 10.33, no more.",
    ]
    other = replace(ADVICE, wish=BEST, foresight=Fraction(11))
    assert list(fun_sentences(told(other))) == [
        "What is wished for is as good as the best.",
        f"Who knew all dice before buying would come to 11, 0.67 more: {NO_MORE}.",
    ]
    late = replace(ADVICE, wish=None, foresight=NotComputed(reason="the time was up"))
    assert list(fun_sentences(told(late))) == [
        "What foresight would bring wasn't computed: the time was up."
    ]


def test_shares_are_said_in_a_hundred() -> None:
    share = replace(ADVICE, aim=Aim.SHARE)
    assert told(share).value(Fraction(1, 8)) == "12.5 in 100"
    assert certainty_sentence(told(share)).endswith("comes to more, of all legal forces.")


def test_how_sure_it_is() -> None:
    assert certainty_sentence(told()) == (
        "Exact: nothing else that can be had for this comes to more, by your own worths."
    )
    bound = replace(ADVICE, bound=Fraction(21, 2))
    assert certainty_sentence(told(bound)) == (
        "Not proven. The time was up: nothing better than 10.5 exists."
    )
    drawn = replace(ADVICE, gain_sure=SAMPLED)
    assert certainty_sentence(told(drawn)) == (
        "Sampled: 500 draws of the rolls from seed 1, the same for every choice; "
        "the gain is right to 0.13 in 19 cases of 20."
    )
    both = replace(drawn, bound=Fraction(11))
    assert certainty_sentence(told(both)).endswith(
        "The time was up: nothing better than 11 exists."
    )
    assert near_above(SAMPLED) == "0.13"
    assert WISH.value == 10
