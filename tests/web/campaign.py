"""Many requests that are nearly right, from this computer and from a device nobody let in."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path

from hypothesis import HealthCheck, Phase, given, settings

from paradestate.web.application import application, new_site, site_of_phone
from paradestate.web.listening import LOOPBACK
from paradestate.web.phone.addresses import named_address
from paradestate.web.phone.listener import PhoneListener, phone_listener
from tests.web.asking import Answer, Asking
from tests.web.crawl import crawled, with_browser_headers
from tests.web.grounds import NOW, Grounds, faults
from tests.web.mutation import Sent, mutated

# They are drawn first and sent after that, so that what an answer does has no say in what is drawn.
DRAWING = settings(
    phases=(Phase.generate,), suppress_health_check=list(HealthCheck), database=None, deadline=None
)
OF_EACH = 4
"""Requests made of one that is drawn."""
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

    def changed(self, number: int) -> Iterator[Sent]:
        """So many of these requests, each changed, other ones each time unless in a test.

        To draw one takes longer than to answer it: so each is sent as it was drawn, and crossed
        with the next one.
        """
        drawn: list[Sent] = []

        @settings(DRAWING, max_examples=-(-number // OF_EACH))
        @given(mutated(self.sources))
        def draw(request: Sent) -> None:
            drawn.append(request)

        draw()
        for each, following in zip(drawn, (*drawn[1:], drawn[0]), strict=True):
            yield each
            yield replace(each, headers=following.headers)
            yield replace(each, body=following.body)
            yield replace(each, method=following.method, headers=following.headers)


@dataclass(frozen=True, slots=True, kw_only=True)
class Campaign:
    """Both listeners, and the ground that they stand on."""

    grounds: Grounds
    own: Side
    stranger: Side

    def own_faults(self, number: int) -> Iterator[tuple[str, Sent]]:
        """What broke, or showed or changed what lies outside the collection."""
        outside = self.grounds.outside()
        for request in self.own.changed(number):
            for fault in faults(self.own.sent(request)):
                yield fault, request
            if self.grounds.outside() != outside:
                yield "it changed what lies outside", request
            self.grounds.put_back()

    def stranger_faults(self, number: int) -> Iterator[tuple[str, Sent]]:
        """What broke, showed anything of the force, or let the device in."""
        for request in self.stranger.changed(number):
            answer = self.stranger.sent(request)
            for fault in faults(answer):
                yield fault, request
            if b"Marenz" in answer.body:
                yield "it shows the force", request
            if "paradestate-device" in answer.header("set-cookie"):
                yield "it lets the device in", request


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
