"""Two texts line by line: what stands beside what, and what only one of them has.

Imports nothing of the project.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

MOST_COMPARED = 2_000
"""Lines of either text, between what both begin and end with; more aren't compared one by one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LinePair:
    """A line of the one text beside one of the other; numbers count from 1, 0 is no line."""

    number: int = 0
    text: str = ""
    other_number: int = 0
    other_text: str = ""

    @property
    def is_same(self) -> bool:
        """Whether both say the same."""
        return bool(self.number and self.other_number) and self.text == self.other_text


def line_pairs(before: str, after: str) -> tuple[LinePair, ...]:
    """Every line of both texts, side by side."""
    old, new = before.splitlines(), after.splitlines()
    start = _alike(old, new)
    end = _alike(old[start:][::-1], new[start:][::-1])
    middle = old[start : len(old) - end], new[start : len(new) - end]
    return tuple(
        LinePair(
            number=0 if left is None else left + 1,
            text="" if left is None else old[left],
            other_number=0 if right is None else right + 1,
            other_text="" if right is None else new[right],
        )
        for left, right in (
            *((n, n) for n in range(start)),
            *_shifted(_middle(*middle), start),
            *((len(old) - end + n, len(new) - end + n) for n in range(end)),
        )
    )


_Pair = tuple[int | None, int | None]


def _alike(old: Sequence[str], new: Sequence[str]) -> int:
    """How many lines both begin with."""
    number = 0
    for left, right in zip(old, new, strict=False):
        if left != right:
            break
        number += 1
    return number


def _shifted(pairs: Iterator[_Pair], start: int) -> Iterator[_Pair]:
    for left, right in pairs:
        yield None if left is None else left + start, None if right is None else right + start


def _middle(old: Sequence[str], new: Sequence[str]) -> Iterator[_Pair]:
    if len(old) > MOST_COMPARED or len(new) > MOST_COMPARED:
        yield from _beside(range(len(old)), range(len(new)))
        return
    for _, left, left_end, right, right_end in SequenceMatcher(
        None, old, new, autojunk=False
    ).get_opcodes():
        yield from _beside(range(left, left_end), range(right, right_end))


def _beside(left: range, right: range) -> Iterator[_Pair]:
    for n in range(max(len(left), len(right))):
        yield left[n] if n < len(left) else None, right[n] if n < len(right) else None


def with_context(pairs: Sequence[LinePair], *, lines: int = 1) -> tuple[LinePair, ...]:
    """The pairs that differ, with so many of those before and after them."""
    shown = {
        near
        for n, pair in enumerate(pairs)
        if not pair.is_same
        for near in range(n - lines, n + lines + 1)
    }
    return tuple(pair for n, pair in enumerate(pairs) if n in shown)
