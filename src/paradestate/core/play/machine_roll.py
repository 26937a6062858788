"""Dice rolled by the machine so that nobody could steer them, and anybody can roll them again.

The machine publishes the SHA-256 of a secret; the opponent says a word; the faces are made of
both; the secret is told afterwards. Whoever has the word, the secret and the dice gets the same
faces: nothing else goes into them.

Bytes come from HMAC-SHA-256 with the secret as its key and `word:1`, `word:2` ... as messages, one
after the other. For a die of N faces a byte counts where it is below the greatest multiple of N
that isn't above 256, and shows the remainder of its division by N, plus 1; other bytes are passed
over. So each face comes of equally many bytes.
Sources: FIPS 180-4 (SHA-256), RFC 2104 (HMAC); the passing over is the method of rejection.
"""

import hmac
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from hashlib import sha256
from unicodedata import normalize

from paradestate.core.dice import Dice, Throw

BYTES = 256
"""Values of a byte; no die has more faces."""

SECRET_BYTES = 32
"""Bytes of a secret: as many as the digest has."""

MOST_LETTERS = 100
"""Letters of a word."""


def digest_of_secret(secret: bytes) -> str:
    """What is published beforehand: SHA-256 of the secret, in hexadecimal digits."""
    return sha256(secret).hexdigest()


def whole_word(said: str) -> str:
    """The word as it counts: in Unicode's composed form, without blanks around it."""
    return normalize("NFC", said).strip()


def is_word(said: str) -> bool:
    """Whether it is a word of which faces can be made."""
    word = whole_word(said)
    return 0 < len(word) <= MOST_LETTERS and word.isprintable()


def thrown(dice: Dice) -> tuple[int, ...]:
    """The faces that each die of a roll has, in the order in which the dice are written."""
    throws = (signed.term for signed in dice.terms)
    return tuple(
        each.sides for each in throws if isinstance(each, Throw) for _ in range(each.number)
    )


def faces_of(secret: bytes, word: str, *, sides: Iterable[int]) -> tuple[int, ...]:
    """What dice of so many faces show, die after die."""
    stream = _stream(secret, whole_word(word))
    return tuple(_face(stream, sides=each) for each in sides)


def face_of(byte: int, *, sides: int) -> int | None:
    """The face that a byte shows; None where it is passed over."""
    return byte % sides + 1 if byte < BYTES - BYTES % sides else None


def _stream(secret: bytes, word: str) -> Iterator[int]:
    counter = 0
    while True:
        counter += 1
        yield from hmac.digest(secret, f"{word}:{counter}".encode(), "sha256")


def _face(stream: Iterator[int], *, sides: int) -> int:
    return next(face for byte in stream if (face := face_of(byte, sides=sides)) is not None)


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineRoll:
    """One roll of the machine, with all that was told of it."""

    digest: str
    word: str
    secret: str
    """In hexadecimal digits."""
    dice: Dice
    faces: tuple[int, ...]


def differences(roll: MachineRoll) -> Iterator[str]:
    """What doesn't agree when a roll is made again, in words; nothing where all does."""
    secret = bytes.fromhex(roll.secret)
    if digest_of_secret(secret) != roll.digest:
        yield "the secret isn't the one that was bound to"
    faces = faces_of(secret, roll.word, sides=thrown(roll.dice))
    if faces != roll.faces:
        yield f"the dice show {_listed(faces)}, not {_listed(roll.faces)}"


def _listed(faces: tuple[int, ...]) -> str:
    return ", ".join(map(str, faces)) or "nothing"
