"""A browser without a window: it keeps its cookie, and fills in the forms that it was shown."""

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from html import unescape
from pathlib import Path

from starlette.testclient import TestClient

from paradestate.web.application import application, new_site

HOST = "127.0.0.1:8765"
NOW = datetime.datetime(2026, 3, 5, 21, 14, 9, tzinfo=datetime.UTC)

_TOKEN = re.compile(r'name="token" value="([0-9a-f]+)"')


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What came back."""

    status_code: int
    content: bytes
    headers: Mapping[str, str]

    @property
    def text(self) -> str:
        """The page."""
        return self.content.decode("utf-8", "replace")


@dataclass(frozen=True, slots=True, kw_only=True)
class Visitor:
    """Somebody who looks at the pages of a folder."""

    client: TestClient
    seen: list[str] = field(default_factory=list)
    """The page that was shown last, as its text."""

    def get(self, path: str) -> Answer:
        """A page."""
        answer = self.client.get(path)
        return self._shown(
            Answer(status_code=answer.status_code, content=answer.content, headers=answer.headers)
        )

    def post(
        self,
        path: str,
        fields: Mapping[str, str | list[str]],
        *,
        files: Mapping[str, tuple[str, bytes]] | None = None,
    ) -> Answer:
        """A form sent with the token of the page that was shown last."""
        (token, *_) = _TOKEN.findall(self.seen[-1])
        answer = self.client.post(
            path,
            data={"token": token, **fields},
            files=files or {},
            headers={"origin": f"http://{HOST}"},
        )
        return self._shown(
            Answer(status_code=answer.status_code, content=answer.content, headers=answer.headers)
        )

    def _shown(self, answer: Answer) -> Answer:
        if 'name="token"' in answer.text:
            self.seen[:] = [answer.text]
        return answer

    def hidden(self, name: str) -> str:
        """What the first hidden field of that name holds."""
        found = re.search(rf'name="{name}" value="([^"]*)"', self.seen[-1])
        assert found is not None
        return unescape(found[1])


def visitor(folder: Path) -> Visitor:
    """Somebody who opens a folder."""
    site = new_site(folder, hosts=frozenset({HOST}), clock=lambda: NOW)
    return Visitor(client=TestClient(application(site), base_url=f"http://{HOST}"))


def words(answer: Answer) -> str:
    """What a page says, without its marks."""
    text = re.sub(r"<(script|style|svg).*?</\1>", " ", answer.text, flags=re.DOTALL)
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", text)).split())
