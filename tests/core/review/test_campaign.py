"""Rules for what is rolled after a game."""

import pytest

from paradestate.core.finding import Finding, Level
from paradestate.core.review.campaign import RULES
from tests.forces import marenz, partial_force_from

STANDS = "stands: {a: {base: none}}\nformations: {top: {parts: {a: 2}}}"


def found(recovery: str) -> list[Finding]:
    force = partial_force_from(STANDS, f"campaign: {{recovery: {{a: {recovery}}}}}")
    return [finding for rule in RULES for finding in rule(force)]


def test_the_example_has_nothing_to_say_of_a_campaign() -> None:
    assert not [finding for rule in RULES for finding in rule(marenz())]


@pytest.mark.parametrize(
    ("recovery", "message", "word"),
    [
        ("{roll: 1d6, on: 7 or more}", "Recovery of a: 7 on 1d6: it gives 1 to 6.", "on"),
        ("{roll: 1d6, on: 3-8}", "Recovery of a: 8 on 1d6: it gives 1 to 6.", "on"),
        (
            "{roll: 2d6, on: 3 or more, promoted on: 13}",
            "Recovery of a: 13 on 2d6: it gives 2 to 12.",
            "promoted on",
        ),
        (
            "{roll: 1d6, on: 4 or more, promoted on: 3 or more}",
            "Recovery of a: on 3 it is promoted, and lost.",
            "promoted on",
        ),
    ],
)
def test_totals_that_never_come_up_and_promotions_of_the_lost(
    recovery: str, message: str, word: str
) -> None:
    (finding,) = found(recovery)
    assert finding.message == message
    assert finding.place.path == ("campaign", "recovery", "a", word)
    assert finding.level is (Level.WARN if "promoted, and lost" in message else Level.STOP)


@pytest.mark.parametrize(
    "recovery",
    [
        "{roll: 1d6, on: 1-6}",
        "{roll: 1d6, on: 3 or more}",
        "{roll: 1d6, on: 4 or more, promoted on: 4 or more}",
    ],
)
def test_a_roll_that_can_come_up_is_in_order(recovery: str) -> None:
    assert not found(recovery)
