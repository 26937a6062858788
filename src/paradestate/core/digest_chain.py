"""The digest chain: how an altered, removed or added line of a journal shows.

Each line's digest covers the digest of the line before, so that nothing can be changed in the
middle without every later digest being wrong. It shows slips, faults and tampering by hand; it
doesn't stop somebody who computes all later digests anew.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from hashlib import sha256

BEFORE_THE_FIRST = "0" * 64
"""Stands where the first line has no line before it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """One line of a journal as it is stored."""

    number: int
    """Lines count from 1, without a gap."""
    id: str
    """UUID, made by whoever wrote the entry."""
    text: str
    digest: str
    """SHA-256 in hexadecimal digits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """Where a chain ends."""

    number: int = 0
    """Lines so far."""
    digest: str = BEFORE_THE_FIRST


@dataclass(frozen=True, slots=True, kw_only=True)
class Checkpoint:
    """What the lines up to one of them came to, so that they need not be read again."""

    head: Head
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Altered:
    """The first line at which a chain doesn't hold."""

    number: int
    id: str
    """Empty where the line is missing."""


START = Head()


def digest_of(*, before: str, id: str, text: str) -> str:  # noqa: A002 - that is what it is
    """The digest of a line: SHA-256 (FIPS 180-4) over the digest before, the id and the text."""
    return sha256(f"{before}\n{id}\n{text}".encode()).hexdigest()


def linked(head: Head, *, id: str, text: str) -> Link:  # noqa: A002 - as above
    """The next line of a chain."""
    digest = digest_of(before=head.digest, id=id, text=text)
    return Link(number=head.number + 1, id=id, text=text, digest=digest)


def checkpoint_digest(checkpoint: Checkpoint) -> str:
    """The digest over all of a checkpoint, so that a damaged one shows."""
    head = checkpoint.head
    return sha256(f"{head.number}\n{head.digest}\n{checkpoint.text}".encode()).hexdigest()


def first_altered(links: Iterable[Link], *, after: Head = START, end: Head) -> Altered | None:
    """The first line that was altered, removed or put in, from `after` to where the chain ends."""
    return next(altered_lines(links, after=after, end=end), None)


def altered_lines(links: Iterable[Link], *, after: Head = START, end: Head) -> Iterator[Altered]:
    """Every line that was altered, removed or put in, from `after` to where the chain ends.

    After a line that doesn't hold the chain goes on from the digest that is stored there.
    """
    at = after
    for link in links:
        if link.number != at.number + 1:
            yield Altered(number=at.number + 1, id="")
        elif link.digest != digest_of(before=at.digest, id=link.id, text=link.text):
            yield Altered(number=link.number, id=link.id)
        at = Head(number=link.number, digest=link.digest)
    if at.number < end.number:
        yield Altered(number=at.number + 1, id="")
    elif at != end:
        yield Altered(number=at.number, id="")
