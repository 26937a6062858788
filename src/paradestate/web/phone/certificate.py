"""The certificate of this machine at one address, and an authority that signed it alone.

Nobody else vouches for it, so that a browser warns until the authority is installed on it; the
fingerprints of both are what can be compared.
The life and the fields are those of RFC 5280, with a life short enough for every browser.
"""

import datetime
from dataclasses import dataclass
from pathlib import Path

from cryptography import x509
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import (
    Encoding,
    NoEncryption,
    PrivateFormat,
    load_pem_private_key,
)

from paradestate.text.private_file import ExposedError, read_private, write_private
from paradestate.web.phone.addresses import Named
from paradestate.web.phone.authority import Span, alternatives, vouched_for

BEFORE = datetime.timedelta(days=1)
"""A phone whose clock is a little behind takes it too."""
LIFE = datetime.timedelta(days=396)
"""With the day before 397, the most that browsers take."""
LEAST_LEFT = datetime.timedelta(days=30)
"""With less it is made anew, so that it doesn't end while the page is open."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Certificate:
    """A certificate with its key, in a file that only this user can read."""

    path: Path
    fingerprint: str
    """SHA-256 of it, as browsers show it: 32 pairs of hexadecimal digits with colons."""
    ends: datetime.datetime
    why_new: str
    """Why it was made now; empty where it was there. With a new one each phone warns again."""
    authority: bytes
    """What a phone may install so that its browser doesn't warn (DER, RFC 5280)."""
    authority_fingerprint: str


def certificate(named: Named, *, folder: Path, now: datetime.datetime) -> Certificate:
    """The certificate of this machine at this address; made anew where the old one won't do.

    Raises FileError where it can't be read or written.
    """
    path = folder / _file_name(named)
    found, why_new = _kept(path, named=named, now=now)
    if found is None:
        found = _made(path, named=named, now=now)
    signed, authority = found
    return Certificate(
        path=path,
        fingerprint=_digits(signed),
        ends=signed.not_valid_after_utc,
        why_new=why_new,
        authority=authority.public_bytes(Encoding.DER),
        authority_fingerprint=_digits(authority),
    )


def _file_name(named: Named) -> str:
    """A file for each address, so that a computer that is here and there keeps both.

    It holds the key too, so that the two can't be of different days.
    """
    return f"certificate-{named.name.replace(':', '-')}.pem"


def _kept(
    path: Path, *, named: Named, now: datetime.datetime
) -> tuple[tuple[x509.Certificate, x509.Certificate] | None, str]:
    """The certificate in the file and its authority, or None and why they won't do."""
    try:
        kept = read_private(path)
    except ExposedError:
        return None, "others could read the key of the one before"
    if kept is None:
        return None, "there was none yet"
    try:
        found, *above = x509.load_pem_x509_certificates(kept)
        key = load_pem_private_key(kept, password=None)
        names = found.extensions.get_extension_for_class(x509.SubjectAlternativeName)
    except (ValueError, TypeError, x509.ExtensionNotFound):
        return None, "the one before can't be understood"
    if key.public_key() != found.public_key():
        return None, "the one before doesn't go with its key"
    if names.value != alternatives(named):
        return None, "the one before was for another address"
    if not found.not_valid_before_utc <= now <= found.not_valid_after_utc - LEAST_LEFT:
        return None, "the time of the one before is over, or nearly"
    if len(above) != 1 or not _is_signed(found, by=above[0]):
        return None, "no phone could be made to trust the one before"
    return (found, above[0]), ""


def _is_signed(found: x509.Certificate, *, by: x509.Certificate) -> bool:
    try:
        found.verify_directly_issued_by(by)
    except (ValueError, TypeError, InvalidSignature):
        return False
    return True


def _made(
    path: Path, *, named: Named, now: datetime.datetime
) -> tuple[x509.Certificate, x509.Certificate]:
    key = ec.generate_private_key(ec.SECP256R1())
    span = Span(first=now - BEFORE, last=now + LIFE)
    signed, authority = vouched_for(key.public_key(), named, span=span)
    secret = key.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
    write_private(path, secret + b"".join(map(_pem, (signed, authority))))
    return signed, authority


def _pem(signed: x509.Certificate) -> bytes:
    return signed.public_bytes(Encoding.PEM)


def _digits(signed: x509.Certificate) -> str:
    return signed.fingerprint(hashes.SHA256()).hex(":").upper()
