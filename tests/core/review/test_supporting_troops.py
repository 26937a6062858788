"""Rules for supporting troops."""

import pytest

from paradestate.core.finding import Finding, Level
from paradestate.core.review.supporting_troops import RULES
from tests.forces import marenz, partial_force_from

STANDS = "stands: {a: {base: none}}\nformations: {top: {parts: {a: 1}}}"


def found(entries: str, *more: str, head: str = "") -> list[Finding]:
    texts = (STANDS, f"supporting troops: {{{entries}}}", *more)
    force = partial_force_from(*texts, head=head) if head else partial_force_from(*texts)
    return [finding for rule in RULES for finding in rule(force)]


def codes(entries: str, *more: str, head: str = "") -> list[str]:
    return [finding.code for finding in found(entries, *more, head=head)]


def test_the_example_has_nothing_to_say() -> None:
    assert not [finding for rule in RULES for finding in rule(marenz())]


@pytest.mark.parametrize(
    ("cost", "odd"),
    [
        ("{1: 3, 2: 5, 3: 7}", False),
        ("{1: 3, 2: 5, 3: 9}", True),
        ("{1: 3, 2: 5, 3: 8}", False),
        ("{1: 5, 2: 4}", True),
        ("{2: 5, 4: 11}", True),
        ("{2: 5, 3: 99}", False),
        ("{1: -1, 2: -2}", False),
        ("{1: -1, 2: -3}", False),
        ("{1: 1, 2: -3}", True),
        ("3, repeats cost more: [2], cost by grade: {t: {low: {1: 3, 2: 8}}}", False),
        ("3, repeats cost more: [1], cost by grade: {t: {low: {1: 3, 2: 8}}}", True),
        ("3, in posture: {attack: {cost: {1: 3, 2: 7}}, defence: {}}", True),
        ("4", False),
    ],
)
def test_prices(cost: str, odd: bool) -> None:  # noqa: FBT001 - a table's column
    grades = "grades: {t: {usual: low, points: {low: 0}}}"
    assert codes(f"e: {{cost: {cost}}}", grades) == (["price-odd"] if odd else [])


def test_a_refusal_without_a_word_on_its_points() -> None:
    assert codes("e: {cost: 1, availability: {roll: 1d6, allows: {1-6: all}}}") == [
        "refusal-unsaid"
    ]
    here = "in posture: {attack: {availability: {roll: 1d6, allows: {1-6: all}}}, defence: {}}"
    assert codes(f"e: {{cost: 1, {here}}}") == ["refusal-unsaid"]


@pytest.mark.parametrize(
    ("missions", "messages"),
    [
        ("{arrives: {roll: 1d6, on: 3 or more}}", []),
        ("{arrives: {roll: 1d6, on: 6}, falls silent: {roll: 2d6, on: 2-3}}", []),
        ("{}", ["battery: nothing is rolled for its missions."]),
        ("{arrives: {roll: 1d6, on: 7}}", ["battery, arrives: 7 on 1d6: it gives 1 to 6."]),
        (
            "{arrives: {roll: 1d6, on: 6 or more}, falls silent: {roll: 1d6, on: 0-1}}",
            ["battery, falls silent: 0 on 1d6: it gives 1 to 6."],
        ),
    ],
)
def test_missions_whose_rolls_can_be_made(missions: str, messages: list[str]) -> None:
    every = found(f"battery: {{cost: 1, missions: {missions}}}")
    assert [finding.message for finding in every] == messages
    assert {finding.code for finding in every} <= {"missions-unsaid", "roll-impossible"}


def test_a_mission_that_cannot_be_is_shown_where_it_stands() -> None:
    (finding,) = found("battery: {cost: 1, missions: {arrives: {roll: 1d6, on: 7 or more}}}")
    assert finding.level is Level.STOP
    assert finding.place.path == ("supporting troops", "battery", "missions", "arrives", "on")
