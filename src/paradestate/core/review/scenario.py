"""Doubts about what a scenario rolls: arrivals that are half said, or can't happen."""

from collections.abc import Iterator

from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.place import KeyPath, nearest_place
from paradestate.core.review.rule import Rule
from paradestate.core.scenario import Arrival
from paradestate.core.structure import structure


def arrivals(force: Force) -> Iterator[Finding]:
    """Arrivals with a roll and no total to come on, and the like."""
    for game in force.games.values():
        for name, arrival in game.arrivals.items():
            path = ("games", game.name, "arrivals", name)
            called = f"{game.name}, {name}"
            for finding in (_half_said, _turns, _totals):
                yield from finding(force, arrival, path=path, called=called)


def scenes_of_nothing(force: Force) -> Iterator[Finding]:
    """Strengths and arrivals of what isn't in the raised force."""
    settled, _ = structure(force)
    if settled is None:
        return
    raised = {settled.root[0]}
    raised |= {step.of for node in settled.nodes.values() for step in node.steps}
    for game in force.games.values():
        named = [
            *(("strengths", name) for name in game.strengths),
            *(("arrivals", name) for name in game.arrivals),
        ]
        for word, name in named:
            if name not in raised:
                yield Finding(
                    level=Level.WARN,
                    code="not-raised",
                    message=f"{game.name}, {name}: the raised force has none.",
                    effect="Nothing comes of it.",
                    hint=f"Add it to the parts of {settled.root[0]}, or take it out here.",
                    place=nearest_place(force.places, ("games", game.name, word, name)),
                )


def _stop(force: Force, path: KeyPath, *, code: str, message: str, hint: str) -> Finding:
    return Finding(
        level=Level.STOP,
        code=code,
        message=message,
        effect="It can't be said when it arrives.",
        hint=hint,
        place=nearest_place(force.places, path),
    )


def _half_said(force: Force, arrival: Arrival, *, path: KeyPath, called: str) -> Iterator[Finding]:
    if (arrival.roll is None) == (arrival.on is None):
        return
    said, missing = ("on", "roll") if arrival.roll is None else ("roll", "on")
    yield _stop(
        force,
        (*path, said),
        code="arrival-half-said",
        message=f"{called}: '{said}' is said, and '{missing}' isn't.",
        hint="Say both, such as {roll: 1d6, on: 4 or more}; or neither, and it comes in that turn.",
    )


def _turns(force: Force, arrival: Arrival, *, path: KeyPath, called: str) -> Iterator[Finding]:
    last = arrival.until_turn
    if last is None:
        return
    if arrival.roll is None and arrival.on is None:
        yield _stop(
            force,
            (*path, "until turn"),
            code="arrival-half-said",
            message=f"{called}: it isn't rolled for, so there is nothing to do until turn {last}.",
            hint="Add 'roll' and 'on', or take 'until turn' out.",
        )
    elif last < arrival.from_turn:
        yield _stop(
            force,
            (*path, "until turn"),
            code="range-backwards",
            message=f"{called}: from turn {arrival.from_turn} until turn {last} runs backwards.",
            hint=f"Did you mean from turn {last} until turn {arrival.from_turn}?",
        )


def _totals(force: Force, arrival: Arrival, *, path: KeyPath, called: str) -> Iterator[Finding]:
    on = arrival.on
    if arrival.roll is None or on is None:
        return
    totals = arrival.roll.totals()
    outside = [end for end in (on.least, on.most) if end is not None and end not in totals]
    if outside:
        yield _stop(
            force,
            (*path, "on"),
            code="roll-impossible",
            message=f"{called}: {outside[-1]} on {arrival.roll}: "
            f"it gives {totals[0]} to {totals[-1]}.",
            hint="Look at the dice and the totals again.",
        )


RULES: tuple[Rule, ...] = (arrivals, scenes_of_nothing)
