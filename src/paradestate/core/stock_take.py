"""A stock-take: what was counted, box by box, beside what is held."""

from collections.abc import Iterator
from dataclasses import dataclass

from paradestate.core.choice import CHOSEN_HERE
from paradestate.core.finding import Finding, Level
from paradestate.core.holdings import Staged
from paradestate.core.log_finding import log_stop


@dataclass(frozen=True, slots=True, kw_only=True)
class StockChange:
    """A number of figures that was counted otherwise than it is held."""

    kind: str
    stage: str
    was: int
    becomes: int

    @property
    def difference(self) -> int:
        """Counted less held."""
        return self.becomes - self.was


def stock_changes(held: Staged, counted: Staged) -> tuple[StockChange, ...]:
    """What a count would change, in its own order; what it doesn't say stays as it is."""
    return tuple(
        StockChange(kind=kind, stage=stage, was=was, becomes=number)
        for kind, stages in counted.items()
        for stage, number in stages.items()
        if number != (was := held.get(kind, {}).get(stage, 0))
    )


def not_counted(held: Staged, counted: Staged) -> Iterator[StockChange]:
    """What is held of a kind that was counted, at a stage that the count leaves open."""
    for kind, stages in counted.items():
        for stage, number in held.get(kind, {}).items():
            if stage not in stages:
                yield StockChange(kind=kind, stage=stage, was=number, becomes=number)


def left_open(change: StockChange) -> Finding:
    """The warning for a box that was left empty though something is held there."""
    return Finding(
        level=Level.WARN,
        code="count-left-open",
        message=f"{change.kind}, {change.stage}: nothing is written, and {change.was} "
        f"{'is' if change.was == 1 else 'are'} held.",
        effect=f"It stays {change.was}.",
        hint="Write 0 if there are none.",
        place=CHOSEN_HERE,
    )


def changed_since(held: Staged, was: Staged) -> Iterator[Finding]:
    """A stop for each number that is held otherwise than when the count was looked at."""
    for kind, stages in was.items():
        for stage, before in stages.items():
            now = held.get(kind, {}).get(stage, 0)
            if now != before:
                yield log_stop(
                    code="held-changed",
                    message=f"{kind}, {stage}: {before} held when this count was shown, {now} now.",
                    hint="Somebody wrote it down meanwhile. Look at the count again.",
                )
