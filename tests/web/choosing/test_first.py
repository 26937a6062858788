"""What to ask for now, by a chart built by hand (computations of the example, 18 points)."""

import datetime
from dataclasses import replace
from fractions import Fraction
from functools import cache
from urllib.parse import parse_qsl

from paradestate.core.certainty import NotComputed
from paradestate.core.choice import Choice
from paradestate.core.support.asked_for import AskedFor
from paradestate.core.support.entry import Asking
from paradestate.core.support.policy import Ask, FirstChoice, LevelChoice
from paradestate.core.support.terms import Terms
from paradestate.journeys.check import Checked
from paradestate.journeys.evening import Evening
from paradestate.journeys.fallback import FallbackJourney
from paradestate.journeys.terms import game_terms, points_left
from paradestate.web.choosing.first import (
    NowView,
    chart_view,
    levels_view,
    now_view,
    why_not,
)
from paradestate.web.choosing.question import question
from tests.forces import EXAMPLES, marenz
from tests.sheet import fallbacks
from tests.sheet.fallbacks import CARS, GUNS, MACHINE_GUNS, ONE_GUN, TANKS

ASKED = question({"game": "whole-day attack"})
FALLBACK = fallbacks.marenz()
TANKS_CAME = AskedFor(purchase=TANKS, allowed=2, takes=TANKS)


@cache
def terms() -> Terms:
    """Those of the example."""
    played = game_terms(
        EXAMPLES / "marenz",
        today=datetime.date(2026, 3, 1),
        choice=Choice(game="whole-day attack"),
        grades={},
    )
    assert played.terms is not None
    return played.terms


def fields(query: str) -> dict[str, str]:
    return dict(parse_qsl(query.removeprefix("?")))


def shown(now: Evening) -> NowView:
    return now_view(now, FALLBACK, terms=terms(), asked=ASKED)


def test_first_of_all_the_best_is_asked_for() -> None:
    view = shown(Evening(step=FALLBACK.chart))
    assert view.title == "Ask for 2 x light tanks"
    assert view.lines == ("18 points left.", "17.11 to come on average.")
    assert (view.before, view.plan, view.not_followed) == ((), "", "")
    assert [(each.words, each.chance, each.then) for each in view.answers] == [
        ("allowed", "2/3, 67 in 100", "take 2, worth 10, then ask for 2 x anti-tank guns"),
        ("refused", "1/3, 33 in 100", "ask for 2 x anti-tank guns"),
    ]
    assert fields(view.answers[0].query) == {
        "game": "whole-day attack",
        "allowed:light tanks": "2",
    }


def test_what_was_asked_before_can_be_taken_back() -> None:
    assert isinstance(FALLBACK.chart, Ask)
    asked = question({"allowed:light tanks": "2", "rolled": "25"})
    now = Evening(step=FALLBACK.chart.outcomes[0].then, asked=(TANKS_CAME,))
    view = now_view(now, FALLBACK, terms=terms(), asked=asked)
    assert view.title == "Ask for 2 x anti-tank guns"
    assert "On the table already: 2 x light tanks." in view.lines
    (before,) = view.before
    assert (before.words, before.came) == ("2 x light tanks", "allowed")
    assert fields(before.back) == {"rolled": "25"}


def test_part_of_what_is_allowed_may_be_declined_and_the_end_is_a_plan() -> None:
    guns = AskedFor(purchase=GUNS, allowed=2, takes=ONE_GUN)
    cars = AskedFor(purchase=CARS, allowed=2, takes=None)
    refused = AskedFor(purchase=CARS, allowed=0, takes=None)
    end = fallbacks.bought(MACHINE_GUNS, points=5, worth=5)
    now = Evening(step=end, asked=(TANKS_CAME, guns, cars, refused), not_followed=("x", "y"))
    view = shown(now)
    assert [each.came for each in view.before] == [
        "allowed",
        "allowed, 1 taken",
        "allowed, none taken",
        "refused",
    ]
    assert view.title == "Buy 2 x machine-gun platoon"
    assert view.lines[-1] == "Worth 5 to you."
    assert view.answers == ()
    assert fields(view.plan)["plan"] == "light tanks=2, anti-tank guns=1, machine-gun platoon=2"
    assert view.not_followed == "x and y"


def test_where_all_is_declared_first_that_is_said() -> None:
    declared = replace(FALLBACK, declared=(TANKS, GUNS))
    all_at_once = replace(terms(), asking=Asking.ALL_DECLARED_FIRST)
    view = now_view(Evening(step=FALLBACK.chart), declared, terms=all_at_once, asked=ASKED)
    assert any("Name at once 2 x light tanks and 2 x anti-tank guns" in line for line in view.lines)
    chart = chart_view(declared, terms=all_at_once)
    assert any("Name at once" in sentence for sentence in chart.sentences)


def test_that_something_else_is_as_good_is_said() -> None:
    assert isinstance(FALLBACK.chart, Ask)
    view = shown(Evening(step=replace(FALLBACK.chart, is_tied=True)))
    assert view.lines[-1] == "Something else is as good."


def test_the_chart_is_a_table_too_each_step_under_the_answer_that_leads_to_it() -> None:
    view = chart_view(FALLBACK, terms=terms())
    assert view.drawings is not None
    assert not view.is_cut
    first, second, *_ = view.steps
    assert (first.depth, first.when, first.worth) == (0, "", "17.11 to come")
    assert (second.depth, second.when, second.step) == (
        1,
        "allowed, take 2, worth 10",
        "Ask for 2 x anti-tank guns",
    )


def test_a_chart_without_end_is_cut_and_says_so() -> None:
    view = chart_view(fallbacks.long(9), terms=terms())
    assert view.is_cut
    assert len(view.steps) == 200


def test_what_else_could_be_asked_first_says_what_it_gives_up() -> None:
    choices = (
        FirstChoice(purchase=TANKS, worth=Fraction(154, 9)),
        FirstChoice(purchase=CARS, worth=Fraction(16)),
        FirstChoice(purchase=None, worth=Fraction(8)),
    )
    view = chart_view(replace(FALLBACK, first_choices=choices), terms=terms())
    assert [(each.words, each.worth, each.less) for each in view.others] == [
        ("2 x light tanks", "17.11", ""),
        ("2 x armoured cars", "16", "1.11"),
        ("nothing", "8", "9.11"),
    ]


def journey(*levels: LevelChoice) -> FallbackJourney:
    return FallbackJourney(
        checked=Checked(force=marenz(), findings=(), texts={}),
        terms=terms(),
        allowance=points_left(terms()),
        levels=levels,
    )


def test_before_the_roll_each_number_of_points_says_what_it_asks_for() -> None:
    levels = [LevelChoice(points=13, worth=Fraction(9), first=TANKS)]
    levels += [LevelChoice(points=each, worth=Fraction(8), first=None) for each in range(14, 24)]
    view = levels_view(journey(*levels), terms=terms(), asked=ASKED)
    assert view is not None
    assert (view.title, view.is_varied) == ("It depends on the roll", True)
    assert view.mean == "8.03"  # 9 in 1 of 36 ways, else 8
    first, second, *_ = view.rows
    assert (first.points, first.first, fields(first.query)["rolled"]) == (
        13,
        "2 x light tanks",
        "20",
    )
    assert (second.first, second.worth) == ("nothing", "8")


def test_where_every_roll_asks_for_the_same_that_is_the_title() -> None:
    levels = [LevelChoice(points=each, worth=Fraction(8), first=TANKS) for each in range(13, 24)]
    view = levels_view(journey(*levels), terms=terms(), asked=ASKED)
    assert view is not None
    assert (view.title, view.is_varied) == ("Ask for 2 x light tanks", False)
    none = [replace(each, first=None) for each in levels]
    view = levels_view(journey(*none), terms=terms(), asked=ASKED)
    assert view is not None
    assert view.title == "Ask for nothing"


def test_what_was_not_computed_says_why() -> None:
    assert levels_view(journey(), terms=terms(), asked=ASKED) is None
    assert why_not(journey()) == ""
    too_large = replace(journey(), certainty=NotComputed(reason="17 entries are rolled for."))
    assert why_not(too_large) == (
        "What to ask for first wasn't computed: 17 entries are rolled for."
    )
