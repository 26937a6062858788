"""What to get next in sentences."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.advice.advice import Advice, Aim, LeftOut, Step
from paradestate.core.advice.game_shares import game_shares
from paradestate.core.advice.outcome_group import outcome_groups
from paradestate.core.certainty import NotComputed
from paradestate.core.money import Currency
from paradestate.core.sentence.advice import (
    Told,
    allowed_words,
    best_sentence,
    certainty_sentence,
    force_words,
    foresight_sentence,
    idle_sentences,
    left_out_sentences,
    near_above,
    now_sentence,
    points_words,
    reason_sentence,
    served_sentences,
    shares_sentences,
    together_sentences,
    wish_sentences,
)
from paradestate.core.support.force_map import ValuedForce
from tests.core.advice.test_advice import ADVICE, BEST, GUN, NOW, SAMPLED, WISH, priced
from tests.core.advice.test_outcome_group import ROW

WISHED = "what is wished for is 1 x Quay/gun and 1 x Quay/tank at 10"
NO_MORE = "nothing brings more than that"


def told(advice: Advice = ADVICE, *, currency: str | None = "GBP") -> Told:
    return Told(advice=advice, currency=Currency(currency) if currency else None)


def test_the_reason_is_one_sentence() -> None:
    assert reason_sentence(told()) == (
        "One Quay/gun adds 4 for £8.00; a second Quay/gun adds 0.33 for £8.00 more."
    )


def test_where_nothing_adds_anything_it_says_so() -> None:
    assert reason_sentence(told(replace(ADVICE, steps=(), best=NOW))) == (
        "Nothing that can be had adds anything to the 6 of now; "
        "the best is to keep what there is to spend."
    )


def test_things_that_add_together_and_make_all_cheaper() -> None:
    first = Step(added=(8, 0), priced=priced(7, 1, 8, 0), gain=Fraction(1), cost=Fraction(90))
    both = Step(added=(1, 2), priced=priced(9, 1, 9, 2), gain=Fraction(2), cost=Fraction(-50))
    more = Step(added=(3, 0), priced=priced(10, 1, 12, 2), gain=Fraction(1), cost=Fraction(60))
    advice = replace(ADVICE, steps=(first, both, more))
    assert reason_sentence(told(advice, currency=None)) == (
        "8 x Quay/gun together add 1 for 1 h 30 min; another Quay/gun and 2 x Quay/tank together "
        "add 2 and makes all 50 min cheaper; 3 more x Quay/gun together add 1 for 1 h more."
    )


def test_what_adds_something_only_with_others() -> None:
    assert list(together_sentences(told())) == [
        "Quay/tank adds nothing alone, only together: 1 x Quay/gun and 1 x Quay/tank."
    ]
    twice = replace(ADVICE, alone=(*ADVICE.alone, *ADVICE.alone))
    assert list(together_sentences(told(twice))) == [
        "Quay/tank and Quay/tank add nothing alone, only together: 1 x Quay/gun and 1 x Quay/tank."
    ]
    alone = replace(ADVICE.alone[0], together=None)
    assert list(together_sentences(told(replace(ADVICE, alone=(alone,))))) == []


def test_a_wish_has_its_price() -> None:
    def said(advice: Advice) -> list[str]:
        return list(wish_sentences(told(advice), wish={"Quay/tank": 1}, limit=Fraction(2000)))

    assert said(ADVICE) == [f"The best with {WISHED}: the price of the fun is 0.33."]
    assert said(replace(ADVICE, wish=BEST)) == ["What is wished for is as good as the best."]
    assert said(replace(ADVICE, wish=None)) == [
        "Nothing with 1 x Quay/tank was found that can be had for £20.00."
    ]
    assert list(wish_sentences(told(), wish={"Quay/gun": 0}, limit=Fraction(2000))) == []


def test_what_foresight_would_bring() -> None:
    assert foresight_sentence(told()) == (
        "Who knew all dice beforehand would come to 10.33, no more."
    )
    assert foresight_sentence(told(replace(ADVICE, foresight=Fraction(11)))) == (
        f"Who knew all dice beforehand would come to 11, 0.67 more: {NO_MORE}."
    )
    late = replace(ADVICE, foresight=NotComputed(reason="the time was up"))
    assert foresight_sentence(told(late)) == (
        "What foresight would bring wasn't computed: the time was up."
    )


def test_what_adds_nothing_is_a_line_of_text() -> None:
    tank = replace(ADVICE.alone[0], together=None)
    gun = replace(tank, candidate=GUN)
    assert list(idle_sentences(told())) == []
    assert list(idle_sentences(told(replace(ADVICE, alone=(tank,))))) == [
        "Quay/tank (1 tank) adds nothing, neither by itself nor in the best that holds one."
    ]
    assert list(idle_sentences(told(replace(ADVICE, alone=(gun, tank))))) == [
        (
            "Quay/gun (1 gun) and Quay/tank (1 tank) add nothing, neither by themselves nor in the "
            "best that holds one."
        )
    ]
    worse = replace(tank, gain=Fraction(-2))
    assert list(idle_sentences(told(replace(ADVICE, alone=(worse,))))) == [
        "Quay/tank (1 tank) takes 2 away: what it needs is of more use elsewhere."
    ]


def test_what_is_left_out_stands_together_by_its_reason() -> None:
    left = [
        LeftOut(name="Quay/mule", reason="nothing wants what it holds"),
        LeftOut(name="Quay/ship", reason="it is dearer than the money"),
        LeftOut(name="Quay/cart", reason="nothing wants what it holds"),
    ]
    assert list(left_out_sentences(left)) == [
        "Left out, nothing wants what it holds: Quay/mule and Quay/cart.",
        "Left out, it is dearer than the money: Quay/ship.",
    ]


def test_what_there_is_and_what_it_comes_to() -> None:
    share = replace(ADVICE, aim=Aim.SHARE, now=priced(Fraction(1, 8), 0, 0, 0))
    assert now_sentence(told(share), games={"evening": Fraction(1)}) == (
        "Evening: 12.5 in 100 of all legal forces can be fielded now, on average."
    )
    rows = replace(ADVICE, rows=(ROW,))
    assert now_sentence(told(rows), games={"evening": Fraction(1, 4), "day": Fraction(3, 4)}) == (
        "Evening (25 in 100 of games) and day (75 in 100 of games): "
        "the best force that you can field is worth 6 to you now, on average."
    )
    alike = {"evening": Fraction(1, 2), "day": Fraction(1, 2)}
    assert now_sentence(told(rows), games=alike).startswith("Evening and day: the best force")
    assert best_sentence(told(), limit=Fraction(2000)) == (
        "Best for £20.00: 2 x Quay/gun for £16.00, 10.33 then."
    )


def test_what_the_answer_rests_on_is_said_where_one_may_think_otherwise() -> None:
    assert list(served_sentences(must_lacks=0, has_worths=True)) == []
    assert list(served_sentences(must_lacks=1, has_worths=False)) == [
        "Nothing has a worth, so it is the share of forces that counts: see 'worths'.",
        (
            "The must layer lacks 1 figure, and is served first: "
            "what goes into it adds nothing here."
        ),
    ]


def test_outcomes_in_words() -> None:
    (one,) = outcome_groups([ROW])
    assert (points_words(one), allowed_words(one)) == ("13", "tanks refused")
    assert (force_words(one.now), force_words(one.then)) == ("none is legal", "7: 1 x guns")
    several = replace(one, most_points=15, allowed={"tanks": 3, "guns": 0})
    assert points_words(several) == "13-15"
    assert allowed_words(several) == "tanks 3 and guns refused"
    nothing = ValuedForce(purchases=(), worth=Fraction(0), points=0)
    assert force_words(nothing) == "0: nothing"


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
        "Not proven. The time was up: something better than 10.33 may exist, "
        "but nothing better than 10.5."
    )
    reached = replace(ADVICE, bound=BEST.value)
    assert certainty_sentence(told(reached)) == (
        "Not proven. The time was up: nothing better exists, but the same may be had for less."
    )
    drawn = replace(ADVICE, gain_sure=SAMPLED)
    assert certainty_sentence(told(drawn)) == (
        "Sampled: 500 draws of the rolls from seed 1, the same for every choice; "
        "the gain is right to 0.13 in 19 cases of 20."
    )
    both = replace(drawn, bound=Fraction(11))
    assert certainty_sentence(told(both)).endswith(
        "The time was up: something better than 10.33 may exist, but nothing better than 11."
    )
    assert near_above(SAMPLED) == "0.13"
    assert WISH.value == 10


def test_what_the_shares_of_games_rest_on() -> None:
    weights = {"evening": Fraction(3), "day": Fraction(1)}

    def said(*of: tuple[str, int], by_weight: bool = False) -> str:
        return " ".join(shares_sentences(game_shares(weights, dict(of), by_weight=by_weight)))

    assert said() == ""
    assert said(("day", 3), ("evening", 2)) == (
        "3 of 5 games played were day, 2 evening; "
        "your weights count as 6 more games; few games, so these count for more."
    )
    assert said(("evening", 1), ("day", 5)).startswith("5 of 6 games played were day, 1 evening; ")
    assert said(("day", 6)) == ("6 of 6 games played were day; your weights count as 6 more games.")
    assert said(("day", 1)).startswith("1 of 1 game played was day; ")
    assert said(("day", 6), by_weight=True) == (
        "Games count by your weights alone, as was asked, whatever was played."
    )
    assert list(shares_sentences(game_shares({"day": Fraction(1)}, {"day": 3}))) == []
