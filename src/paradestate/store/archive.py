"""One file with everything of a collection: a ZIP file, which any program opens.

`files/` holds the files as they were, `journal.jsonl` one line of JSON for each line of the
journal, `manifest.json` what there is with its digests. The same collection gives the same bytes.
"""

import json
import os
import shutil
import zlib
from collections.abc import Generator, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import asdict, dataclass
from hashlib import file_digest, sha256
from pathlib import Path, PurePosixPath
from typing import IO
from zipfile import ZIP_DEFLATED, ZIP_STORED, BadZipFile, ZipFile, ZipInfo

from paradestate.core.digest_chain import Head, Link
from paradestate.store.error import StoreError

FORMAT = 1
FILES = "files/"
JOURNAL = "journal.jsonl"
MANIFEST = "manifest.json"

MOST_FILES = 100_000
MOST_BYTES = 4 * 1024**3
"""Bounds of what is unpacked, whatever an archive says."""

GREATEST = 2**53
"""No journal has more lines."""

MOST_MANIFEST_BYTES = 64 * 1024**2
PACKED = frozenset({ZIP_STORED, ZIP_DEFLATED})

MOST_LINE_BYTES = 4 * 1024**2
CHUNK = 1024**2


@dataclass(frozen=True, slots=True, kw_only=True)
class Manifest:
    """What an archive holds."""

    name: str
    """Of the collection's folder."""
    files: Mapping[str, str]
    """Path in the folder, with slashes, to the SHA-256 of the file."""
    end: Head
    """Where the journal says that it ends."""
    lines: int
    """How many lines of it there are; as many, unless something altered it."""


def write_archive(
    out: IO[bytes], *, name: str, files: Mapping[str, Path], links: Iterable[Link], end: Head
) -> None:
    """Writes an archive.

    Raises OSError where a file can't be read or the archive be written, and StoreError where there
    is more than an archive may hold.
    """
    if len(files) > MOST_FILES or sum(file.stat().st_size for file in files.values()) > MOST_BYTES:
        raise StoreError(
            f"'{name}' holds more than {MOST_FILES} files or {MOST_BYTES // 1024**3} GiB. No "
            "archive was made. Take out what belongs elsewhere."
        )
    with ZipFile(out, "w", ZIP_DEFLATED) as archive:
        digests = {
            path: _copied_in(archive, FILES + path, file=file)
            for path, file in sorted(files.items())
        }
        with archive.open(_member(JOURNAL), "w", force_zip64=True) as goal:
            lines = 0
            for link in links:
                goal.write(json.dumps(asdict(link), ensure_ascii=False).encode() + b"\n")
                lines += 1
        manifest = Manifest(name=name, files=digests, end=end, lines=lines)
        archive.writestr(_member(MANIFEST), _manifest_text(manifest))


def _member(name: str) -> ZipInfo:
    """A member without a time, so that the same files give the same archive."""
    member = ZipInfo(name)
    member.compress_type = ZIP_DEFLATED
    member.external_attr = 0o644 << 16
    return member


def _copied_in(archive: ZipFile, name: str, *, file: Path) -> str:
    digest = sha256()
    with file.open("rb") as source, archive.open(_member(name), "w", force_zip64=True) as goal:
        while chunk := source.read(CHUNK):
            digest.update(chunk)
            goal.write(chunk)
    return digest.hexdigest()


def _manifest_text(manifest: Manifest) -> str:
    record = {
        "format": FORMAT,
        "name": manifest.name,
        "files": manifest.files,
        "journal": asdict(manifest.end),
        "lines": manifest.lines,
    }
    return json.dumps(record, ensure_ascii=False, indent=1, sort_keys=True)


@contextmanager
def read_archive(file: Path) -> Iterator["Archive"]:
    """An archive for one block. Raises StoreError where it is none or damaged, and OSError."""
    try:
        with ZipFile(file) as archive:
            yield Archive(archive, file=file)
    except (BadZipFile, zlib.error, EOFError, RuntimeError, UnicodeError) as error:
        raise _refusal(file, f"it is no archive, or damaged ({error})") from error


def _refusal(file: Path, why: str) -> StoreError:
    return StoreError(f"{file}: {why}. Nothing was restored. Take another copy of the archive.")


class Archive:
    """An archive that is read. Nothing in it is trusted: names, sizes and digests are checked."""

    def __init__(self, archive: ZipFile, *, file: Path) -> None:
        self._archive = archive
        self._file = file
        self.manifest = self._manifest()

    def _manifest(self) -> Manifest:
        members = self._archive.infolist()
        unpacked = sum(member.file_size for member in members)
        manifest = sum(each.file_size for each in members if each.filename == MANIFEST)
        is_too_much = manifest > MOST_MANIFEST_BYTES or unpacked > MOST_BYTES
        if len(members) > MOST_FILES or is_too_much:
            raise _refusal(self._file, "it holds more than an archive may")
        if any(member.compress_type not in PACKED for member in members):
            raise _refusal(self._file, "it is packed in a way that no archive is")
        try:
            with self._opened(MANIFEST) as source:
                record = json.load(source)
            if record["format"] != FORMAT:
                raise _refusal(self._file, "a later version wrote it")
            return Manifest(
                name=_plain(record["name"]),
                files={_safe(path): str(digest) for path, digest in record["files"].items()},
                end=_head(record["journal"]),
                lines=_number(record["lines"], least=0),
            )
        except (KeyError, ValueError, TypeError, AttributeError) as error:
            raise _refusal(self._file, f"its manifest is damaged ({error})") from error

    def unpack(self, folder: Path) -> None:
        """Writes all files into a folder. Raises StoreError where one isn't as it was."""
        for path, digest in self.manifest.files.items():
            goal = folder / path
            goal.parent.mkdir(parents=True, exist_ok=True)
            with self._opened(FILES + path) as source, goal.open("xb") as out:
                shutil.copyfileobj(source, out, CHUNK)
                out.flush()
                os.fsync(out.fileno())
            with goal.open("rb") as written:
                if file_digest(written, "sha256").hexdigest() != digest:
                    raise _refusal(self._file, f"{path} isn't as it was archived")

    def links(self) -> Generator[Link]:
        """The lines of the journal. Raises StoreError where they can't be read."""
        with self._opened(JOURNAL) as source:
            while line := source.readline(MOST_LINE_BYTES):
                try:
                    yield _link(json.loads(line))
                except (KeyError, ValueError, TypeError) as error:
                    raise _refusal(self._file, "its journal is damaged") from error

    def _opened(self, name: str) -> IO[bytes]:
        try:
            return self._archive.open(name)
        except KeyError:
            raise _refusal(self._file, f"{name} is missing in it") from None


def _head(record: Mapping[str, object]) -> Head:
    return Head(number=_number(record["number"], least=-1), digest=str(record["digest"]))


def _link(record: Mapping[str, object]) -> Link:
    return Link(
        number=_number(record["number"], least=1),
        id=_plain_text(record["id"]),
        text=_plain_text(record["text"]),
        digest=_plain_text(record["digest"]),
    )


def _plain_text(value: object) -> str:
    """A text that can be written in UTF-8. Raises ValueError for every other."""
    text = str(value)
    text.encode()
    return text


def _number(value: object, *, least: int) -> int:
    """A number of lines. Raises ValueError for what is none."""
    if not isinstance(value, int) or not least <= value <= GREATEST:
        raise ValueError(f"{value!r} is no number of a line")
    return value


def _safe(path: str) -> str:
    """A path below the folder. Raises ValueError for every other."""
    parts = PurePosixPath(path).parts
    if not parts or "/".join(_plain(part) for part in parts) != path:
        raise ValueError(f"'{path}' leads elsewhere")
    return path


def _plain(name: str) -> str:
    """The name of one file or folder. Raises ValueError for a path."""
    refused = "/\0\\:" if os.name == "nt" else "/\0"
    if name in {"", ".", ".."} or any(letter in name for letter in refused):
        raise ValueError(f"'{name}' is no name")
    name.encode()
    return name
