"""A browser without scripts: it keeps its cookie, and fills in the forms that it was shown."""

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from html import unescape
from html.parser import HTMLParser
from pathlib import Path

from httpx2 import Response
from starlette.testclient import TestClient

from paradestate.web.application import application, new_site

HOST = "127.0.0.1:8765"
NOW = datetime.datetime(2026, 3, 5, 21, 14, 9, tzinfo=datetime.UTC)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenForm:
    """A form of a page: where it sends to, and its fields as they stand."""

    action: str = ""
    method: str = "get"
    fields: Mapping[str, str] = field(default_factory=dict)


class _Forms(HTMLParser):
    """Takes the forms out of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.forms: list[SeenForm] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = {name: value or "" for name, value in attrs}
        match tag:
            case "form":
                self.forms.append(SeenForm(action=said["action"], method=said["method"]))
            case "input" if said.get("type") != "file":
                self._put(said["name"], said.get("value", ""))
            case "select":
                self._put(said["name"], "")
            case _:
                pass

    def _put(self, name: str, value: str) -> None:
        last = self.forms[-1]
        self.forms[-1] = replace(last, fields={**last.fields, name: value})


class Visitor:
    """Somebody who looks at the pages of a folder, each request a second after the one before."""

    def __init__(self, folder: Path, *, force: str = "") -> None:
        self.folder = folder
        self.force = force or folder.name
        self.seconds = 0
        self.seen: list[str] = []
        """The page with forms that was shown last, as its text."""
        site = new_site(folder, hosts=frozenset({HOST}), clock=self._clock)
        self.client = TestClient(
            application(site), base_url=f"http://{HOST}", headers={"origin": f"http://{HOST}"}
        )

    def _clock(self) -> datetime.datetime:
        return NOW + datetime.timedelta(seconds=self.seconds)

    def get(self, page: str, **query: str) -> Response:
        """A page of the force, or what is at a whole address."""
        return self._shown(self.client.get(self._address(page), params=query or None))

    def post(
        self,
        page: str,
        fields: Mapping[str, str | list[str]],
        *,
        files: Mapping[str, tuple[str, bytes]] | None = None,
        seen: Response | None = None,
    ) -> Response:
        """Just these fields, with the token of a page that was seen, else of the last one."""
        shown = self.seen[-1] if seen is None else seen.text
        (token, *_) = re.findall(r'name="token" value="([0-9a-f]+)"', shown)
        data = {"token": token, **fields}
        return self._shown(self.client.post(self._address(page), data=data, files=files or {}))

    def fill(
        self,
        seen: Response,
        action: str,
        *,
        filled: Mapping[str, str] | None = None,
        file: tuple[str, bytes] | None = None,
        which: int = 0,
    ) -> Response:
        """Fills in the form of a page that sends to `action`; fields that it lacks are an error."""
        form = [each for each in forms_of(seen) if each.action.endswith(f"/{action}")][which]
        unknown = set(filled or {}) - set(form.fields)
        assert not unknown, unknown
        # A browser writes these otherwise into a form with files (HTML, multipart/form-data).
        assert not [name for name in form.fields if set(name) & set('"\r\n')]
        sent = {**form.fields, **(filled or {})}
        files = {"file": file} if file else None
        return self._shown(self.client.post(form.action, data=sent, files=files))

    def hidden(self, name: str) -> str:
        """What the first field of that name of the last page holds."""
        found = re.search(rf'name="{name}" value="([^"]*)"', self.seen[-1])
        assert found is not None
        return unescape(found[1])

    def _address(self, page: str) -> str:
        return page if page.startswith("/") else f"/forces/{self.force}/{page}"

    def _shown(self, answer: Response) -> Response:
        self.seconds += 1
        if 'name="token"' in answer.text:
            self.seen[:] = [answer.text]
        return answer


def forms_of(seen: Response) -> list[SeenForm]:
    """The forms of a page, in its order."""
    reader = _Forms()
    reader.feed(seen.text)
    return reader.forms


def words_of(seen: Response) -> str:
    """What a page says, without its marks and drawings, one blank between words."""
    text = re.sub(r"<(head|script|style|svg)\b.*?</\1>", " ", seen.text, flags=re.DOTALL)
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", text)).split())
