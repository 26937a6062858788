"""A collection with something beside it that must never be seen, and what no answer may do."""

import datetime
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from uuid import uuid4

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.journeys.log import log
from paradestate.web.guard import HEADERS
from tests.journeys.played_losses import SECTIONS, out, play, with_campaign
from tests.web.asking import Answer
from tests.web.server import marenz

NOW = datetime.datetime(2026, 3, 1, 19, 30, tzinfo=datetime.UTC)
BESIDE = "the-secret-that-lies-beside-the-collection"
SCRIPT = b"<script>alert(1)</script>"

CLUB = """\
club:
  boxes:
    box 9: {keeper: Ann, holds: {light truck: 6}}
    box 3: {keeper: secretary, holds: {rifleman: 4}, counted: yes}
    box 4: {keeper: secretary, holds: {officer: 1}, counted: yes}
  loans:
    box 4: {to: borrower 7, since: 2026-02-01, until: 2026-02-20}
  bookings:
    river game: {hours: 2026-03-05 20:00-22:00, needs: {rifleman: 16}, borrows: [box 3]}
    hill game: {hours: 2026-03-05 20:00-23:00, needs: {rifleman: 16}}
    Sunday show: {hours: 2026-03-08 10:00-16:00, needs: {light truck: 3}, borrows: [box 9]}
    second evening: {hours: 2026-03-12 19:00-22:30, needs: {rifleman: 24}}
"""

LINKED = "format: 1\ntitle: Linked\nfigures: {rifleman: {}}\n"

UNAVAILABLE = 503
MOST_SENT = 8_000_000
"""Bytes of one answer."""


class Grounds:
    """A force with a journal in a folder, a file and a link beside it, and a copy to go back to."""

    def __init__(self, place: Path) -> None:
        self.root = place / "grounds"
        self.collection = self.root / "armies"
        self._kept = place / "kept"
        self.collection.mkdir(parents=True)
        folder = marenz(self.collection)
        (folder / "club.yaml").write_text(CLUB)
        counted = LogRequest(
            id=str(uuid4()),
            kind=EntryKind.COUNTED,
            written=NOW,
            on=NOW.date(),
            figures={"rifleman": 51, "officer": 3},
            to_stage="painted",
        )
        log(folder, today=NOW.date(), request=counted)
        with_campaign(folder)
        play(folder, *map(out, SECTIONS[:3]), on=NOW.date())
        for outside in (self.root, self.root.parent):
            (outside / "secret.txt").write_text(BESIDE)
        # Links that lead out, as a folder that was copied from elsewhere may hold. The one that is
        # read as a file of a force is a stop, so that it stands in a force of its own.
        (folder / "link-out").symlink_to(self.root)
        linked = self.collection / "linked"
        linked.mkdir()
        (linked / "force.yaml").write_text(LINKED)
        (linked / "link-out.yaml").symlink_to(self.root / "secret.txt")
        shutil.copytree(self.root, self._kept, symlinks=True)
        self._before = self._signature()

    def put_back(self) -> None:
        """Has everything be as it was, where anything changed."""
        if self._signature() != self._before:
            # Moved away first: a search that still reads the journal may itself take a file of the
            # database away while the folder is being removed.
            gone = self.root.rename(tempfile.mkdtemp(dir=self._kept.parent))
            shutil.rmtree(gone, ignore_errors=True)
            shutil.copytree(self._kept, self.root, symlinks=True)
            self._before = self._signature()

    def outside(self) -> dict[str, str]:
        """What lies beside the collection."""
        return {
            str(path.relative_to(self.root)): path.read_text() if path.is_file() else ""
            for path in sorted(self.root.rglob("*"))
            if self.collection not in (path, *path.parents)
        }

    def _signature(self) -> tuple[tuple[str, int, int], ...]:
        return tuple(self._states())

    def _states(self) -> Iterator[tuple[str, int, int]]:
        """Each file with its time and size; what a reader of a journal takes away is gone."""
        for path in sorted(self.root.rglob("*")):
            with suppress(FileNotFoundError):
                state = path.lstat()
                yield str(path), state.st_mtime_ns, state.st_size


def faults(answer: Answer) -> list[str]:
    """What is wrong with an answer, whatever was asked."""
    names = {name for name, _ in answer.headers}
    values = b"".join(value for _, value in answer.headers)
    policy = {name: answer.header(name) for name in HEADERS}
    is_page = answer.header("content-type").startswith("text/html")
    tried = {
        # 503 is how a failure of the world is said in words, such as a file that is gone
        f"the status is {answer.status}": answer.status >= 500 and answer.status != UNAVAILABLE,
        "it holds what lies beside the collection": BESIDE.encode() in answer.body,
        "it lacks the content policy": policy != HEADERS,
        "a header was smuggled in": b"x-injected" in names or b"\r" in values or b"\n" in values,
        "a script of somebody else is in the page": is_page and SCRIPT in answer.body,
        "it is too long": len(answer.body) > MOST_SENT,
    }
    return [what for what, is_so in tried.items() if is_so]
