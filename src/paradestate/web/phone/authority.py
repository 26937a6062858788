"""Who vouches for this computer's certificate: an authority that signs once and is then gone.

A browser keeps no page of an address at which it warned (W3C Service Workers), so a phone that is
to work with no signal has to trust the certificate. What it can install is an authority. The key of
this one is never written down and is forgotten as soon as it has signed, so that nobody, not even
who steals all that this computer holds, can make another certificate that the phone would take.
Beside that it is limited to the one address (RFC 5280, 4.2.1.10) and may sign no other authority.
"""

import datetime
import ipaddress
from dataclasses import dataclass

from cryptography import x509
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from paradestate.web.phone.addresses import Named

LONGEST = 64
"""Letters of a common name (RFC 5280, A.1)."""

NO_NAME = "invalid"
"""A name that leads nowhere (RFC 6761, 6.4), where the certificate is for an address alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """From when to when."""

    first: datetime.datetime
    last: datetime.datetime


def vouched_for(
    key: ec.EllipticCurvePublicKey, named: Named, *, span: Span
) -> tuple[x509.Certificate, x509.Certificate]:
    """The certificate of this key at this address, and the authority that signed it alone."""
    passing = ec.generate_private_key(ec.SECP256R1())
    authority = _authority(passing, named, span=span)
    certificate = (
        _begun("Parade State on this computer", span=span)
        .issuer_name(authority.subject)
        .public_key(key)
        .add_extension(alternatives(named), critical=False)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(_usage(signs=False), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(_of_issuer(passing.public_key()), critical=False)
        .sign(passing, hashes.SHA256())
    )
    return certificate, authority


def _authority(
    passing: ec.EllipticCurvePrivateKey, named: Named, *, span: Span
) -> x509.Certificate:
    words = f"Parade State at {named.name}"[:LONGEST]
    begun = _begun(words, span=span)
    return (
        begun.issuer_name(x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, words)]))
        .public_key(passing.public_key())
        .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .add_extension(_usage(signs=True), critical=True)
        .add_extension(_limits(named), critical=True)
        .add_extension(
            x509.SubjectKeyIdentifier.from_public_key(passing.public_key()), critical=False
        )
        .sign(passing, hashes.SHA256())
    )


def _begun(words: str, *, span: Span) -> x509.CertificateBuilder:
    return (
        x509.CertificateBuilder()
        .subject_name(x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, words)]))
        .serial_number(x509.random_serial_number())
        .not_valid_before(span.first)
        .not_valid_after(span.last)
    )


def _of_issuer(key: ec.EllipticCurvePublicKey) -> x509.AuthorityKeyIdentifier:
    return x509.AuthorityKeyIdentifier.from_issuer_public_key(key)


def _limits(named: Named) -> x509.NameConstraints:
    """The one address, and the one name or none at all."""
    address = ipaddress.ip_network(str(named.address))
    name = NO_NAME if named.name == str(named.address) else named.name
    return x509.NameConstraints([x509.IPAddress(address), x509.DNSName(name)], None)


def alternatives(named: Named) -> x509.SubjectAlternativeName:
    """What the certificate is for: the address, and the name where it was asked for by one."""
    address = x509.IPAddress(ipaddress.ip_address(str(named.address)))
    if named.name == str(named.address):
        return x509.SubjectAlternativeName([address])
    return x509.SubjectAlternativeName([x509.DNSName(named.name), address])


def _usage(*, signs: bool) -> x509.KeyUsage:
    return x509.KeyUsage(
        digital_signature=not signs,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        key_cert_sign=signs,
        crl_sign=False,
        encipher_only=False,
        decipher_only=False,
    )
