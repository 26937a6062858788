"""The digest that the journal's chain is made of, against the published examples of SHA-256.

Source: NIST, "Secure Hash Standard", FIPS 180-4, with its examples (SHA256.pdf): "abc", the
message of 448 bits and a million times "a"; the empty message from the short-message vectors of
the NIST Cryptographic Algorithm Validation Program. Written down from memory.
"""

from hashlib import sha256

import pytest

from paradestate.core.digest_chain import digest_of

PUBLISHED = {
    b"": "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
    b"abc": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
    b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq": (
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"
    ),
    b"a" * 1_000_000: "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
}


@pytest.mark.parametrize("message", PUBLISHED, ids=["empty", "abc", "448 bits", "a million"])
def test_the_published_examples(message: bytes) -> None:
    assert sha256(message).hexdigest() == PUBLISHED[message]


def test_the_chain_uses_that_digest_and_nothing_else() -> None:
    before = PUBLISHED[b""]
    plain = sha256(b"\n".join([before.encode(), b"id", "naïve 兵".encode()])).hexdigest()
    assert digest_of(before=before, id="id", text="naïve 兵") == plain
