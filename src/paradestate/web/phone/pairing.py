"""The pairing word: shown on the computer, typed on the phone, good once and for ten minutes."""

import enum
import hmac
import secrets
import threading
import time
from collections.abc import Callable
from typing import TypeAlias

ALPHABET = "abcdefghjkmnpqrstuvwxyz23456789"
"""No letter in it can be taken for another, nor for a figure."""
LENGTH = 20
"""Characters of a word: 31 to the 20th are 99 bits."""
GROUP = 4
SECONDS = 600
"""How long a word is good for."""
ATTEMPTS = 5
"""How often a word may be guessed at."""
LONGEST = 80
"""Characters that are looked at; what is longer is no word."""

Clock: TypeAlias = Callable[[], float]
"""Seconds that only go forward."""


class Attempt(enum.Enum):
    """What became of an attempt to pair."""

    RIGHT = "right"
    WRONG = "wrong"
    OVER = "over"
    """There is no word that is still good: none was asked for, or it is used, old or guessed at."""


class Pairing:
    """The one word that is good now, if any; safe to be asked from several threads."""

    def __init__(self, *, clock: Clock = time.monotonic) -> None:
        self._clock = clock
        self._lock = threading.Lock()
        self._word = ""
        self._until = 0.0
        self._left = 0

    def begin(self) -> str:
        """A new word, in groups of four; the one before is good no longer."""
        word = "".join(secrets.choice(ALPHABET) for _ in range(LENGTH))
        with self._lock:
            self._word = word
            self._until = self._clock() + SECONDS
            self._left = ATTEMPTS
        return grouped(word)

    def end(self) -> None:
        """The word is good no longer."""
        with self._lock:
            self._word = ""

    @property
    def word(self) -> str | None:
        """The word that is good now, for the computer's own page; None where there is none."""
        with self._lock:
            return grouped(self._word) if self._is_good() else None

    @property
    def attempts_left(self) -> int:
        """How often the word may still be guessed at."""
        with self._lock:
            return self._left if self._is_good() else 0

    @property
    def seconds_left(self) -> int:
        """For how many whole seconds the word is still good."""
        with self._lock:
            return int(self._until - self._clock()) if self._is_good() else 0

    def attempt(self, typed: str) -> Attempt:
        """Whether this is the word; if so it is used up, and else it may be tried less often."""
        with self._lock:
            if not self._is_good():
                return Attempt.OVER
            self._left -= 1
            is_right = hmac.compare_digest(_plain(typed).encode(), self._word.encode())
            if is_right:
                self._word = ""
            return Attempt.RIGHT if is_right else Attempt.WRONG

    def _is_good(self) -> bool:
        return bool(self._word) and self._left > 0 and self._clock() < self._until


def grouped(word: str) -> str:
    """A word as it is read and typed, `abcd-efgh-...`."""
    return "-".join(word[start : start + GROUP] for start in range(0, len(word), GROUP))


def _plain(typed: str) -> str:
    """What was typed without what a hand or a phone adds: capitals, spaces, lines."""
    return "".join(letter for letter in typed[:LONGEST].lower() if letter in ALPHABET)
