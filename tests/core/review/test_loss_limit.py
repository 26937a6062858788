"""Rules for limits to losses."""

import pytest

from paradestate.core.finding import Finding, Level
from paradestate.core.review.loss_limit import RULES
from tests.forces import marenz, partial_force_from

ORGANISATION = """\
stands: {a: {base: none}, spare: {base: none}}
formations:
  squad: {echelon: squad, parts: {a: 3}}
  top: {echelon: platoon, parts: {squad: 2}}
  other: {parts: {spare: 1}}
states: [held up]
"""


def found(limit: str, *, organisation: str = ORGANISATION) -> list[Finding]:
    force = partial_force_from(organisation, f"loss limits: [{limit}]")
    return [finding for rule in RULES for finding in rule(force)]


def test_the_example_has_no_limits() -> None:
    assert not [finding for rule in RULES for finding in rule(marenz())]


@pytest.mark.parametrize(
    ("limit", "message", "word"),
    [
        (
            "{of: squad, echelon: squad, at: {1: x}}",
            "Loss limit 1: 'of' and 'echelon' say whom it is for.",
            "echelon",
        ),
        (
            "{count: held up, counts as: {a: 2}, at: {1: x}}",
            "Loss limit 1: held up are counted, and 'counts as' says what a stand counts.",
            "counts as",
        ),
        (
            "{count: figures, counts as: {a: 2}, among: squad, at: {1: x}}",
            "Loss limit 1: figures are counted, and 'among' says which units are.",
            "among",
        ),
        (
            "{of: squad, supporting troops: yes, at: {1: x}}",
            "Loss limit 1: it is for each squad, and 'supporting troops' are of the whole force.",
            "supporting troops",
        ),
        (
            "{count: leaders hit, supporting troops: yes, at: {1: x}}",
            "Loss limit 1: leaders hit are counted, and of 'supporting troops' only stands are.",
            "supporting troops",
        ),
    ],
)
def test_words_that_can_not_both_hold(limit: str, message: str, word: str) -> None:
    (finding,) = found(limit)
    assert (finding.level, finding.code) == (Level.STOP, "loss-limit-unclear")
    assert finding.message == message
    assert finding.place.path == ("loss limits", "1", word)
    assert finding.place.line == 1


@pytest.mark.parametrize(
    ("limit", "message", "path"),
    [
        (
            "{of: squad, at: {half: slow, 4: gone}}",
            "Loss limit of each squad: gone at 4, and there are 3 to lose.",
            ("loss limits", "1", "at", "4"),
        ),
        (
            "{of: other, at: {1: gone}}",
            "Loss limit of each other: the raised force has nothing that it counts.",
            ("loss limits", "1"),
        ),
        (
            "{echelon: company, at: {1: gone}}",
            "Loss limit of each company: the raised force has nothing that it counts.",
            ("loss limits", "1"),
        ),
        (
            "{counts as: {a: 0}, at: {half: gone}}",
            "Loss limit of the whole force: the raised force has nothing that it counts.",
            ("loss limits", "1"),
        ),
    ],
)
def test_what_is_never_reached_is_warned_of(
    limit: str, message: str, path: tuple[str, ...]
) -> None:
    (finding,) = found(limit)
    assert (finding.level, finding.code) == (Level.WARN, "loss-limit-never")
    assert finding.message == message
    assert finding.place.path == path


@pytest.mark.parametrize(
    "limit",
    [
        "{of: squad, at: {3: gone}}",
        "{at: {more than half: gone}}",
        "{count: held up, among: squad, at: {all: stalled}}",
    ],
)
def test_what_can_be_reached_is_in_order(limit: str) -> None:
    assert not found(limit)


def test_what_hangs_on_supporting_troops_may_still_be_reached() -> None:
    troops = f"{ORGANISATION}supporting troops: {{guns: {{cost: 1, each: {{spare: 2}}}}}}\n"
    assert not found("{supporting troops: yes, at: {9: gone}}", organisation=troops)


def test_of_a_force_that_can_not_be_unfolded_nothing_is_said() -> None:
    empty = "stands: {a: {base: none}}\nformations: {top: {parts: {top: 1}}}\n"
    assert not found("{of: top, at: {9: gone}}", organisation=empty)
