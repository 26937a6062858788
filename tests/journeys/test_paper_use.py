"""What papers are for, and whose eyes."""

from paradestate.journeys.every_paper import EVERY_PAPER
from paradestate.journeys.paper_use import (
    USES,
    Eyes,
    Purpose,
    may_be_handed_over,
    use_of,
)


def test_every_paper_says_what_it_is_for() -> None:
    assert {kind.name for kind in EVERY_PAPER} <= set(USES)


def test_these_alone_may_be_seen_by_others() -> None:
    """Whoever adds one here has looked at what is on it."""
    by_eyes = {eyes: {name for name, use in USES.items() if use.eyes is eyes} for eyes in Eyes}
    assert by_eyes[Eyes.ANYBODY] == {"opponents sheet"}
    assert by_eyes[Eyes.VISITORS] == {"club notice", "show labels"}


def test_a_paper_that_is_not_listed_is_private() -> None:
    assert not may_be_handed_over("new paper")
    assert use_of("new paper").purpose is Purpose.TONIGHT
