"""What a program that goes on running keeps in mind, so that it needn't be worked out again.

A command keeps nothing. What is kept is a value that never changes, and holds only as long as the
very things that it rests on are still the ones that are asked about.
"""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import TypeVar, cast

T = TypeVar("T")

USUALLY_KEPT = 128
"""Values; the one that was asked for longest ago goes first."""


class Memory:
    """Values by what they are about; it may be used by several threads at once."""

    def __init__(self, most: int = USUALLY_KEPT) -> None:
        self._most = most
        self._lock = Lock()
        self._values: OrderedDict[Hashable, object] = OrderedDict()

    def kept(self, key: Hashable, make: Callable[[], T], *, rests_on: tuple[object, ...] = ()) -> T:
        """The value kept under a key while it rests on these very objects; else it is made."""
        found = self.last(key, _Kept)
        if found is not None and _same(found.rests_on, rests_on):
            return cast("T", found.value)  # made by the same call
        value = make()
        self.keep(key, _Kept(value, rests_on))
        return value

    def last(self, key: Hashable, kind: type[T]) -> T | None:
        """What was kept last under a key, of that kind."""
        with self._lock:
            value = self._values.get(key)
            if value is not None:
                self._values.move_to_end(key)
        return value if isinstance(value, kind) else None

    def keep(self, key: Hashable, value: object) -> None:
        """Keeps a value under a key in place of the one before."""
        if not self._most:
            return
        with self._lock:
            self._values[key] = value
            self._values.move_to_end(key)
            while len(self._values) > self._most:
                self._values.popitem(last=False)


class _Kept:
    """A value with what it rests on, which it keeps alive so that identity means something."""

    __slots__ = ("rests_on", "value")

    def __init__(self, value: object, rests_on: tuple[object, ...]) -> None:
        self.value = value
        self.rests_on = rests_on


def _same(before: tuple[object, ...], now: tuple[object, ...]) -> bool:
    return len(before) == len(now) and all(
        one is other for one, other in zip(before, now, strict=True)
    )


NOTHING = Memory(most=0)
"""Keeps nothing in mind."""
