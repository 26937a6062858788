"""Where one stands on the chart of a fall-back, after what the dice have allowed so far."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.game import Purchase
from paradestate.core.support.policy import Ask, Granted, Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Passed:
    """A request that was made, and how it came out."""

    ask: Ask
    outcome: Granted


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartPath:
    """The way through a chart as far as it is known."""

    passed: tuple[Passed, ...]
    step: Step
    """What is to be done now."""

    @property
    def taken(self) -> tuple[Purchase, ...]:
        """What was taken on the way."""
        return tuple(each.outcome.takes for each in self.passed if each.outcome.takes is not None)


def chart_path(chart: Step, *, allowed: Mapping[str, int]) -> ChartPath:
    """The way through a chart: each request in turn, for as long as its answer is known.

    `allowed` is entry to how many the dice allowed. An answer that the chart says can't come, less
    than the least that is allowed, ends the way before it.
    """
    passed: list[Passed] = []
    step = chart
    while isinstance(step, Ask) and step.purchase.entry in allowed:
        outcome = outcome_of(step, allowed=allowed[step.purchase.entry])
        if outcome is None:
            break
        passed.append(Passed(ask=step, outcome=outcome))
        step = outcome.then
    return ChartPath(passed=tuple(passed), step=step)


def outcome_of(ask: Ask, *, allowed: int) -> Granted | None:
    """The outcome of a request when the dice allow so many; None where that can't come."""
    return next((each for each in ask.outcomes if each.allowed <= allowed), None)
