"""Rules for what a scenario rolls."""

import pytest

from paradestate.core.finding import Finding
from paradestate.core.review.scenario import RULES
from tests.forces import marenz, partial_force_from

STANDS = (
    "stands: {a: {base: none}, b: {base: none}}\n"
    "formations: {part: {parts: {a: 2}}, top: {parts: {part: 2}}, other: {parts: {b: 1}}}"
)


def found(words: str) -> list[Finding]:
    game = f"games: {{raid: {{posture: attack, {words}}}}}"
    force = partial_force_from(STANDS, game)
    return [finding for rule in RULES for finding in rule(force)]


def test_the_example_has_nothing_to_say_of_scenarios() -> None:
    assert not [finding for rule in RULES for finding in rule(marenz())]


@pytest.mark.parametrize(
    ("arrival", "messages"),
    [
        ("{}", []),
        ("{from turn: 3}", []),
        ("{roll: 1d6, on: 4 or more, from turn: 3, until turn: 3}", []),
        ("{roll: 1d6}", ["raid, part: 'roll' is said, and 'on' isn't."]),
        ("{on: 4-6}", ["raid, part: 'on' is said, and 'roll' isn't."]),
        ("{on: 4-6, until turn: 3}", ["raid, part: 'on' is said, and 'roll' isn't."]),
        (
            "{until turn: 3}",
            ["raid, part: it isn't rolled for, so there is nothing to do until turn 3."],
        ),
        (
            "{roll: 1d6, on: 6, from turn: 3, until turn: 2}",
            ["raid, part: from turn 3 until turn 2 runs backwards."],
        ),
        ("{roll: 1d6, on: 7 or more}", ["raid, part: 7 on 1d6: it gives 1 to 6."]),
        ("{roll: 1d6, on: 4-8}", ["raid, part: 8 on 1d6: it gives 1 to 6."]),
    ],
)
def test_arrivals_that_are_half_said_or_impossible(arrival: str, messages: list[str]) -> None:
    findings = found(f"arrivals: {{part: {arrival}}}")
    assert [finding.message for finding in findings] == messages
    assert all(
        finding.place.path[:4] == ("games", "raid", "arrivals", "part") for finding in findings
    )


def test_the_codes_of_arrivals() -> None:
    words = "{roll: 1d6}", "{until turn: 3}", "{roll: 1d6, on: 6, from turn: 3, until turn: 2}"
    codes = [finding.code for arrival in words for finding in found(f"arrivals: {{a: {arrival}}}")]
    assert codes == ["arrival-half-said", "arrival-half-said", "range-backwards"]


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("arrivals: {top: {}, part: {}, a: {}}", []),
        ("arrivals: {other: {}}", ["raid, other: the raised force has none."]),
        (
            "strengths: {other: {roll: 1d6, gives: {1-6: 50%}}}",
            ["raid, other: the raised force has none."],
        ),
    ],
)
def test_scenes_of_what_is_not_raised(words: str, expected: list[str]) -> None:
    findings = found(words)
    assert [finding.message for finding in findings] == expected
    assert all(finding.code == "not-raised" for finding in findings)


def test_nothing_is_said_of_scenes_where_nothing_can_be_raised() -> None:
    texts = (
        "formations: {top: {parts: {top: 1}}}",
        "games: {g: {posture: x, arrivals: {top: {}}}}",
    )
    force = partial_force_from(*texts)
    assert not [finding for rule in RULES for finding in rule(force)]
