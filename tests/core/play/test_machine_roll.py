"""Dice of the machine: nobody steers them, anybody rolls them again, every face is as likely."""

import hashlib
import hmac
import re
import shlex
import subprocess
import sys
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from paradestate.core.dice import Dice
from paradestate.core.play.machine_roll import (
    BYTES,
    MachineRoll,
    differences,
    digest_of_secret,
    face_of,
    faces_of,
    is_word,
    thrown,
    whole_word,
)
from paradestate.text.dice import MOST_SIDES, read_dice
from paradestate.text.slip import Slip

SECRET = bytes(range(32))
BLOCK = 64


def dice(text: str) -> Dice:
    read = read_dice(text)
    assert not isinstance(read, Slip)
    return read


def by_the_book(key: bytes, message: bytes) -> bytes:
    """HMAC as RFC 2104 writes it, without Python's own."""
    key = (hashlib.sha256(key).digest() if len(key) > BLOCK else key).ljust(BLOCK, b"\0")
    inner = hashlib.sha256(bytes(each ^ 0x36 for each in key) + message).digest()
    return hashlib.sha256(bytes(each ^ 0x5C for each in key) + inner).digest()


def pocket(secret: bytes, word: str, *, sides: list[int]) -> list[int]:
    """The recipe of the docs, written down anew."""
    faces: list[int] = []
    counter, heap = 0, b""
    for number in sides:
        while True:
            if not heap:
                counter += 1
                heap = by_the_book(secret, f"{word}:{counter}".encode())
            byte, heap = heap[0], heap[1:]
            if byte < 256 // number * number:
                faces.append(byte % number + 1)
                break
    return faces


@settings(max_examples=40)
@given(
    secret=st.binary(min_size=1, max_size=80),
    word=st.text(min_size=1, max_size=8).filter(is_word),
    sides=st.lists(st.integers(2, MOST_SIDES), max_size=60),
)
def test_a_second_writing_of_the_recipe_shows_the_same_faces(
    *, secret: bytes, word: str, sides: list[int]
) -> None:
    assert list(faces_of(secret, word, sides=sides)) == pocket(
        secret, whole_word(word), sides=sides
    )


def test_openssl_gives_the_same_digest_and_the_same_bytes() -> None:
    """The command that the docs name; Debian brings it with PostgreSQL, which the tests want."""
    told = subprocess.run(
        ["openssl", "dgst", "-sha256", "-mac", "HMAC", "-macopt", f"hexkey:{SECRET.hex()}"],
        input=b"heron:1",
        capture_output=True,
        check=True,
    )
    first = bytes.fromhex(told.stdout.split()[-1].decode())
    assert first == by_the_book(SECRET, b"heron:1")
    plain = [each % 6 + 1 for each in first if each < 252]
    assert list(faces_of(SECRET, "heron", sides=[6] * len(plain))) == plain
    digest = subprocess.run(
        ["openssl", "dgst", "-sha256"], input=SECRET, capture_output=True, check=True
    )
    assert digest.stdout.split()[-1].decode() == digest_of_secret(SECRET)


RFC_4231 = (
    (b"\x0b" * 20, b"Hi There", "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7"),
    (
        b"Jefe",
        b"what do ya want for nothing?",
        "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
    ),
    (
        b"\xaa" * 20,
        b"\xdd" * 50,
        "773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe",
    ),
    (
        bytes(range(1, 26)),
        b"\xcd" * 50,
        "82558a389a443c0ea4cc819899f2083a85f0faa3e578f8077a2e3ff46729665b",
    ),
    (
        b"\xaa" * 131,
        b"Test Using Larger Than Block-Size Key - Hash Key First",
        "60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54",
    ),
    (
        b"\xaa" * 131,
        (
            b"This is a test using a larger than block-size key and a larger than block-size "
            b"data. The key needs to be hashed before being used by the HMAC algorithm."
        ),
        "9b09ffa71b942fcb27635fbcd5b0e944bfdc63644f0713938a7f51535c3a35e2",
    ),
)
"""Test cases 1 to 4, 6 and 7 of RFC 4231 for HMAC-SHA-256 (5 is cut short): key, data, HMAC.

Written down from memory, and agreeing with two ways of making it.
"""

FIPS_180 = (
    (b"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
    (b"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
    (
        b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ),
)
"""NIST's examples of SHA-256 for FIPS 180 (one block, two blocks), and the empty message of its
validation lists. Written down from memory, and agreeing with `openssl`."""


@pytest.mark.parametrize(("key", "data", "told"), RFC_4231)
def test_hmac_agrees_with_the_published_examples(key: bytes, data: bytes, told: str) -> None:
    assert by_the_book(key, data).hex() == told
    assert hmac.digest(key, data, "sha256").hex() == told


@pytest.mark.parametrize(("message", "told"), FIPS_180)
def test_the_digest_of_a_secret_agrees_with_the_published_examples(
    message: bytes, told: str
) -> None:
    assert digest_of_secret(message) == told
    plain = ["openssl", "dgst", "-sha256"]
    done = subprocess.run(plain, input=message, capture_output=True, check=True)
    assert done.stdout.split()[-1].decode() == told


def test_each_face_comes_of_equally_many_bytes() -> None:
    for sides in range(1, MOST_SIDES + 1):
        counted = Counter(face_of(byte, sides=sides) for byte in range(BYTES))
        passed_over = counted.pop(None, 0)
        assert counted == dict.fromkeys(range(1, sides + 1), BYTES // sides)
        assert passed_over == BYTES % sides


def test_dice_are_rolled_in_the_order_in_which_they_are_written() -> None:
    assert thrown(dice("18 + 2d6 - best 1 of 2d4 + 1d12")) == (6, 6, 4, 4, 12)
    assert thrown(dice("12")) == ()


def test_the_word_counts_in_one_form_only() -> None:
    assert whole_word(" fiche\u0301 ") == "fich\u00e9"
    assert faces_of(SECRET, "fiche\u0301", sides=[6] * 9) == faces_of(
        SECRET, "fich\u00e9 ", sides=[6] * 9
    )
    assert not is_word("  ")
    assert not is_word("a\nb")
    assert not is_word("a" * 101)
    assert is_word("a" * 100)


ROLL = MachineRoll(
    digest=digest_of_secret(SECRET),
    word="heron",
    secret=SECRET.hex(),
    dice=dice("18 + 2d6"),
    faces=faces_of(SECRET, "heron", sides=(6, 6)),
)


def test_a_roll_that_is_as_it_was_made_agrees() -> None:
    assert list(differences(ROLL)) == []
    assert list(differences(replace(ROLL, dice=dice("3"), faces=()))) == []


def test_another_secret_word_or_face_doesn_t_agree() -> None:
    other = bytes(32)
    (shown,) = differences(replace(ROLL, faces=(9, 9)))
    assert shown.endswith(", not 9, 9")
    assert list(differences(replace(ROLL, faces=()))) != []
    (bound, *_) = differences(replace(ROLL, secret=other.hex()))
    assert bound == "the secret isn't the one that was bound to"
    said = ("crane", "stork", "gull", "teal")
    assert any(list(differences(replace(ROLL, word=each))) for each in said)


PAGE = Path(__file__).parents[3] / "docs" / "understand" / "honest-dice.md"


def test_the_script_of_the_docs_shows_the_faces_that_the_docs_show(tmp_path: Path) -> None:
    """The page is for strangers: its script is all that they need."""
    text = PAGE.read_text(encoding="utf-8")
    (script,) = re.findall(r"```python\n(.*?)```", text, flags=re.DOTALL)
    (tmp_path / "again.py").write_text(script, encoding="utf-8")
    ((line, shown),) = re.findall(
        r"^\$ python (again\.py .*)\n((?:.*\n)+?)```", text, flags=re.MULTILINE
    )
    words = [sys.executable, *shlex.split(line)]
    done = subprocess.run(words, cwd=tmp_path, capture_output=True, check=True, text=True)
    assert done.stdout == shown
    _, secret, word, *sides = shlex.split(line)
    faces = faces_of(bytes.fromhex(secret), word, sides=map(int, sides))
    assert shown == f"{digest_of_secret(bytes.fromhex(secret))}\n{' '.join(map(str, faces))}\n"
