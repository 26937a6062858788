"""What papers are for, and whose eyes."""

from paradestate.core.paper.labels import labels
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.journeys.paper.paper_kind import PaperKind, on_ground
from paradestate.journeys.paper.paper_use import Eyes, Purpose


def test_these_alone_may_be_seen_by_others() -> None:
    """Whoever adds one here has looked at what is on it."""
    by_eyes = {eyes: {kind.name for kind in EVERY_PAPER if kind.eyes is eyes} for eyes in Eyes}
    assert by_eyes[Eyes.ANYBODY] == {"opponents sheet"}
    assert by_eyes[Eyes.VISITORS] == {"club notice", "show labels"}
    assert {kind.name for kind in EVERY_PAPER if kind.may_be_handed_over} == {"opponents sheet"}


def test_a_paper_that_says_nothing_else_is_private() -> None:
    kind = PaperKind(
        name="new paper",
        title="New paper",
        about="Something new.",
        purpose=Purpose.TONIGHT,
        drafted=on_ground(labels),
    )
    assert kind.eyes is Eyes.OWNER
    assert not kind.may_be_handed_over
