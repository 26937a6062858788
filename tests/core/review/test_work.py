"""Doubts about the work bench."""

import pytest

from paradestate.core.review.work import first_stage
from tests.forces import force_from

TROOP = """\
figures: {rifleman: {}}
stands: {section: {base: none, figures: {rifleman: 4}}}
formations: {top: {parts: {section: 2}}}
"""


@pytest.mark.parametrize(
    ("bench", "paths"),
    [
        ("minutes: {foot: {raw: 3, done: 2}}", ["bench minutes foot raw"]),
        ("minutes: {foot: {raw: 0, done: 2}}", []),
        ("minutes: {foot: {done: 2}}, dry: {done: 2 h}", []),
        ("dry: {raw: 2 h}", ["bench dry raw"]),
        ("dry: {raw: 0 h}", []),
        (
            "minutes: {foot: {raw: 1}, rifleman: {raw: 2}}",
            ["bench minutes foot raw", "bench minutes rifleman raw"],
        ),
    ],
)
def test_no_time_is_spent_to_reach_the_first_stage(bench: str, paths: list[str]) -> None:
    found = list(first_stage(force_from(TROOP, f"bench: {{stages: [raw, done], {bench}}}\n")))
    assert [" ".join(each.place.path) for each in found] == paths
    assert {each.code for each in found} <= {"first-stage-timed"}
