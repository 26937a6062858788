"""Many requests that are nearly right, from this computer and from a device nobody let in."""

from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path

from hypothesis import event

from paradestate.web.application import application, new_site, site_of_phone
from paradestate.web.listening import LOOPBACK
from paradestate.web.phone.addresses import named_address
from paradestate.web.phone.listener import PhoneListener, phone_listener
from tests.web.asking import Answer, Asking
from tests.web.crawl import crawled, with_browser_headers
from tests.web.grounds import NOW, Grounds, faults
from tests.web.mutation import Sent

HOST = f"{LOOPBACK}:8765"
PAIR = Sent(method="POST", target=b"/pair", body=b"word=abcd-efgh&name=a+phone")


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """One listener, and what is asked of it before anything is changed."""

    asking: Asking
    sources: Sequence[Sent]

    def sent(self, request: Sent) -> Answer:
        """The answer to a request, just as it is."""
        return self.asking.raw(
            request.method, request.target, headers=request.headers, body=request.body
        )

    def tried(self, requests: Iterable[Sent]) -> Iterator[Answer]:
        """The answers, none of which has a fault."""
        for request in requests:
            answer = self.sent(request)
            event(f"status {answer.status}")
            assert (faults(answer), request) == ([], request)
            yield answer


@dataclass(frozen=True, slots=True, kw_only=True)
class Campaign:
    """Both listeners, and the ground that they stand on."""

    grounds: Grounds
    own: Side
    stranger: Side

    def try_own(self, requests: Iterable[Sent]) -> None:
        """None breaks anything, or shows or changes what lies outside the collection."""
        before = self.grounds.outside()
        for _ in self.own.tried(requests):
            pass
        assert self.grounds.outside() == before
        self.grounds.put_back()

    def try_stranger(self, requests: Iterable[Sent]) -> None:
        """None shows anything of the force, or lets the device in."""
        for answer in self.stranger.tried(requests):
            assert b"Marenz" not in answer.body
            assert "paradestate-device" not in answer.header("set-cookie")


@contextmanager
def prepared(place: Path) -> Iterator[Campaign]:
    """A campaign in a folder; a word is good, and another device is paired."""
    grounds = Grounds(place)
    listener = phone_listener(named_address(LOOPBACK), port=8766, folder=place / "state", now=NOW)
    listener.devices.admit("another", day=NOW.date())
    listener.pairing.begin()
    with _asking(grounds, listener) as (own, stranger):
        found = crawled(own, starts=("/", "/start"))
        # what is asked on the computer, asked from there; and the page of pairing
        there = [Sent(method=each.method, target=each.target, body=each.body) for each in found]
        asked = [*there, *crawled(stranger, starts=("/pair",)), *([PAIR] * 10)]
        yield Campaign(
            grounds=grounds,
            own=Side(asking=own, sources=with_browser_headers(found, asking=own)),
            stranger=Side(asking=stranger, sources=with_browser_headers(asked, asking=stranger)),
        )


@contextmanager
def _asking(grounds: Grounds, listener: PhoneListener) -> Iterator[tuple[Asking, Asking]]:
    site = new_site(grounds.collection, hosts=frozenset({HOST}), clock=lambda: NOW)
    computer = application(replace(site, phone=listener))
    phone = application(site_of_phone(site, listener=listener))
    with (
        Asking(computer, url=f"http://{HOST}") as own,
        Asking(phone, url=f"https://{listener.host}") as stranger,
    ):
        yield own, stranger
