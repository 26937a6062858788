"""The authority vouches for one certificate at one address, and nobody can sign with it again."""

import datetime
import ipaddress
import socket
import ssl
import threading
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.hazmat.primitives.serialization import Encoding

from paradestate.web.phone.addresses import Named
from paradestate.web.phone.authority import NO_NAME
from paradestate.web.phone.certificate import Certificate, certificate

HERE = Named(address=ipaddress.ip_address("127.0.0.1"), name="127.0.0.1")
DESK = Named(address=ipaddress.ip_address("127.0.0.1"), name="desk.home.arpa")


def made(folder: Path, *, named: Named = HERE) -> Certificate:
    return certificate(named, folder=folder, now=datetime.datetime.now(tz=datetime.UTC))


def greeted(kept: Certificate, *, trusted: bytes, name: str) -> None:
    """A greeting over TLS with OpenSSL, which trusts this authority and no other."""
    server = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    server.load_cert_chain(kept.path)
    client = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
    client.load_verify_locations(cadata=trusted)
    one, other = socket.socketpair()

    def answer() -> None:
        try:
            server.wrap_socket(other, server_side=True).close()
        except OSError:
            other.close()

    thread = threading.Thread(target=answer)
    thread.start()
    try:
        client.wrap_socket(one, server_hostname=name).close()
    finally:
        one.close()
        thread.join()


def test_who_trusts_it_trusts_this_computer_at_its_address_and_name(tmp_path: Path) -> None:
    kept = made(tmp_path)
    greeted(kept, trusted=kept.authority, name="127.0.0.1")
    named = made(tmp_path, named=DESK)
    greeted(named, trusted=named.authority, name="desk.home.arpa")


def test_who_trusts_another_computer_s_does_not_trust_this_one(tmp_path: Path) -> None:
    kept, other = made(tmp_path / "a"), made(tmp_path / "b")
    with pytest.raises(ssl.SSLCertVerificationError):
        greeted(kept, trusted=other.authority, name="127.0.0.1")


def test_at_another_address_it_is_not_taken(tmp_path: Path) -> None:
    kept = made(tmp_path)
    with pytest.raises(ssl.SSLCertVerificationError):
        greeted(kept, trusted=kept.authority, name="127.0.0.2")


@pytest.mark.parametrize(
    ("named", "name"), [(HERE, NO_NAME), (DESK, "desk.home.arpa")], ids=["address", "name"]
)
def test_it_may_vouch_for_nothing_else(tmp_path: Path, named: Named, name: str) -> None:
    found = x509.load_der_x509_certificate(made(tmp_path, named=named).authority)
    limits = found.extensions.get_extension_for_class(x509.NameConstraints)
    network = ipaddress.ip_network("127.0.0.1/32")
    assert limits.critical
    assert limits.value.permitted_subtrees == [x509.IPAddress(network), x509.DNSName(name)]
    constraints = found.extensions.get_extension_for_class(x509.BasicConstraints).value
    assert (constraints.ca, constraints.path_length) == (True, 0)


def test_its_key_is_nowhere(tmp_path: Path) -> None:
    kept = made(tmp_path)
    (path,) = tmp_path.iterdir()
    text = path.read_text()
    assert text.count("PRIVATE KEY-----") == 2  # begin and end of one
    found = x509.load_der_x509_certificate(kept.authority)
    assert found.public_bytes(Encoding.PEM).decode() in text
