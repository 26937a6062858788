"""The certificate: for one address, private, short-lived, and made anew when it won't do."""

import datetime
import hashlib
import ipaddress
import os
import ssl
from pathlib import Path
from stat import S_IMODE

import pytest
from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import Encoding, load_pem_private_key

from paradestate.text.error import FileError
from paradestate.web.phone.addresses import Named
from paradestate.web.phone.certificate import Certificate, certificate

NOW = datetime.datetime(2026, 3, 1, 19, 30, tzinfo=datetime.UTC)
DAY = datetime.timedelta(days=1)
HOME = Named(address=ipaddress.ip_address("192.168.7.20"), name="192.168.7.20")
DESK = Named(address=HOME.address, name="desk.home.arpa")


def made(
    folder: Path, *, named: Named = HOME, now: datetime.datetime = NOW
) -> tuple[Certificate, x509.Certificate]:
    answer = certificate(named, folder=folder, now=now)
    return answer, x509.load_pem_x509_certificate(answer.path.read_bytes())


def test_it_is_for_the_address_and_signed_by_an_authority_of_its_own(tmp_path: Path) -> None:
    answer, found = made(tmp_path)
    names = found.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    assert list(names) == [x509.IPAddress(HOME.address)]
    found.verify_directly_issued_by(x509.load_der_x509_certificate(answer.authority))
    constraints = found.extensions.get_extension_for_class(x509.BasicConstraints).value
    assert not constraints.ca
    key = found.public_key()
    assert isinstance(key, ec.EllipticCurvePublicKey)
    assert isinstance(key.curve, ec.SECP256R1)
    assert answer.why_new == "there was none yet"


def test_a_name_is_in_it_beside_the_address(tmp_path: Path) -> None:
    _, found = made(tmp_path, named=DESK)
    names = found.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    assert list(names) == [x509.DNSName("desk.home.arpa"), x509.IPAddress(HOME.address)]


def test_it_lives_397_days(tmp_path: Path) -> None:
    answer, found = made(tmp_path)
    assert found.not_valid_after_utc - found.not_valid_before_utc == 397 * DAY
    assert answer.ends == NOW + 396 * DAY


def test_its_fingerprint_is_the_digest_that_a_browser_shows(tmp_path: Path) -> None:
    answer, _ = made(tmp_path)
    first = _after(answer.path, "-----BEGIN CERT").split("-----BEGIN CERT")[0]
    plain = ssl.PEM_cert_to_DER_cert("-----BEGIN CERT" + first)
    assert answer.fingerprint.replace(":", "").lower() == hashlib.sha256(plain).hexdigest()
    assert answer.fingerprint.count(":") == 31


def _after(path: Path, mark: str) -> str:
    return path.read_text().split(mark, 1)[1]


def test_nobody_else_can_read_it(tmp_path: Path) -> None:
    before = os.umask(0)
    try:
        answer, _ = made(tmp_path / "state" / "paradestate")
    finally:
        os.umask(before)
    assert S_IMODE(answer.path.stat().st_mode) == 0o600
    assert S_IMODE(answer.path.parent.stat().st_mode) == 0o700
    assert [path.name for path in answer.path.parent.iterdir()] == ["certificate-192.168.7.20.pem"]


def test_a_server_can_be_started_with_it(tmp_path: Path) -> None:
    answer, _ = made(tmp_path)
    ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER).load_cert_chain(answer.path)


def test_it_is_kept_until_thirty_days_before_its_end(tmp_path: Path) -> None:
    first, _ = made(tmp_path)
    kept, _ = made(tmp_path, now=NOW + 366 * DAY)
    assert (kept.fingerprint, kept.why_new) == (first.fingerprint, "")
    anew, _ = made(tmp_path, now=NOW + 366 * DAY + datetime.timedelta(seconds=1))
    assert anew.fingerprint != first.fingerprint
    assert anew.why_new == "the time of the one before is over, or nearly"


def test_a_clock_set_back_makes_another(tmp_path: Path) -> None:
    first, _ = made(tmp_path)
    anew, _ = made(tmp_path, now=NOW - 2 * DAY)
    assert anew.fingerprint != first.fingerprint


def test_each_address_and_name_has_its_own(tmp_path: Path) -> None:
    first, _ = made(tmp_path)
    other, _ = made(tmp_path, named=DESK)
    sixth = Named(address=ipaddress.ip_address("fd00::5"), name="fd00::5")
    third, _ = made(tmp_path, named=sixth)
    assert len({each.fingerprint for each in (first, other, third)}) == 3
    assert third.path.name == "certificate-fd00--5.pem"
    again, _ = made(tmp_path)
    assert (again.fingerprint, again.why_new) == (first.fingerprint, "")


def test_one_of_another_address_is_not_taken(tmp_path: Path) -> None:
    first, _ = made(tmp_path)
    moved = Named(address=ipaddress.ip_address("192.168.7.21"), name="192.168.7.21")
    first.path.rename(tmp_path / "certificate-192.168.7.21.pem")
    anew, _ = made(tmp_path, named=moved)
    assert anew.why_new == "the one before was for another address"


def test_a_key_that_others_could_read_is_used_no_longer(tmp_path: Path) -> None:
    first, _ = made(tmp_path)
    first.path.chmod(0o640)
    anew, found = made(tmp_path)
    assert anew.why_new == "others could read the key of the one before"
    key = load_pem_private_key(anew.path.read_bytes(), password=None)
    assert key.public_key() == found.public_key()
    assert anew.fingerprint != first.fingerprint
    assert S_IMODE(anew.path.stat().st_mode) == 0o600


def test_what_is_no_certificate_is_replaced(tmp_path: Path) -> None:
    first, _ = made(tmp_path)
    first.path.write_text("nonsense")
    anew, _ = made(tmp_path)
    assert anew.why_new == "the one before can't be understood"


def test_a_key_of_another_certificate_is_seen(tmp_path: Path) -> None:
    first, _ = made(tmp_path / "a")
    other, _ = made(tmp_path / "b")
    key = first.path.read_text().split("-----BEGIN CERT")[0]
    first.path.write_text(key + "-----BEGIN CERT" + _after(other.path, "-----BEGIN CERT"))
    anew, _ = made(tmp_path / "a")
    assert anew.why_new == "the one before doesn't go with its key"


def test_one_of_a_time_when_nobody_vouched_for_it_is_made_anew(tmp_path: Path) -> None:
    first, found = made(tmp_path)
    key = first.path.read_text().split("-----BEGIN CERT")[0]
    first.path.write_bytes(key.encode() + found.public_bytes(Encoding.PEM))
    anew, _ = made(tmp_path)
    assert anew.why_new == "no phone could be made to trust the one before"


def test_one_with_an_authority_that_did_not_sign_it_is_made_anew(tmp_path: Path) -> None:
    first, found = made(tmp_path / "a")
    other, _ = made(tmp_path / "b")
    key = first.path.read_text().split("-----BEGIN CERT")[0]
    wrong = x509.load_der_x509_certificate(other.authority).public_bytes(Encoding.PEM)
    first.path.write_bytes(key.encode() + found.public_bytes(Encoding.PEM) + wrong)
    anew, _ = made(tmp_path / "a")
    assert anew.why_new == "no phone could be made to trust the one before"


def test_a_folder_that_cannot_be_made_is_said(tmp_path: Path) -> None:
    (tmp_path / "state").write_text("a file")
    with pytest.raises(FileError, match="o phone"):
        certificate(HOME, folder=tmp_path / "state" / "paradestate", now=NOW)
