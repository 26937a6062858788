"""Doubts about limits and choices of supporting troops, each seen by itself."""

from collections.abc import Iterator

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.number import percent_text
from paradestate.core.place import KeyPath, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.support.entry import GroupLimit, Limit


def limits(force: Force) -> Iterator[Finding]:
    """Limits of which the least is above the most."""
    for entry in force.supporting_troops.values():
        path = ("supporting troops", entry.name)
        here = ((*path, "in posture", posture) for posture in entry.in_posture)
        limits = (entry.limit, *(variation.limit for variation in entry.in_posture.values()))
        for at, limit in zip((path, *here), limits, strict=True):
            if limit is not None and _most(limit) < limit.least:
                message = f"at least {limit.least} purchases, and at most {_most(limit)}."
                yield _backwards(force, (*at, "limit"), message=f"{entry.name}: {message}")
    for number, shared in enumerate(force.limits, start=1):
        for message in _backwards_in(shared):
            yield _backwards(force, ("limits", str(number)), message=f"{shared.group}: {message}")


def _most(limit: Limit) -> int:
    """Purchases by a limit that doesn't hang on the organisation; else as many as are asked for."""
    if limit.most is None or limit.of:
        return limit.least
    return limit.most + limit.plus


def _backwards_in(limit: GroupLimit) -> Iterator[str]:
    if limit.most is not None and limit.most < limit.least:
        yield f"at least {limit.least} purchases, and at most {limit.most}."
    if limit.most_points is not None and limit.most_points < limit.least_points:
        least, most = percent_text(limit.least_points), percent_text(limit.most_points)
        yield f"at least {least} of the points, and at most {most}."


def _backwards(force: Force, path: KeyPath, *, message: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code="limit-backwards",
        message=message,
        effect="No force is legal.",
        hint="Raise the most, or lower the least. Left out, the most is 1; 'most: any' has no end.",
        place=nearest_place(force.places, path),
    )


def choices(force: Force) -> Iterator[Finding]:
    """Costs and worths of choices that an entry doesn't leave."""
    for entry in force.supporting_troops.values():
        worth = force.worths.get(entry.name)
        worths = [choice for choice in (worth.by_choice if worth else {}) if choice]
        said = [
            *((("supporting troops", entry.name, "choice costs"), c) for c in entry.choice_costs),
            *((("worths", entry.name), c) for c in worths),
        ]
        for path, choice in said:
            if choice not in entry.choice:
                listed = ", ".join(entry.choice)
                yield Finding(
                    level=Level.STOP,
                    code="choice-unknown",
                    message=f"{entry.name}: '{choice}' isn't one of its choices.",
                    effect="What is said of it would count for nothing.",
                    hint=f"Its choices: {listed}." if listed else "Add it under 'choice'.",
                    place=nearest_place(force.places, (*path, choice)),
                )


RULES: tuple[Rule, ...] = (limits, choices)
