"""When a search has to end."""

import time
from dataclasses import dataclass, field, replace

from paradestate.solve.program import Stop


def never() -> bool:
    """Nobody stops the search."""
    return False


@dataclass(frozen=True, slots=True, kw_only=True)
class Clock:
    """When a search has to end: at a time, or sooner where somebody stops it."""

    end: float
    stop: Stop = field(default=never)

    @property
    def left(self) -> float:
        """Seconds left; nought when time is up or the search was stopped."""
        return 0.0 if self.stop() else max(0.0, self.end - time.monotonic())

    def within(self, seconds: float) -> "Clock":
        """A clock that runs out in so many seconds, if this one doesn't sooner."""
        return replace(self, end=min(self.end, time.monotonic() + seconds))

    def share(self, part: float) -> "Clock":
        """A clock that runs out when so much of the time left will have gone."""
        return self.within(part * self.left)


def clock(seconds: float, *, stop: Stop = never) -> Clock:
    """A clock that runs out in so many seconds."""
    return Clock(end=time.monotonic() + seconds, stop=stop)
