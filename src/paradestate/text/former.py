"""Former versions of a file: copies in the folder `.former` beside it, each with its time."""

import datetime
import re
from dataclasses import dataclass
from pathlib import Path

FORMER = ".former"

_NAME = re.compile(
    r"(?P<file>.+)\.(?P<time>\d{4}-\d\d-\d\dT\d\d-\d\d-\d\dZ)(?:\.(?P<number>\d{1,9}))?",
    re.ASCII | re.DOTALL,
)
_TIME = "%Y-%m-%dT%H-%M-%SZ"


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Former:
    """One former version, and when it was replaced by a newer one."""

    at: datetime.datetime
    """In UTC, to the second."""
    number: int
    """Counts those of one second, from 1."""
    path: Path

    @property
    def when(self) -> str:
        """The time in words: `2026-03-05 at 21:14 UTC`."""
        return f"{self.at:%Y-%m-%d at %H:%M} UTC"


def former_versions(file: Path) -> tuple[Former, ...]:
    """The former versions of a file that are kept, newest first."""
    file = file.resolve() if file.is_symlink() else file
    folder = file.parent / FORMER
    if not folder.is_dir():
        return ()
    found = (_former(path, file=file) for path in folder.iterdir() if path.is_file())
    return tuple(sorted((each for each in found if each), reverse=True))


def _former(path: Path, *, file: Path) -> Former | None:
    match = _NAME.fullmatch(path.name)
    if match is None or match["file"] != file.name:
        return None
    try:
        at = datetime.datetime.strptime(match["time"], _TIME).replace(tzinfo=datetime.UTC)
    except ValueError:  # such as the 31st of February
        return None
    return Former(at=at, number=int(match["number"] or 1), path=path)


def free_name(file: Path, *, at: datetime.datetime) -> Path:
    """Where the version of a file that is replaced at that time is kept; nothing is there yet.

    Where the clock went back it is kept after the newest all the same.
    """
    newest = max((former.at for former in former_versions(file)), default=at)
    time = max(at, newest).astimezone(datetime.UTC).strftime(_TIME)
    plain = file.parent / FORMER / f"{file.name}.{time}"
    number, path = 1, plain
    while path.exists():
        number += 1
        path = plain.with_name(f"{plain.name}.{number}")
    return path
