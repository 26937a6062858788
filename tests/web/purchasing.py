"""The page of purchases as a browser without JavaScript sees it, and folders to look at with it."""

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass
from html import unescape
from pathlib import Path
from typing import Self
from urllib.parse import urlencode

from httpx2 import Response
from starlette.testclient import TestClient

from paradestate.core.force import Force
from paradestate.core.money import amount_text
from paradestate.core.order import OrderProblem
from paradestate.core.source import Pack, Source
from paradestate.journeys.check import Checked
from paradestate.journeys.order import OrderJourney
from paradestate.web.application import application, new_site
from paradestate.web.site import Site

HOST = "127.0.0.1:8765"
NOW = datetime.datetime(2026, 11, 27, 9, 0, tzinfo=datetime.UTC)
NOTHING_FOUND = OrderJourney(
    checked=Checked(force=Force(title="None", raise_=None), findings=(), texts={}), want={}
)
_TAG = re.compile(r"<[^>]+>")


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """An answer of the page."""

    response: Response

    @property
    def status(self) -> int:
        """The status of the answer."""
        return self.response.status_code

    @property
    def html(self) -> str:
        """The text of the page with its tags."""
        return self.response.text

    @property
    def text(self) -> str:
        """What can be read on it, drawings too."""
        return " ".join(unescape(_TAG.sub(" ", self.html)).split())

    @property
    def address(self) -> str:
        """Where it leads on to, or the address it has."""
        return self.response.headers.get("location", str(self.response.url))

    def form(self, action: str) -> dict[str, str]:
        """The fields of the form that goes to an address that ends so, as they are filled in."""
        found = re.search(
            rf'<form[^>]*action="[^"]*{action}"[^>]*>(.*?)</form>', self.html, re.DOTALL
        )
        assert found is not None, f"no form for {action}"
        fields = re.findall(r'<input[^>]*name="([^"]*)"[^>]*value="([^"]*)"', found[1])
        return {unescape(name): unescape(value) for name, value in fields}


class Caller:
    """A browser that looks at one force."""

    def __init__(self, folder: Path) -> None:
        self.site: Site = new_site(folder, hosts=frozenset({HOST}), clock=lambda: NOW)
        self.name = folder.name
        self._client = TestClient(
            application(self.site),
            base_url=f"http://{HOST}",
            headers={"origin": f"http://{HOST}"},
            follow_redirects=False,
        )

    def __enter__(self) -> Self:
        """From here on the application is told when it begins and ends."""
        self._client.__enter__()
        return self

    def __exit__(self, *_: object) -> None:
        self._client.__exit__()

    def page(self, **query: str) -> Seen:
        """The page with a question."""
        named = {key.replace("_", "-"): value for key, value in query.items()}
        return self.get(f"purchases?{urlencode(named)}")

    def settled(self, path: str = "purchases", **query: str) -> Seen:
        """The page once its search has ended; a busy machine may take longer than a page waits."""
        named = {key.replace("_", "-"): value for key, value in query.items()}
        while True:
            seen = self.get(f"{path}?{urlencode(named)}" if named else path)
            if "data-progress" not in seen.html:
                return seen
            search = self.site.searches.found(seen.form("/stop")["search"])
            assert search is not None
            assert search.wait(60)

    def get(self, path: str) -> Seen:
        """What is at an address of the force, or at a whole address."""
        whole = path if path.startswith(("/", "http")) else f"/forces/{self.name}/{path}"
        return Seen(response=self._client.get(whole))

    def post(self, path: str, fields: Mapping[str, str]) -> Seen:
        """What a form is answered with."""
        answer = self._client.post(f"/forces/{self.name}/{path}", data=dict(fields))
        return Seen(response=answer)

    def sent(self, seen: Seen, path: str, **changed: str) -> Seen:
        """What a form of a page is answered with when it is sent with some fields changed."""
        named = {key.replace("_", "-"): value for key, value in changed.items()}
        return self.post(path, {**seen.form(path), **named})


def folder_of(problem: OrderProblem, folder: Path) -> Path:
    """A force that lacks just what a problem wants, and can buy it where the problem says."""
    folder.mkdir(parents=True)
    kinds = {kind for _, pack in problem.packs() for kind in pack.holds} | set(problem.want)
    lines = [
        "format: 1",
        "title: Long list",
        f"figures: {{{', '.join(f'{kind}: {{}}' for kind in sorted(kinds))}}}",
        f"stands: {{group: {{base: none, figures: {_counts(problem.want)}}}}}",
        "formations: {whole: {parts: {group: 1}}}",
        "raise: {formation: whole}",
        "sources:",
    ]
    for source in problem.sources.values():
        lines += _source_lines(source)
    (folder / "force.yaml").write_text("\n".join(lines) + "\n", encoding="utf-8")
    return folder


def _source_lines(source: Source) -> list[str]:
    def money(amount: int) -> str:
        return amount_text(amount, source.currency)

    carriage = ", ".join(f"{money(at)}: {money(each)}" for at, each in source.carriage.items())
    discount = ", ".join(f"{money(at)}: {each * 100}%" for at, each in source.discount.items())
    lines = [
        f"  {source.name}:",
        f"    currency: {source.currency}",
        f"    carriage: {{{carriage}}}",
        f"    discount: {{{discount}}}",
        "    packs:",
    ]
    return [*lines, *(_pack_line(pack, source=source) for pack in source.packs.values())]


def _pack_line(pack: Pack, *, source: Source) -> str:
    price = amount_text(pack.price, source.currency)
    lots = ", ".join(
        f"{size}: {amount_text(cost, source.currency)}" for size, cost in pack.multibuy.items()
    )
    multibuy = f", multibuy: {{{lots}}}" if lots else ""
    return f"      {pack.name}: {{price: {price}, holds: {_counts(pack.holds)}{multibuy}}}"


def _counts(numbers: Mapping[str, int]) -> str:
    return f"{{{', '.join(f'{name}: {number}' for name, number in numbers.items())}}}"
