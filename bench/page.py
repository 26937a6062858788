"""How long a page takes: folders with 10,000 entries, served by the command and asked.

The example, and for the bench alone a battalion of 200 stands as well.

Conditions: the server is a process of its own, this one asks it one request after another on one
connection, compressed as a browser would have it. Each page once before, so that it is in mind;
then in turn, and after every tenth request a stand is brought on or that undone, which is measured
until the parade is there again; the same on the bench, until its new ladder is there. In the same
run the count of that folder without a memory, as a command makes it. Prints a table of medians and
95th percentiles in milliseconds and of medians beside that count, which tells a slow page from a
busy machine, and how many bytes the first load of a browser takes.
Run as `python -m bench.page`.
"""

import datetime
import gzip
import json
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from http.client import HTTPConnection, HTTPResponse
from pathlib import Path
from statistics import median, quantiles
from time import perf_counter
from urllib.parse import urlencode, urljoin, urlsplit
from uuid import UUID

from bench.bench_work import KINDS, battalion_text
from paradestate.core.choice import Choice
from paradestate.core.holdings import Holdings
from paradestate.core.journal_entry import EntryKind, JournalEntry
from paradestate.core.journal_text import entry_text
from paradestate.journeys.count import count
from paradestate.journeys.new import new_from_example
from paradestate.store.address import JournalFile
from paradestate.store.opening import opened
from tests.forces import HEAD

ENTRIES = 10_000
UNFINISHED = 500
"""Entries at the end after which figures stay painted, so that there are stands to bring on."""

ROUNDS = 20
CHANGES = 20
STAGES = ("in packet", "assembled", "undercoated", "painted", "based")
SHEETS = ("parade", "organisation", "stands", "holdings", "purchases", "bench", "files", "journal")
RECORD = Path("build/page.json")


def raised(folder: Path, *, kinds: Sequence[str]) -> None:
    """Adds 10,000 entries: figures received, brought on stage by stage, some sold."""
    today = datetime.datetime.now(tz=datetime.UTC).date()
    with opened(JournalFile(path=folder / "journal.sqlite"), writing=True):
        pass
    with opened(JournalFile(path=folder / "journal.sqlite"), writing=True) as journal:
        for number in range(ENTRIES):
            entry = _entry(number, kind_of=kinds[number // 10 % len(kinds)], today=today)
            journal.append(id=entry.id, text=entry_text(entry))


def raised_battalion(folder: Path) -> None:
    """A battalion of 200 stands of ten kinds."""
    folder.mkdir()
    text = f"{HEAD}{battalion_text(1)}".replace("  set up:", "  week: 6 h\n  set up:")
    (folder / "force.yaml").write_text(text, encoding="utf-8")


def _entry(number: int, *, kind_of: str, today: datetime.date) -> JournalEntry:
    leaves, comes, minutes = Holdings(), Holdings(), 0
    last = len(STAGES) - 1 if number >= ENTRIES - UNFINISHED else len(STAGES)
    match number % 10:
        case 0:
            kind, comes = EntryKind.RECEIVED, _four(kind_of, "in packet")
        case step if step < last:
            kind = EntryKind.MOVED
            leaves, comes = _four(kind_of, STAGES[step - 1]), _four(kind_of, STAGES[step])
        case step if step == last == len(STAGES):
            kind, leaves = EntryKind.SOLD, _four(kind_of, "based")
        case _:
            kind, minutes = EntryKind.SESSION, 30
    return JournalEntry(
        id=str(UUID(int=number + 1, version=4)),
        kind=kind,
        written=datetime.datetime(2020, 1, 1, tzinfo=datetime.UTC),
        on=today - datetime.timedelta(days=1 + (ENTRIES - 1 - number) // 5),
        leaves=leaves,
        comes=comes,
        minutes=minutes,
    )


def _four(kind: str, stage: str) -> Holdings:
    return Holdings(figures={kind: {stage: 4}})


@contextmanager
def served(folder: Path) -> Iterator[HTTPConnection]:
    """A connection to the command that serves a folder."""
    command = [sys.executable, "-m", "paradestate", "serve", str(folder), "--port", "0"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, bufsize=1) as server:
        assert server.stdout is not None
        try:
            found = re.search(r"http://([\d.]+):(\d+)/", server.stdout.readline())
            assert found is not None
            yield HTTPConnection(found[1], int(found[2]))
        finally:  # else what goes wrong here would wait for the server for ever
            server.terminate()


class Browser:
    """Asks one request after another, and keeps the cookie."""

    def __init__(self, connection: HTTPConnection) -> None:
        self._connection = connection
        self._headers = {"Accept-Encoding": "gzip"}

    def get(self, path: str) -> tuple[str, float, int]:
        """The text of a page, its seconds, and its bytes as they came."""
        return self._asked("GET", path)

    def post(self, path: str, fields: Mapping[str, str]) -> tuple[str, float, int]:
        """The page after a form was sent and its answer followed, and the seconds of both."""
        origin = f"http://{self._connection.host}:{self._connection.port}"
        headers = {"Origin": origin, "Content-Type": "application/x-www-form-urlencoded"}
        return self._asked("POST", path, body=urlencode(fields), headers=headers)

    def _asked(
        self, method: str, path: str, *, body: str = "", headers: Mapping[str, str] | None = None
    ) -> tuple[str, float, int]:
        start = perf_counter()
        self._connection.request(method, path, body or None, {**self._headers, **(headers or {})})
        answer = self._connection.getresponse()
        data = answer.read()
        if answer.status == 303:
            text, _, size = self.get(urljoin(path, answer.headers["location"]).partition("#")[0])
            return text, perf_counter() - start, size
        assert answer.status == 200, (method, path, answer.status, data[:300])
        self._keep_cookie(answer)
        seconds = perf_counter() - start
        is_packed = answer.headers.get("content-encoding") == "gzip"
        return (
            (gzip.decompress(data) if is_packed else data).decode(errors="replace"),
            seconds,
            len(data),
        )

    def _keep_cookie(self, answer: HTTPResponse) -> None:
        cookie = answer.headers.get("set-cookie")
        if cookie:
            self._headers["Cookie"] = cookie.partition(";")[0]


def first_load(browser: Browser, page: str) -> int:
    """Bytes of a page and of everything that it asks for, fonts too."""
    text, _, size = browser.get(page)
    asked = set(re.findall(r'(?:href|src)="(/static/[^"]+)"', text))
    styles = [browser.get(path)[0] for path in asked if path.endswith(".css")]
    asked |= {
        f"/static/{name}" for style in styles for name in re.findall(r"url\(([^)]+)\)", style)
    }
    return size + sum(browser.get(path)[2] for path in asked)


def change(browser: Browser, page: str, *, actions: tuple[str, ...]) -> float:
    """Sends the first form with one of these actions; the seconds until its page is there again."""
    text, _, _ = browser.get(page)
    for form in re.findall(r"<form.*?</form>", text, re.DOTALL):
        action = re.search(r'action="([^"]+)"', form)
        if action is not None and urlsplit(action[1]).path.endswith(actions):
            fields = dict(re.findall(r'name="([^"]+)" value="([^"]*)"', form))
            if 'name="stands"' in form:
                fields["stands"] = "1"
            return browser.post(urlsplit(action[1]).path, fields)[1]
    raise AssertionError(f"{page} has no form for {actions}")


def measured(folder: Path) -> dict[str, list[float]]:
    """Name of what was asked for to seconds of each time."""
    taken: dict[str, list[float]] = {sheet: [] for sheet in SHEETS}
    stand = urlencode({"stand": "No 2 Company / 1 Platoon / 1 Section"})
    with served(folder) as connection:
        browser, below = Browser(connection), f"/forces/{folder.name}"
        for sheet in SHEETS:
            browser.get(f"{below}/{sheet}")
        for _ in range(ROUNDS):
            for sheet in SHEETS:
                taken[sheet].append(browser.get(f"{below}/{sheet}")[1])
        taken["stand brought on, or undone"] = [
            change(browser, f"{below}/parade?{stand}", actions=("parade/bring-on", "parade/undo"))
            for _ in range(CHANGES)
        ]
        taken["evening at the bench, or undone"] = evenings(browser, f"{below}/bench")
        print(f"first load of the parade: {first_load(browser, f'{below}/parade'):,} bytes")  # noqa: T201
    today = datetime.datetime.now(tz=datetime.UTC).date()
    taken["count by a command"] = []
    for _ in range(5):
        start = perf_counter()
        count(folder, today=today, choice=Choice())
        taken["count by a command"].append(perf_counter() - start)
    return taken


def evenings(browser: Browser, page: str) -> list[float]:
    """Seconds from an evening written down, or undone, to its new ladder."""
    ways = ("session", "undo") * (CHANGES // 2)
    return [change(browser, page, actions=(f"bench/{way}",)) for way in ways]


def evenings_of_battalion(folder: Path) -> list[float]:
    """The same for a battalion."""
    with served(folder) as connection:
        return evenings(Browser(connection), f"/forces/{folder.name}/bench")


def main() -> None:
    """Measures all and prints the table."""
    with tempfile.TemporaryDirectory() as place:
        folder, battalion = Path(place) / "marenz", Path(place) / "battalion"
        new_from_example(folder, name="marenz")
        raised(folder, kinds=("rifleman",))
        raised_battalion(battalion)
        raised(battalion, kinds=[f"kind {number}" for number in range(KINDS)])
        taken = measured(folder)
        taken["evening at the bench of a battalion"] = evenings_of_battalion(battalion)
    sheets = [seconds for sheet in SHEETS for seconds in taken[sheet]]
    rows = {"all sheets": sheets, **taken}
    a_count = median(taken["count by a command"])
    print("| asked for | times | median ms | 95th percentile ms | in counts |")  # noqa: T201
    print("|---|---|---|---|---|")  # noqa: T201
    for name, seconds in rows.items():
        late = quantiles(seconds, n=20)[-1]
        print(  # noqa: T201
            f"| {name} | {len(seconds)} | {1000 * median(seconds):.1f} | {1000 * late:.1f} | "
            f"{median(seconds) / a_count:.2f} |"
        )
    RECORD.parent.mkdir(exist_ok=True)
    RECORD.write_text(json.dumps(taken), encoding="utf-8")


if __name__ == "__main__":
    main()
