"""The terms of a game."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest

from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding
from paradestate.core.force import Force
from paradestate.core.span import month, year
from paradestate.core.support.entry import Entry, Limit, Variation
from paradestate.core.support.offer import Offer
from paradestate.core.support.terms import Terms, formation_cost, terms_of
from tests.forces import force_from, marenz

STANDS = "stands: {a: {base: none}}"
TOP = "formations: {top: {parts: {a: 4}}}"
GAME = "games: {evening: {allowance: 12, posture: attack}}"


def asked(
    force: Force,
    *,
    game: str = "evening",
    choice: Choice | None = None,
    grades: Mapping[str, str] | None = None,
) -> tuple[Terms | None, tuple[Finding, ...]]:
    picked, _ = chosen(force, choice or Choice())
    made, _ = establishment(picked)
    assert made is not None
    return terms_of(picked, made, game=game, grades=grades or {})


def terms(force: Force, *, game: str = "evening", **grades: str) -> Terms:
    answer, findings = asked(force, game=game, grades=grades)
    assert answer is not None, findings
    return answer


def entries(text: str) -> Force:
    return force_from(STANDS, TOP, GAME, f"supporting troops: {text}")


def with_entry(force: Force, entry: Entry) -> Force:
    return replace(force, supporting_troops={**force.supporting_troops, entry.name: entry})


def test_marenz_of_1943_in_attack() -> None:
    answer = terms(marenz(), game="whole-day attack")
    assert (answer.formation_cost, answer.taken_off) == (7, 7)
    assert answer.absent == {
        "anti-tank rifles": "not to be had in 1943",
        "field works for a company": "only in defence, and this is attack",
    }
    assert answer.offers["machine-gun platoon"] == Offer(
        name="machine-gun platoon",
        cost={1: 3, 2: 5, 3: 7},
        most=2,
        worths={"": {2: Fraction(5)}},
    )
    assert answer.offers["tank squadron commander"].needs == {"light tanks": 1}
    assert answer.offers["pioneers"].choices == {"flame": 0, "charges": 0, "bridging": 0}


def test_grades_are_paid_or_give_points_back() -> None:
    answer = terms(marenz(), game="whole-day attack", training="long-service", steadfastness="low")
    assert answer.grade_costs == {"training": 4, "steadfastness": -2}
    assert answer.taken_off == 9


def test_bars_hold_both_ways_and_what_opens_is_needed() -> None:
    offers = terms(
        entries(
            "{tanks: {cost: 5, opens: [commander], bars: [horse]}, horse: {cost: 1},"
            " scouts: {cost: 1}, commander: {cost: 2, needs any of: [scouts]}}"
        )
    ).offers
    assert offers["horse"].bars == {"tanks"}
    assert offers["tanks"].bars == {"horse"}
    assert offers["commander"].needs_any_of == {"tanks": 1, "scouts": 1}


def test_a_posture_may_change_price_limit_and_roll() -> None:
    entry = Entry(
        name="works",
        cost={1: 4},
        in_posture={"attack": Variation(cost={1: 9}, limit=Limit(most=3, least=1))},
    )
    offer = terms(with_entry(entries("{guns: 1}".replace("1", "{cost: 1}")), entry)).offers["works"]
    assert (offer.cost, offer.least, offer.most) == ({1: 9}, 1, 3)


def test_a_grade_may_have_prices_of_its_own() -> None:
    force = with_entry(
        marenz(),
        Entry(
            name="escort",
            cost={1: 4},
            cost_by_grade={"training": {"recruits": {1: 2}}},
        ),
    )
    usual = terms(force, game="whole-day attack").offers["escort"]
    poor = terms(force, game="whole-day attack", training="recruits").offers["escort"]
    assert (usual.cost, poor.cost) == ({1: 4}, {1: 2})


@pytest.mark.parametrize(
    ("grades", "message"),
    [
        ({"drill": "poor"}, "No scale of grades is called 'drill'."),
        ({"training": "poor"}, "No grade of training is called 'poor'."),
    ],
)
def test_grades_that_nobody_knows(grades: dict[str, str], message: str) -> None:
    answer, findings = asked(marenz(), game="whole-day attack", grades=grades)
    assert answer is None
    assert [finding.message for finding in findings] == [message]


def test_a_game_that_nobody_knows() -> None:
    _, findings = asked(marenz(), game="moonlight attack")
    assert findings[0].message == "No game is called 'moonlight attack'."


@pytest.mark.parametrize("date", [None, year(1942)])
def test_a_date_that_leaves_an_entry_open_is_a_stop(date: object) -> None:
    force = entries("{guns: {cost: 1, until: 1942-06}}")
    choice = Choice(date=year(1942)) if date else Choice()
    answer, findings = asked(force, choice=choice)
    assert answer is None
    assert [finding.code for finding in findings] == ["entry-date-undecided"]
    answer, _ = asked(force, choice=Choice(date=month(1942, 7)))
    assert answer is not None
    assert answer.absent == {"guns": "not to be had in 1942-07"}


def test_any_number_for_nothing_would_have_no_end() -> None:
    entry = Entry(
        name="scouts",
        cost={1: 1},
        limit=Limit(most=None),
        choice=("on foot", "mounted"),
        choice_costs={"on foot": -1},
    )
    _, findings = asked(with_entry(entries("{guns: {cost: 1}}"), entry))
    assert [finding.code for finding in findings] == ["entry-without-end"]
    falling = replace(entry, cost={1: 3}, choice=(), choice_costs={}, repeats_cost_more=(-3,))
    _, findings = asked(with_entry(entries("{guns: {cost: 1}}"), falling))
    assert [finding.code for finding in findings] == ["entry-without-end"]
    dearer = replace(entry, cost_by_grade={"training": {"recruits": {1: 3}}}, choice_costs={})
    assert terms(with_entry(entries("{guns: {cost: 1}}"), dearer)).offers["scouts"].most is None


def test_where_and_when_an_entry_cannot_be_had() -> None:
    absent = terms(
        entries("{sledges: {cost: 1, theatre: snow}, mines: {cost: 1, not in: {posture: attack}}}")
    ).absent
    assert absent == {"sledges": "only in the theatre snow", "mines": "not in attack"}


def test_the_cost_of_the_formation() -> None:
    assert formation_cost(marenz(), {"company": 4}) == 7
    assert formation_cost(marenz(), {"company": 9}) == 0
    assert formation_cost(force_from(STANDS, TOP, "formation cost: 6"), {}) == 6


def test_a_number_for_which_the_formation_cost_says_nothing_is_taken_as_nought() -> None:
    force = force_from(STANDS, TOP, GAME, "formation cost: {by: top, points: {2: 3}}")
    answer, findings = asked(force)
    assert answer is not None
    assert answer.taken_off == 0
    assert [finding.code for finding in findings] == ["formation-cost-unsaid", "nothing-on-offer"]


def test_a_game_that_offers_nothing_is_said_with_a_reason() -> None:
    bare = force_from(STANDS, TOP, GAME)
    answer, (finding,) = asked(bare)
    assert answer is not None
    assert finding.code == "nothing-on-offer"
    assert finding.message == "Evening offers no supporting troops: the force has none."
    assert "add 'supporting troops'" in finding.hint
    snow = entries("{sledges: {cost: 1, theatre: snow}, skis: {cost: 1, theatre: snow}}")
    _, (other,) = asked(snow)
    assert other.message == (
        "Evening offers no supporting troops: "
        "none of the 2 can be had (sledges: only in the theatre snow)."
    )
    assert other.hint.startswith("Choose another game")
