"""What to ask for now, by a chart built by hand (computations of the example, 18 points)."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from urllib.parse import parse_qsl

from paradestate.core.support.policy import FirstChoice, Tipping
from paradestate.web.choosing.first import FirstView, first_view, tipping_words
from paradestate.web.choosing.question import question
from tests.sheet.fallbacks import CARS, TANKS, long, marenz


def shown(allowed: Mapping[str, str] = {}) -> FirstView:
    answers = {f"allowed:{entry}": number for entry, number in allowed.items()}
    return first_view(marenz(), asked=question({"game": "attack", **answers}))


def fields(query: str) -> dict[str, str]:
    return dict(parse_qsl(query.removeprefix("?")))


def test_first_of_all_the_best_is_asked_for() -> None:
    view = shown()
    assert view.title == "Ask for 2 light tanks"
    assert view.lines == (
        "18 points left.",
        "Worth 17.11 on average, asked and bought as well as can be.",
    )
    assert (view.before, view.plan) == ((), "")
    assert [(each.words, each.chance, each.then) for each in view.answers] == [
        ("allowed", "2/3, 67 in 100", "take 2, then ask for 2 anti-tank guns"),
        ("refused", "1/3, 33 in 100", "ask for 2 anti-tank guns"),
    ]


def test_an_answer_leads_to_the_next_step_and_can_be_taken_back() -> None:
    query = fields(shown().answers[0].query)
    assert query == {"game": "attack", "allowed:light tanks": "2"}
    view = first_view(marenz(), asked=question(query))
    assert view.title == "Ask for 2 anti-tank guns"
    assert "On the table already: 2 light tanks." in view.lines
    (before,) = view.before
    assert (before.words, before.came) == ("2 light tanks", "allowed")
    assert fields(before.back) == {"game": "attack"}


def test_part_of_what_is_allowed_may_be_declined() -> None:
    view = shown({"light tanks": "2", "anti-tank guns": "2"})
    assert [each.came for each in view.before] == ["allowed", "allowed, 1 taken"]
    assert view.title == "Buy 2 machine-gun platoon"
    assert view.lines[-1] == "Worth 5 to you."
    assert view.answers == ()
    assert fields(view.plan)["plan"] == "light tanks=2, anti-tank guns=1, machine-gun platoon=2"


def test_what_is_refused_is_not_taken() -> None:
    view = shown({"light tanks": "0", "anti-tank guns": "1", "armoured cars": "0"})
    assert [each.came for each in view.before] == ["refused", "1 allowed", "refused"]
    assert fields(view.plan)["plan"] == ("anti-tank guns=1, machine-gun platoon=2, bicycle troop=2")


def test_the_chart_is_a_table_too_each_step_under_the_answer_that_leads_to_it() -> None:
    view = shown()
    assert view.drawings is not None
    assert not view.is_cut
    first, second, *_ = view.steps
    assert (first.depth, first.when, first.worth) == (0, "", "17.11")
    assert (second.depth, second.when, second.step) == (
        1,
        "allowed, take 2",
        "Ask for 2 anti-tank guns",
    )


def test_a_chart_without_end_is_cut_and_says_so() -> None:
    view = first_view(long(9), asked=question({}))
    assert view.is_cut
    assert len(view.steps) == 200


def test_what_else_could_be_asked_first_says_what_it_gives_up() -> None:
    choices = (
        FirstChoice(purchase=TANKS, worth=Fraction(154, 9)),
        FirstChoice(purchase=CARS, worth=Fraction(16)),
        FirstChoice(purchase=None, worth=Fraction(8)),
    )
    view = first_view(replace(marenz(), first_choices=choices), asked=question({}))
    assert [(each.words, each.worth, each.less) for each in view.others] == [
        ("2 light tanks", "17.11", ""),
        ("2 armoured cars", "16", "1.11"),
        ("nothing", "8", "9.11"),
    ]


def test_how_far_a_worth_may_go() -> None:
    tipping = Tipping(
        entry="light tanks",
        choice="",
        number=2,
        worth=Fraction(10),
        down_to=Fraction(17, 2),
        up_to=None,
    )
    assert tipping_words(tipping) == "2 light tanks, worth 10: down to 8.5"
    bounded = replace(tipping, up_to=Fraction(12))
    assert tipping_words(bounded) == "2 light tanks, worth 10: down to 8.5 and up to 12"
    free = replace(tipping, down_to=None)
    assert tipping_words(free) == "2 light tanks, worth 10: whatever it is worth"
