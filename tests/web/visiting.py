"""A visitor of pages for tests: follows addresses and sends forms as a browser would."""

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass
from html import unescape
from pathlib import Path

from starlette.testclient import TestClient

from paradestate.web.application import application, new_site

NOW = datetime.datetime(2026, 3, 5, 21, 14, 9, tzinfo=datetime.UTC)
HOST = "testserver"


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What came back, after going where it led."""

    status: int
    path: str
    text: str


class Visitor:
    """Visits a force of a folder; every request is a second later than the one before."""

    def __init__(self, folder: Path, *, force: str = "marenz") -> None:
        self.force = force
        self.seconds = 0
        site = new_site(folder, hosts=frozenset({HOST}), clock=self._clock)
        self.client = TestClient(application(site), base_url=f"http://{HOST}")

    def _clock(self) -> datetime.datetime:
        return NOW + datetime.timedelta(seconds=self.seconds)

    def see(self, page: str, **query: str) -> Seen:
        """A page of the force."""
        self.seconds += 1
        answer = self.client.get(f"/forces/{self.force}/{page}", params=query)
        return Seen(status=answer.status_code, path=answer.url.path, text=answer.text)

    def send(self, page: str, fields: Mapping[str, str], *, seen: Seen) -> Seen:
        """A form of a page that was seen."""
        self.seconds += 1
        token = re.search(r'name="token" value="([^"]+)"', seen.text)
        assert token is not None
        answer = self.client.post(
            f"/forces/{self.force}/{page}",
            data={"token": token[1], **fields},
            headers={"origin": f"http://{HOST}"},
        )
        return Seen(status=answer.status_code, path=answer.url.path, text=answer.text)


def hidden_fields(seen: Seen, action: str) -> dict[str, str]:
    """The hidden fields of the form that sends to an address that ends so."""
    form = re.search(rf'<form [^>]*action="[^"]*/{action}".*?</form>', seen.text, re.DOTALL)
    assert form is not None
    pairs = re.findall(r'type="hidden" name="([^"]*)" value="([^"]*)"', form[0])
    return {unescape(name): unescape(value) for name, value in pairs}


def words_of(seen: Seen) -> str:
    """What a page says, without its marks, one blank between words."""
    text = re.sub(r"<(style|script|head)\b.*?</\1>", " ", seen.text, flags=re.DOTALL)
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", text)).split())
