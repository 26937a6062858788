"""Rules for supporting troops."""

import pytest

from paradestate.core.finding import Finding
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
        ("4", False),
    ],
)
def test_prices(cost: str, odd: bool) -> None:  # noqa: FBT001 - a table's column
    assert codes(f"e: {{cost: {cost}}}") == (["price-odd"] if odd else [])


def test_an_entry_that_needs_what_it_bars() -> None:
    assert codes("e: {cost: 1, needs: [f], bars: [f]}, f: {cost: 1}") == ["needs-and-bars"]
    assert codes("e: {cost: 1, needs: [f]}, f: {cost: 1, bars: [e]}") == ["needs-and-bars"]
    assert codes("e: {cost: 1, needs: [f]}, f: {cost: 1}") == []


def test_needs_that_lead_nowhere_are_passed_over() -> None:
    assert codes("e: {cost: 1, needs: [f]}, f: {cost: x}") == []


def test_entries_that_need_each_other() -> None:
    circle = (
        "tow: {cost: 1, needs: [gun]}, gun: {cost: 1, needs: [tow]}, x: {cost: 1, needs: [tow]}"
    )
    (finding,) = found(circle)
    assert finding.code == "needs-circle"
    assert finding.message == "gun needs tow needs gun: none can be bought first."
    diamond = "a: {cost: 1, needs: [b, c]}, b: {cost: 1, needs: [d]}, c: {cost: 1, needs: [d]}"
    assert codes(f"{diamond}, d: {{cost: 1}}") == []


def test_a_refusal_without_a_word_on_its_points() -> None:
    assert codes("e: {cost: 1, availability: {roll: 1d6, allows: {1-6: all}}}") == [
        "refusal-unsaid"
    ]


GAMES = "games: {g: {allowance: 9, posture: attack, plan: [PLAN]}}"
ENTRIES = (
    "e: {cost: {2: 5}, choice: [flame, smoke]}, d: {cost: 1, only in: {posture: defence}},"
    " n: {cost: 1, not in: {posture: attack}}, old: {cost: 1, until: 1940}"
)


@pytest.mark.parametrize(
    ("plan", "expected"),
    [
        ("e=2", []),
        ("e(flame)=2", []),
        ("e=3", ["number-not-priced"]),
        ("e(charges)=2", ["choice-unknown"]),
        ("old(x)=1", ["choice-unknown"]),
        ("d=1", ["not-in-force"]),
        ("n=1", ["not-in-force"]),
        ("old=1", []),
    ],
)
def test_plans(plan: str, expected: list[str]) -> None:
    assert codes(ENTRIES, GAMES.replace("PLAN", plan)) == expected


def test_a_plan_against_the_date() -> None:
    head = "format: 1\ntitle: T\nraise: {formation: top, date: 1943}\n"
    (finding,) = found(ENTRIES, GAMES.replace("PLAN", "old=1"), head=head)
    assert finding.message == "old: not to be had in 1943."
    assert finding.place.path == ("games", "g", "plan", "1")


def test_a_plan_of_something_that_could_not_be_read() -> None:
    assert codes("e: {cost: x}", GAMES.replace("PLAN", "e=2")) == []
