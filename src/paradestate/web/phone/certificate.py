"""The certificate of this machine at one address: made here, signed by itself alone.

Nobody vouches for it, so that a browser warns; its fingerprint is what can be compared.
The life and the fields are those of RFC 5280, with a life short enough for every browser.
"""

import datetime
import ipaddress
from dataclasses import dataclass
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import (
    Encoding,
    NoEncryption,
    PrivateFormat,
    load_pem_private_key,
)
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from paradestate.text.private_file import ExposedError, read_private, write_private
from paradestate.web.phone.addresses import Named

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


def certificate(named: Named, *, folder: Path, now: datetime.datetime) -> Certificate:
    """The certificate of this machine at this address; made anew where the old one won't do.

    Raises FileError where it can't be read or written.
    """
    path = folder / _file_name(named)
    found, why_new = _kept(path, named=named, now=now)
    if found is None:
        found = _made(path, named=named, now=now)
    digits = found.fingerprint(hashes.SHA256()).hex(":").upper()
    return Certificate(
        path=path, fingerprint=digits, ends=found.not_valid_after_utc, why_new=why_new
    )


def _file_name(named: Named) -> str:
    """A file for each address, so that a computer that is here and there keeps both.

    It holds the key too, so that the two can't be of different days.
    """
    return f"certificate-{named.name.replace(':', '-')}.pem"


def _kept(
    path: Path, *, named: Named, now: datetime.datetime
) -> tuple[x509.Certificate | None, str]:
    """The certificate in the file, or None and why it won't do."""
    try:
        kept = read_private(path)
    except ExposedError:
        return None, "others could read the key of the one before"
    if kept is None:
        return None, "there was none yet"
    try:
        found = x509.load_pem_x509_certificate(kept)
        key = load_pem_private_key(kept, password=None)
        alternatives = found.extensions.get_extension_for_class(x509.SubjectAlternativeName)
    except (ValueError, TypeError, x509.ExtensionNotFound):
        return None, "the one before can't be understood"
    if key.public_key() != found.public_key():
        return None, "the one before doesn't go with its key"
    if alternatives.value != _names(named):
        return None, "the one before was for another address"
    if not found.not_valid_before_utc <= now <= found.not_valid_after_utc - LEAST_LEFT:
        return None, "the time of the one before is over, or nearly"
    return found, ""


def _made(path: Path, *, named: Named, now: datetime.datetime) -> x509.Certificate:
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "Parade State on this computer")])
    usage = x509.KeyUsage(
        digital_signature=True,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        key_cert_sign=False,
        crl_sign=False,
        encipher_only=False,
        decipher_only=False,
    )
    signed = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - BEFORE)
        .not_valid_after(now + LIFE)
        .add_extension(_names(named), critical=False)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(usage, critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .sign(key, hashes.SHA256())
    )
    secret = key.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
    write_private(path, secret + signed.public_bytes(Encoding.PEM))
    return signed


def _names(named: Named) -> x509.SubjectAlternativeName:
    """What the certificate is for: the address, and the name where it was asked for by one."""
    address = x509.IPAddress(ipaddress.ip_address(str(named.address)))
    if named.name == str(named.address):
        return x509.SubjectAlternativeName([address])
    return x509.SubjectAlternativeName([x509.DNSName(named.name), address])
