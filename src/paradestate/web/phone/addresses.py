"""The addresses of this machine at which a phone may reach it, and what is known of each."""

import enum
import ipaddress
import socket
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias, assert_never

Address: TypeAlias = ipaddress.IPv4Address | ipaddress.IPv6Address

SOMEWHERE = ((socket.AF_INET, "203.0.113.1"), (socket.AF_INET6, "2001:db8::1"))
"""Addresses of no machine (RFC 5737, RFC 3849); nothing is ever sent to them."""


class Reach(enum.Enum):
    """Who can reach an address."""

    MACHINE = "this computer alone"
    NETWORK = "every device in the same network"
    INTERNET = "possibly everyone on the internet"


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """One address of this machine, by the name it was asked for."""

    address: Address
    name: str
    """A host name, or the address itself in its shortest form."""

    @property
    def host(self) -> str:
        """As it stands in a web address: an IPv6 address in brackets."""
        return f"[{self.name}]" if ":" in self.name else self.name


class AddressError(Exception):
    """What was named is no single address of this machine; says what to name instead."""


def reach(address: Address) -> Reach:
    """Who can reach a machine at this address, as far as the address says."""
    if address.is_loopback:
        return Reach.MACHINE
    return Reach.INTERNET if address.is_global else Reach.NETWORK


def reach_words(address: Address) -> str:
    """Who can reach this computer there, as a sentence."""
    match reach(address):
        case Reach.MACHINE:
            return "Only this computer can reach this address; a phone can't."
        case Reach.NETWORK:
            return "Every device in the same network can reach this address, and nobody outside it."
        case Reach.INTERNET:
            return (
                "This address is one of the internet: unless a firewall is in the way, everyone "
                "can reach it."
            )
        case unknown:
            assert_never(unknown)


def own_addresses() -> tuple[Address, ...]:
    """The addresses at which other devices reach this machine, those of a home network first.

    They are what the machine would send from, and what its own name leads to: another one that
    it has can still be named.
    """
    found = {*_sent_from(), *_of_name(socket.gethostname())}
    usable = filter(_is_usable, found)
    return tuple(sorted(usable, key=lambda each: (each.is_global, each.version, int(each))))


def only_address() -> Named:
    """The one address of this machine in a network of its own.

    Raises AddressError where there is none or more than one: which one is for the owner to say.
    """
    private = [each for each in own_addresses() if reach(each) is Reach.NETWORK]
    version = min((each.version for each in private), default=None)
    found = [each for each in private if each.version == version]
    if len(found) == 1:
        return Named(address=found[0], name=str(found[0]))
    if found:
        listed = ", ".join(map(str, found))
        raise AddressError(
            f"This computer has several addresses: {listed}. Say which one the phone can reach, "
            f"such as --phone {found[0]}."
        )
    raise AddressError(
        "No address of this computer in a network of its own was found: it is in no network, or "
        "only straight on the internet. Join the network that the phone is in, or name the "
        "address, as --phone ADDRESS."
    )


def named_address(name: str) -> Named:
    """The address of this machine that a name or the address itself stands for.

    Raises AddressError where it leads nowhere, to another machine, or to every address at once.
    """
    found = {each for each in _of_name(name) if _is_own(each)}
    if not found:
        raise AddressError(
            f"{name} is no address of this computer. It has: {_listed(own_addresses())}."
        )
    address = min(found, key=lambda each: (each.version, int(each)))
    if address.is_unspecified:
        raise AddressError(
            f"{name} stands for every address at once, so that it couldn't be said who reaches "
            f"it. Name one: {_listed(own_addresses())}."
        )
    is_number = _parsed(name) is not None
    return Named(address=address, name=str(address) if is_number else name.lower().rstrip("."))


def _listed(addresses: Iterable[Address]) -> str:
    return ", ".join(map(str, addresses)) or "none that other devices reach"


def _is_usable(address: Address) -> bool:
    """Not this machine alone, and not an IPv6 address that means another thing on each cable."""
    is_bound_to_cable = address.version == 6 and address.is_link_local  # noqa: PLR2004 - IPv6
    return not (address.is_loopback or address.is_unspecified or is_bound_to_cable)


def _sent_from() -> Iterable[Address]:
    """What the machine would send from, asked of its routes without sending anything."""
    for family, far in SOMEWHERE:
        try:
            with socket.socket(family, socket.SOCK_DGRAM) as asked:
                asked.connect((far, 9))
                yield ipaddress.ip_address(asked.getsockname()[0])
        except OSError:
            continue  # no way out by this family: there is nothing to name


def _of_name(name: str) -> Iterable[Address]:
    try:
        answers = socket.getaddrinfo(name, None, type=socket.SOCK_STREAM)
    except (OSError, UnicodeError):
        return
    yield from filter(None, (_parsed(str(answer[4][0])) for answer in answers))


def _parsed(text: str) -> Address | None:
    try:
        return ipaddress.ip_address(text)
    except ValueError:
        return None


def _is_own(address: Address) -> bool:
    """Whether this machine can be reached there: the system itself lets it be taken."""
    family = socket.AF_INET if address.version == 4 else socket.AF_INET6  # noqa: PLR2004 - IPv4
    try:
        with socket.socket(family, socket.SOCK_DGRAM) as tried:
            tried.bind((str(address), 0))
    except OSError:
        return False
    return True
