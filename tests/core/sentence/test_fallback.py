"""A fall-back in words."""

from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.sentence.fallback import (
    chart_lines,
    choice_words,
    declared_words,
    tied_words,
    tipping_words,
)
from paradestate.core.support.policy import (
    Ask,
    Fallback,
    FirstChoice,
    Granted,
    Step,
    Take,
    Tipping,
)

TANKS = Purchase(entry="tanks", number=2)
TANK = Purchase(entry="tanks", number=1)
GUN = Purchase(entry="gun", number=1)
HALF = Fraction(1, 2)
END = Take(purchases=(GUN,), points=4, worth=Fraction(5))


def play(chart: Step, *choices: FirstChoice, declared: tuple[Purchase, ...] = ()) -> Fallback:
    return Fallback(
        points=9,
        worth=Fraction(0),
        chart=chart,
        first_choices=choices,
        declared=declared,
    )


def ask(*outcomes: Granted, worth: int = 7, before: tuple[Purchase, ...] = ()) -> Ask:
    return Ask(purchase=TANKS, points=9, worth=Fraction(worth), outcomes=outcomes, before=before)


def granted(chance: Fraction, then: Step, *, allowed: int = 2) -> Granted:
    takes = TANK if allowed else None
    return Granted(allowed=allowed, chance=chance, takes=takes, then=then, worth=Fraction(8))


def test_an_end_alone_is_one_line() -> None:
    assert chart_lines(play(END)) == ("Buy 1 x gun: worth 5.",)


def test_each_step_is_further_in_with_its_chance_and_worth() -> None:
    first = granted(HALF, ask(granted(Fraction(1), END), before=(GUN,)))
    other = Granted(allowed=0, chance=HALF, takes=None, then=END, worth=Fraction(5), if_all=None)
    lines = chart_lines(play(ask(first, other)))
    assert [line.split(":")[0] for line in lines] == [
        "Ask for 2 x tanks",
        "  allowed",
        "    allowed",
        "  refused (1/2, 50 in 100)",
    ]
    assert lines[1].endswith(
        ": take only 1, worth 1 (1/2, 50 in 100); 9 points left: "
        "buy 1 x gun, then ask for 2 x tanks, 7 to come"
    )
    assert lines[2:] == (
        "    allowed: take only 1, worth 3: buy 1 x gun, worth 5",
        "  refused (1/2, 50 in 100): buy 1 x gun, worth 5",
    )


def test_it_is_said_what_all_would_be_worth_where_less_is_taken() -> None:
    outcome = Granted(
        allowed=2, chance=Fraction(1), takes=TANK, then=END, worth=Fraction(9), if_all=Fraction(8)
    )
    equal = Granted(
        allowed=2, chance=Fraction(1), takes=TANK, then=END, worth=Fraction(9), if_all=Fraction(9)
    )
    assert chart_lines(play(ask(outcome)))[1].endswith("worth 5 (9 together; taking all 2 only 8)")
    assert chart_lines(play(ask(equal)))[1].endswith("buy 1 x gun, worth 5")


def test_what_is_rare_is_left_out_until_it_fits() -> None:
    rare = granted(Fraction(1, 300), ask(granted(Fraction(1), END)), allowed=0)
    likely = granted(Fraction(299, 300), END)
    whole = play(ask(likely, rare))
    assert len(chart_lines(whole)) == 4
    short = chart_lines(whole, most=3)
    assert len(short) == 3
    assert "more requests follow" in short[2]
    assert chart_lines(whole, most=1) == ("Ask for 2 x tanks: 7 to come on average.",)


def test_outcomes_of_a_shared_roll_tell_the_others() -> None:
    one = Granted(
        allowed=2, chance=HALF, takes=TANKS, then=END, worth=Fraction(9), also={"horse": 1}
    )
    two = Granted(allowed=0, chance=HALF, takes=None, then=ask(), also={"horse": 0, "gun": 2})
    lines = chart_lines(play(ask(one, two)))
    assert lines[1].startswith("  allowed (and with the same roll 1 x horse): take all")
    assert lines[2].startswith("  refused (and with the same roll no horse and 2 x gun)")


def test_what_is_decided_at_the_end_is_not_said_before() -> None:
    later = Granted(allowed=2, chance=Fraction(1), takes=None, then=END, is_open=True)
    assert chart_lines(play(ask(later)))[1].startswith("  allowed: buy 1 x gun")


def test_what_is_named_before_the_first_roll() -> None:
    assert declared_words(play(END)) == "Name nothing that needs a roll."
    named = declared_words(play(END, declared=(TANKS, GUN)))
    assert named.startswith("Name at once 2 x tanks and 1 x gun; then all is rolled")


def test_first_choices_and_those_that_are_as_good() -> None:
    first = FirstChoice(purchase=TANKS, worth=Fraction(9))
    same_entry = FirstChoice(purchase=TANK, worth=Fraction(9))
    equal = FirstChoice(purchase=GUN, worth=Fraction(9))
    nothing = FirstChoice(purchase=None, worth=Fraction(9))
    less = FirstChoice(purchase=GUN, worth=Fraction(8))
    assert [choice_words(each) for each in (first, nothing)] == [
        "ask for 2 x tanks",
        "ask for nothing",
    ]
    assert tied_words(play(END, first, same_entry, less)) == ""
    assert tied_words(play(END, first, same_entry, equal)) == "As good first: gun."
    assert tied_words(play(END, first, nothing)) == "As good first: nothing."
    assert tied_words(play(END, nothing, equal)) == "As good first: gun."


def test_how_far_a_worth_may_go() -> None:
    def words(down: int | None, up: int | None, *, choice: str = "") -> str:
        return tipping_words(
            Tipping(
                entry="tanks",
                choice=choice,
                number=2,
                worth=Fraction(5, 2),
                down_to=None if down is None else Fraction(down),
                up_to=None if up is None else Fraction(up),
            )
        )

    assert words(1, None) == "2 x tanks, worth 2.5: down to 1"
    assert words(1, 4) == "2 x tanks, worth 2.5: down to 1 and up to 4"
    assert words(None, 4, choice="flame") == "2 x tanks with flame, worth 2.5: up to 4"
    assert words(None, None) == "2 x tanks, worth 2.5: whatever it is worth"
