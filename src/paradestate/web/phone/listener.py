"""The phone's listener: where it is, what it shows of itself, and who may come in."""

import datetime
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlencode

from paradestate.sheet.svg import Drawing
from paradestate.web.phone.addresses import Named, Reach, reach, reach_words
from paradestate.web.phone.certificate import Certificate, certificate
from paradestate.web.phone.devices import Devices
from paradestate.web.phone.gate import PAIR
from paradestate.web.phone.pairing import Pairing
from paradestate.web.phone.qr import qr_code

TLS_PORT = 443
"""The port that a browser leaves out (RFC 9110, 4.2.2)."""

PAIRS_IN_A_ROW = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class PhoneListener:
    """One address of this machine at which phones are answered."""

    named: Named
    port: int
    certificate: Certificate
    devices: Devices
    pairing: Pairing

    @property
    def host(self) -> str:
        """What a browser sends as the host."""
        return self._host(self.named.host)

    @property
    def hosts(self) -> frozenset[str]:
        """Every host that is answered: the name that was asked for, and the address."""
        plain = Named(address=self.named.address, name=str(self.named.address))
        return frozenset({self.host, self._host(plain.host)})

    @property
    def url(self) -> str:
        """Where a phone finds it."""
        return f"https://{self.host}/"

    @property
    def reach(self) -> str:
        """Who can reach it, as a sentence."""
        return reach_words(self.named.address)

    @property
    def is_of_internet(self) -> bool:
        """Whether it may be reached from outside the network."""
        return reach(self.named.address) is Reach.INTERNET

    @property
    def fingerprint_rows(self) -> tuple[str, ...]:
        """The fingerprint of the certificate in rows that can be compared one by one."""
        return _rows(self.certificate.fingerprint)

    @property
    def authority_rows(self) -> tuple[str, ...]:
        """The same of the authority that a phone may install."""
        return _rows(self.certificate.authority_fingerprint)

    def code(self, word: str) -> Drawing:
        """The QR code that brings a phone to the page of pairing, with the word."""
        address = f"{self.url.rstrip('/')}{PAIR}?{urlencode({'word': word})}"
        return qr_code(address, words=f"QR code of {self.url.rstrip('/')}{PAIR} with the word")

    def _host(self, name: str) -> str:
        return name if self.port == TLS_PORT else f"{name}:{self.port}"


def _rows(fingerprint: str) -> tuple[str, ...]:
    pairs = fingerprint.split(":")
    starts = range(0, len(pairs), PAIRS_IN_A_ROW)
    return tuple(" ".join(pairs[start : start + PAIRS_IN_A_ROW]) for start in starts)


def phone_listener(
    named: Named, *, port: int, folder: Path, now: datetime.datetime
) -> PhoneListener:
    """A listener with its certificate and list of devices in a folder.

    Raises FileError where the folder can't be read or written.
    """
    return PhoneListener(
        named=named,
        port=port,
        certificate=certificate(named, folder=folder, now=now),
        devices=Devices(folder),
        pairing=Pairing(),
    )
