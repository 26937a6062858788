"""Doubts about the work bench: times that are never spent."""

from collections.abc import Iterator

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import KeyPath, nearest_place
from paradestate.core.review.rule import Rule


def first_stage(force: Force) -> Iterator[Finding]:
    """Minutes to reach the first stage, at which all figures come, or to dry there."""
    first = force.bench.stages[0]
    for what, minutes in force.bench.minutes.items():
        if minutes.get(first):
            yield _never_spent(force, first, path=("bench", "minutes", what, first))
    if force.bench.dry.get(first):
        yield _never_spent(force, first, path=("bench", "dry", first))


def _never_spent(force: Force, stage: str, *, path: KeyPath) -> Finding:
    return Finding(
        level=Level.WARN,
        code="first-stage-timed",
        message=f"'{stage}' is the first stage, at which figures come: nothing is done to reach "
        "it.",
        effect="This time is counted nowhere.",
        hint="Give it to the stage that comes next, or put a stage before this one in 'stages'.",
        place=nearest_place(force.places, path),
    )


RULES: tuple[Rule, ...] = (first_stage,)
