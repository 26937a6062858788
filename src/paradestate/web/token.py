"""The token that every form carries, so that no other page can fill it in (CSRF).

It is bound to a cookie of the browser and to the secret of this run, and differs each time, so
that it can't be guessed from the size of compressed answers.
"""

import hmac
from hashlib import sha256
from secrets import token_hex

COOKIE = "parade-state"
FIELD = "token"
BYTES = 16


def new_cookie() -> str:
    """A value for the cookie that nobody can guess."""
    return token_hex(BYTES)


def token_for(cookie: str, *, secret: bytes) -> str:
    """A token for one form."""
    salt = token_hex(BYTES)
    return salt + _proof(salt, cookie=cookie, secret=secret)


def is_token(token: str, *, cookie: str, secret: bytes) -> bool:
    """Whether a token was made for that cookie in this run."""
    salt, proof = token[: 2 * BYTES], token[2 * BYTES :]
    right = _proof(salt, cookie=cookie, secret=secret)
    return bool(cookie) and hmac.compare_digest(proof.encode(), right.encode())


def _proof(salt: str, *, cookie: str, secret: bytes) -> str:
    return hmac.new(secret, f"{salt}\n{cookie}".encode(), sha256).hexdigest()
