"""Rules for stands that may leave their formation."""

import pytest

from paradestate.core.review.detachment import detachments
from tests.forces import marenz, partial_force_from

FORCE = """
stands: {line: {base: none}, light: {base: none}}
formations:
  company: {parts: [{of: line, number: 3}, {of: light, number: 1-2, usual: 2}]}
  battalion: {parts: {company: 2}, may detach: {light: NUMBER}}
  guard: {like: battalion, drop: [company], add: {line: 4}}
  top: {parts: {battalion: 1, guard: 1}}
"""


def found(text: str) -> list[str]:
    return [finding.message for finding in detachments(partial_force_from(text))]


def test_the_example_lets_nothing_leave() -> None:
    assert not list(detachments(marenz()))


@pytest.mark.parametrize(
    ("number", "messages"),
    [
        (2, []),
        (3, ["battalion: 3 of 'light' may leave it, and it holds 2 at least."]),
    ],
)
def test_no_more_may_leave_than_there_are_at_least(number: int, messages: list[str]) -> None:
    assert found(FORCE.replace("NUMBER", str(number))) == messages


def test_what_is_not_there_can_not_leave() -> None:
    text = FORCE.replace("{light: NUMBER}", "{light: 1}").replace(
        "add: {line: 4}", "add: {line: 4}, may detach: {light: 1}"
    )
    (finding,) = detachments(partial_force_from(text))
    assert finding.code == "detaches-too-many"
    assert finding.hint == "Add them to its parts, or take them out here."
    assert finding.place.path == ("formations", "guard", "may detach", "light")


def test_a_loop_of_formations_is_left_to_its_own_finding() -> None:
    loop = "stands: {a: {base: none}}\nformations: {top: {parts: {top: 1}, may detach: {a: 1}}}"
    assert found(loop) == []
