"""Writing entries as a person would, for tests of what is read from them."""

import datetime
from pathlib import Path
from typing import Any
from uuid import uuid4

from paradestate.core.journal_entry import EntryKind
from paradestate.core.log_request import LogRequest
from paradestate.journeys.log import Logged, log

TODAY = datetime.date(2026, 3, 5)
NOW = datetime.datetime(2026, 3, 5, 20, 15, tzinfo=datetime.UTC)


def tried(folder: Path, kind: EntryKind, **said: Any) -> Logged:  # noqa: ANN401 - of a request
    """What comes of an entry, whether or not it is written."""
    asked = {"id": str(uuid4()), "kind": kind, "written": NOW, "on": TODAY, **said}
    return log(folder, today=TODAY, request=LogRequest(**asked))


def logged(folder: Path, kind: EntryKind, **said: Any) -> Logged:  # noqa: ANN401 - the same
    """What comes of an entry that has to be written without a stop."""
    answer = tried(folder, kind, **said)
    assert answer.entry is not None
    return answer
