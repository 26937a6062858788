"""Choices made for one sum."""

from paradestate.core.choice import Choice, chosen
from paradestate.core.finding import Level
from paradestate.core.force import Wishes
from paradestate.core.span import year
from tests.forces import force_from, marenz, partial_force_from


def test_what_is_left_out_stays_as_it_is() -> None:
    force, findings = chosen(marenz(), Choice())
    assert force == marenz()
    assert not findings


def test_a_choice_takes_the_place_of_the_folders() -> None:
    choice = Choice(numbers={"company": 3}, date=year(1941), theatre="islands", wished=Wishes.ALL)
    force, findings = chosen(marenz(), choice)
    assert not findings
    assert force.raise_ is not None
    assert force.raise_.numbers == {"company": 3}
    assert force.raise_.date == year(1941)
    assert force.raise_.theatre == "islands"
    assert force.raise_.wished is Wishes.ALL


def test_numbers_of_a_game_give_way_to_numbers_chosen() -> None:
    force = force_from(
        "stands: {s: {base: 40 x 20 mm}, t: {base: none}}",
        "formations: {top: {parts: [{of: s, number: 1-9, usual: 1}, {of: t, number: 1-9}]}}",
        "games: {g: {allowance: 1d6, posture: attack, numbers: {s: 2, t: 3}}}",
    )
    with_game, findings = chosen(force, Choice(game="g", numbers={"s": 5}))
    assert not findings
    assert with_game.raise_ is not None
    assert with_game.raise_.numbers == {"s": 5, "t": 3}


def test_unknown_names_are_stops_that_offer_the_nearest() -> None:
    choice = Choice(numbers={"compny": 3}, wished=("scene", "company"), game="evening atack")
    _, findings = chosen(marenz(), choice)
    assert [found.code for found in findings] == ["unknown-choice"] * 3
    assert {found.level for found in findings} == {Level.STOP}
    assert "'company'" in findings[0].hint
    assert findings[1].hint.startswith("Known here:")
    assert "'evening attack'" in findings[2].hint


def test_a_force_that_raises_nothing_stays_without() -> None:
    force = partial_force_from("figures: {}", head="format: 1\ntitle: T\n")
    same, findings = chosen(force, Choice(numbers={}))
    assert same.raise_ is None
    assert not findings
