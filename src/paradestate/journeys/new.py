"""Starting a force: a copy of an example, or a folder written from answers.

what to write -> a folder beside -> renamed into place
"""

import shutil
import tempfile
from collections.abc import Mapping
from importlib import resources
from pathlib import Path

from paradestate.text.error import FileError
from paradestate.text.folder_lock import put_down
from paradestate.text.starter import Answers, starter_text
from paradestate.text.whole_file import write_new


class FolderTakenError(Exception):
    """The folder is there already and holds something."""


def examples() -> tuple[str, ...]:
    """The names of the bundled examples."""
    folder = resources.files("paradestate") / "examples"
    return tuple(sorted(entry.name for entry in folder.iterdir() if entry.is_dir()))


def new_from_example(folder: Path, *, name: str) -> tuple[Path, ...]:
    """Copies a bundled example. Raises FolderTakenError, or FileError where it can't be written."""
    example = resources.files("paradestate") / "examples" / name
    files = {
        entry.name: entry.read_text(encoding="utf-8")
        for entry in sorted(example.iterdir(), key=lambda entry: entry.name)
        if entry.name.endswith(".yaml")
    }
    return _written(folder, files)


def new_from_answers(folder: Path, *, answers: Answers) -> tuple[Path, ...]:
    """Writes a small commented folder. Raises as above."""
    return _written(folder, {"force.yaml": starter_text(answers)})


def refuse_taken(folder: Path) -> None:
    """Raises FolderTakenError where `folder` is a file, or holds something."""
    if folder.is_file() or (folder.is_dir() and any(folder.iterdir())):
        raise FolderTakenError(str(folder))


def _written(folder: Path, files: Mapping[str, str]) -> tuple[Path, ...]:
    """Writes all files into a folder beside, then puts it in place: whole or not at all."""
    refuse_taken(folder)
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        beside = Path(tempfile.mkdtemp(prefix=".new-", dir=folder.parent))
        try:
            for name, text in files.items():
                write_new(beside / name, text.encode())
            beside.chmod(0o755)
            beside.replace(folder)
            put_down(folder.parent)
        except (OSError, FileError):
            shutil.rmtree(beside, ignore_errors=True)
            raise
    except OSError as error:
        raise FileError(f"{error.filename or folder}: {error.strerror}") from error
    return tuple(folder / name for name in files)
