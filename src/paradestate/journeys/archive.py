"""One file with everything of a collection, and back.

collection -> its files and the lines of its journal -> archive
archive -> a folder beside -> renamed into place
"""

import datetime
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from hashlib import file_digest
from itertools import chain, count
from pathlib import Path
from typing import IO

from paradestate.core.digest_chain import Altered, first_altered
from paradestate.core.finding import Finding, Level
from paradestate.core.journal_finding import altered_line
from paradestate.core.log_slip import is_text
from paradestate.core.place import Place
from paradestate.core.sentence.wording import listed
from paradestate.journeys.collection import ELSEWHERE, JOURNAL, collection_of, holds_force
from paradestate.store.address import JournalFile
from paradestate.store.archive import Archive, Manifest, read_archive, write_archive
from paradestate.store.opening import opened
from paradestate.text.error import FileError
from paradestate.text.private_file import state_folder
from paradestate.text.whole_file import fill_new
from paradestate.text.whole_folder import new_folder

NOT_ARCHIVED = frozenset(
    {ELSEWHERE, *(f"{JOURNAL}{more}" for more in ("", "-wal", "-shm", "-journal"))}
)
"""What stands in the archive as lines, or says where the lines are."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Archived:
    """An archive that was written, or brought back."""

    path: Path
    """Of the archive, or of the folder that was brought back."""
    sha256: str
    """Of the archive."""
    manifest: Manifest
    findings: tuple[Finding, ...] = ()


def archive(folder: Path, *, today: datetime.date, target: Path | None = None) -> Archived:
    """Writes everything of a collection into one file, beside its folder if nothing else is said.

    Raises FileError and StoreError; then there is no archive.
    """
    collection = collection_of(folder)
    root = collection.root.resolve()
    if not (collection.has_journal or any(map(holds_force, collection.forces.values()))):
        raise FileError(f"{folder} holds neither a force nor a journal. No archive was made.")
    goal = target or _free_name(root, today=today)
    if goal.resolve().is_relative_to(root):
        raise FileError(f"{goal} would hold itself: give a place outside {collection.root}.")
    with opened(collection.address, writing=False) as journal:
        altered = first_altered(journal.links(), end=journal.head())

        def fill(out: IO[bytes]) -> None:
            write_archive(
                out,
                name=root.name,
                files=dict(_files(root)),
                links=journal.links(),
                end=journal.head(),
            )

        fill_new(goal, fill)
    with read_archive(goal) as made:
        return Archived(
            path=goal,
            sha256=_digest(goal),
            manifest=made.manifest,
            findings=(*_findings(altered, journal=collection.place), *_left_out(root)),
        )


def _free_name(root: Path, *, today: datetime.date) -> Path:
    """A name beside the folder that isn't taken."""
    numbered = (f"-{number}" for number in count(2))
    names = (f"{root.name}-{today}{more}.zip" for more in chain([""], numbered))
    return next(path for path in map(root.with_name, names) if not path.exists())


def _files(root: Path) -> Iterator[tuple[str, Path]]:
    """Every file of a collection by its path in the folder, with what links to files lead to."""
    for path in sorted(root.rglob("*")):
        if path.is_file() and not _is_apart(path, root):
            yield _name_in_archive(path, root), path


def _name_in_archive(path: Path, root: Path) -> str:
    name = path.relative_to(root).as_posix()
    if not is_text(name):
        raise FileError(f"{path!r}: this name isn't text. No archive was made. Give it another.")
    return name


def _is_apart(path: Path, root: Path) -> bool:
    """Whether a file isn't archived: the journal, whose lines are, and what is half made.

    Neither are keys and names of this user, wherever he has had them put.
    """
    parts = path.relative_to(root).parts
    is_half_made = parts[0].startswith(".new-") or path.match(".*.new")
    is_private = path.resolve().is_relative_to(state_folder().resolve())
    return is_half_made or is_private or (path.parent == root and path.name in NOT_ARCHIVED)


def _digest(file: Path) -> str:
    with file.open("rb") as stream:
        return file_digest(stream, "sha256").hexdigest()


def _left_out(root: Path) -> Iterator[Finding]:
    """A warning for each link to a folder, which may lead anywhere."""
    for path in sorted(root.rglob("*")):
        if path.is_symlink() and not path.is_file():
            yield Finding(
                level=Level.WARN,
                code="not-archived",
                message="This link leads to a folder, or nowhere.",
                effect="What it leads to isn't in the archive.",
                hint="Put the folder itself in its place, if it belongs to the collection.",
                place=Place(file=str(path), line=1, column=1),
            )


def _findings(altered: Altered | None, *, journal: Place) -> tuple[Finding, ...]:
    return () if altered is None else (altered_line(altered, journal=journal),)


def restore(file: Path, *, folder: Path | None = None) -> Archived:
    """Brings a collection back from its archive, into a folder that isn't there yet.

    Raises FileError and StoreError; then there is no folder.
    """
    try:
        with read_archive(file) as archived:
            goal = folder or Path(archived.manifest.name)
            with new_folder(goal) as beside:
                findings = _unpacked(archived, beside)
            return Archived(
                path=goal,
                sha256=_digest(file),
                manifest=archived.manifest,
                findings=findings,
            )
    except OSError as error:
        raise FileError(f"{error.filename or file}: {error.strerror or error}") from error


def _unpacked(archived: Archive, folder: Path) -> tuple[Finding, ...]:
    """Files and journal in a folder, every line as it was, altered ones included."""
    strange = NOT_ARCHIVED & set(archived.manifest.files)
    if strange:
        raise FileError(f"The archive holds {listed(sorted(strange))}, which no archive has.")
    archived.unpack(folder)
    end, address = archived.manifest.end, JournalFile(path=folder / JOURNAL)
    with closing(archived.links()) as lines:
        first = next(lines, None)
        if first is None and not end.number:
            return ()
        with opened(address, writing=True) as journal:
            journal.put_back(chain([] if first is None else [first], lines), end=end)
    with opened(address, writing=False) as journal:
        altered = first_altered(journal.links(), end=end)
    return _findings(altered, journal=Place(file=JOURNAL, line=1, column=1))
