"""The addresses at which a phone may reach this machine."""

import ipaddress
import socket

import pytest

from paradestate.web.phone import addresses
from paradestate.web.phone.addresses import (
    Address,
    AddressError,
    Named,
    Reach,
    named_address,
    only_address,
    own_addresses,
    reach,
    reach_words,
)

HOME = ipaddress.ip_address("192.168.7.20")
OTHER = ipaddress.ip_address("10.0.0.5")
HOME_6 = ipaddress.ip_address("fd00::5")
PUBLIC = ipaddress.ip_address("8.8.4.4")
LOOPBACK = ipaddress.ip_address("127.0.0.1")


@pytest.mark.parametrize(
    ("address", "expected"),
    [
        ("127.0.0.1", Reach.MACHINE),
        ("::1", Reach.MACHINE),
        ("192.168.7.20", Reach.NETWORK),
        ("10.0.0.5", Reach.NETWORK),
        ("169.254.3.4", Reach.NETWORK),
        ("fd00::5", Reach.NETWORK),
        ("8.8.4.4", Reach.INTERNET),
        ("2a00::1", Reach.INTERNET),
    ],
)
def test_who_reaches_an_address_is_told_by_the_address(address: str, expected: Reach) -> None:
    known = ipaddress.ip_address(address)
    assert reach(known) is expected
    assert "can" in reach_words(known)


def test_an_address_of_the_internet_is_called_one() -> None:
    assert "everyone" in reach_words(PUBLIC)
    assert "nobody outside it" in reach_words(HOME)


def family(address: Address) -> socket.AddressFamily:
    return socket.AF_INET if address.version == 4 else socket.AF_INET6


def test_neither_this_machine_alone_nor_everything_is_among_its_addresses() -> None:
    for each in own_addresses():
        assert not each.is_loopback
        assert not each.is_unspecified
        with socket.socket(family(each), socket.SOCK_DGRAM) as tried:
            tried.bind((str(each), 0))


def test_without_any_way_out_only_its_name_leads_to_it(monkeypatch: pytest.MonkeyPatch) -> None:
    def no_way_out(*_: object) -> None:
        raise OSError

    monkeypatch.setattr(socket.socket, "connect", no_way_out)
    monkeypatch.setattr(addresses, "_of_name", lambda _: (HOME, LOOPBACK))
    assert own_addresses() == (HOME,)


def test_the_addresses_of_a_network_of_its_own_come_first(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(addresses, "_sent_from", lambda: (PUBLIC, HOME_6))
    monkeypatch.setattr(addresses, "_of_name", lambda _: (HOME, ipaddress.ip_address("fe80::1")))
    assert own_addresses() == (HOME, HOME_6, PUBLIC)


def test_the_one_address_is_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(addresses, "own_addresses", lambda: (HOME, HOME_6, PUBLIC))
    assert only_address() == Named(address=HOME, name="192.168.7.20")
    monkeypatch.setattr(addresses, "own_addresses", lambda: (HOME_6,))
    assert only_address().host == "[fd00::5]"


def test_between_two_addresses_nobody_guesses(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(addresses, "own_addresses", lambda: (OTHER, HOME))
    with pytest.raises(AddressError, match=r"10\.0\.0\.5, 192\.168\.7\.20.*--phone 10\.0\.0\.5"):
        only_address()


@pytest.mark.parametrize("found", [(), (PUBLIC,)])
def test_an_address_of_the_internet_is_never_taken_unasked(
    monkeypatch: pytest.MonkeyPatch, found: tuple[Address, ...]
) -> None:
    monkeypatch.setattr(addresses, "own_addresses", lambda: found)
    with pytest.raises(AddressError, match=r"name the address, as --phone ADDRESS"):
        only_address()


def test_an_address_of_this_machine_can_be_named() -> None:
    assert named_address("127.0.0.1") == Named(address=LOOPBACK, name="127.0.0.1")
    by_name = named_address("LocalHost")
    assert by_name.address.is_loopback
    assert by_name.name == by_name.host == "localhost"


@pytest.mark.parametrize("name", ["8.8.4.4", "no-such-host.invalid", "", "a" * 300, "1\0"])
def test_what_is_not_of_this_machine_is_refused(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(addresses, "own_addresses", lambda: (HOME,))
    if name == "":
        monkeypatch.setattr(socket, "getaddrinfo", _nothing)
    with pytest.raises(AddressError, match=r"no address of this computer. It has: 192\.168\.7\.20"):
        named_address(name)


def _nothing(*_: object, **__: object) -> object:
    raise socket.gaierror


@pytest.mark.parametrize("name", ["0.0.0.0", "::"])  # noqa: S104 - refused
def test_every_address_at_once_is_refused(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(addresses, "own_addresses", lambda: ())
    with pytest.raises(AddressError, match=r"every address at once.*none that other devices"):
        named_address(name)
