"""Rules for limits and choices of supporting troops."""

import pytest

from paradestate.core.finding import Finding
from paradestate.core.review.limit import RULES
from tests.forces import marenz, partial_force_from

STANDS = "stands: {a: {base: none}}\nformations: {top: {parts: {a: 1}}}"


def found(entries: str, *more: str) -> list[Finding]:
    force = partial_force_from(STANDS, f"supporting troops: {{{entries}}}", *more)
    return [finding for rule in RULES for finding in rule(force)]


def test_the_example_has_nothing_to_say_of_limits() -> None:
    assert not [finding for rule in RULES for finding in rule(marenz())]


@pytest.mark.parametrize(
    ("limit", "odd"),
    [
        ("{least: 1}", False),
        ("{least: 2}", True),
        ("{most: 2, least: 2}", False),
        ("{most: 1, plus: 1, least: 2}", False),
        ("{most: any, least: 9}", False),
        ("{most: 1, of: top, least: 9}", False),
        ("any", False),
    ],
)
def test_a_least_is_not_above_its_most(limit: str, odd: bool) -> None:  # noqa: FBT001 - a column
    for words, at in (
        (f"limit: {limit}", ("limit",)),
        (f"in posture: {{attack: {{limit: {limit}}}, defence: {{}}}}", ("in posture", "attack")),
    ):
        findings = found(f"e: {{cost: 1, {words}}}")
        assert [finding.code for finding in findings] == ["limit-backwards"] * odd
        assert all(
            finding.place.path[: 2 + len(at)] == ("supporting troops", "e", *at)
            for finding in findings
        )


def test_a_limit_that_runs_backwards_says_both_numbers() -> None:
    (finding,) = found("e: {cost: 1, limit: {least: 2}}")
    assert finding.message == "e: at least 2 purchases, and at most 1."


@pytest.mark.parametrize(
    ("words", "messages"),
    [
        ("least: 1, most: 1, least points: 10%, most points: 10%", []),
        ("least: 3", []),
        ("least points: 30%", []),
        ("least: 2, most: 1", ["g: at least 2 purchases, and at most 1."]),
        (
            "least points: 30%, most points: 10%",
            ["g: at least 30% of the points, and at most 10%."],
        ),
    ],
)
def test_the_least_of_a_shared_limit_is_not_above_its_most(words: str, messages: list[str]) -> None:
    findings = found("e: {cost: 1, group: g}", f"limits: [{{group: g, {words}}}]")
    assert [finding.message for finding in findings] == messages
    assert all(finding.place.path[:2] == ("limits", "1") for finding in findings)


def test_costs_and_worths_of_choices_that_are_not_left() -> None:
    entry = "e: {cost: 1, choice: [x, y], choice costs: {x: 1, z: 1}}, f: {cost: 1}"
    assert not found("e: {cost: 1, choice: [x]}", "worths: {e: {x: {1: 2}}}")
    assert not found("e: {cost: 1}", "worths: {e: {1: 2}}")
    findings = found(entry, "worths: {f: {x: {1: 2}}}")
    assert [finding.message for finding in findings] == [
        "e: 'z' isn't one of its choices.",
        "f: 'x' isn't one of its choices.",
    ]
    assert [finding.place.path[-1] for finding in findings] == ["z", "x"]
    assert [finding.hint for finding in findings] == [
        "Its choices: x, y.",
        "Add it under 'choice'.",
    ]
