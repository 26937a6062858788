"""Whoever keeps the holdings: looks at pages and sends forms, as a browser without scripts."""

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

NOW = datetime.datetime(2026, 3, 5, 20, 15, tzinfo=datetime.UTC)
HOST = "testserver"


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
        self._select = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = {name: value or "" for name, value in attrs}
        match tag:
            case "form":
                self.forms.append(SeenForm(action=said["action"], method=said["method"]))
            case "input" if said.get("type") != "file":
                self._put(said["name"], said.get("value", ""))
            case "select":
                self._select = said["name"]
                self._put(said["name"], "")
            case _:
                pass

    def _put(self, name: str, value: str) -> None:
        last = self.forms[-1]
        self.forms[-1] = replace(last, fields={**last.fields, name: value})


class Keeper:
    """Looks after the holdings of one force."""

    def __init__(self, folder: Path, *, force: str = "") -> None:
        self.force = force or folder.name
        site = new_site(folder, hosts=frozenset({HOST}), clock=lambda: NOW)
        self._client = TestClient(application(site), base_url=f"http://{HOST}")

    def see(self, page: str) -> Response:
        """A page of the force."""
        return self._client.get(f"/forces/{self.force}/{page}")

    def send(
        self,
        seen: Response,
        action: str,
        *,
        file: tuple[str, bytes] | None = None,
        which: int = 0,
        **filled: str,
    ) -> Response:
        """Fills in the form of a page that sends to `action`, and sends it.

        Fields are named as keywords, those of the owner's things by `fill`.
        """
        return self.fill(seen, action, filled=filled, file=file, which=which)

    def fill(
        self,
        seen: Response,
        action: str,
        *,
        filled: Mapping[str, str],
        file: tuple[str, bytes] | None = None,
        which: int = 0,
    ) -> Response:
        """The same with the fields in a mapping; those that the page lacks are an error."""
        form = [each for each in forms_of(seen) if each.action.endswith(f"/{action}")][which]
        unknown = set(filled) - set(form.fields)
        assert not unknown, unknown
        # A browser writes these otherwise into a form with files (HTML, multipart/form-data).
        assert not [name for name in form.fields if set(name) & set('"\r\n')]
        sent = {**form.fields, **filled}
        return self._client.post(
            form.action,
            data=sent,
            files={"file": file} if file else None,
            headers={"origin": f"http://{HOST}"},
        )


def forms_of(seen: Response) -> list[SeenForm]:
    """The forms of a page, in its order."""
    reader = _Forms()
    reader.feed(seen.text)
    return reader.forms


def words_of(seen: Response) -> str:
    """What a page says, one blank between words."""
    text = re.sub(r"<(head|svg)\b.*?</\1>", " ", seen.text, flags=re.DOTALL)
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", text)).split())
